'use strict';self.rungbookIs+="standing.js=0999d43f ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"list.separator":", ","shared.movement":"Movement","shared.the_goal":"The goal:","stand.all_movements":{"one":"All {n} movements","other":"All {n} movements"},"stand.ask_first":"ask a licensed clinician first","stand.counted_because":"counted because you own {movement}","stand.do_not_try":"do not try this yet","stand.first":"First:","stand.foundations_missing":"These foundations are missing:","stand.from_training":"(the number from training; do not try it today)","stand.health_first":"answer the health questions first","stand.may_start":"you may start training this","stand.nothing_in_doubt":"Nothing here is open to doubt that a question could decide.","stand.nothing_to_ask":"No question would decide more here: what is still to be tested stands above something that is missing.","stand.rest":"Rest: {pause}","stand.state":"State","stand.tests_would_show":"these tests would show it: {tests}","stand.to_the_questions":"To the questions","stand.train_first":"train {movement} first; do not try this yet","stand.untested":"{movement} {target}, untested","stand.why":"Why","stand.would_decide":"The tests that would decide most: {tests}.","stand.you_have":"{movement} {target}, you have {got} ({share} %)","state.with_coach":"only with a coach in person"});
'use strict';
(()=>{
const{readiness,placement,states,page}=globalThis.rungbook;
const{make,named,namedList,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{mark}=states;
const model=(states.model);
const{tables}=model;
const missingLine=({leaf,movement,got,share})=>{
const asked={movement:named(tables,movement),target:states.target(leaf)};
return make('li',{},...(got===null?sayNodes('stand.untested',asked):sayNodes('stand.you_have',{...asked,got:states.got(got),share:Math.floor(Number(share)/ 10)})));
};
const under=({direct,steps})=>(direct||steps.length===0?[]:[make('p',{text:say('stand.first')}),make('ul',{class:'lack'},...steps.map(missingLine))]);
const why=(stand,m)=>{
const{found,person}=stand;
const barred=states.barred();
const lack=()=>make('ul',{class:'lack'},...found.missing(m).map(missingLine));
switch(found.states[m]){
case readiness.PAUSED:
return[make('ul',{class:'lack'},...found.pausedBy(m).map((cause)=>make('li',{},...sayNodes('stand.rest',{pause:states.causeWords(cause)}))))];
case readiness.OWNED:{
const root=found.countedBecause(m);
return[...(root>=0?sayNodes('stand.counted_because',{movement:named(tables,root)}).map((part)=>(part)):[]),...(found.needs[m]===readiness.FALSE?[make('p',{text:say('stand.foundations_missing')}),lack(),...(barred?[]:under(found.first(m)))]:[])];
}
case readiness.OPEN:
if(barred)return[barred==='ask'?(states.isChild()?say('state.with_coach'):say('stand.ask_first')):say('stand.health_first')];
return states.isHeld(stand,m)?states.hints(m):[say('stand.may_start')];
case readiness.ALMOST:{
if(barred)return[lack()];
const first=found.first(m);
if(!first.direct&&first.steps.length)return[make('p',{text:say('stand.do_not_try')}),lack(),...under(first)];
return[...sayNodes('stand.train_first',{movement:named(tables,model.of(found.nearly(m)))}).map((part)=>(part)),lack()];
}
case readiness.NOT_YET:return barred?[lack()]:[lack(),...under(found.first(m))];
default:{
if(!person)return[];
if(barred)return[barred==='ask'?(states.isChild()?say('state.with_coach'):say('stand.ask_first')):say('stand.health_first')];
const first=found.first(m);
if(!first.direct)return first.steps.length?under(first):[lack()];
const tests=[...new Set(first.steps.map(({movement})=>movement))];
return sayNodes('stand.tests_would_show',{tests:namedList(tables,tests)}).map((part)=>(part));
}
}
};
const summary=(stand)=>{
const counts=readiness.STATES.map((_,state)=>stand.found.states.filter((s)=>s===state).length);
byId('summary').replaceChildren(make('ul',{class:'plain counts'},...counts.map((count,state)=>(count?make('li',{},mark(state),` ${globalThis.rungbook.words.number(count)}`):null)).filter((li)=>li!==null)));
};
const skillPart=(stand,skill)=>{
const tests=[];
const isHeld=skill.members.filter((m)=>states.isHeld(stand,m));
for(let asked=isHeld;!states.barred()&&tests.length<3;asked=[...isHeld,...tests.map(({m})=>m)]){
const question=placement.next(model,stand.found,skill.members,asked,stand.day);
if(!question)break;
tests.push({m:question.movement,today:question.today});
}
const goal=model.of(skill.goal);
const rows=skill.members.map((m)=>make('tr',{'data-movement':tables.ids[m]},make('th',{scope:'row'},named(tables,m)),
make('td',{'data-label':say('stand.state')},mark(stand.found.states[m],stand.found.counted[m]===1)),make('td',{'data-label':say('stand.why')},...why(stand,m))));
return make('section',{class:'skill-stand'},
make('h2',{},page.namedSkill(tables,skill,goal)),
make('p',{},say('shared.the_goal'),' ',named(tables,goal),' ',states.target(skill.goal),' ',mark(stand.found.states[goal],stand.found.counted[goal]===1)),
tests.length?make('p',{},...sayNodes('stand.would_decide',{tests:tests.flatMap(({m,today},i)=>[i?say('list.separator'):'',named(tables,m),today?'':` ${say('stand.from_training')}`])}),' ',
make('a',{href:`self-test-${skill.id}.html`,text:say('stand.to_the_questions')})):states.barred()?null:make('p',{text:skill.members.some((m)=>stand.found.states[m]===readiness.TEST_FIRST)?say('stand.nothing_to_ask'):say('stand.nothing_in_doubt')}),
make('details',{},make('summary',{text:say('stand.all_movements',{n:skill.members.length})}),
make('div',{class:'wide',tabindex:'0'},make('table',{class:'list ready-mine'},make('thead',{},make('tr',{},...[say('shared.movement'),say('stand.state'),say('stand.why')].map((text)=>make('th',{scope:'col',text})))),make('tbody',{},...rows)))));
};
let drawing=0;
const draw=(stand)=>{
const place=byId('skills-mine'),skills=[...tables.skills];
summary(stand);
place.replaceChildren();
clearTimeout(drawing);
const next=()=>{
const skill=skills.shift();
if(!skill)return;
place.append(skillPart(stand,skill));
drawing=Number(setTimeout(next));
};
next();
};
globalThis.rungbook.standing={draw};
})();
