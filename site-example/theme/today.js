'use strict';self.rungbookIs+="today.js=7f1894b9 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.if_it_hurts":"If it hurts","entry.it_hurt":"It hurt","stand.lift":"Lift this pause","test.before_you_start":"Before you start","today.back_when":"Go back when: {signs}.","today.between":"You trained a short time ago: what needs 48 hours waits, and the next whole session is on {day}.","today.block_beside":"A few sets, so that the whole body is trained.","today.block_kept_up":"Fewer sets, so that what you have stays.","today.block_practice":"While fresh, few tries. End at the first that is not clean.","today.block_range":"Slowly, without pain.","today.block_strength":"What stands between you and the goal.","today.done":"Done today: {sets}.","today.enter_measured":"Enter what you measured","today.head_beside":"Beside that","today.head_kept_up":"Kept up","today.head_practice":"Practice","today.head_range":"Range","today.head_strength":"Strength","today.help_used":"Help used","today.install":"Keep it there","today.install_says":"Keep this site on your home screen? It opens without a network.","today.instead_of":"In the place of {movement}.","today.keep":"Keep this training","today.kilograms":"kg","today.left_in_reserve":"Could you have done more?","today.morning":"{part}, {score} of 10 on {day}. How is it this morning, 0 to 10?","today.next":"Today is free. Next: {session}","today.no_effort":"Write a whole number from 0 to {most} for the effort.","today.no_minutes":"Write the minutes as a whole number, from 1 to {most}.","today.no_weight":"Write the weight as a number.","today.not_kept":"These ticks are for you alone; a stretch is not written into the log.","today.not_now":"Not now","today.nothing_open":"Nothing can be trained today with the equipment at hand. Test something first.","today.paper_each_set":"Done","today.paper_left":"In reserve","today.paper_movement":"Movement","today.paper_rest":"Rest","today.paper_what":"Sets","today.pounds":"lb","today.reps":"reps","today.seconds":"s","today.session":"Kept: effort {effort}, {minutes} minutes.","today.set":"Set {number}","today.set_done":"{set}, done","today.take_back":"Take back","today.take_back_session":"Take back: effort {effort}, {minutes} minutes","today.tick":"Tick the sets that you did.","today.weight_used":"Weight used","today.whole_left":"Write a whole number from 0 to {most} for what you could have done more.","today.whole_reps":"Only whole reps count.","today.why":"Why this","today.write_set":"{set}: write what you did as a number from 0 on, such as 8."});
'use strict';
'after page.js targets.js states.js training.js aim.js';
(()=>{
const{targets,results,store,page,states,training,aim,rest}=globalThis.rungbook;
const{LIMITS}=globalThis.rungbook.health;
const{make,named,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model,mine}=states;
if(!model)return;
const{tables}=model;
const BLOCKS=(['practice','strength','kept up','range']);
const{nodes}=aim;
const timer=rest.timer();
byId('timer').replaceChildren(timer.element);
byId('rest-ways').replaceChildren(rest.choices());
const drafts=(on)=>{const kept=store.get('ticks');return kept&&kept.on===on&&kept.of?kept.of:{};};
const isLogged=({movement,unit})=>{
const{measure}=model.target(movement);
return measure===(unit==='reps'?targets.REPS:targets.TIME);
};
const inPounds=()=>page.units.current()==='imperial';
const typed=(mass)=>String(inPounds()?Math.round((Math.abs(mass)/ 45359237)*10)/ 10:Math.abs(mass)/ targets.KILOGRAM);
const dated=(text)=>text.replace(/[0-9]{4}-[0-9]{2}-[0-9]{2}/g,(day)=>results.dayWords(Number(results.readDay(day))));
const ticks=(line,draft)=>{
const id=tables.ids[line.movement],count=line.sets +(line.weaker?1:0);
return Array.from({length:count},(_,i)=>{
const more=i===line.sets,name=more?say(`training.more_${line.weaker}`):say('today.set',{number:i + 1});
const tick=(make('input',{type:'checkbox',id:`tick-${id}-${i}`,'aria-label':name}));
const amount=(make('input',{type:'text',inputmode:'decimal',size:4,value:draft.amounts[i]===undefined?line.amount:draft.amounts[i],'aria-label':say('today.set_done',{set:name})}));
tick.checked=Boolean(draft.ticks[i]);
tick.addEventListener('change',()=>{if(tick.checked&&i + 1<count)timer.start(line.rest);});
return{tick,amount,whole:make('li',{},make('label',{for:tick.id},tick,make('span',{text:more?name:globalThis.rungbook.words.number(i + 1)})),amount,make('span',{class:'unit',text:say(line.unit==='reps'?'today.reps':'today.seconds')}))};
});
};
const field=(id,says,value,after='')=>{
const input=(make('input',{type:'text',inputmode:'decimal',size:4,id,value,autocomplete:'off'}));
return{input,whole:make('p',{class:'beside'},make('label',{for:id,text:says}),' ',input,after?make('span',{class:'unit',text:after}):null)};
};
const keep=(line,on,sets,left,weight)=>{
const number=(text)=>(text.trim()===''?NaN:Number(text.trim().replace(',','.')));
const ticked=sets.slice(0,line.sets).filter(({tick})=>tick.checked),did=ticked.map(({amount})=>number(amount.value));
const reserve=left.value.trim()===''?null:number(left.value),load=weight===null||weight.value.trim()===''?0:number(weight.value);
const bad=did.findIndex((n)=>!Number.isFinite(n)||n<0||n>MOST),part=line.unit==='reps'?did.findIndex((n)=>!Number.isInteger(n)):-1;
if(!did.length)return[sets[0].tick,say('today.tick')];
if(bad>=0)return[ticked[bad].amount,say('today.write_set',{set:say('today.set',{number:sets.indexOf(ticked[bad])+ 1})})];
if(part>=0)return[ticked[part].amount,say('today.whole_reps')];
if(reserve!==null&&(!Number.isInteger(reserve)||reserve<0||reserve>LIMITS.in_reserve))return[left,say('today.whole_left',{most:LIMITS.in_reserve})];
if(weight&&(!Number.isFinite(load)||load<0||load>1000))return[weight,say('today.no_weight')];
const help=(line.load||0)<0?' help':'';
store.add('trained',{movement:tables.ids[line.movement],did,...(load?{with:`${load} ${inPounds()?'lb':'kg'}${help}`}:{}),...(reserve===null?{}:{in_reserve:reserve}),on});
return[left,''];
};
const entry=()=>page.load('entry-here').then(()=>globalThis.rungbook.entry);
const MOST=100000;
const MANY=3;
const isSlip=async(line,sets)=>{
const most=Math.max(0,...sets.filter(({tick})=>tick.checked).map(({amount})=>Number(amount.value.trim().replace(',','.'))||0));
const got=most>MANY*line.amount?targets.readGot(`${most} ${line.unit}`):null;
if(!got)return false;
if(!await entry().catch(()=>null))return false;
const{doubtful,isMeant}=globalThis.rungbook.number;
return doubtful(model,line.movement,got)&&!await isMeant(line.movement,got);
};
const number=({movement,rule})=>{
const place=make('div',{});
const show=()=>{entry().then(({form})=>place.replaceChildren(form(movement,{today:true,kept:()=>{},hurt:()=>{}})),()=>{place.textContent=say('number.not_loaded');});};
if(rule==='show it'){
show();
return place;
}
return make('details',{class:'number',on:{toggle:()=>{if(!place.firstChild)show();}}},make('summary',{text:say('today.enter_measured')}),place);
};
const about=(line,of)=>{
const towards=aim.towards(of,line);
return[make('p',{class:'dose'},aim.sets(line)),make('p',{class:'line-facts'},make('span',{text:aim.restWords(line)}),towards?' ':null,towards?make('span',{},...towards):null),
line.insteadOf===null?null:make('p',{class:'line-facts'},...nodes(sayNodes('today.instead_of',{movement:named(tables,line.insteadOf)}))),
tables.back_when[line.movement]?make('p',{class:'line-facts',text:say('today.back_when',{signs:tables.back_when[line.movement].join('; ')})}):null,
make('p',{class:'hint says',text:say(`training.then.${line.then}`)}),make('details',{class:'because hint'},make('summary',{text:say('today.why')}),make('p',{class:'says'},...aim.why(of,line)))];
};
const card=(line,of,on)=>{
const id=tables.ids[line.movement];
const done=store.entries('trained').filter(({entry:one})=>one.on===on&&model.numbers.get(one.movement)===line.movement);
const head=make('h3',{tabindex:-1},states.figure(line.movement,72),named(tables,line.movement));
const hurt=make('button',{type:'button',class:'hurt',text:say('entry.it_hurt'),on:{click:()=>{entry().then(({hurt:ask})=>{timer.end();return ask(line.movement);},()=>{location.href='if-it-hurts.html';});}}});
if(done.length){
return make('article',{class:'check line done','data-movement':id},head,make('p',{text:say('today.done',{sets:done.map(({entry:one})=>one.did.join(say('list.separator'))).join(say('list.separator'))})}),
make('p',{class:'acts'},make('button',{type:'button',class:'quiet',text:say('today.take_back'),on:{click:()=>done.forEach(({key})=>store.remove(key))}}),' ',hurt));
}
if(line.rule==='show it')return make('article',{class:'check line','data-movement':id},head,...about(line,of),number(line));
const draft=drafts(on)[id]||{ticks:[],amounts:[],left:'',weight:null};
const sets=ticks(line,draft),logged=isLogged(line);
const left=logged?field(`left-${id}`,say('today.left_in_reserve'),draft.left,say(line.unit==='reps'?'today.reps':'today.seconds')):null;
const weight=logged&&line.load?field(`weight-${id}`,say(line.load<0?'today.help_used':'today.weight_used'),draft.weight===null?typed(line.load):draft.weight,say(inPounds()?'today.pounds':'today.kilograms')):null;
const jot=()=>store.note('ticks',{on,of:{...drafts(on),[id]:{ticks:sets.map(({tick})=>tick.checked),amounts:sets.map(({amount})=>amount.value),left:left?left.input.value:'',weight:weight?weight.input.value:null}}});
const fault=make('p',{class:'fault',role:'alert',id:`fault-${id}`});
const keeps=make('button',{type:'button',text:say('today.keep'),on:{click:async()=>{
if(!left||await isSlip(line,sets))return;
const[at,why]=keep(line,on,sets,left.input,weight&&weight.input);
page.blame(at,fault,why);
}}});
return make('article',{class:'check line','data-movement':id,on:{input:jot}},head,...about(line,of),make('ul',{class:'ticks'},...sets.map(({whole})=>whole)),
weight&&weight.whole,left&&left.whole,logged?null:make('p',{class:'hint',text:say('today.not_kept')}),line.block==='range'&&!logged?number(line):null,fault,make('p',{class:'acts'},logged?keeps:null,logged?' ':null,hurt));
};
const drawRests=(stand)=>{
const{causes}=stand.found;
const sore=states.soreLines(stand);
byId('rests-today').hidden=causes.length===0&&sore.length===0;
const kept={paused:store.entries('paused'),restrict:store.entries('restrict')};
const hasButton=(cause)=>(cause.kind==='paused'||cause.kind==='restrict')&&states.liftedBy(cause)===null;
const groups=[...causes.filter(hasButton).map((cause)=>[cause]),...states.together(causes.filter((cause)=>!hasButton(cause)))];
byId('rests-today-list').replaceChildren(...groups.map(([cause,...alike])=>make('li',{},...states.causeWords(cause,[cause,...alike]),' ',hasButton(cause)
?make('button',{type:'button',class:'quiet',text:say('stand.lift'),on:{click:()=>store.remove(kept[(cause.kind)][cause.entry].key)}})
:make('a',{href:cause.kind==='pain'?'if-it-hurts.html#pain':'before-you-start.html#health',text:cause.kind==='pain'?say('entry.if_it_hurts'):say('test.before_you_start')}))),...sore);
};
const paper=(of,session)=>{
const box=({sets,weaker})=>Array.from({length:sets +(weaker?1:0)},()=>make('span',{class:'box'}));
const row=(line)=>make('tr',{'data-movement':tables.ids[line.movement]},make('th',{scope:'row'},states.figure(line.movement),named(tables,line.movement)),make('td',{},aim.sets(line),line.rule==='first try'?make('small',{text:`${say('list.separator')}${say(`training.then.${line.then}`)}`}):null),make('td',{text:aim.restWords(line)}),make('td',{class:'boxes'},...box(line)),make('td',{class:'boxes'},make('span',{class:'box'})));
return make('table',{class:'paper'},make('caption',{},...aim.head(session)),make('thead',{},make('tr',{},...['movement','what','rest','each_set','left'].map((key)=>make('th',{scope:'col',text:say(`today.paper_${key}`)})))),make('tbody',{},...session.lines.map(row)));
};
const drawSession=(stand,of)=>{
const[session]=of.sessions,on=results.dayText(stand.day);
byId('when').replaceChildren(...(!session?[]:session.on===stand.day?aim.head(session):nodes(sayNodes('today.next',{session:aim.head(session)}))));
const lines=session?session.lines:[];
byId('warm').hidden=lines.length===0;
byId('warm-up').replaceChildren(...(session?aim.warmUp(of,session):[]));
const care=session?aim.care(of,session):[];
byId('care').hidden=care.length===0;
byId('care').replaceChildren(...care);
byId('sets').replaceChildren(...(lines.length?BLOCKS.flatMap((block)=>{
const all=lines.filter((line)=>line.block===block),key=block.replace(' ','_');
const isBeside=block==='kept up'&&all.some(({movement})=>!training.got(of.trainee,movement));
return all.length?[make('section',{class:'block'},make('h2',{text:isBeside?say('today.head_beside'):say(`today.head_${key}`)}),make('p',{class:'hint',text:isBeside?say('today.block_beside'):say(`today.block_${key}`)}),make('div',{class:'lines'},...all.map((line)=>card(line,of,on))))]:[];
}):[make('p',{text:say('today.nothing_open')})]));
const lost=session?aim.leftOut(of,session.leftOut):[];
byId('left-out').hidden=lost.length===0;
byId('left-out-list').replaceChildren(...lost);
byId('paper').replaceChildren(...(session&&lines.length?[paper(of,session)]:[]));
const waits=session&&session.leftOut.some(({why})=>why.key==='left.apart'),whole=of.sessions.find((one)=>one.lines.some(({block})=>block==='strength')&&!one.leftOut.some(({why})=>why.key==='left.apart'));
byId('between').replaceChildren(...(waits&&whole&&session&&whole.on>session.on?nodes(sayNodes('today.between',{day:states.dayOf(whole.on)})):[]));
};
const draw=()=>{
const stand=mine(),barred=states.barred();
byId('nothing-yet').hidden=stand!==null||barred==='ask';
byId('first').hidden=barred!=='first'||stand===null;
byId('ask').hidden=barred!=='ask';
byId('card').hidden=stand===null||barred!=='';
if(!stand||barred)return;
const held=document.activeElement&&document.activeElement.closest('#sets article, #goal'),from=held instanceof HTMLElement?held.dataset.movement:undefined;
const of=aim.planOf(stand);
byId('aim').replaceChildren(...aim.sentence(of));
byId('how-long').replaceChildren(...aim.howLong(of));
byId('goal').replaceChildren(aim.goalChoice('today'));
byId('conditions').replaceChildren(...training.conditions(of).map((text)=>make('li',{text:dated(text)})));
const first=training.clinician(of.trainee);
byId('clinician').hidden=first.length===0;
byId('clinician').replaceChildren(...first.map((text)=>make('p',{text:dated(text)})),make('p',{},make('a',{href:'if-it-hurts.html',text:say('entry.if_it_hurts')})));
drawRests(stand);
drawSession(stand,of);
drawAfter(results.dayText(stand.day));
if(from===undefined||document.activeElement!==document.body)return;
const head=(document.querySelector(`#sets article[data-movement="${from}"] h3`))||byId('when');
head.focus();
};
const drawAfter=(on)=>byId('after-list').replaceChildren(...store.entries('sessions').filter(({entry:of})=>of.on===on).map(({key,entry:{effort:said,minutes:long}})=>make('li',{},say('today.session',{effort:said,minutes:long}),' ',
make('button',{type:'button',class:'quiet',text:say('today.take_back'),'aria-label':say('today.take_back_session',{effort:said,minutes:long}),on:{click:()=>store.remove(key)}}))));
const effort=(byId('session-effort')),minutes=(byId('session-minutes'));
byId('session').addEventListener('submit',(event)=>{
event.preventDefault();
const whole=({value},most)=>(/^\s*[0-9]{1,4}\s*$/.test(value)&&Number(value)<=most?Number(value):null);
const said=whole(effort,LIMITS.effort),long=whole(minutes,LIMITS.minutes);
page.blame(said===null?effort:minutes,byId('session-fault'),said===null?say('today.no_effort',{most:LIMITS.effort}):!long?say('today.no_minutes',{most:LIMITS.minutes}):'');
if(said===null||!long)return;
effort.value='';
minutes.value='';
store.add('sessions',{effort:said,minutes:long,on:results.dayText(results.today())});
});
const morning=()=>{
const today=results.today(),place=byId('morning');
const newest=new Map();
for(const of of store.entries('pain'))newest.set(of.entry.part,of);
const open=[...newest.values()].filter(({entry:of})=>of.next_morning===undefined&&of.score>0&&today - Number(results.readDay(of.on))>=1&&today - Number(results.readDay(of.on))<=2);
place.hidden=open.length===0;
place.replaceChildren(...open.map(({key,entry:of})=>{
const select=(make('select',{id:`morning-${of.part}`},make('option',{value:'',text:''}),...Array.from({length:11},(_,n)=>make('option',{value:n,text:globalThis.rungbook.words.number(n)}))));
select.addEventListener('change',()=>{
if(select.value==='')return;
store.add('pain',{...of,next_morning:Number(select.value)});
store.remove(key);
});
return make('p',{},make('label',{for:select.id,text:say('today.morning',{part:states.partWord(of.part),score:of.score,day:results.dayWords(Number(results.readDay(of.on)))})}),' ',select);
}));
};
let offer=null;
const install=()=>{
const place=byId('install');
place.hidden=!offer||!store.entries('trained').length||Boolean(store.get('install-said'));
if(place.hidden||place.firstChild)return;
const done=()=>{
store.note('install-said',true);
place.hidden=true;
byId('when').focus();
};
place.replaceChildren(make('p',{text:say('today.install_says')}),make('p',{class:'acts'},make('button',{type:'button',text:say('today.install'),on:{click:()=>{offer.prompt();done();}}}),' ',
make('button',{type:'button',class:'quiet',text:say('today.not_now'),on:{click:done}})));
};
globalThis.addEventListener('beforeinstallprompt',(event)=>{
event.preventDefault();
offer=event;
install();
});
store.onChange(()=>{page.hold(draw,'when');morning();install();});
page.units.onChange(draw);
draw();
morning();
})();
