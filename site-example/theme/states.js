'use strict';self.rungbookIs+="states.js=1b97008e ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"aside.cleared":"a clearance","aside.pain":"a pain","aside.paused":"a pause","aside.remark":"a remark","aside.restrict":"something to leave alone","body.ankle":"ankle","body.elbow":"elbow","body.fingers":"fingers","body.foot":"foot","body.hamstring":"hamstring","body.hip":"hip","body.knee":"knee","body.lower_back":"lower back","body.neck":"neck","body.shoulder":"shoulder","body.upper_back":"upper back","body.wrist":"wrist","list.separator":", ","number.enter":"Enter your number","number.not_loaded":"This device does not have what is needed for it. Open this page once with a network.","number.taken_back":"Taken back.","pattern.balance":"balance","pattern.carry":"carry","pattern.core":"core","pattern.exit":"exit","pattern.hinge":"hinge","pattern.horizontal_pull":"horizontal pull","pattern.horizontal_push":"horizontal push","pattern.mobility":"mobility","pattern.squat":"squat","pattern.vertical_pull":"vertical pull","pattern.vertical_push":"vertical push","rests.because":"{pause}: {because}","rests.by":"{pause} by {who}","rests.by_client":"you","rests.by_coach":"your coach","rests.by_screening":"the health questions","rests.classes":"what is marked {list}","rests.hurt_in_test":"it hurt in a test","rests.hurt_in_training":"it hurt in training","rests.hurts":"it hurts","rests.left_alone":"{what}, left alone since {day}","rests.lift_light":"until the questions say otherwise","rests.lift_pain":"until {until}","rests.lift_screening":"until a clinician allows it, or you answer anew","rests.light":"light training only, by the health questions of {day}","rests.pain":"{what}, for the pain of {day}","rests.paused":"{what}, paused since {day}","rests.sore":"{part}, {score} of 10 on {day}: nothing new and nothing harder for it","rests.sore_better":"Say how it is now","rests.this_rests":"Leave this alone for now:","rests.until":"{pause}, until {day}","rests.where_lifted":"Where it is lifted","site.load_again":"Load again","site.mixed":"A new version of this site was published while the page was loading, and its parts do not fit together. Load the page again. Your results are safe.","stand.both_sides":"left {left}, right {right}","stand.counted":"{state}, counted","stand.take_back":"Take back","state.almost":"almost","state.ask_first":"ask first","state.not_yet":"not yet","state.open":"open","state.owned":"owned","state.paused":"paused","state.test_first":"test first","state.with_coach":"only with a coach in person"});
'use strict';
(()=>{
const{readiness,results,store,page}=globalThis.rungbook;
const{make,units}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{targets}=globalThis.rungbook;
const tables=globalThis.rungbookTables;
const named=(document.querySelector('script[src*="data/tables.js"]'));
const version=/[?&]v=([0-9a-f]+)/.exec(named?named.src:'');
const isMixed=tables!==undefined&&version!==null&&tables.version!==version[1];
if(isMixed){
page.byId('main').prepend(make('div',{class:'advice do-not',role:'alert',id:'mixed'},make('p',{text:say('site.mixed')}),
make('p',{},make('button',{type:'button',text:say('site.load_again'),on:{click:()=>location.reload()}}))));
}
const model=tables&&!isMixed?readiness.prepare(tables):null;
let kept=null;
const current=(ready,day,exported)=>{
const{person,aside}=results.person(exported,ready,day);
return{person,aside,exported,day,found:readiness.assess(ready,person,day)};
};
const mine=()=>{
if(!model||(store.isEmpty()&&!store.facts().goal))return null;
const day=results.today(),exported=store.all();
const key=`${day}:${JSON.stringify(exported)}`;
if(!kept||kept.key!==key)kept={key,value:current(model,day,exported)};
return kept.value;
};
const stateWord=(state)=>(health()==='ask'&&(state===readiness.OPEN||state===readiness.TEST_FIRST)?say(isChild()?'state.with_coach':'state.ask_first'):say(`state.${readiness.STATES[state].replace(' ','_')}`));
const shown=(got,eachSide=false)=>{
const own=targets.words(got,units.ofSchool,eachSide),other=targets.words(got,units.ofOther,eachSide);
return make('bdi',{text:own,'data-other':own===other?null:other});
};
const target=(leaf)=>{
const ready=(model);
return shown(ready.target(leaf),ready.tables.targets[ready.tables.leaves[2*leaf + 1]][9]===1);
};
const got=(kept)=>{
const sides=typeof kept==='string'?/^left (.*), right (.*)$/.exec(kept):['',kept.left,kept.right];
const one=(text)=>{const read=targets.readGot(text);return read?shown(read):text;};
return sides?globalThis.rungbook.words.sayNodes('stand.both_sides',{left:one(sides[1]),right:one(sides[2])}):[one(String(kept))];
};
const asideGot=(got)=>(['paused','restrict','cleared','pain','remark'].includes(got)?say(`aside.${got}`):globalThis.rungbook.states.got(got));
const partWord=(part)=>say(`body.${part.replace('-','_')}`);
const day=(text)=>make('time',{datetime:text,text:results.readDay(text)===null?text:results.dayWords(Number(results.readDay(text)))});
const dayOf=(count)=>day(results.dayText(count));
const health=()=>{
const{screened,born}=store.facts(),today=results.today();
const on=screened?Number(results.readDay(screened.on)):0;
const says=globalThis.rungbook.health.saysOn(screened?{says:screened.says,on,until:screened.until?Number(results.readDay(screened.until)):null,lasts:screened.lasts}:null,today,born);
return says==='ask'?'ask':says===null||today>on + globalThis.rungbook.health.LIMITS.clearance?'none':says==='light'?'light':'clear';
};
const isChild=()=>document.documentElement.dataset.age==='child';
const barred=()=>{const says=health();return says==='none'?'first':says==='ask'?'ask':'';};
const who=(by)=>(['client','coach','screening'].includes(by)?say(`rests.by_${by}`):by);
const BECAUSE={'it hurt in a test':say('rests.hurt_in_test'),'it hurt in training':say('rests.hurt_in_training'),'it hurts':say('rests.hurts')};
const alike=(a,b)=>(a.kind==='paused'||a.kind==='restrict')&&a.kind===b.kind&&a.on===b.on&&a.until===b.until&&a.by===b.by&&a.because===b.because;
const together=(all)=>{
const out=[];
for(const cause of all){
const same=out.find(([first])=>alike(first,cause));
if(same)same.push(cause);
else out.push([cause]);
}
return out;
};
const sore=({person,day})=>{
const[from]=globalThis.rungbook.health.LIMITS.pain,{pain_days}=(model).tables.training;
const newest=new Map();
for(const pain of[...person.pains].sort((a,b)=>a.on - b.on))if(pain.on<=day)newest.set(pain.part,pain);
return[...newest.values()].filter((pain)=>readiness.isPausing((model),person,pain,day)||(pain.score>=from&&day - pain.on<=pain_days));
};
const bearsOnSore=(stand,m)=>sore(stand).some(({part})=>(((model).tables.stresses[m]>>part)&1)===1);
const soreLines=(stand)=>sore(stand).filter(({entry})=>!stand.found.causes.some((cause)=>cause.kind==='pain'&&cause.entry===entry))
.map(({part,score,on})=>make('li',{},...sayNodes('rests.sore',{part:partWord((model).tables.parts[part]),score,day:dayOf(on)}).map((piece)=>(piece)),' ',
make('a',{href:'if-it-hurts.html#pain',text:say('rests.sore_better')})));
const causeWords=(cause,all=[cause])=>{
const{tables}=(model);
const since=dayOf(cause.on);
const word=(list,i)=>list[Number(i)];
if(cause.kind==='light')return(sayNodes('rests.light',{day:since}));
const single=all.filter(({cls})=>cls===null).map(({movement,part,pattern})=>(movement!==null?page.named(tables,movement):part!==null?partWord(word(tables.parts,part)):say(`pattern.${word(tables.patterns,pattern).replace(/ /g,'_')}`)));
const classes=all.flatMap(({cls})=>(cls===null?[]:[tables.class_names[cls]]));
const what=[...single,...(classes.length?[sayNodes('rests.classes',{list:classes.join(say('list.separator'))})]:[])].flatMap((one,i)=>[...(i?[say('list.separator')]:[]),...[one].flat()]);
if(cause.kind==='pain')return(sayNodes('rests.pain',{what,day:since}));
let out=cause.kind==='restrict'?sayNodes('rests.left_alone',{what,day:since}):sayNodes('rests.paused',{what,day:since});
if(cause.by)out=sayNodes('rests.by',{pause:out,who:who(cause.by)});
if(cause.until!==null)out=sayNodes('rests.until',{pause:out,day:dayOf(cause.until)});
if(cause.because)out=sayNodes('rests.because',{pause:out,because:BECAUSE[cause.because]||cause.because});
return(out);
};
const untilOf=(entry)=>{
const stand=mine(),pain=stand&&stand.person.pains.find((one)=>one.entry===entry);
return stand&&pain?say('rests.lift_pain',{until:readiness.untilWords(pain,readiness.goesOnTo((model),stand.person,pain.part,stand.day))}):'';
};
const liftedBy=({kind,by,entry})=>(kind==='pain'?untilOf(entry):kind==='light'?say('rests.lift_light'):by==='screening'?say('rests.lift_screening'):null);
const mark=(state,counted,askFirst=health()==='ask')=>{
const word=readiness.STATES[state];
const asks=askFirst&&(state===readiness.OPEN||state===readiness.TEST_FIRST);
const own=asks?say(isChild()?'state.with_coach':'state.ask_first'):say(`state.${word.replace(' ','_')}`);
const text=counted&&!asks?say('stand.counted',{state:own}):own;
return make('span',{class:`state state-${asks?'paused':word.replace(' ','-')}`,'data-state':asks?'ask first':word},
make('span',{class:'state-shape','aria-hidden':'true'}),make('span',{text}));
};
const drawRest=()=>{
const here=document.querySelector('main[data-movement]'),place=document.getElementById('rests-here');
const stand=mine(),m=model&&here?model.numbers.get((here).dataset.movement||''):undefined;
if(!place||m===undefined)return;
place.hidden=!stand||stand.found.states[m]!==readiness.PAUSED;
if(!stand||place.hidden)return;
place.replaceChildren(make('p',{text:say('rests.this_rests')}),make('ul',{class:'plain'},...stand.found.pausedBy(m).map((cause)=>make('li',{},...causeWords(cause)))),
make('p',{},make('a',{href:'where-i-stand.html#rests',text:say('rests.where_lifted')})));
};
const number=()=>{
const here=document.querySelector('main[data-movement]'),place=document.getElementById('number-here'),form=document.getElementById('number-form');
const m=model&&here?model.numbers.get((here).dataset.movement||''):undefined;
if(!place||!form||m===undefined)return;
const tell=({key,news})=>{
const says=page.byId('number-news');
says.replaceChildren(...news,' ',make('button',{type:'button',class:'quiet',text:say('stand.take_back'),on:{click:()=>{
store.remove(key);
says.textContent=say('number.taken_back');
says.focus();
}}}));
says.focus();
};
const open=async()=>{
await page.load('number-here');
const{number:of,entry}=globalThis.rungbook;
const ask=()=>{
const stand=mine();
const field=of.isPlain(m)?of.line(m,(told)=>{tell(told);ask();}):entry.form(m,{today:false,kept:(key)=>{tell({key,news:of.news(m,stand)});ask();},hurt:()=>{form.replaceChildren();}});
form.replaceChildren(...(field?[field]:[]));
return field;
};
const field=ask(),first=field&&field.querySelector('input, a');
if(first instanceof HTMLElement)first.focus();
};
form.replaceChildren(make('button',{type:'button',class:'quiet',text:say('number.enter'),on:{click:()=>{open().catch(()=>{page.byId('number-news').textContent=say('number.not_loaded');});}}}));
place.hidden=false;
};
const draw=()=>{
const stand=store.isEmpty()?null:mine();
for(const slot of(document.querySelectorAll('[data-state-of]'))){
const m=model?model.numbers.get(slot.dataset.stateOf||''):undefined;
slot.replaceChildren(...(stand&&m!==undefined?[mark(stand.found.states[m],stand.found.counted[m]===1)]:[]));
slot.hidden=!stand;
}
drawRest();
globalThis.rungbook.health.draw();
};
const keepChain=()=>{
const{goal}=store.facts();
const skill=model&&goal?model.tables.skills.find(({id})=>id===goal):undefined;
if(!model||!goal||(!skill&&!model.numbers.has(goal)))return;
page.keepPages([`${goal}.html`,...(skill?[`self-test-${goal}.html`,...skill.members.map((m)=>`${model.tables.ids[m]}.html`)]:[])],true).catch(()=>{});
};
let followed='';
const follow=()=>{
const{goal}=store.facts();
if(!goal||goal===followed)return;
followed=goal;
keepChain();
};
const figure=(m,size=48)=>(model&&model.is(m,readiness.DRAWN)
?page.make('img',{class:'small-figure',alt:'',width:size,height:size,loading:'lazy',decoding:'async',src:`figures/${model.tables.ids[m]}.svg`}):null);
globalThis.rungbook.states={model,mine,figure,mark,stateWord,shown,target,got,partWord,day,dayOf,health,isChild,barred,causeWords,sore,bearsOnSore,soreLines,together,liftedBy,asideGot};
store.onChange(()=>{draw();follow();});
draw();
number();
follow();
})();
