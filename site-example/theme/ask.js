'use strict';self.rungbookIs+="ask.js=6e090f3b ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.a_day":"on a day that I know","entry.centimetres":"Centimetres","entry.change":"Change it","entry.choose":"choose","entry.could_have_done":"Could have done more","entry.countdown":"five seconds to get into place","entry.degrees":"Degrees","entry.done":"Done","entry.elsewhere":"The chest, the head, the ribs, the belly or the groin are not on this list: what to do then, and what needs a clinician today, stands under","entry.emergency":"Pain or pressure in the chest, fainting, sudden weakness or numbness of a side or between the legs, a blow to the head with sickness, confusion or neck pain, a joint out of place: call the emergency number.","entry.go_lighter":"Go lighter","entry.go_on":"Go on","entry.good_tries":"Good tries","entry.helps":"helps me","entry.if_it_hurts":"If it hurts","entry.inches":"Inches","entry.is_added":"is added","entry.it_hurt":"It hurt","entry.it_hurt_in":"It hurt: {movement}","entry.just_now":"just now","entry.keep":"Save this number","entry.keep_anyway":"It is right","entry.keep_go_on":"Enter it, go on","entry.longer":"longer ago, or I do not know","entry.no_number":"Without a number this rests until you lift it: {parts}.","entry.not_sure":"Not sure where? Then all of this rests until you lift it: {parts}.","entry.of_left":"{amount}, left","entry.of_right":"{amount}, right","entry.on_day":"The day","entry.other_part":"Another part","entry.out_of_tries":"Out of tries","entry.pause":"Rest this movement","entry.pause_all":{"one":"Rest {n} part","other":"Rest all {n} parts"},"entry.pause_part":"Rest the {parts}","entry.reps":"Reps","entry.seconds":"Seconds","entry.seconds_of_each":"Seconds of each rep","entry.sets":"Sets","entry.start_timer":"Start the hold timer","entry.starts_in":"in {seconds}","entry.stop":"Stop","entry.stop_here":"Stop here. This movement rests until you or your coach lift it.","entry.sure":"Is this number right?","entry.sure_far":"{movement}, {got}: the standard is {standard}. Do you mean it?","entry.sure_parts":"{movement}, {got}: only whole reps count. Write the reps that were whole.","entry.the_weight":"The weight","entry.this_month":"in the last four weeks","entry.this_week":"in the last seven days","entry.weight_in_kilograms":"Weight (kg)","entry.weight_in_pounds":"Weight (lb)","entry.what_was_left":"Could you have done more?","entry.when":"When was it?","entry.where":"Where does it hurt?","entry.write_day":"Say when it was. Nothing is dated by guess.","entry.write_numbers":"Write numbers, such as 9 or 2.5. If you cannot do one yet, write 0.","entry.write_reserve":"Write a whole number from 0 to {most} for what you could have done more.","number.another_day":"Another day","number.before":"The pain began on {day}: only a number from a day before that is taken.","number.cm":"cm","number.deg":"°","number.enough_for":"One thing less on the way to {list}.","number.from_clip":"From a clip","number.from_picture":"From a picture","number.health_first":"Answer the health questions first","number.in":"in","number.kept":"{movement}, {got}: saved.","number.left":"left","number.less":"{movement}, {got}: {by} less than before, {day}.","number.more":"{movement}, {got}: {by} more than before, {day}.","number.of":"{movement}: your number","number.of_side":"{movement}: your number, {side}","number.off":"give or take {off} {unit}","number.opens":"Opens {list}.","number.right":"right","number.same":"{movement}, {got}: the same as before, {day}.","number.sore":"As long as this hurts, nothing that loads it is proposed: {parts}.","number.today":"Save: done today","number.undated":"{movement}: set aside, for nobody knows the day.","number.until_settled":"Nothing goes up here until it has settled: enter more than your last number after that.","number.yours":"Now yours: {list}.","pain.came_with":"Was any of this with it?","pain.sign_giving_way":"the joint gives way, or was ever out of place","pain.sign_night":"it wakes me at night","pain.sign_numb":"numbness or tingling, or pain into an arm or a leg","pain.sign_sharp":"sharp, stabbing, or after a fall or a knock","shared.and_more":{"one":"and {n} more","other":"and {n} more"},"today.reps":"reps","today.seconds":"s"});
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
(()=>{
const{targets,results,readiness,store,page,states,scale,number:{isMeant,fromPicture,given,spans,noDay,isMore}}=globalThis.rungbook;
const{make,named,units,blame}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{TIME,LENGTH,DONE,NO_LOAD}=targets;
const COUNTDOWN=5;
const MOST_LEFT=globalThis.rungbook.health.LIMITS.in_reserve;
const WORDS=[say('entry.reps'),say('entry.seconds'),say('entry.centimetres'),say('entry.degrees'),say('entry.done')];
const UNITS=['reps','s','cm','deg','done'];
let count=0;
const field=(says,set)=>{
count +=1;
const id=`field-${count}`;
const input=(make('input',{id,autocomplete:'off',...set}));
return{input,says,whole:make('p',{class:'field'},make('label',{for:id,text:says}),input)};
};
const choice=(says,options)=>{
count +=1;
const id=`field-${count}`;
const input=(make('select',{id},...options.map(([value,words])=>make('option',{value,text:words}))));
return{input,whole:make('p',{class:'field'},make('label',{for:id,text:says}),input)};
};
const number={type:'text',inputmode:'decimal',size:6};
const timer=(side,done)=>{
count +=1;
const id=`timer-${count}`;
const face=make('span',{class:'timer-face',role:'timer',text:'0'});
const button=make('button',{type:'button',class:'quiet',text:say('entry.start_timer'),'aria-describedby':side?id:null});
let started=0,ticking=0;
const tick=()=>{
const passed=(performance.now()- started)/ 1000 - COUNTDOWN;
face.textContent=passed<0?say('entry.starts_in',{seconds:Math.ceil(-passed)}):String(Math.floor(passed));
};
button.addEventListener('click',()=>{
if(ticking){
clearInterval(ticking);
ticking=0;
const held=Math.max(0,Math.floor((performance.now()- started)/ 1000 - COUNTDOWN));
face.textContent=String(held);
button.textContent=say('entry.start_timer');
done(held);
return;
}
started=performance.now();
ticking=Number(setInterval(tick,100));
button.textContent=say('entry.stop');
tick();
});
return make('p',{class:'timer'},...(side?[make('span',{id,text:side}),' ']:[]),button,' ',face,make('span',{class:'hint',text:` ${say('entry.countdown')}`}));
};
const uses=(model,m)=>{
const asked=model.demands[m].map(model.target);
const some=(has)=>asked.some(has);
return{
sets:some((t)=>t.sets>1),seconds:some((t)=>t.seconds>0),tries:some((t)=>t.of>0),
load:some((t)=>t.unit!==NO_LOAD),help:some((t)=>t.load<0),
};
};
const form=(m,options)=>{
const model=(states.model);
const{measure}=model.target(m);
const use=uses(model,m);
const sided=model.is(m,readiness.EACH_SIDE);
const day=results.today();
const inches=measure===LENGTH&&units.current()==='imperial';
const says=inches?say('entry.inches'):WORDS[measure];
const unit=inches?'in':UNITS[measure];
const amounts=sided
?[field(say('entry.of_left',{amount:says}),number),field(say('entry.of_right',{amount:says}),number)]
:[field(says,measure===DONE?{type:'checkbox'}:number)];
const sets=use.sets?field(say('entry.sets'),{...number,value:'1'}):null;
const seconds=use.seconds?field(say('entry.seconds_of_each'),number):null;
const hits=use.tries?[field(say('entry.good_tries'),number),field(say('entry.out_of_tries'),number)]:null;
const weight=units.current()==='imperial'?'lb':'kg';
const load=use.load?field(weight==='lb'?say('entry.weight_in_pounds'):say('entry.weight_in_kilograms'),number):null;
const way=use.load?choice(say('entry.the_weight'),[...(use.help?[['help',say('entry.helps')]]:[]),['added',say('entry.is_added')],...(use.help?[]:[['help',say('entry.helps')]])].map((o)=>(o))):null;
const reserve=field(say('entry.could_have_done'),{...number,placeholder:'0'});
const when=choice(say('entry.when'),([...(options.today?[['0',say('entry.just_now')]]:[['',say('entry.choose')]]),
...spans(m)]));
const on=field(say('entry.on_day'),{type:'date',max:results.dayText(day),min:results.dayText(day - 3650)});
on.whole.hidden=true;
when.input.addEventListener('change',()=>{on.whole.hidden=when.input.value!=='day';});
count +=1;
const fault=make('p',{class:'fault',role:'alert',id:`fault-${count}`});
const written=(of)=>of.input.value.trim().replace(',','.');
const text=(amount)=>{
if(measure===DONE)return amount.input.checked?'done':'not done';
const set=sets&&written(sets)!==''&&written(sets)!=='1'?`${written(sets)}x`:'';
const each=seconds&&written(seconds)!==''?` of ${written(seconds)} s`:'';
const tried=hits&&written(hits[1])!==''?` in ${written(hits[0])} of ${written(hits[1])} tries`:'';
const added=load&&way&&written(load)!==''&&Number(written(load))!==0?` with ${written(load)} ${weight}${way.input.value==='help'?' help':''}`:'';
return `${set}${written(amount)} ${unit}${each}${tried}${added}`;
};
const days=make('div',{class:'fields'},when.whole,on.whole);
const more=(make('details',{class:'more'},make('summary',{text:say('entry.what_was_left')}),make('div',{class:'fields'},reserve.whole)));
const whole=make('form',{class:'enter-form',novalidate:true,on:{
submit:(event)=>{
event.preventDefault();
const read=amounts.map((amount)=>targets.readGot(text(amount)));
const bad=read.findIndex((got)=>got===null);
const left=Number(written(reserve)||'0');
if(bad>=0){
blame(amounts[bad].input,fault,say('entry.write_numbers'));
return;
}
if(!Number.isInteger(left)||left<0||left>MOST_LEFT){
more.open=true;
blame(reserve.input,fault,say('entry.write_reserve',{most:MOST_LEFT}));
return;
}
const from=given(when.input.value,on.input.value,day,states.since(m));
if(from===undefined){
blame(when.input.value==='day'?on.input:when.input,fault,noDay(m));
return;
}
blame(when.input,fault,'');
if(isMore(m,(read))){
blame(amounts[0].input,fault,say('number.until_settled'));
return;
}
const texts=read.map((got)=>targets.text((got)));
const sides=sided?{left:texts[0],right:texts[1]}:{got:texts[0]};
const keep=()=>options.kept(from===null?store.add('undated',{movement:model.tables.ids[m],...sides})
:store.add('tested',{movement:model.tables.ids[m],...sides,...from,...(left?{in_reserve:left}:{})}));
const odd=read.find((got)=>readiness.doubtful(model,m,(got)));
if(odd)isMeant(m,odd).then((meant)=>{if(meant)keep();else amounts[0].input.focus();});
else keep();
},
}},
options.told?days:null,
...(measure===TIME&&options.today?amounts.map((amount)=>timer(sided?amount.says:'',(held)=>{amount.input.value=String(held);})):[]),
make('div',{class:'fields'},...[...amounts,sets,seconds,...(hits||[]),load,way].map((part)=>part&&part.whole)),
make('p',{class:'pictures'},...amounts.map(({input})=>fromPicture(m,input))),
options.told?null:days,
more,fault,
make('p',{class:'acts'},make('button',{type:'submit',text:say('entry.keep')}),' ',...(options.more||[]),
make('button',{type:'button',class:'hurt',text:say('entry.it_hurt'),on:{click:()=>hurt(m,options.today?'test':'training').then((then)=>{if(then&&then.follows==='on')fault.textContent=then.says;else if(then)options.hurt();})}})));
return whole;
};
const tick=(id,value,says)=>{
const box=(make('input',{type:'checkbox',id,value}));
return{box,whole:make('label',{class:'chip'},box,says)};
};
const hurt=async(m,where='training')=>{
const{tables}=(states.model);
const bears=(i)=>((tables.stresses[m]>>i)&1)===1;
const boxes=tables.parts.map((part,i)=>({...tick(`part-${part}`,part,states.partWord(part)),stressed:bears(i)}));
const chips=(stressed)=>make('div',{class:'chips'},...boxes.filter((of)=>of.stressed===stressed).map(({whole})=>whole));
const score=scale.row('hurt-score'),signs=results.SIGNS.map((sign)=>tick(`sign-${sign}`,sign,say(`pain.sign_${sign.replace('-','_')}`)));
const says=make('p',{class:'hint',role:'status'});
const chosen=()=>boxes.filter(({box})=>box.checked).map(({box})=>box.value),came=()=>signs.filter(({box})=>box.checked).map(({box})=>box.value);
const said=()=>{
const parts=chosen(),all=parts.length?parts:boxes.filter(({stressed})=>stressed).map(({box})=>box.value);
const some=all.filter((part)=>part!=='neck'),follows=scale.follows(parts.length||!some.length?all:some,score.value(),came());
return{parts:all,isUnsaid:parts.length===0,signs:came(),score:score.value(),follows};
};
const acts=({follows,isUnsaid,parts})=>(follows==='light'?say('entry.go_lighter'):follows==='on'?say(isUnsaid?'entry.go_on':'entry.keep_go_on')
:!parts.length?say('entry.pause'):isUnsaid&&parts.length>1?say('entry.pause_all',{n:parts.length}):say('entry.pause_part',{parts:scale.partsText(parts)}));
const tells=({follows,isUnsaid,parts,score:much,signs:with_})=>{
const isOpen=much===null&&!with_.length;
return!parts.length&&isOpen?say('entry.stop_here'):isOpen?say(isUnsaid?'entry.not_sure':'entry.no_number',{parts:scale.partsText(parts)}):scale.saysOf(follows,parts);
};
const show=()=>{
const of=said(),dialog=says.closest('dialog'),act=dialog&&dialog.querySelector('button[value=act]');
if(!act)return;
act.textContent=acts(of);
says.textContent=tells(of);
if(!of.isUnsaid&&of.score===null)score.whole.scrollIntoView({block:'nearest'});
};
const inside=make('div',{class:'hurting',on:{change:show}},make('p',{class:'do-not',text:say('entry.emergency')}),
make('fieldset',{},make('legend',{text:say('entry.where')}),chips(true),make('details',{},make('summary',{text:say('entry.other_part')}),chips(false),make('p',{},say('entry.elsewhere'),' ',make('a',{href:'if-it-hurts.html',text:say('entry.if_it_hurts')}),'.'))),
make('fieldset',{},make('legend',{text:say('pain.came_with')}),make('div',{class:'signs'},...signs.map(({whole})=>whole))),score.whole,says);
says.textContent=tells(said());
const title=sayNodes('entry.it_hurt_in',{movement:named(tables,m)}).map((part)=>part||'');
if(await page.ask(title,[inside],[['act',acts(said())],['',say('entry.go_back')]])!=='act')return null;
const{parts,isUnsaid,signs:with_,score:much,follows}=said();
const on=results.dayText(results.today()),by='client',because=where==='test'?'it hurt in a test':'it hurt in training';
const out=follows==='on'?[]:[['paused',{movement:tables.ids[m],on,...(follows==='light'?{until:on}:{}),by,because}]];
for(const part of parts){
if(follows==='rests'&&(isUnsaid||much===null))out.push(['paused',{part,on,by,because}]);
if(isUnsaid?follows==='light':much!==null||with_.length)out.push(['pain',{part,score:much||0,on,...(with_.length?{signs:with_}:{})}]);
}
store.addAll(out);
if(follows!=='on')store.set('fit',null);
return{follows,says:scale.saysOf(follows,parts)};
};
globalThis.rungbook.entry={form,hurt};
})();
