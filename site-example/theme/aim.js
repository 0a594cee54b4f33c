'use strict';self.rungbookIs+="aim.js=5c5ccbd2 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"aim.goal":"Your goal","aim.nearest":"the nearest one","aim.nearest_needs":"The nearest goal is {goal}. First you need {movement}: you have {got}, it asks {target}.","aim.nearest_unknown":"The nearest goal is {goal}. First you need {movement}, {target}. No number yet.","aim.needs":"For {goal} you first need {movement}: you have {got}, it asks {target}.","aim.needs_unknown":"For {goal} you first need {movement}, {target}. No number yet.","aim.nothing":"Nothing on the way to {goal} can be trained now. What you have is kept up.","aim.nothing_but":"No step of the way to {goal} can be trained as it is now; what comes nearest stands in its place.","aim.reached":"{goal} is yours. Choose the next goal.","aim.rule_why":"{rule}: {why}","aim.session":"{day}: {minutes} minutes","aim.session_lighter":"{day}: a lighter session, {minutes} minutes","aim.session_named":"{day}: session {name}, {minutes} minutes","aim.sets_of":"{pattern} {n}","aim.sets_straight":"{pattern} with straight arms {n}","aim.step":"{movement}: {got} of {target}","aim.step_unknown":"{movement}: {target}, no number yet","aim.time":"From there it is {time}.","aim.towards":"Towards {movement}, {target}","aim.towards_itself":"Towards {target}","aim.week":"Week {n}","aim.week_lighter":"Week {n}, lighter","target.held_bottom":"{n} s held at the bottom","target.held_top":"{n} s held at the top","target.tempo":"tempo {tempo}"});
'use strict';
'after page.js states.js training.js';
(()=>{
const{targets,results,readiness,store,page,states,training}=globalThis.rungbook;
const{make,named,namedList,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model}=states;
if(!model)return;
const{tables}=model;
const MINUTE=60;
const noteNext=(of,{found})=>{
const[session]=of.sessions,lines=session?session.lines:[];
const line=lines.find((one)=>of.limiter&&one.gap&&one.gap.movement===of.limiter.movement)||lines.find(({block})=>block==='strength')||lines[0];
if(!line||!of.goal)return;
const m=line.movement,got=training.got(of.trainee,m),skill=tables.skills.find(({id})=>of.goal&&id===of.goal.id);
const next={id:tables.ids[m],name:tables.names[m],mark:tables.marks[tables.mark[m]]||null,sets:sets(line).textContent,got:got?states.shown(got).textContent:'',
goal:skill?skill.name:page.marked(tables,model.of(of.goal.leaf)),test:skill&&skill.id,
drawn:model.is(m,readiness.DRAWN),places:Object.fromEntries(tables.skills.map(({id,members})=>[id,Math.max(-1,...members.filter((one)=>found.states[one]===readiness.OWNED).map((one)=>tables.stage[one]))]))};
if(JSON.stringify(store.get('next'))!==JSON.stringify(next))store.note('next',next);
};
const plans=new WeakMap();
const planOf=(stand)=>{
const known=plans.get(stand)||training.plan(model,stand.person,stand.found,stand.day);
plans.set(stand,known);
noteNext(known,stand);
return known;
};
const nodes=(parts)=>parts.filter((part)=>part!==null).map((part)=>(part));
const goalName=({id,leaf})=>{
const skill=tables.skills.find((one)=>one.id===id);
return skill?page.namedSkill(tables,skill,model.of(leaf)):named(tables,model.of(leaf));
};
const goalChoice=(place)=>{
const{goal}=store.facts(),other=goal&&!tables.skills.some(({id})=>id===goal)?model.numbers.get(goal):undefined;
const select=(make('select',{id:`${place}-goal`},make('option',{value:'',text:say('aim.nearest')}),
...tables.skills.map(({id,name})=>make('option',{value:id,text:name})),other===undefined?null:make('option',{value:tables.ids[other],text:page.marked(tables,other)})));
select.value=goal&&(other!==undefined||tables.skills.some(({id})=>id===goal))?goal:'';
select.addEventListener('change',()=>{
store.put('goal',select.value||null);
const drawn=document.getElementById(select.id);
if(drawn)drawn.focus();
});
return make('p',{class:'goal-choice screen-only'},make('label',{for:select.id,text:say('aim.goal')}),' ',select);
};
const asked=({trainee},{movement,leaf})=>{
const got=training.got(trainee,movement);
const from=training.followsFrom(trainee,movement);
const there=!got?say('training.unknown'):from===null?states.shown(got):nodes(sayNodes('training.why.counts',{got:states.shown(got),movement:named(tables,from)}));
return{movement:named(tables,movement),got:there,target:states.target(leaf)};
};
const sentence=(of)=>{
const{goal,limiter}=of;
if(!goal)return[say('training.no_goal')];
const named_={goal:goalName(goal)};
if(training.isReached(goal))return nodes(sayNodes('aim.reached',named_));
if(!limiter)return nodes(sayNodes(of.sessions.some(({lines})=>lines.some(({gap})=>gap!==null))?'aim.nothing_but':'aim.nothing',named_));
const key=goal.chosen?(limiter.now?'aim.needs':'aim.needs_unknown'):limiter.now?'aim.nearest_needs':'aim.nearest_unknown';
return nodes(sayNodes(key,{...named_,...asked(of,limiter)}));
};
const plain=(parts)=>nodes(parts).map((part)=>{
if(typeof part==='string')return part;
const copy=(part.cloneNode(true));
copy.querySelectorAll('.aside').forEach((aside)=>aside.remove());
copy.querySelectorAll('.mark-word').forEach((word)=>{word.textContent=`[${word.textContent}]`;});
return String(copy.textContent);
}).join('');
const sentenceText=(of)=>plain(sentence(of));
const howLong=({goal,limiter})=>{
if(!goal||!limiter)return[];
const time=training.timeOf(tables,limiter);
return time===null?[]:[say('aim.time',{time})];
};
const way=(of,field=()=>null)=>{
const{limiter,gaps,goal}=of;
if(!goal||!limiter)return null;
const steps=[];
for(let at=(limiter);at&&!steps.includes(at);){
steps.push(at);
at=at.opens.map((m)=>gaps.get(m)).filter((gap)=>gap!==undefined).map((gap)=>(gap)).sort(training.heavier)[0];
}
return make('ol',{class:'ladder way-up'},...steps.map((gap)=>make('li',{'data-movement':tables.ids[gap.movement]},states.figure(gap.movement),...nodes(sayNodes(gap.now?'aim.step':'aim.step_unknown',asked(of,gap))),field(gap.movement))));
};
const sets=(line)=>{
const got=training.gotOf(line);
const side=line.side===null?[]:[say(line.side==='each'?'training.each_side':'training.weaker_first'),...(line.weaker?[say(`training.more_${line.weaker}`)]:[])];
const other=targets.words(got,page.units.ofOther),own=targets.words(got,page.units.ofSchool);
const[end,held]=tables.hold[line.movement]||['',0],tempo=tables.tempo[line.movement];
const paced=line.unit!=='reps'?[]:[...(tempo?[say('target.tempo',{tempo})]:[]),...(held?[say(end==='top'?'target.held_top':'target.held_bottom',{n:held})]:[])];
const all=(text)=>[text,...paced,...side].join(say('list.separator'));
return make('bdi',{text:all(own),'data-other':own===other?null:all(other)});
};
const restWords=({rest,left})=>[rest % MINUTE?say('training.rest_s',{n:rest}):say('training.rest_min',{n:rest / MINUTE}),
...(left===null?[]:[say(left>=tables.training.reserve?'training.reserve_most':'training.reserve',{n:left})])].join(say('list.separator'));
const reason=({trainee},{key,values})=>nodes(sayNodes(`training.${key}`,{...training.valuesOf(trainee,values),...(values.movement===undefined?{}:{movement:named(tables,values.movement),what:named(tables,values.movement)})}));
const why=(of,line)=>{
const key=tables.rules[line.rule],link=make('a',{href:`about-the-numbers.html#rule-${key.replace(/_/g,'-')}`,text:say(`training.rule.${key}`)});
const all=line.why.map((one)=>reason(of,one)).reduce((before,more)=>(before.length?nodes(sayNodes('training.why.both',{why:before,more})):more),([]));
return all.length?nodes(sayNodes('aim.rule_why',{rule:link,why:all})):[link];
};
const towards=(of,{gap,movement})=>(gap?nodes(sayNodes(gap.movement===movement?'aim.towards_itself':'aim.towards',{movement:named(tables,gap.movement),target:states.target(gap.leaf)})):null);
const head=({on,week,name,minutes,lighter})=>{
const values={day:states.dayOf(on),n:week,name,minutes};
return nodes(sayNodes(lighter?'aim.session_lighter':name?'aim.session_named':'aim.session',values));
};
const warmUp=({trainee:{tables:{names}}},{warmUp:{sore,text,easy}})=>[
...(sore?[make('li',{text:sore})]:[]),...text.map((line)=>make('li',{text:line})),
...(easy&&names?[make('li',{},...nodes(sayNodes('training.easy_set',{amount:easy.amount,movement:named(tables,easy.movement)})))]:[]),
];
const care=({trainee},session)=>training.care(trainee,session).map(({asks,movements})=>make('li',{},asks,': ',...namedList(tables,movements)));
const leftOut=(of,all)=>{
const together=new Map();
for(const{movement,why:because}of all){
const key=training.whyOf(of.trainee,because),known=together.get(key)||{why:because,list:[]};
if(!known.list.includes(movement))known.list.push(movement);
together.set(key,known);
}
return[...together.values()].map(({why:because,list})=>make('li',{},...nodes(sayNodes('training.left_of',{movements:namedList(tables,list),why:reason(of,because)}))));
};
const weeks=(of)=>[...new Set(of.sessions.map(({week})=>week))].map((week,i)=>{
const all=of.sessions.filter((one)=>one.week===week);
return make('details',i?{}:{open:true},make('summary',{text:say(all[0].lighter?'aim.week_lighter':'aim.week',{n:week})}),
...all.map((one)=>make('section',{class:'ahead'},make('h3',{},...head(one)),
make('ul',{class:'plain'},...one.lines.map((line)=>make('li',{'data-movement':tables.ids[line.movement]},named(tables,line.movement),' ',make('span',{class:'target'},sets(line))))))));
});
const weeksEnd=({retest,weekSets})=>{
const kinds=[...weekSets].map(([kind,count])=>{
const pattern=say(`pattern.${tables.patterns[kind>>1].replace(/ /g,'_')}`);
return say(kind&1?'aim.sets_straight':'aim.sets_of',{pattern,n:count});
});
return[...(retest?[make('p',{},...nodes(sayNodes('training.retest',{day:states.dayOf(retest.on),list:namedList(tables,retest.tests)})))]:[]),
...(kinds.length?[make('p',{class:'hint',text:say('training.week_sets',{list:kinds.join(say('list.separator'))})})]:[])];
};
globalThis.rungbook.aim={planOf,goalName,goalChoice,plain,sentenceText,sentence,howLong,way,sets,restWords,reason,why,towards,head,warmUp,care,leftOut,weeks,weeksEnd,nodes};
})();
