'use strict';self.rungbookIs+="morning.js=3c1fd120 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"morning.a_clinician":"a clinician","morning.age":"{n} or {next} years old: any pain in a joint that still grows rests it","morning.age_old":"{n} or {next} years old: balance and work on one leg with a hand near a wall","morning.age_weight":"{age}; weight in sets of six and more, no single and no test with it before 18","morning.age_youth":"{n} or {next} years old: only with the coach present and a parent’s consent","morning.aside":"aside","morning.ask":"first","morning.because":"{why}: {list}","morning.begin":"{movement}: no number yet, needs {target}; begin with sets of {begin}, not as a test.","morning.below_falls":"{next} First {movement}, on which it stands: it falls; a lighter week, and look for the reason.","morning.best":"{movement} {got} (was {was})","morning.blocked":"Nothing on the way can be trained as it is: {movement}, {why}.","morning.by_coach":"the coach","morning.by_way":"Train {movement}: {sets}, towards {next}","morning.cleared":"told to ask a clinician first; cleared by {who} until {day}, but for what is left alone","morning.counted":"Test {movement}, {target} is asked: so far it only {got}.","morning.counts":"{movement} {got}; it needs {target}.","morning.decides":{"one":"{movement} ({people}): decides {n} movement","other":"{movement} ({people}): decides {n} movements"},"morning.doubt":"Ask first whether this is true: {list}.","morning.entry":"{movement} {got} ({day})","morning.falls":"{movement} falls: {first}, then {then}; was {best} on {day}","morning.first":"{movement} {got} (first result)","morning.from_adult":"{goal}, shown from 18 on","morning.goal_closed":"It is the goal itself. {way}","morning.goal_itself":"It is the goal itself, {time}.","morning.group":"{people}: {movements}","morning.held":{"one":"{movement}: {n} person ({people})","other":"{movement}: {n} people ({people})"},"morning.held_back":"Held back most","morning.helped":"done with help where none counts: {list}","morning.holds_back":{"one":"Holds back {n} movement. {way}","other":"Holds back {n} movements. {way}"},"morning.hurts":"Nothing new on the way while this hurts: {parts}.","morning.meanwhile":"{next} Meanwhile train: {list}.","morning.missing":"to be had first: {list}","morning.more":{"one":"{list} and {n} more","other":"{list} and {n} more"},"morning.more_bests":{"one":"{list}; and {n} more","other":"{list}; and {n} more"},"morning.nearest":"no goal chosen; nearest: {goal}","morning.new":"new","morning.next":"next","morning.next_falls":"{next} It falls: a lighter week before more of it, and look for the reason.","morning.no_day_off":"{group} on {first} and {then}, no day off between","morning.no_end":"{pause}, until it is lifted","morning.no_goal":"no goal chosen","morning.no_number":"{movement}: no number yet, needs {target}.","morning.no_standing":"{file} is no standing that assess --save wrote","morning.none":"nothing","morning.now_owned":"{best}, now owned","morning.old_injury":"Ask about an old injury of the {part}.","morning.one_leg":"Talk over the risk of falls first, with a clinician too: {movement} {got} at {n} or {next} years; under {least} is a warning (Araujo et al. 2022).","morning.opens":"{best}: opens {list}","morning.out_of_date":"out of date: {list}","morning.owned":{"one":"{n} of {all} owned","other":"{n} of {all} owned"},"morning.owned_paused":{"one":"{n} of {all} owned ({paused} of them paused)","other":"{n} of {all} owned ({paused} of them paused)"},"morning.pain_hold":"{pain}: nothing new and no more of what bears on it until an entry of {n} or less; ask again by {day}","morning.pain_less":"{pain}: lighter and easier, nothing new on it, until an entry of {n} or less; ask again by {day}","morning.reached":"The goal is reached: choose the next.","morning.runs_out":"results run out from {day} on: {list}","morning.show":"Show {movement}: {got}; {target} has to be shown once.","morning.show_later":"{movement}: {got}; {target} has to be shown once, not as a test yet.","morning.sides_differ":"{movement}, the sides differ: left {left}, right {right}","morning.slides":{"one":"{movement}: less from test to test, no better for {n} week ({advice})","other":"{movement}: less from test to test, no better for {n} weeks ({advice})"},"morning.still":{"one":"{movement}: no better for {n} week ({advice})","other":"{movement}: no better for {n} weeks ({advice})"},"morning.test":"Test {movement}, {target} is asked: it decides {list}.","morning.test_again":"{test} {got} is on file, measured the old way.","morning.test_goal":"Test {movement}: {target} is the goal.","morning.tested":{"one":"tested {n} day ago","other":"tested {n} days ago"},"morning.tested_today":"tested today","morning.to_failure":"nothing left in reserve on {day}: {list}; not again before {then}, a day off would do as well","morning.to_test":"To test today","morning.together":"Could work together","morning.unanswered":"no health answers on file, ask them before the first set","morning.untested":"never tested","morning.wait":"Not tested today, just back or nothing left yesterday: {people}","morning.waits":"{next} It waits: {why}.","morning.waits_back":"{next} It waits until that is over.","morning.watch":"watch","morning.work":"{movement}: {got}, needs {target}.","training.nothing":"Nothing on the way can be trained now; the lines of a session are for the rest of the body."});
'use strict';
'after page.js states.js training.js aim.js history.js';
(()=>{
const{targets,readiness,results,training,history,page}=globalThis.rungbook;
const{MASS,NO_LOAD}=targets;
const{LIMITS}=globalThis.rungbook.health,{LOADED}=training.TRAITS;
const{words}=globalThis.rungbook;
const{mayTest,daysOff}=training;
const units=()=>(page&&page.units?page.units.ofSchool:'metric');
const text=(got)=>targets.words(got,units());
const firstTest=({c,goal})=>(goal?c.found.first(c.model.of(goal.leaf)).steps.find(({got,movement})=>got===null&&mayTest(c,movement)):undefined);
const lineOf=({limiter,session})=>{
const lines=session?session.lines:[],m=limiter?limiter.movement:-1;
return lines.find(({movement})=>movement===m)||lines.find(({gap})=>gap!==null&&gap.movement===m);
};
const waitsFor=(of)=>(of.limiter&&of.session&&!lineOf(of)?of.session.leftOut.find(({movement})=>of.limiter&&movement===of.limiter.movement):undefined);
const stepOf=(of)=>{
const{c,limiter}=of,{movement,now,share}=(limiter),may=mayTest(c,movement)&&!training.isBackLately(c),line=lineOf(of);
if(!now)return may?{key:'',works:false}:{key:line&&line.movement===movement?'begin':'no_number',works:true};
if(share===readiness.WHOLE)return may?{key:'show',works:false}:{key:'show_later',works:true};
const follows=training.followsFrom(c,movement)!==null;
return follows&&may?{key:'counted',works:false}:{key:follows?'counts':'work',works:true};
};
const hardOf=(session)=>(session?session.lines.filter(({block})=>block==='strength'||block==='kept up').map(({movement})=>movement):[]);
const look=(model,person,found,aside,day)=>{
const c=training.begin(model,person,found,day),isRefused=training.isRefused(person,day);
const goal=isRefused?null:training.goalOf(c),gaps=goal?training.gaps(c,goal):new Map();
const{limiter}=isRefused?{limiter:null}:training.candidates(c,goal,gaps);
const sessions=isRefused?[]:training.plan(model,person,found,day,1).sessions,[session=null]=sessions;
const of={c,isRefused,goal,gaps,limiter,session,trains:new Set(sessions.flatMap(({lines})=>lines.map((line)=>line.movement))),meanwhile:[],aside,histories:history.histories(c,limiter&&limiter.movement)};
const isStuck=goal&&!limiter&&!training.isReached(goal)&&!firstTest(of);
if(isStuck||(waitsFor(of)&&stepOf(of).works))of.meanwhile=hardOf(session);
return of;
};
const sidesOf=({sides},{say})=>(sides.length>1?say('morning.left_right',{left:text(sides[0]),right:text(sides[1])}):text(sides[0]));
const fresh=({c,isRefused})=>{
const{model,person,found,day,tables}=c,past=person.tested.filter(({on})=>on<=day);
const begins=Math.max(...past.map(({on})=>on))+ 1 - tables.morning.round_days,earlier=person.tested.filter(({on})=>on<begins);
if(!past.length||!earlier.length)return[];
const before=readiness.assess(model,{...person,tested:earlier},day);
const opens=(m)=>(isRefused?[]:model.order.filter((up)=>found.states[up]===readiness.OPEN
&&[readiness.ALMOST,readiness.NOT_YET,readiness.TEST_FIRST].some((state)=>state===before.states[up])&&readiness.leavesOf(tables.needs[up]).some((leaf)=>model.of(leaf)===m)).sort((a,b)=>a - b));
const best=(m,list)=>{
const{atMost}=model.target(m),all=history.points(c,m,list);
if(!all.length)return null;
const point=all.reduce((a,b)=>(history.isAbove(a,b,atMost)?a:b)),same=(a)=>a.on===point.on&&a.amount===point.amount&&a.load===point.load&&a.hits===point.hits&&a.of===point.of;
const test=list.find((one)=>history.points(c,m,[one]).some(same));
return test?{point,test}:null;
};
return[...new Set(past.filter(({on})=>on>=begins).map(({movement})=>movement))].sort((a,b)=>a - b).flatMap((m)=>{
const{atMost}=model.target(m),of=(isNew)=>past.filter(({movement,on})=>movement===m&&(on>=begins)===isNew);
const now=best(m,of(true)),old=of(false),was=best(m,old);
if(!now||history.points(c,m,old).some((one)=>history.covers(one,now.point,atMost)))return[];
const opened=opens(m),owned=found.states[m]===readiness.OWNED&&before.states[m]!==readiness.OWNED;
return was||owned||opened.length?[{movement:m,test:now.test,was:was&&was.test,owned,opens:opened}]:[];
}).sort((a,b)=>b.opens.length - a.opens.length||Number(b.owned)- Number(a.owned)||a.movement - b.movement);
};
const heldBack=({gaps},m)=>{
const out=[];
const open=[m];
for(let at=open.pop();at!==undefined;at=open.pop()){
const gap=gaps.get(at);
for(const up of gap?gap.opens:[])if(up!==m&&!out.includes(up)){out.push(up);open.push(up);}
}
return out.length;
};
const few=(all,{say,join},{morning:{named}})=>{
const shown=all.length===named + 1?all.length:named,list=join(all.slice(0,shown),words.say('list.separator'));
return all.length>shown?say('morning.more',{list,n:all.length - shown}):list;
};
const test=({c,gaps},saying,m,leaf,decides)=>{
const{say,name}=saying,{tables,model}=c,gap=gaps.get(m),old=gap?training.measuredOtherwise(c,m):null;
const target=targets.words(model.target(leaf),units(),tables.targets[tables.leaves[2*leaf + 1]][9]===1);
const bare=decides.length?say('morning.test',{movement:name(m),target,list:few(decides.map(name),saying,tables)}):say('morning.test_goal',{movement:name(m),target});
const way=gap&&gap.stop?training.howLong(c,gap,saying):null,told=way===null?bare:saying.join([bare,way],' ');
return old?say('morning.test_again',{test:told,got:training.sidesInWords(old)}):told;
};
const has=({c},{say,name},m)=>{
const got=training.got(c,m),from=training.followsFrom(c,m),sides=training.apart(c,m);
if(!got)return '';
return from!==null?say('training.why.counts',{got:text(got),movement:name(from)}):training.sidesInWords(sides||[got]);
};
const next=(of,saying)=>{
const{c,goal,limiter,isRefused}=of,{say,name}=saying,{tables,model}=c;
const plain=(told)=>({told,movement:null});
const meanwhile=(told)=>plain(of.meanwhile.length?say('morning.meanwhile',{next:told,list:saying.join(of.meanwhile.map(name),words.say('list.separator'))}):told);
if(isRefused)return plain(training.refusal(c.person,c.day));
if(!goal)return plain(say('training.no_goal',{}));
if(training.isReached(goal))return plain(say('morning.reached',{}));
if(!limiter){
const step=firstTest(of);
if(step)return{movement:step.movement,told:test(of,saying,step.movement,step.leaf,(of.gaps.get(step.movement)||{opens:[model.of(goal.leaf)]}).opens)};
const gap=[...of.gaps.values()].sort(training.heavier).find(({movement:m})=>training.isOpen(c,m)&&!training.may(c,m));
if(gap)return meanwhile(say('morning.blocked',{movement:name(gap.movement),why:training.whyOf(c,training.whyNot(c,gap.movement))}));
const hurts=training.newestPains(c).filter(training.isHolding).map(({part})=>say(`body.${tables.parts[part].replace('-','_')}`,{}));
return meanwhile(hurts.length?say('morning.hurts',{parts:saying.join(hurts,words.say('list.separator'))}):say('training.nothing',{}));
}
const{movement,leaf,opens}=limiter,{key,works}=stepOf(of);
if(!key)return{movement,told:test(of,saying,movement,leaf,opens)};
const values={movement:name(movement),target:training.asksInWords(c,leaf),got:has(of,saying,movement),...(key==='begin'?{begin:text(training.firstSet(c,movement))}:{})};
const step=say(`morning.${key}`,values),line=works?lineOf(of):undefined,waiting=works?waitsFor(of):undefined;
const what=line&&line.movement!==movement?say('morning.by_way',{movement:name(line.movement),sets:training.setsInWords(tables,line),next:step})
:waiting?meanwhile(waiting.why.key==='left.careful'&&daysOff(c)>=tables.training.off[0]?say('morning.waits_back',{next:step}):say('morning.waits',{next:step,why:training.whyOf(c,waiting.why)})).told:step;
const way=training.howLong(c,limiter,saying),held=heldBack(of,movement);
if(way===null)return{told:what,movement};
const time=limiter.stop?null:training.timeOf(tables,limiter);
return{movement,told:saying.join([what,held?say('morning.holds_back',{n:held,way}):time===null?say('morning.goal_closed',{way}):say('morning.goal_itself',{time})],' ')};
};
const acts=(of,saying)=>(of.isRefused?next(of,saying).told:saying.join([...doubts(of,saying),...oneLeg(of,saying),...timeOff(of,saying),nextAndFalls(of,saying),...sidesActs(of,saying)],' '));
const amountOf=(c,m,amount)=>text({measure:c.facts.measure(m),atMost:false,sets:1,amount,seconds:0,unit:NO_LOAD,load:0,hits:0,of:0});
const doubts=({c},saying)=>{
const{tables}=c,{say,name}=saying,list=training.slips(c).map(([m,amount])=>say('morning.doubt_of',{movement:name(m),got:amountOf(c,m,amount)}));
return list.length?[say('morning.doubt',{list:few(list,saying,tables)})]:[];
};
const oneLeg=({c},{say,name})=>{
const of=training.falls(c),n=Number(c.age);
if(!of)return[];
const[left,right,least]=[of.left,of.right,c.K.one_leg_s*targets.ONE].map((amount)=>amountOf(c,of.movement,amount));
return[say('morning.one_leg',{movement:name(of.movement),got:say('morning.left_right',{left,right}),least,n,next:n + 1})];
};
const apart=({c,histories})=>histories.flatMap(({movement:m})=>{
const now=training.now(c,m),{weaker}=training.sides(c,m);
return weaker&&now&&now.left!==null&&now.right!==null?[{m,weaker,left:amountOf(c,m,now.left),right:amountOf(c,m,now.right)}]:[];
});
const sidesActs=(of,saying)=>['left','right'].flatMap((side)=>{
const{c}=of,{say,name}=saying,{tables}=c,all=apart(of).filter(({m,weaker})=>weaker===side&&training.may(c,m));
if(!all.length)return[];
const isTold=(m)=>of.limiter!==null&&of.limiter.movement===m&&stepOf(of).key==='work';
const[range]=all.filter(({m})=>tables.joint[m]!==undefined),list=few(all.map(({m,left,right})=>(isTold(m)?name(m):say('morning.side_of',{movement:name(m),got:say('morning.left_right',{left,right})}))),saying,tables);
return[side==='left'?say('morning.begin_left',{list}):say('morning.begin_right',{list}),
...(range?[say('morning.old_injury',{part:say(`body.${tables.parts[tables.joint[range.m]].replace('-','_')}`,{})})]:[])];
});
const nextAndFalls=(of,saying)=>{
const{told,movement}=next(of,saying),falls=of.histories.filter(({fallen,still})=>fallen||(still&&still.falling)).map(({movement:m})=>m);
if(movement===null||!falls.length)return told;
if(falls.includes(movement))return saying.say('morning.next_falls',{next:told});
const below=training.chainOf(of.c.model,[movement]),first=falls.find((m)=>below.includes(m));
return first===undefined?told:saying.say('morning.below_falls',{movement:saying.name(first),next:told});
};
const watch=(of,saying)=>{
const{c,goal,gaps,histories}=of,{say,name}=saying,{person,found,day,K}=c;
const shown=(m,{amount,load})=>text({measure:c.facts.measure(m),atMost:false,sets:1,amount,seconds:0,unit:load?MASS:NO_LOAD,load,hits:0,of:0});
const stopping=found.causes.filter(({kind})=>kind==='pain');
const pains=training.newestPains(c).map((pain)=>({pain,stops:stopping.some(({entry})=>entry===pain.entry)})).filter(({pain,stops})=>stops||training.isHolding(pain)||(pain.score>0&&day - pain.on<K.pain_days))
.filter(({stops})=>!stops).map(({pain})=>held(of,saying,pain));
const rests=saying.causes(found.causes.filter(({kind})=>kind!=='pain'));
const falls=histories.flatMap(({movement:m,fallen})=>(fallen?[say('morning.falls',{movement:name(m),first:shown(m,fallen.last[0]),then:shown(m,fallen.last[1]),best:shown(m,fallen.best),day:results.dayText(fallen.best.on)})]:[]));
const still=histories.filter(({movement:m,still:of_,fallen})=>of_&&!fallen&&(of_.falling||gaps.has(m)||!training.isOwned(c,m))).map(({movement,still:is})=>{
const advice=is&&is.advice;
if(!is||!advice)return '';
const values={movement:name(movement),n:is.weeks,advice:say(`morning.advice.${advice.key}`,advice.movement===null?{}:{movement:name(advice.movement)})};
return is.falling?say('morning.slides',values):say('morning.still',values);
});
const sides=apart(of).filter(({m})=>of.isRefused||!training.may(c,m)).map(({m,left,right})=>say('morning.sides_differ',{movement:name(m),left,right}));
const years=age(of,saying);
const last=person.screened&&person.screened.until!==null?Math.min(person.screened.until,person.screened.on + Math.min(person.screened.lasts||LIMITS.clearance,LIMITS.clearance)):-Infinity;
const cleared=person.screened&&last>=day?[say('morning.cleared',{who:person.screened.by||words.say('morning.a_clinician'),day:results.dayText(last)})]:[];
return[...pains,...years,...cleared,...(person.screened||of.isRefused?[]:[say('morning.unanswered',{})]),...lacks(of,saying),...toFailure(of,saying),...rests,...falls,...still,...noDayOff(of,saying),...sides,...(goal?ageing(of,saying,goal.chain).soon:ageing(of,saying,null).soon)];
};
const lacks=({c,gaps,limiter},saying)=>{
const{say,name}=saying,{tables}=c;
const all=training.toBeHad(c,gaps,limiter).map(({oneOf,stops:[first,...others]})=>say('morning.missing_of',{gear:training.gearWords(tables,oneOf),list:others.length?say('morning.more',{list:name(first),n:others.length}):name(first)}));
return all.length?[say('morning.missing',{list:saying.join(all,words.say('list.separator'))})]:[];
};
const held=({c},{say},pain)=>{
const told=training.painWords(c.tables,pain,null),{K,day}=c,less=training.takesBack(c,pain);
if(!training.isHolding(pain))return told;
return say(less?'morning.pain_less':'morning.pain_hold',{pain:told,n:LIMITS.pain[0]- 1,day:results.dayText(Math.max(day,pain.on + K.pain_days))});
};
const age=({c,gaps},{say})=>{
const n=results.ageOn(c.person.born,c.day),values={n,next:Number(n)+ 1};
if(n===null||(n>=LIMITS.adult&&n<c.K.balance_age))return[];
if(n>=c.K.balance_age)return[say('morning.age_old',values)];
const told=say(n<LIMITS.youth?'morning.age_youth':'morning.age',values),weight=[...gaps.keys()].some((m)=>c.facts.has(m,LOADED));
return[weight?say('morning.age_weight',{age:told}):told];
};
const toFailure=({c:{person,day,tables,K}},saying)=>{
const all=person.trained.filter((one)=>one.on<=day&&day - one.on<=1&&(one.reserve===0||training.isMissed(one))),on=Math.max(...all.map((one)=>one.on));
const movements=[...new Set(all.filter((one)=>one.on===on).map(({movement})=>movement))].sort((a,b)=>a - b);
return movements.length?[saying.say('morning.to_failure',{day:results.dayText(on),then:results.dayText(on + K.apart),list:few(movements.map(saying.name),saying,tables)})]:[];
};
const timeOff=({c},{say})=>{
const n=daysOff(c),keys=['morning.time_off','morning.time_off_longer','morning.time_off_long'],reached=c.K.off.filter((off)=>n>=off).length;
return reached?[say(keys[reached - 1],{n})]:[];
};
const noDayOff=({c},{say})=>{
const{tables,person,day,K}=c;
return tables.group_names.flatMap((word,group)=>{
const days=[...new Set(person.trained.filter(({on,movement})=>on<=day&&day - on<K.turns&&c.facts.group(movement)===group).map(({on})=>on))].sort((a,b)=>a - b);
const at=days.reduce((found,on,i)=>(i>0&&on - days[i - 1]<K.apart?i:found),-1);
return at<0?[]:[say('morning.no_day_off',{group:words.say(`training.group.${word}`),first:results.dayText(days[at - 1]),then:results.dayText(days[at])})];
});
};
const ageing=({c},saying,chain)=>{
const{day,tables,found}=c,{say,name}=saying;
const newest=[...c.tests].filter(([m])=>chain===null||chain.includes(m)).map(([m,list])=>({m,from:Math.max(...list.map(({on})=>on))+ tables.results_last_days + 1}));
const soon=newest.filter(({from})=>from - day>=1&&from - day<=tables.morning.runs_out_days).sort((a,b)=>a.from - b.from||a.m - b.m);
const old=newest.filter(({m,from})=>from<=day&&found.states[m]!==readiness.OWNED).sort((a,b)=>a.m - b.m);
return{
soon:soon.length?[say('morning.runs_out',{day:results.dayText(soon[0].from),list:few(soon.map(({m})=>name(m)),saying,tables)})]:[],
old:old.length?[say('morning.out_of_date',{list:few(old.map(({m})=>name(m)),saying,tables)})]:[],
};
};
const helped=({c},saying)=>{
const all=[...c.tests].filter(([m,list])=>{
const counting=list.filter(({on})=>c.day - on<=c.tables.results_last_days),last=Math.max(...counting.map(({on})=>on));
return counting.length&&c.model.target(m).load>=0&&counting.filter(({on})=>on===last).every(({sides})=>sides.some(({load})=>load<0));
}).map(([m])=>m).sort((a,b)=>a - b);
return all.length?[saying.say('morning.helped',{list:few(all.map(saying.name),saying,c.tables)})]:[];
};
const keptAside=({aside,c:{tables}},saying)=>{
const{say}=saying;
const by=new Map();
for(const{movement,got,on,why}of aside)by.set(why,[...(by.get(why)||[]),say('morning.entry',{movement,got,day:on})]);
return[...by].map(([why,list])=>say('morning.because',{list:few(list,saying,tables),why}));
};
const lines=(of,saying)=>{
const{say,name,join}=saying,all=fresh(of),{tables}=of.c;
const bests=all.slice(0,tables.morning.bests).map(({movement,test,was,owned,opens})=>{
const values={movement:name(movement),got:sidesOf(test,saying)};
let out=was?say('morning.best',{...values,was:sidesOf(was,saying)}):say('morning.first',values);
if(owned)out=say('morning.now_owned',{best:out});
return opens.length?say('morning.opens',{best:out,list:few(opens.map(name),saying,tables)}):out;
});
const told=join(bests,'; '),goal=of.goal?of.goal.chain:null;
const first=training.clinician(of.c);
return[
...(first.length?[(['ask',first.join(' ')])]:[]),['next',acts(of,saying)],...(all.length?[(['new',all.length>tables.morning.bests?say('morning.more_bests',{list:told,n:all.length - tables.morning.bests}):told])]:[]),
...[(['watch',watch(of,saying)]),(['aside',[...ageing(of,saying,goal).old,...helped(of,saying),...keptAside(of,saying)]])]
.filter(([,list])=>list.length).map(([key,list])=>([key,join(list,'; ')])),
];
};
const goalOf=({c,goal:of},goal,{say})=>(of&&c.minor&&c.facts.has(c.model.of(of.leaf),LOADED)?say('morning.from_adult',{goal}):goal);
const head=({c},{say})=>{
const{found,model,person,day}=c;
const last=Math.max(...person.tested.map(({on})=>on)),n=day - last;
const owned=model.order.filter((m)=>training.isOwned(c,m)),paused=owned.filter((m)=>found.states[m]===readiness.PAUSED).length;
return[say(paused?'morning.owned_paused':'morning.owned',{n:owned.length,all:model.count,paused}),
person.tested.length===0?say('morning.untested',{}):n===0?say('morning.tested_today',{}):say('morning.tested',{n})];
};
const waits=({c})=>training.isBackLately(c)||c.person.trained.some((one)=>one.on<=c.day&&c.day - one.on<=1&&(one.reserve===0||training.isMissed(one)));
const testsOf=({c,gaps})=>[...gaps.values()].filter(({movement,now,share})=>(!now||share===readiness.WHOLE||training.followsFrom(c,movement)!==null)&&mayTest(c,movement));
const groups=(easier,next)=>{
const out=[];
let left=[...next.keys()].sort((a,b)=>a - b);
for(;;){
const around=left.map((m)=>left.filter((of)=>of===m||easier[m].includes(of)||easier[of].includes(m))).map((movements)=>({movements,who:movements.flatMap((m)=>next.get(m)||[]).sort((a,b)=>a - b)}));
const[best]=around.sort((a,b)=>b.who.length - a.who.length||a.movements.length - b.movements.length||a.movements[0]- b.movements[0]);
if(!best||best.who.length<2)return out;
out.push(best);
left=left.filter((m)=>!best.movements.includes(m));
}
};
const together=(all,called,saying)=>{
const{say,name}=saying,[{c:{tables}}]=all,who=(list)=>few(list.map((i)=>called(i)),saying,tables);
const held=new Map();
const tests=new Map();
const waiting=[];
all.forEach((of,i)=>{
const{movement}=next(of,saying);
if(movement!==null)held.set(movement,[...(held.get(movement)||[]),i]);
if(waits(of)){
if(testsOf(of).length)waiting.push(i);
return;
}
for(const{movement:m}of testsOf(of)){
const{people,decides}=tests.get(m)||{people:[],decides:0};
tests.set(m,{people:[...people,i],decides:decides + Math.max(heldBack(of,m),1)});
}
});
const most=[...held].sort(([a,of],[b,with_])=>with_.length - of.length||a - b).slice(0,tables.morning.tests);
const first=[...tests].sort(([a,of],[b,with_])=>with_.decides - of.decides||a - b).slice(0,tables.morning.tests);
const near=groups(tables.easier,held);
return[['held_back',most.map(([m,list])=>say('morning.held',{movement:name(m),n:list.length,people:who(list)}))],
['together',near.map(({movements,who:list})=>say('morning.group',{movements:few(movements.map(name),saying,tables),people:who(list)}))],
['to_test',first.map(([m,{people,decides}])=>say('morning.decides',{movement:name(m),n:decides,people:who(people)})).concat(waiting.length?[say('morning.wait',{people:who(waiting)})]:[])]];
};
globalThis.rungbook.morning={look,lines,head,goalOf,together};
})();
