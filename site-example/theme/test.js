'use strict';self.rungbookIs+="test.js=416bad81 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"adult.head":"First, an adult","adult.on":"Go on","entry.if_it_hurts":"If it hurts","entry.when":"When was it?","entry.write_day":"Say when it was. Nothing is dated by guess.","entry.write_numbers":"Write numbers, such as 9 or 2.5. If you cannot do one yet, write 0.","known.each_side":"{unit}, the weaker side","known.head":"What do you know already?","known.keep":"Save these numbers","known.never":"never","known.never_of":"{movement}: never tried","known.none_written":"Write one number, or go on without.","known.says":"Your best clean set; “never” for what you never tried; empty where you are not sure.","known.session":"None: my first session","known.test":"A few tests first","test.all_for_now":"That is all for now","test.another_day":"Go on another day","test.answered":{"one":"{answered} of {all} questions answered; the full sheet has {n} test. What stands above something that is missing was not asked.","other":"{answered} of {all} questions answered; the full sheet has {n} tests. What stands above something that is missing was not asked."},"test.answers_say":"Your answers say: ask a licensed clinician first. Until then no test is offered here.","test.ask_again":"Ask again","test.ask_first":"ask a clinician first","test.back":"Back","test.before_first":"Before the first test","test.before_you_start":"Before you start","test.begin":"Begin","test.day_is_full":"this day has had its tests of this kind","test.drank":"You drank alcohol today.","test.each_asks":{"one":"Each asks for one number. They stop as soon as every state is decided: usually less than half of the {n} test.","other":"Each asks for one number. They stop as soon as every state is decided: usually less than half of the {n} tests."},"test.enter":"Enter a number","test.few_questions":"A few questions","test.first_tries":"Open, but never tried; read the page first, then a few easy sets, no test:","test.health_answered":"They are answered on this device. Answer them again when your health has changed.","test.health_first":"A few questions on your health come first. They take two minutes and stay on this device.","test.health_first_why":"the health questions come first","test.health_questions":"The health questions","test.hurts":"Something hurts that did not hurt last week.","test.ill":"You are ill, feverish, or slept badly.","test.it_rests":"it rests","test.never":"Never tried it","test.not_kept":"This browser does not let the page keep anything, so what the health questions said cannot come along from page to page. No test is offered here, only numbers from your training.","test.not_sure":"Not sure","test.not_testing":"today is for numbers from training only","test.not_today":"Not today if one of these is true:","test.nothing_open":"Nothing new is open.","test.nothing_yours":"Nothing is yours yet.","test.one_true":"One is true, so no test today","test.only_numbers":"Only numbers from training today","test.open_to_you":"Open to you, start training here:","test.over":"No more tests today","test.over_says":"Something hurts, so the tests of this day are over. What bears on that part is left alone for today. Ask a licensed clinician if it is sharp, if it wakes you, if it tingles, if it gives way, or if it is not better in a few days.","test.question":"Question {number}","test.ready":"None is true: I am warm and ready","test.rest_first":"Rest first, if you tested just now: {rest}.","test.rests_left":"What rests, or hurts, was not asked about.","test.rules":"How it counts","test.save_a_copy":"Save a copy","test.stop_after_any":"Stop after any question; what you answered is kept.","test.storage":"Your numbers stay in this browser; nobody else gets them. A browser may clear the storage of a site that is not visited for about a week, so save a copy.","test.storage_forbidden":"This browser does not let the page keep anything: your numbers are lost when you close it. Save a copy before you do.","test.storage_full":"This browser’s storage is full: new numbers are kept only until you close this page. Save a copy now.","test.take_back":"Take back","test.test_first":"Test these first, fresh and warm:","test.test_now":"Test it now, or give the most you did in the last four weeks, counted in the same way.","test.to_today":"Today’s session","test.today":"Today?","test.trained_hard":"You trained the same pattern hard in the last two days.","test.waits":"it waits until you have exercised regularly for three months","test.was":"{got}, {day}","test.where_i_stand":"Where I stand","test.yours":"Yours:","training.child":"Under 12 there is no plan and no test from here: only with a coach in person."});
'use strict';
'after page.js states.js';
(()=>{
const{targets,results,readiness,store,page,states,adult}=globalThis.rungbook;
const{make,named,namedList,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model,mine}=states;
if(!model)return;
const{tables}=model;
let{placement,number,entry}=globalThis.rungbook;
const asking=async()=>{
await page.load('entry-here');
({placement,number,entry}=globalThis.rungbook);
};
const skill=tables.skills.find(({id})=>id===document.body.dataset.skill)||null;
const sheet=byId('sheet');
const articles=new Map([...(sheet.querySelectorAll('article[data-movement]'))]
.map((article)=>[model.numbers.get(article.dataset.movement||''),article]));
const nobody=()=>readiness.assess(model,results.nobody(),results.today());
const found=()=>{const stand=mine();return stand?stand.found:nobody();};
const{neverTried}=states;
const noteNever=(movements)=>store.note('never',{on:results.dayText(results.today()),movements:[...new Set(movements)]});
const none=(m)=>{const{measure}=model.target(m);return(targets.readGot(measure===targets.DONE?'not done':measure===targets.TIME?'0 s':'0 reps'));};
let assumed=null;
const asIfNone=()=>{
const stand=mine(),of=found(),movements=neverTried().map((id)=>Number(model.numbers.get(id))).filter((m)=>m>=0&&!of.known.latest.has(m)),text=movements.join();
if(!movements.length)return of;
if(assumed&&assumed.of===of&&assumed.text===text)return assumed.assumed;
const person=stand?stand.person:results.nobody(),day=results.today();
const tested=movements.map((m)=>({movement:m,sides:model.is(m,readiness.EACH_SIDE)?[none(m),none(m)]:[none(m)],on:day,until:null,reserve:0,bodyWeight:null,entry:-1}));
assumed={of,text,assumed:readiness.assess(model,{...person,tested:[...person.tested,...tested]},day)};
return assumed.assumed;
};
const keptPanel=byId('kept');
const drawKept=()=>{
const trouble=store.trouble();
const said={
'':say('test.storage'),
full:say('test.storage_full'),
forbidden:say('test.storage_forbidden'),
}[trouble];
keptPanel.hidden=false;
keptPanel.classList.toggle('trouble',trouble!=='');
keptPanel.replaceChildren(make('p',{text:said}),...(store.isEmpty()?[]:[make('p',{class:'acts'},copyButton(),' ',make('a',{href:'where-i-stand.html',text:say('test.where_i_stand')}))]));
};
const copyButton=()=>make('button',{type:'button',class:'quiet',text:say('test.save_a_copy'),on:{click:()=>{
page.download(`results-${results.dayText(results.today())}.json`,`${JSON.stringify(store.all(),null,2)}\n`,'application/json');
}}});
const{barred}=states;
const mayTest=(m)=>barred()===''&&!adult.isDue()&&isFit()&&states.asks(m)==='today'&&placement.mayBeTested(model,found(),m,results.today());
const waits=(m)=>found().pausedBy(m).some(({kind})=>kind==='light');
const isFit=()=>store.get('fit')===results.dayText(results.today());
const drawEntry=(m,known)=>{
const article=articles.get(m);
const place=article&&article.querySelector('.enter');
if(!place)return;
const lines=known.slice(-3).map(({key,entry:of})=>make('p',{class:'was'},
...sayNodes('test.was',{got:states.got(of.got||(of.left&&of.right?{left:of.left,right:of.right}:of.left||of.right)),day:states.when({on:Number(results.readDay(of.on)),until:of.until?Number(results.readDay(of.until)):null})}),' ',
make('button',{type:'button',class:'quiet',text:say('test.take_back'),on:{click:()=>{
store.remove(key);
const next=place.querySelector('button');
if(next)next.focus();
}}})));
const open=make('button',{type:'button',class:'quiet',text:say('test.enter'),on:{click:()=>{
if(barred()==='first'&&store.keeps()){
byId('guided').scrollIntoView();
byId('guided').focus();
return;
}
const show=()=>{
place.replaceChildren(...advice(m,mayTest(m)),entry.form(m,{today:mayTest(m),kept:()=>{},hurt:()=>{}}));
const first=place.querySelector('input');
if(first)first.focus();
};
if(entry)show();
else asking().then(show,()=>{open.after(make('span',{class:'hint',role:'status',text:say('number.not_loaded')}));});
}}});
place.replaceChildren(...lines,...(states.mayAsk(m)?[make('p',{},open)]:[]));
};
const advice=(m,today)=>{
const{reached,needs}=found();
if(today)return[make('p',{class:'advice hint',text:say('test.test_now')})];
const why=barred()?(barred()==='ask'?(states.isChild()?say('state.with_coach'):say('test.ask_first')):say('test.health_first_why')):waits(m)?say('test.waits'):!reached[m]?say('test.it_rests'):needs[m]!==readiness.TRUE?say('test.not_shown'):!isFit()?say('test.not_testing'):say('test.day_is_full');
const held=!barred()&&reached[m]&&needs[m]===readiness.TRUE?states.whyHeld(m):[];
return(held.length?held:[[say('test.do_not',{why})]]).map((said)=>make('p',{class:'advice do-not hint'},...said));
};
const drawEntries=()=>{
if(sheet.hidden)return;
const known=new Map();
for(const of of store.entries('tested')){
const m=model.numbers.get(of.entry.movement);
const list=known.get(m);
if(list)list.push(of);
else known.set(m,[of]);
}
for(const m of articles.keys())if(m!==undefined&&!guide.isAt(m))drawEntry(m,known.get(m)||[]);
};
const KNOWN=8;
const LOOKED=20;
const ASKED=[2,4];
const mostKnown=(of)=>{
const asked=tables.ids.map(()=>0),{states:now}=found(),goal=tables.stage[model.of(of.goal)];
for(const m of model.order)for(const leaf of new Set(readiness.leavesOf(tables.needs[m]).map(model.of)))asked[leaf]+=1;
const{strength}=tables.placement,measure=(m)=>model.target(m).measure,is=(m,flag)=>Number(model.is(m,flag));
const all=model.order.filter((m)=>number.isPlain(m)&&measure(m)<=targets.TIME&&asked[m]>=ASKED[measure(m)]&&tables.day_order[m]>=strength&&tables.stage[m]<=goal
&&now[m]!==readiness.PAUSED&&states.mayAsk(m)&&states.since(m)===null&&!model.is(m,readiness.LOWERING)&&of.members.some((one)=>tables.pattern[one]===tables.pattern[m]));
all.sort((a,b)=>measure(a)- measure(b)||is(a,readiness.GUARDED)- is(b,readiness.GUARDED)||asked[b]- asked[a]||is(a,readiness.EACH_SIDE)- is(b,readiness.EACH_SIDE)||tables.easier[b].length - tables.easier[a].length);
return all.filter((m,i)=>all.findIndex((one)=>measure(one)===measure(m)&&tables.pattern[one]===tables.pattern[m])===i);
};
const decisive=(of)=>{
const at=asIfNone(),known=mostKnown(of).slice(0,KNOWN),asked=([]),more=[];
while(asked.length<LOOKED&&known.length + more.length<KNOWN){
const following=placement.next(model,at,of.members,asked,results.today());
if(!following)break;
asked.push(following.movement);
if(!known.includes(following.movement)&&states.since(following.movement)===null&&number.isPlain(following.movement)&&model.target(following.movement).measure<=targets.TIME)more.push(following.movement);
}
return[...known,...more.sort((a,b)=>tables.stage[a]- tables.stage[b]||a - b)];
};
const isKnownDue=(of)=>{
const asked=store.get('known');
return!(asked&&asked[of.id])&&!store.entries('tested').some(({entry:{movement}})=>of.members.includes(Number(model.numbers.get(movement))));
};
const knownForm=(of,on)=>{
const day=results.today();
const rows=decisive(of).map((m,i)=>{
const name=tables.names[m];
const input=(make('input',{id:`known-${i}`,type:'text',inputmode:'decimal',size:4,autocomplete:'off','aria-label':number.labelOf(m)}));
const never=make('button',{type:'button',class:'plain-button',text:say('known.never'),'aria-label':say('known.never_of',{movement:name}),on:{click:()=>{input.value=say('known.never');input.focus({preventScroll:true});}}});
return{m,input,whole:make('li',{'data-movement':tables.ids[m]},states.figure(m),named(tables,m),make('span',{class:'known-field'},input,make('span',{class:'unit',text:model.is(m,readiness.EACH_SIDE)?say('known.each_side',{unit:number.unitOf(m)[0]}):number.unitOf(m)[0]}),never))};
});
const when=number.SPANS.filter(([value])=>value!=='day').map(([value,text])=>{
const box=(make('input',{type:'radio',name:'known-when',value}));
return{box,whole:make('label',{class:'chip'},box,text)};
});
const fault=make('p',{class:'fault',role:'alert',id:'known-fault'});
const done=()=>{
store.note('known',{...store.get('known'),[of.id]:true});
if(store.facts().goal!==of.id)store.put('goal',of.id);
};
const keep=async()=>{
const isNever=({value})=>value.trim()===say('known.never'),untried=rows.filter(({input})=>isNever(input)).map(({m})=>tables.ids[m]);
const said=rows.filter(({input})=>input.value.trim()!==''&&!isNever(input)).map(({m,input})=>({m,input,got:number.read(m,input.value)}));
const bad=said.find(({got})=>got===null);
if(bad){page.blame(bad.input,fault,say('entry.write_numbers'));return;}
if(!said.length&&!untried.length){page.blame(rows[0].input,fault,say('known.none_written'));return;}
const chosen=when.find(({box})=>box.checked);
if(said.length&&!chosen){page.blame(when[0].box,fault,say('entry.write_day'));return;}
page.blame(rows[0].input,fault,'');
for(const{m,input,got}of said){
if(readiness.doubtful(model,m,(got))&&!await number.isMeant(m,(got))){input.focus();return;}
}
done();
if(untried.length)noteNever([...neverTried(),...untried]);
store.addAll(said.map(({m,got})=>{
const of=number.given((chosen).box.value,'',day),entry={movement:tables.ids[m],got:targets.text((got))};
return of?['tested',{...entry,...of}]:['undated',entry];
}));
page.go(said.length?'where-i-stand.html':'today.html');
};
const session=make('a',{class:'act quiet',href:'today.html',text:say('known.session'),on:{click:done}});
return rows.length?make('form',{class:'known',novalidate:true,on:{submit:(event)=>{event.preventDefault();keep();}}},
make('p',{text:say('known.says')}),make('p',{class:'acts'},session,' ',make('button',{type:'button',class:'quiet',text:say('known.test'),on:{click:()=>{done();on();}}})),
make('ul',{class:'plain known-list'},...rows.map(({whole})=>whole)),
make('fieldset',{},make('legend',{text:say('entry.when')}),make('div',{class:'chips'},...when.map(({whole})=>whole))),fault,
make('p',{class:'acts'},make('button',{type:'submit',text:say('known.keep')}))):null;
};
const guide=(()=>{
const panel=byId('guided');
const UNSURE=6;
const AHEAD=12;
const TESTS=3;
let steps=[];
let current=-1;
let isOn=false;
const asked=()=>{
const hurts=model.order.filter((m)=>!states.mayAsk(m));
return[...steps.map(({m})=>m),...hurts];
};
const isAt=(m)=>isOn&&current===m;
const button=(text,act,quiet=true)=>make('button',{type:'button',class:quiet?'quiet':null,text,on:{click:act}});
const show=(m)=>{
current=m;
document.body.classList.toggle('one-question',m>=0);
sheet.hidden=m>=0;
};
const speak=(title,...inside)=>{
panel.hidden=false;
panel.replaceChildren(make('h2',{id:'guided-head',tabindex:-1,text:title}),...inside.filter((part)=>part!==null).map((part)=>(part)));
};
const focus=()=>{
byId('guided-head').focus({preventScroll:true});
panel.scrollIntoView({block:'start'});
};
const over=()=>{
isOn=false;
steps=[];
show(-1);
sayOver();
drawEntries();
focus();
};
const sayOver=()=>{
speak(say('test.over'),make('p',{text:say('test.over_says')}),make('p',{class:'acts'},make('a',{class:'act',href:'if-it-hurts.html',text:say('entry.if_it_hurts')}),' ',make('a',{class:'act quiet',href:'today.html',text:say('test.to_today')})));
};
const resting=()=>{
const stand=mine(),some=stand!==null&&stand.found.causes.length + states.sore(stand).length>0;
return some?make('p',{},say('test.rests_left'),' ',make('a',{href:'where-i-stand.html#rests',text:say('rests.where_lifted')})):null;
};
const stop=()=>{
isOn=false;
show(-1);
begin();
drawEntries();
focus();
};
const step=(m,key,never=false)=>{
steps.push({m,key,never});
if(never)noteNever([...neverTried(),tables.ids[m]]);
next();
};
const back=()=>{
const last=steps.pop();
if(!last)return stop();
if(last.key)store.remove(last.key);
if(last.never)noteNever(neverTried().filter((id)=>id!==tables.ids[last.m]));
return question(last.m);
};
const rules=(m)=>{
const article=articles.get(m),how=article&&article.querySelector('.how');
const parts=(which)=>(article?[...article.querySelectorAll(which)].map((part)=>part.cloneNode(true)):[]);
return{how:how?String(how.textContent):'',stops:parts('.method > .stop'),all:parts(':scope > .only-after, .method > :not(.how, .stop)')};
};
const never=(m)=>{
const{measure,atMost}=model.target(m);
return atMost||measure===targets.LENGTH||measure===targets.ANGLE?null:button(say('test.never'),()=>step(m,null,true));
};
const upcoming=()=>(skill?placement.next(model,asIfNone(),skill.members,asked(),results.today()):null);
const question=(m)=>{
const today=mayTest(m),{how,stops,all}=rules(m);
show(m);
drawEntries();
const before=steps.length?steps[steps.length - 1]:null,last=before?articles.get(before.m):null;
const rest=today&&last&&before&&before.key&&last.dataset.rest?make('p',{class:'hint',text:say('test.rest_first',{rest:last.dataset.rest||''})}):null;
const form=entry.form(m,{today,kept:(key)=>step(m,key),hurt:over,more:[never(m),button(say('test.not_sure'),()=>step(m,null))]});
panel.dataset.today=String(today);
speak(say('test.question',{number:steps.length + 1}),steps.length===0?make('p',{class:'hint',text:say('test.stop_after_any')}):null,make('div',{class:'asked','data-movement':tables.ids[m]},states.figure(m,120),named(tables,m)),how?make('p',{text:how}):null,rest,...advice(m,today),...stops,form,
all.length?make('details',{class:'rules'},make('summary',{text:say('test.rules')}),...all):null,
make('p',{class:'acts'},button(say('test.back'),back),' ',button(say('test.another_day'),stop)));
focus();
};
const following=(first)=>{
if(!skill)return null;
const passed=asked();
for(let of=first,i=0;of&&i<AHEAD;i +=1){
if(of.today&&mayTest(of.movement))return of;
passed.push(of.movement);
of=placement.next(model,asIfNone(),skill.members,passed,results.today());
}
return first;
};
const next=()=>{
if(!skill)return;
const unsure=steps.length - 1 - steps.map(({key,never:of})=>key!==null||of).lastIndexOf(true);
const first=unsure>=UNSURE?null:upcoming(),of=following(first);
if(of){
question(of.movement);
return;
}
const at=found();
const stand=mine();
const all=skill.members.filter((m)=>at.states[m]===readiness.OPEN&&!(stand&&states.bearsOnSore(stand,m))),isNever=(m)=>neverTried().includes(tables.ids[m]);
const open=all.filter((m)=>!isNever(m)),untried=all.filter(isNever);
const yours=skill.members.filter((m)=>at.states[m]===readiness.OWNED);
const tests=unsure>=UNSURE?steps.map(({m})=>m).filter(mayTest).slice(-UNSURE).slice(0,TESTS):[];
isOn=false;
show(-1);
const answered=steps.filter(({key,never:of})=>key||of).length;
speak(say('test.all_for_now'),steps.length?make('p',{text:say('test.answered',{answered,all:steps.length,n:skill.members.length})}):null,resting(),
tests.length?make('p',{},`${say('test.test_first')} `,...namedList(tables,tests)):null,
make('p',{},yours.length?`${say('test.yours')} `:say('test.nothing_yours'),...namedList(tables,yours)),
barred()||(untried.length&&!open.length)?null:make('p',{},open.length?`${say('test.open_to_you')} `:say('test.nothing_open'),...namedList(tables,open)),
barred()||!untried.length?null:make('p',{},`${say('test.first_tries')} `,...namedList(tables,untried)),
make('p',{class:'acts'},barred()?null:make('a',{class:'act',href:'today.html',text:say('test.to_today')}),' ',make('a',{class:'act quiet',href:'where-i-stand.html',text:say('test.where_i_stand')}),' ',copyButton(),' ',button(say('test.ask_again'),start)));
steps=[];
drawEntries();
focus();
};
const start=()=>{
isOn=true;
steps=[];
next();
};
const begin=()=>{
if(isOn)return;
const why=barred();
const lost=why==='first'&&!store.keeps();
if(why==='first'&&!lost){
speak(say('test.before_first'),make('p',{text:say('test.health_first')}),
make('p',{},make('a',{class:'act',href:`before-you-start.html#questions`,text:say('test.before_you_start')})));
return;
}
if(why==='ask'){
speak(say('test.health_questions'),make('p',{text:say('test.health_answered')}),make('p',{class:'advice do-not'},`${states.isChild()?say('training.child'):say('test.answers_say')} `,make('a',{href:'before-you-start.html#health',text:say('test.before_you_start')})));
return;
}
if(states.hurtsToday()){
sayOver();
return;
}
const warning=lost?make('p',{class:'advice do-not',text:say('test.not_kept')}):null;
if(why===''&&adult.isDue()){
speak(say('adult.head'),make('p',{text:say('screening.young')}),adult.ask(()=>button(say('adult.on'),()=>{begin();drawEntries();focus();},false)));
return;
}
if(!skill){
speak(say('test.health_questions'),...(warning?[warning]:[make('p',{text:say('test.health_answered')}),
make('p',{},make('a',{class:'act quiet',href:'before-you-start.html#questions',text:say('test.before_you_start')}))]));
return;
}
const known=why===''&&isKnownDue(skill)?knownForm(skill,()=>{begin();focus();}):null;
if(known){
speak(say('known.head'),known);
return;
}
if(why===''&&!isFit()){
speak(say('test.today'),make('p',{text:say('test.not_today')}),make('ul',{},...[say('test.ill'),say('test.hurts'),say('test.drank'),say('test.trained_hard')].map((text)=>make('li',{text}))),
make('p',{class:'acts'},button(say('test.ready'),()=>{store.note('fit',results.dayText(results.today()));start();},false),' ',make('a',{class:'act quiet',href:'today.html',text:say('test.one_true')}),' ',button(say('test.only_numbers'),start)));
return;
}
speak(say('test.few_questions'),warning,make('p',{text:say('test.each_asks',{n:skill.members.length})}),
make('p',{class:'acts'},button(say('test.begin'),start,false)));
};
return{begin,isAt};
})();
if(location.hash==='#goal'&&skill){
history.replaceState(null,'',location.href.split('#')[0]);
store.note('goal-test',skill.id);
if(store.facts().goal!==skill.id)store.put('goal',skill.id);
if(barred()==='first'&&store.keeps())location.replace('before-you-start.html#questions');
}
store.onChange(()=>{
guide.begin();
drawEntries();
page.later([drawKept],'kept');
});
drawKept();
guide.begin();
drawEntries();
const print=document.getElementById('print');
if(print){
print.hidden=false;
print.addEventListener('click',()=>globalThis.print());
}
})();
