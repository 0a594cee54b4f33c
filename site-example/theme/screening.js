'use strict';self.rungbookIs+="screening.js=11b8e444 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"screening.allowed":"Allowed on {day}, until {until}.","screening.allowed_by":"Allowed by {by} on {day}, until {until}.","screening.answer_each":"Answer this one, yes or no.","screening.answered_on":"As of {day}. Answer again when your health changes.","screening.child":"You are under 12: no test and no session from a page, whatever was answered. Train with a coach in person, who sees you and stops you in time.","screening.clear_day":"Give the day, up to today.","screening.clear_until":"Give the last day: from today, and at most {n} days after it was allowed.","screening.clear_what":"Choose what was allowed.","screening.clear_who":"Write who allowed it.","screening.growing":"You are still growing: at any pain in a wrist, an elbow, the lower back, a hip, a knee or a heel stop that work until a clinician has looked. The ends of growing bones are softer than the tendons.","screening.left":"Because of your answers, this is left alone:","screening.left_alone":"left alone until a clinician allows it","screening.says_again":"You answered more than a year ago. Please answer again.","screening.says_allowed_hard":"Your answers said to ask a clinician first. Hard effort was allowed.","screening.says_allowed_light":"Your answers said to ask a clinician first. Light to moderate effort was allowed.","screening.says_ask":"Ask a licensed clinician first, and show them what you want to do. Until then this site offers no test and no training.","screening.says_clear":"Nothing in your answers stands in the way.","screening.says_fresh":"Test with a fresh head, and stop at the first sign listed beside a test.","screening.says_light":"You do not exercise regularly yet: train lightly, keep two or three reps in reserve, and build up. Inverted, loaded and lowering work waits until you have trained regularly for three months.","screening.says_run_out":"What a clinician allowed has run out. Ask again; until then this site offers no test and no training.","screening.says_spared":"You may train and test, but for what is left alone below.","screening.take_back":"Take back","screening.to_self_test":"To the self-test","screening.what_follows":"What follows","screening.write_year":"Write the year you were born in four digits, such as 1994.","screening.young":"You are under 16: first a parent’s consent, and a coach in the room. Without both, do nothing of this."});
'use strict';
(()=>{
const{results,store,page,adult}=globalThis.rungbook;
const{LIMITS,saysOn,isChild}=globalThis.rungbook.health;
const{make,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const questions=(byId('questions'));
const clearance=(byId('clearance'));
const outcome=byId('outcome');
const SCREENING='screening';
const field=(id)=>(byId(id));
const yes=(name)=>{
const chosen=(questions.querySelector(`input[name="${name}"]:checked`));
return chosen?chosen.value==='yes':null;
};
const day=(text)=>make('time',{datetime:text,text:results.dayWords(Number(results.readDay(text)))});
const wordOf=(kind,id)=>{
const found=document.querySelector(kind==='class'?`[data-class="${CSS.escape(id)}"] label`:`[data-part="${CSS.escape(id)}"]`);
return found?String(found.textContent):id;
};
const left=()=>store.entries('restrict').filter(({entry:of})=>of.by===SCREENING);
const allowed=(of)=>{
const today=results.today();
return store.entries('cleared').find(({entry:{class:id,on,until}})=>{
const from=Number(results.readDay(on)),last=Math.min(until?Number(results.readDay(until)):Infinity,from + LIMITS.clearance);
return id===of.class&&of.on<=on&&from<=today&&today<=last;
});
};
const allowedBy=({on,until,by})=>{
const last=until||results.dayText(Number(results.readDay(on))+ LIMITS.clearance);
return by?sayNodes('screening.allowed_by',{by:make('bdi',{text:by}),day:day(on),until:day(last)}):sayNodes('screening.allowed',{day:day(on),until:day(last)});
};
const leftLines=()=>left().map(({entry:of})=>{
const lifts=of.class?allowed(of):undefined;
return make('li',{},make('strong',{text:of.class?wordOf('class',of.class):wordOf('part',String(of.part))}),' ',...(lifts?[...allowedBy(lifts.entry),' ',
make('button',{type:'button',class:'quiet',text:say('screening.take_back'),on:{click:()=>store.remove(lifts.key)}})]:[say('screening.left_alone')]));
});
const most=(screened)=>Math.min((screened&&screened.lasts)||LIMITS.clearance,LIMITS.clearance);
const sentence=(screened,says,stale,young)=>{
if(stale||says===null)return[say('screening.says_again')];
if(says==='ask')return[screened.until?say('screening.says_run_out'):say('screening.says_ask')];
if(screened.until){
return[says==='clear'?say('screening.says_allowed_hard'):say('screening.says_allowed_light'),' ',...allowedBy(screened),' ',
make('button',{type:'button',class:'quiet',text:say('screening.take_back'),on:{click:()=>store.put('screened',{says:'ask',on:results.dayText(results.today()),...lasting(screened)})}})];
}
if(says!=='clear')return[say('screening.says_light')];
return[...(young?[]:[say(left().length?'screening.says_spared':'screening.says_clear'),' ']),say('screening.says_fresh')];
};
const lasting=(screened)=>(screened&&screened.lasts?{lasts:screened.lasts}:{});
const onward=()=>{const{goal}=store.facts();return goal&&goal===store.get('goal-test')?`self-test-${goal}.html`:'self-test.html';};
const toTest=()=>make('a',{class:'act',href:onward(),text:say('screening.to_self_test')});
const draw=()=>{
const{screened,born}=store.facts(),today=results.today();
const lines=leftLines();
outcome.hidden=!screened;
clearance.hidden=true;
globalThis.rungbook.health.draw();
if(!screened)return;
const on=Number(results.readDay(screened.on)),age=results.ageOn(born===undefined?null:born,today);
const says=saysOn({says:screened.says,on,until:screened.until?Number(results.readDay(screened.until)):null,lasts:screened.lasts},today,born);
const stale=says!=='ask'&&today>on + LIMITS.clearance,child=isChild(born,today),young=age!==null&&age<LIMITS.youth;
outcome.replaceChildren(make('h3',{tabindex:-1,id:'outcome-head',text:say('screening.what_follows')}),
...(child?[make('p',{},make('strong',{text:say('screening.child')}))]:[...(young?[make('p',{},make('strong',{text:say('screening.young')}))]:[]),make('p',{},...sentence(screened,says,stale,young))]),make('p',{class:'hint'},...sayNodes('screening.answered_on',{day:day(screened.on)})),
...(age!==null&&age<LIMITS.adult?[make('p',{text:say('screening.growing')})]:[]),
...(lines.length?[make('p',{text:say('screening.left')}),make('ul',{},...lines)]:[]),
...(says==='ask'||stale||says===null?[]:[make('div',{class:'invites'},young?adult.ask(toTest):toTest())]));
const open=new Set(left().filter(({entry:of})=>of.class&&!allowed(of)).map(({entry:of})=>of.class));
for(const item of(clearance.querySelectorAll('[data-class]')))item.hidden=!open.has(item.dataset.class||'');
byId('clear-effort').hidden=says!=='ask';
byId('clear-classes').hidden=open.size===0;
clearance.hidden=child||(says!=='ask'&&open.size===0);
field('clear-on').max=results.dayText(today);
if(!field('clear-on').value)field('clear-on').value=results.dayText(today);
};
const toOutcome=()=>{
byId('outcome-head').focus({preventScroll:true});
outcome.scrollIntoView({block:outcome.offsetHeight>globalThis.innerHeight?'start':'nearest'});
};
const bornOf=()=>{const born=field('born').value.trim();return /^[0-9]{4}$/.test(born)&&results.fact('born',Number(born),results.today()).why===''?Number(born):null;};
const askByAge=()=>{
const born=bornOf(),age=results.ageOn(born,results.today()),isAsked=born!==null&&!isChild(born,results.today());
byId('asked').hidden=!isAsked;
byId('no-to-the-rest').hidden=!isAsked;
for(const set of(questions.querySelectorAll('fieldset'))){
const{under,from}=set.dataset;
set.hidden=age!==null&&((under!==undefined&&age>=Number(under))||(from!==undefined&&age + 1<Number(from)));
}
};
const shown=()=>(byId('asked').hidden?[]:[...(questions.querySelectorAll('fieldset:not([hidden])'))]);
const nameOf=(set)=>(set.querySelector('input')).name;
questions.hidden=false;
field('born').addEventListener('input',askByAge);
byId('no-to-the-rest').addEventListener('click',()=>{
const newest=new Map(store.entries('pain').map(({entry})=>[entry.part,entry]));
const hurts=[...newest.values()].some(({score,signs})=>score>=LIMITS.pain[0]||signs);
for(const set of shown().filter(({dataset})=>dataset.column!=='regular')){
if(!set.querySelector('input:checked'))(set.querySelector(`input[value="${hurts&&nameOf(set)==='injury'?'yes':'no'}"]`)).checked=true;
}
questions.requestSubmit();
});
const written=()=>JSON.stringify([field('born').value,...new FormData(questions)]);
let read='';
addEventListener('pagehide',()=>{
const born=field('born').value;
questions.reset();
field('born').value=born;
read=written();
});
questions.addEventListener('submit',(event)=>{
event.preventDefault();
const today=results.today(),born=bornOf(),bornFine=born!==null;
const sets=shown();
const open=sets.find((set)=>yes(nameOf(set))===null);
if(written()===read&&!outcome.hidden&&bornFine){
toOutcome();
return;
}
byId('born-fault').textContent='';
byId('questions-fault').textContent='';
if(bornFine&&open)open.append(byId('questions-fault'));
const first=open&&open.querySelector('input');
if(!bornFine)page.blame(field('born'),byId('born-fault'),say('screening.write_year'));
else page.blame(first||field('born'),byId('questions-fault'),first?say('screening.answer_each'):'');
if(!bornFine||first)return;
const said=(column)=>sets.filter((set)=>set.dataset.column===column).some((set)=>yes(nameOf(set)));
const rows=[...(document.querySelectorAll('tr[data-outcome]'))];
const word=(column)=>(said(column)?'yes':'no');
const row=rows.find(({dataset})=>dataset.regular===word('regular')&&dataset.symptoms===word('symptoms')&&['either',word('disease')].includes(dataset.disease||''));
const follows=said('other')||!row||!sets.length?'ask':row.dataset.outcome;
const raised=sets.filter((set)=>set.dataset.column!=='regular'&&yes(nameOf(set)));
const of=(key)=>[...new Set(raised.flatMap((set)=>(set.dataset[key]||'').split(' ').filter((id)=>id!=='')))];
const on=results.dayText(today);
const[classes,parts]=[of('classes'),of('parts')];
const lasts=Math.min(...raised.map((set)=>Number(set.dataset.lasts||LIMITS.clearance)),LIMITS.clearance);
read=written();
left().forEach(({key})=>store.remove(key));
classes.forEach((id)=>store.add('restrict',{class:id,on,by:SCREENING}));
parts.forEach((id)=>store.add('restrict',{part:id,on,by:SCREENING}));
store.put('born',born);
store.put('screened',{says:follows,on,...(lasts<LIMITS.clearance?{lasts}:{})});
toOutcome();
});
clearance.addEventListener('submit',(event)=>{
event.preventDefault();
const today=results.today(),by=field('clear-by').value.trim(),{screened}=store.facts();
const on=results.readDay(field('clear-on').value),until=results.readDay(field('clear-until').value);
const chosen=(byId('clear-effort').hidden?null:clearance.querySelector('input[name="effort"]:checked'));
const classes=[...(clearance.querySelectorAll('[data-class]:not([hidden]) input:checked'))].map(({value})=>value);
const faults=[
[!chosen&&classes.length===0,say('screening.clear_what'),''],
[by==='',say('screening.clear_who'),'clear-by'],
[on===null||on>today,say('screening.clear_day'),'clear-on'],
[until===null||on===null||until<today||until>on + most(screened),say('screening.clear_until',{n:most(screened)}),'clear-until'],
];
const fault=faults.find(([wrong])=>wrong);
const at=fault&&fault[2]?field(fault[2]):(clearance.querySelector(byId('clear-effort').hidden?'[data-class]:not([hidden]) input':'input'));
page.blame(at,byId('clear-fault'),fault?fault[1]:'');
if(fault)return;
const of={on:field('clear-on').value,until:field('clear-until').value,by};
for(const id of classes){
for(const{key,entry}of left()){
if(entry.class!==id||entry.on<=of.on)continue;
store.remove(key);
store.add('restrict',{...entry,on:of.on});
}
store.add('cleared',{class:id,...of});
}
if(chosen)store.put('screened',{says:chosen.value,...of,was:'ask',...lasting(screened)});
clearance.reset();
draw();
toOutcome();
});
const{born}=store.facts();
if(born!==undefined)field('born').value=String(born);
askByAge();
read=written();
store.onChange(draw);
draw();
})();
