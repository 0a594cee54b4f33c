'use strict';self.rungbookIs+="number.js=101a914e ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.a_day":"on a day that I know","entry.change":"Change it","entry.choose":"choose","entry.keep":"Save this number","entry.keep_anyway":"It is right","entry.longer":"longer ago, or I do not know","entry.on_day":"The day","entry.sure":"Is this number right?","entry.sure_far":"{movement}, {got}: the standard is {standard}. Do you mean it?","entry.sure_parts":"{movement}, {got}: only whole reps count. Write the reps that were whole.","entry.this_month":"in the last four weeks","entry.this_week":"in the last seven days","entry.when":"When was it?","entry.write_day":"Say when it was. Nothing is dated by guess.","entry.write_numbers":"Write numbers, such as 9 or 2.5. If you cannot do one yet, write 0.","number.another_day":"Another day","number.before":"The pain began on {day}: only a number from a day before that is taken.","number.cm":"cm","number.deg":"°","number.enough_for":"One thing less on the way to {list}.","number.from_clip":"From a clip","number.from_picture":"From a picture","number.health_first":"Answer the health questions first","number.in":"in","number.kept":"{movement}, {got}: saved.","number.left":"left","number.less":"{movement}, {got}: {by} less than before, {day}.","number.more":"{movement}, {got}: {by} more than before, {day}.","number.of":"{movement}: your number","number.of_side":"{movement}: your number, {side}","number.off":"give or take {off} {unit}","number.opens":"Opens {list}.","number.right":"right","number.same":"{movement}, {got}: the same as before, {day}.","number.sore":"As long as this hurts, nothing that loads it is proposed: {parts}.","number.today":"Save: done today","number.undated":"{movement}: set aside, for nobody knows the day.","number.until_settled":"Nothing goes up here until it has settled: enter more than your last number after that.","number.yours":"Now yours: {list}.","shared.and_more":{"one":"and {n} more","other":"and {n} more"},"today.reps":"reps","today.seconds":"s"});
'use strict';
'after page.js states.js';
(()=>{
const{targets,results,readiness,store,page,states}=globalThis.rungbook;
const{make,named,namedList,units,blame}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{REPS,LENGTH,ANGLE,DONE,ONE,NO_LOAD}=targets;
const model=(states.model);
const WEEK=7;
const MOST_NAMES=4;
const nodes=(parts)=>parts.filter((part)=>part!==null).map((part)=>(part));
const isMeant=async(m,got)=>{
const says={movement:named(model.tables,m),got:states.shown(got),standard:states.target(m)};
const part=got.measure===REPS&&got.amount % ONE!==0;
const answer=await page.ask(say('entry.sure'),[make('p',{},...(part?sayNodes('entry.sure_parts',says):sayNodes('entry.sure_far',says)))],
[['change',say('entry.change')],...(part?[]:[(['keep',say('entry.keep_anyway')])])]);
return answer==='keep';
};
const counted=({sides,movement})=>[...sides].sort((a,b)=>(model.target(movement).atMost?b.amount - a.amount:a.amount - b.amount))[0];
const best=(list,atMost)=>[...list].sort((a,b)=>(atMost?counted(a).amount - counted(b).amount:counted(b).amount - counted(a).amount)||b.on - a.on)[0];
const beside=(m,now,earlier)=>{
const{atMost}=model.target(m),got=counted(now);
const like=earlier.filter((one)=>['unit','load','sets','seconds','of'].every((part)=>(counted(one))[part]===(got)[part]));
const shown={movement:named(model.tables,m),got:states.shown(got)};
if(!like.length||got.measure===DONE)return sayNodes('number.kept',shown);
const before=best(like,atMost),by=got.amount - counted(before).amount;
const all={...shown,by:states.shown({...got,amount:Math.abs(by),atMost:false}),day:states.when(before)};
return sayNodes(`number.${by===0?'same':by>0?'more':'less'}`,all);
};
const listed=(key,list)=>(list.length?[' ',...sayNodes(key,{list:[...namedList(model.tables,list.slice(0,MOST_NAMES)),...(list.length>MOST_NAMES?[' ',say('shared.and_more',{n:list.length - MOST_NAMES})]:[])]})]:[]);
const news=(m,before,key)=>{
const now=states.mine();
const tests=(stand)=>(stand?stand.person.tested.filter(({movement})=>movement===m):[]);
const kept=store.entries('tested').findIndex((of)=>of.key===key),newest=now&&tests(now).find(({entry})=>entry===kept);
if(!now||!newest)return[];
if(states.isHeld(now,m))return nodes([...sayNodes('number.kept',{movement:named(model.tables,m),got:states.shown(counted(newest))}),...states.whyHeld(m).flatMap((why)=>[' ',...why])]);
const said=[...beside(m,newest,tests(before))];
const was=before||{found:readiness.assess(model,results.nobody(),now.day)};
const became=(state)=>model.order.filter((of)=>now.found.states[of]===state&&was.found.states[of]!==state);
const spared=(of)=>states.isHeld(now,of);
const yours=became(readiness.OWNED),open=states.barred()?[]:became(readiness.OPEN).filter((of)=>was.found.states[of]!==readiness.OWNED&&!spared(of));
const met=model.demands[m].filter((leaf)=>now.found.known.shown[leaf]===readiness.TRUE&&was.found.known.shown[leaf]!==readiness.TRUE);
const enough=model.order.filter((of)=>of!==m&&now.found.states[of]!==readiness.OWNED&&!open.includes(of)&&!spared(of)&&readiness.leavesOf(model.tables.needs[of]).some((leaf)=>met.includes(leaf)));
return nodes([...said,...listed('number.yours',yours),...listed('number.opens',open),...listed('number.enough_for',states.barred()?[]:enough),...(states.sore(now).length?[' ',say('number.sore',{parts:[...new Set(states.sore(now).map(({part})=>states.partWord(model.tables.parts[part])))].join(say('list.separator'))})]:[])]);
};
const isPlain=(m)=>model.target(m).measure!==DONE&&model.demands[m].every((leaf)=>{const t=model.target(leaf);return t.seconds===0&&t.of===0&&t.unit===NO_LOAD;});
const unitOf=(m)=>{
const{measure}=model.target(m);
return measure===LENGTH&&units.current()==='imperial'?[say('number.in'),'in']:([[say('today.reps'),'reps'],[say('today.seconds'),'s'],[say('number.cm'),'cm'],[say('number.deg'),'deg'],['','done']])[measure];
};
const read=(m,typed)=>{
const bare=typed.trim().replace(',','.'),withUnit=targets.readGot(bare);
return targets.readGot(`${bare} ${unitOf(m)[1]}`)||(withUnit&&withUnit.measure===model.target(m).measure&&withUnit.sets===1&&withUnit.unit===NO_LOAD?withUnit:null);
};
const given=(span,written,today,before=null)=>{
if(span==='long')return null;
const read=span==='day'?results.readDay(written):span===''?null:today - Number(span);
if(read===null||read>today||(before!==null&&(span!=='day'||read>=before)))return undefined;
return{on:results.dayText(read),...(span==='day'||read===today?{}:{until:results.dayText(today)})};
};
const keep=(m,sides,when)=>{
const before=states.latest(),texts=sides.map((got)=>targets.text(got)),id=model.tables.ids[m];
const entry={movement:id,...(texts.length>1?{left:texts[0],right:texts[1]}:{got:texts[0]})};
const movement=named(model.tables,m),got=sides.length>1?sayNodes('stand.both_sides',{left:states.shown(sides[0]),right:states.shown(sides[1])}):states.shown(sides[0]);
const key=when===null?store.add('undated',entry,true):store.add('tested',{...entry,...when},true);
const kept=nodes(when===null?sayNodes('number.undated',{movement}):sayNodes('number.kept',{movement,got}));
return{key,kept,news:()=>(when===null?kept:news(m,before,key))};
};
const labelOf=(m,side)=>(side?say('number.of_side',{movement:model.tables.names[m],side}):say('number.of',{movement:model.tables.names[m]}));
const fromPicture=(m,input)=>{
const{measure}=model.target(m);
if(![targets.TIME,LENGTH,ANGLE].includes((measure))||!document.getElementById('angle-here'))return null;
const off=make('span',{class:'hint',role:'status'});
const open=async()=>{
await page.load('angle-here');
globalThis.rungbook.angle.open({measure,unit:unitOf(m)[0],done:(value,by)=>{
const down=model.target(m).atMost?Math.ceil:Math.floor,fine=measure===LENGTH?10:1;
input.value=String(measure===targets.TIME?Math.floor(value):down(value*fine -(model.target(m).atMost?1e-9:-1e-9))/ fine);
off.textContent=say('number.off',{off:globalThis.rungbook.words.number(Math.max(0.1,Math.round(by*10)/ 10)),unit:unitOf(m)[0]});
input.focus();
}});
};
return make('span',{},make('button',{type:'button',class:'plain-button',text:measure===targets.TIME?say('number.from_clip'):say('number.from_picture'),on:{click:()=>{open().catch(()=>{off.textContent=say('number.not_loaded');});}}}),off);
};
let count=0;
const SPANS=([[String(WEEK - 1),say('entry.this_week')],[String(4*WEEK - 1),say('entry.this_month')],['day',say('entry.a_day')],['long',say('entry.longer')]]);
const spans=(m)=>SPANS.filter(([value])=>states.since(m)===null||value==='day'||value==='long');
const isMore=(m,sides)=>{
if(states.since(m)===null)return false;
const texts=store.entries('tested').filter(({entry})=>entry.movement===model.tables.ids[m]).flatMap(({entry})=>[entry.got,entry.left,entry.right]);
const known=texts.flatMap((text)=>{const got=text===undefined?null:targets.readGot(text);return got?[got]:[];});
const isOver=(got,of)=>(got.unit===of.unit&&got.load>of.load)||(model.target(m).atMost?got.amount<of.amount:got.amount>of.amount);
return known.length>0&&sides.some((got)=>known.every((of)=>isOver(got,of)));
};
const noDay=(m)=>{const before=states.since(m);return before===null?say('entry.write_day'):say('number.before',{day:results.dayWords(before)});};
const line=(m,kept,isOpen=false)=>{
const how=states.asks(m),why=how==='today'?[]:states.hints(m),isTold=how==='told';
if(states.barred()==='ask'||!isPlain(m)||(!how&&(!why.length||store.adults.isDue())))return null;
if(!how)return make('div',{class:'number-line'},...why);
if(states.barred()==='first'&&store.keeps())return make('p',{class:'hint'},make('a',{href:'before-you-start.html#questions',text:say('number.health_first')}));
count +=1;
const id=`number-${count}`,day=results.today();
const sides=model.is(m,readiness.EACH_SIDE)?[say('number.left'),say('number.right')]:[''];
const inputs=sides.map((side,i)=>(make('input',{id:`${id}-${i}`,type:'text',inputmode:'decimal',size:4,autocomplete:'off','aria-label':labelOf(m,side),placeholder:side})));
const fault=make('p',{class:'fault',role:'alert',id:`${id}-fault`}),says=make('p',{class:'hint',role:'status'});
let isKept=false;
const when=(make('select',{id:`${id}-when`},make('option',{value:'',text:say('entry.choose')}),...spans(m).map(([value,text])=>make('option',{value,text}))));
const on=(make('input',{id:`${id}-on`,type:'date',max:results.dayText(day),min:results.dayText(day - 3650),'aria-label':say('entry.on_day'),hidden:true}));
const keeps=make('button',{type:'submit',value:'other',class:isTold?'quiet':null,text:say('entry.keep')});
const other=make('p',{class:'fields number-when',hidden:!isTold},make('label',{for:when.id,text:say('entry.when')}),when,on,isTold?null:keeps);
when.addEventListener('change',()=>{on.hidden=when.value!=='day';});
const submit=async(event)=>{
event.preventDefault();
if(isKept)return;
const all=inputs.map(({value})=>read(m,value)),bad=all.indexOf(null);
if(bad>=0){blame(inputs[bad],fault,say('entry.write_numbers'));return;}
const of=other.hidden?given('0','',day):given(when.value,on.value,day,states.since(m));
if(of===undefined){blame(when.value==='day'?on:when,fault,noDay(m));return;}
const more=isMore(m,(all));
blame(inputs[0],fault,more?say('number.until_settled'):'');
if(more)return;
const odd=all.find((got)=>readiness.doubtful(model,m,(got)));
if(odd&&!await isMeant(m,odd)){inputs[0].focus();return;}
isKept=true;
const done=keep(m,(all),of);
says.replaceChildren(...done.kept);
page.later([()=>{
isKept=false;
says.replaceChildren();
kept({key:done.key,news:done.news()});
}],`${id}-says`);
};
const from=inputs.map((input)=>fromPicture(m,input));
if(isTold){
const form=make('form',{class:'number-line',novalidate:true,on:{submit}},other,...inputs,make('span',{class:'unit',text:unitOf(m)[0]}),keeps,...from,fault,says);
return make('div',{},...why,isOpen?form:make('details',{},make('summary',{text:say('number.told')}),form));
}
return make('form',{class:'number-line',novalidate:true,on:{submit}},...inputs,make('span',{class:'unit',text:unitOf(m)[0]}),
make('button',{type:'submit',class:'quiet',text:say('number.today')}),
make('button',{type:'button',class:'plain-button',text:say('number.another_day'),on:{click:()=>{other.hidden=false;when.focus();}}}),...from,other,fault,says);
};
globalThis.rungbook.number={isMeant,news,isPlain,unitOf,read,given,keep,spans,noDay,isMore,line,labelOf,fromPicture,SPANS};
})();
