'use strict';self.rungbookIs+="training.js=0e9548c8 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"morning.pain":"{part} hurts {score} of 10 ({day})","morning.pain_morning":"{pain}, {n} next morning","morning.pain_signs":"{pain}, {signs}","morning.pain_stops":"{pain}. Ask a clinician before you train the {part} again; it rests until {until}.","training.ask":"The health questions said: ask a clinician first. Until then there is no plan and no test.","training.block.kept_up":"kept up","training.block.practice":"practice","training.block.range":"range","training.block.strength":"strength","training.block_head":"Block","training.breathe":"Breathe out with each effort, do not hold the breath","training.breathe_through":"Keep breathing in every rep and every hold; stop before you strain.","training.careful":"Estimates. Not medical advice. With pain, illness, pregnancy or an injury, ask a licensed clinician first. Learn inverted and loaded work under a qualified coach.","training.child":"Under 12 there is no plan and no test from here: only with a coach in person.","training.coach_present":"With your coach present and a parent’s consent.","training.common_practice":"common practice, no source","training.each_side":"each side","training.easy_set":"One easy set: {amount} of {movement}.","training.estimate":"{movement}: {moved} for {reps} reps, {low} to {high} for one","training.estimates":"One-rep maximum by seven formulas","training.event":"Training, week {week} ({name})","training.event_lighter":"Training, week {week}, lighter ({name})","training.event_rested":"A rested day. Read before you start first: {list}","training.event_retest":"Test again","training.go_gently":"Go gently with what hurts: {parts}. Stop a line when the pain goes above {n}, or above what you came with.","training.goal":"Goal: {goal}","training.goal_nearest":"Goal: {goal} (not chosen: the nearest)","training.group.core":"core","training.group.legs":"legs","training.group.pull":"pull","training.group.push":"push","training.leave_out":"Leave out whatever you feel in what rests: {parts}.","training.left.apart":"{group} was trained less than 48 h before","training.left.below":"waits for what is paused","training.left.breath":"one straight-arm or long hold a session while holding the breath is left alone","training.left.careful":"harder than what is known; waits while something asks for care","training.left.enough":"enough on a part that hurts","training.left.equipment":"equipment is missing","training.left.heavy":"heavy work on the same part less than 48 h before","training.left.light":"light training only","training.left.minor":"waits until you are 18","training.left.pain":"paused for pain: {what}","training.left.paused":"rests: {what}","training.left.restricted":"left alone: {what}","training.left.sets":"enough sets of this kind","training.left.show_turns":"to be shown, by turns","training.left.sore":"nothing new on it while it hurts: {what}","training.left.time":"no time today","training.left.too_hard":"too hard yet, and nothing easier is open","training.left.try_turns":"a first try, by turns","training.left.turns":"by turns","training.left.waits":"waits for its result","training.left_of":"{movements} ({why})","training.left_out":"Left out: {list}","training.lighter":"{session}, lighter","training.limiter":"Between you and it, first: {movement}, {got}; {target} is asked; {time}","training.limiter_close":"Between you and it, first: {movement}, {got}; {target} is asked","training.line_minutes":"{n} min","training.more_left":"one set more left","training.more_right":"one set more right","training.no_estimate":"{movement}: {moved} for {reps} reps, no estimate","training.no_goal":"Every skill is yours: choose a new one.","training.not_alone":"Not alone, somebody stands by","training.nothing":"Nothing on the way can be worked on now; what is there is kept up.","training.nothing_but":"No step of the way can be trained as it is now; what comes nearest stands in its place.","training.printed":"Plan for {name}","training.reached":"It is reached: choose the next.","training.reserve":"{n} in reserve","training.reserve_most":"{n} or more in reserve","training.rest_min":"rest {n} min","training.rest_s":"rest {n} s","training.retest":"Test again on {day}: {list}","training.rule.balance":"balance from 65","training.rule.before":"done before","training.rule.builder":"builder","training.rule.care":"care first","training.rule.first_try":"first try","training.rule.goes_on":"goes on","training.rule.harder":"harder","training.rule.instead":"instead","training.rule.itself":"the gap itself","training.rule.kept_up":"kept up","training.rule.pain":"pain","training.rule.pause":"after a pause","training.rule.practice":"practice","training.rule.range":"range","training.rule.show":"show it","training.rule.shows":"what training shows","training.rule.singles":"singles","training.rule.strict":"strict","training.rule.time_off":"time off","training.rule.two_for_two":"two for two","training.rule.until_tested":"until it is tested","training.rules":"The rules of training by name","training.rules_lead":"R: reps or seconds of one set of the movement's dose, else the school's. What decided about a line of a session stands beside it by this name.","training.says.balance":"From 65 an upright balance movement stands in every session; where something else is practised too, in half of its minutes at most.","training.says.before":"Whose own number still counts, from two reps or 5 s, is trained though something that it needs was never shown: kept up, as what builds another, in another's place, or itself; not where something it needs was tested and failed, not upside down and not with weight. It is not tested again before what it needs is shown.","training.says.builder":"What does not fit is built by what stands closest below it of its pattern that fits or is unknown.","training.says.care":"Under a restriction, where something hurts, and for a week or two after 14 days off, nothing is tried first that is harder than what is known of its pattern; after the days off nothing new with weight, and what is known comes first; on a part at 3 to 5 of 10 nothing new at all, unless it bears on it only lightly. Where holding the breath is left alone, one line a session with straight arms or a hold above 10 s. What is known below it is asked instead, or nothing.","training.says.first_try":"Of what is unknown two sets of a few reps or 5 s, at most two such lines a session, and not more than lines of what is known; four where little else is known, after 56 days off six; of push, pull, legs and core what has no line yet first. What is known of a group comes first; within 48 h of its group none, ways out on the hands or from a bar too. What the goal needs and did not stand in two weeks comes first from the second week on.","training.says.goes_on":"What was trained in the last 14 days on the way to the goal keeps its line, twice in seven days before others of its group, with as many sets as last time while the week has room; at least the two of what is kept up.","training.says.harder":"Six reps above the dose, or three times its seconds: the lowest open harder neighbour takes over. Where three times what is asked is known, the line says so: slower reps, and where nothing harder may take over, your coach for something harder (common practice, no source).","training.says.instead":"What rests or lacks its equipment gives way to what fits, of its pattern and arms, the fewest rungs away; of what is unknown only to what is on the way to the goal or an easier neighbour, and no higher; never to what bears more on a part that hurts.","training.says.itself":"What fits is trained itself: at least R reps in one set, but not more than 5 nor less than 2; a hold of 5 s; with weight on record, one plate. Reps: 0.7 of the best set, at most 12 (8 upside down, with weight, lowering or with straight arms), so two to four are in reserve; sets until the dose's volume is kept, 2 to 5. Holds: half of the best, at most 45 s, 30 to 90 s in all. Weight: the load chart's share for three reps more than are asked, of the lowest one-rep estimate of the set that says most; never less than what was lifted for three reps more, or is logged of two weeks for as many with two in reserve; what was done in full goes on with its reps. In reserve is what the records leave, four at most. A first load: a twentieth of body weight, or 0.8 of what was lifted of what it needs, at most the dose's (common practice, no source).","training.says.kept_up":"Two sets (from 60 three), at most twice in seven days, of what has no known gap: a third of the volume keeps what was built.","training.says.pain":"0 to 2 of 10 go on; at 3 to 5 nothing on that part on the day it began, and for 14 days nothing heavy, no stretch, nothing new, neither sets nor amounts grow; light and easier at 4 and 5, or if the next morning was worse, three lines of strength on it at most; above 5, in the neck from 3, or with any sign, it rests; under 18 at any pain in a wrist, an elbow, the lower back, a hip, a knee, an ankle or a foot. One tendon was studied, the rest is common practice, no source.","training.says.pause":"After a week or more: light and easier, then easier, then light; no steps.","training.says.practice":"Ways out, balance and turnovers are attempted while fresh, at most a quarter of the minutes, ended at the first loss of form: the dose, at most 0.7 of the best; without one, half of it.","training.says.range":"60 s in all, in holds of 10 to 30 s; what holds you back gets four sets. Two lines at most while pulling, pushing or legs have no time, and none where that would be their only line in seven days.","training.says.show":"What is known to reach its target is asked to show it once, at most two a session.","training.says.shows":"A session that fell short is not raised; two that fell short well below what was known are what is known now.","training.says.singles":"Who can do one to three full reps does three singles while fresh, beside what builds the movement.","training.says.strict":"Upside down, loaded, lowering, straight-arm, balance and rings: three sessions in full with two in reserve; then one rep, 2 s, or one plate if that is at most 5 % of what moves.","training.says.time_off":"14 to 27 days off: a week of half the sets and 0.8 of the amount; 28 to 55: two weeks, and a rung easier; from 56: what was before is unknown.","training.says.two_for_two":"Two reps over in the last set, two sessions running: one rep or 2 s more.","training.says.until_tested":"Three sets of the same until its number is in; one set more once it stood as often as earns a step.","training.session":"{day}, week {week}, {minutes} min","training.session_named":"{day}, week {week} {name}, {minutes} min","training.sets":"{sets} x {amount}","training.sign.giving_way":"gives way","training.sign.night":"wakes at night","training.sign.numb":"numb or tingling","training.sign.sharp":"sharp","training.sixes":"Added weight in sets of six and more; the heaviest single waits until you are 18.","training.the_rule":"Rule","training.then.did":"enter what you did","training.then.result":"enter the result","training.then.step":"if all was done: one step; else the same again","training.then.stop_clean":"in the second set hold on while it is clean and you breathe, stop before it shakes, and enter that number","training.then.stop_two":"in the second set go on while it is clean, stop with two in reserve, and enter that number","training.time.between.months":{"one":"about {low} to {n} month","other":"about {low} to {n} months"},"training.time.between.weeks":{"one":"about {low} to {n} week","other":"about {low} to {n} weeks"},"training.time.months":{"one":"about {n} month","other":"about {n} months"},"training.time.weeks":{"one":"about {n} week","other":"about {n} weeks"},"training.toward":"towards {movement}, {target}","training.unanswered":"No health answers are on file: answer them before the first set.","training.unknown":"not known","training.wall_near":"Balance and work on one leg beside a wall or a rail, a hand always near it.","training.warm_up":"Warm-up","training.weaker_first":"each side, weaker first","training.week_load":"Session load of seven days, effort x minutes: {total}; monotony {monotony}, strain {strain}","training.week_sets":"Hard sets this week: {list}","training.what_it_says":"What it says","training.why.after_pause":"week {n} after a pause","training.why.ask_harder":"ask your coach for something harder","training.why.asked":"{got}, {standard} is asked","training.why.before":"its own number counts, what it needs was not shown","training.why.best":"{got} in one set","training.why.both":"{why}; {more}","training.why.counts":"counts as {got}, from {movement}","training.why.days_off":{"one":"{n} day off","other":"{n} days off"},"training.why.easy":"{movement} is easy: {got}","training.why.easy_kept":"{movement} is easy","training.why.fell_short":"the last session fell short","training.why.goes_on":"trained lately on the way to the goal","training.why.in_full":"three sessions in full with two in reserve","training.why.instead":"for {movement} ({why})","training.why.load":"from the low end of the one-rep range","training.why.load_held":"{weight} was done in full","training.why.measure":"measure it and enter the number","training.why.measure_not":"go by feel until it can be measured","training.why.no_gap":"no known gap in {pattern}","training.why.nothing_known":"nothing is known of it","training.why.nothing_of_group":"nothing is known of the {group}","training.why.of_record":"0.8 of what was lifted","training.why.pain_hold":"{part} {score} of 10, nothing moves on","training.why.pain_less":"{part} {score} of 10, less and easier","training.why.pain_worse":"{part} {score} of 10, worse next morning","training.why.short_sets":"in short sets","training.why.show":"{got} is known; the target has to be shown","training.why.show_counts":"counts as {got}, from {movement}; the target has to be shown","training.why.show_far":"one easy set, entered as its test, is enough","training.why.single":"{got}: single reps while fresh","training.why.slow":"too easy to count: take 3 s down and 3 s up each","training.why.too_few":"{movement}: {got}, too few for sets","training.why.tried_anew":"long off: it is tried anew","training.why.two_over":"two over in the last set, two sessions running","training.why.until_more":"one set more until its number is in","training.why.until_number":"the same again until its number is in","training.why.waits":"{movement} is harder than what is known and waits","training.why.whole_body":"the whole body is kept up"});
'use strict';
'after page.js states.js';
(()=>{
const{targets,results,readiness,training}=globalThis.rungbook;
const{WHOLE}=readiness;
const{may,down,heavier,minutes}=training;
const{TURNOVER,LOADED,STRAIGHT,INVERTED}=training.TRAITS;
const{say}=globalThis.rungbook.words;
const BLOCKS=['practice','strength','kept up','range'];
const WEEK=7,DAYS=['mon','tue','wed','thu','fri','sat','sun'];
const LETTERS='ABCDEFGH',MOST_MONOTONY=globalThis.rungbook.health.LIMITS.monotony;
const isTrial=(rule)=>rule==='first try'||rule==='show it';
const isHard=(block)=>block==='strength'||block==='kept up';
const daysOf=({day,aWeek,weekdays,K})=>Array.from({length:K.weeks},(_,week)=>{
const all=Array.from({length:WEEK},(__,i)=>day + WEEK*week + i);
return weekdays.length?all.filter((on)=>weekdays.includes(DAYS[(((on + 3)% WEEK)+ WEEK)% WEEK])):Array.from({length:aWeek},(__,k)=>all[Math.floor((WEEK*k)/ aWeek)]);
});
const startOf=({log,day,K})=>{
const days=[...new Set(log.map(({on})=>on)),day];
for(let i=days.length - 1;i>0;i -=1)if(days[i]- days[i - 1]>=K.off[0])return days[i];
return days[0];
};
const diary=(c)=>{
const{tables,facts,K}=c;
const groups=new Map(),parts=new Map(),movements=new Map();
const note=(of,key,on)=>of.set(key,(of.get(key)||new Set()).add(on));
const did=(m,on,hard)=>{
if(hard&&facts.group(m)>=0)note(groups,facts.group(m),on);
tables.parts.forEach((_,part)=>{if((tables.heavy_on[m]>>part)&1)note(parts,part,on);});
};
const near=(of,key,on)=>[...(of.get(key)||[])].some((day)=>Math.abs(on - day)<K.apart);
for(const{movement,on}of c.log){
did(movement,on,true);
note(movements,movement,on);
}
return{
did,stood:(m,on)=>note(movements,m,on),
times:(m,on,days)=>[...(movements.get(m)||[])].filter((day)=>day<on&&on - day<=days).length,
trained:(group,on,days)=>[...(groups.get(group)||[])].some((day)=>day<on&&on - day<=days),
groupIsNear:(group,on)=>near(groups,group,on),
partIsNear:(m,on)=>tables.parts.some((_,part)=>((tables.heavy_on[m]>>part)&1)===1&&near(parts,part,on)),
};
};
const ceiling=(c,kind,full,sore)=>{
const{log,day,K,facts}=c,of=log.filter(({movement,on})=>facts.kind(movement)===kind&&day - on<=K.logged);
const sets=of.reduce((sum,{did})=>sum + did.length,0);
const[more,than]=K.rise,risen=of.length?(sets*WEEK*more)/(Math.max(WEEK,day - of[0].on)*than):0;
const most=K.cap[log.length&&day - log[0].on>=K.cap_days?1:0];
if(sore)return Math.min(most,down(Math.max((risen*than)/ more,K.keep_sets[0]*K.keep_week)));
return Math.min(most,down(Math.max(K.week_one,risen)*(more / than)**full));
};
const keepsItsLine=({K},{diary:log},of,on)=>of.goesOn&&log.times(of.movement,on,WEEK - 1)<K.keep_week;
const inTurn=(c,{all,balance},times,trained,keeps,isLater)=>{
const{facts,tables}=c;
const byWeight=(a,b)=>b.weight - a.weight||a.movement - b.movement||Number(a.single)- Number(b.single);
const first=all.filter((of)=>of.first).sort((a,b)=>Number(b===balance)- Number(a===balance)||byWeight(a,b));
const rest=all.filter((of)=>!of.first&&of.block!=='kept up');
const queues=training.by(rest,(of)=>(of.block==='strength'?facts.group(of.movement):-1 - BLOCKS.length + BLOCKS.indexOf(of.block)));
const late=({rule,block})=>(rule==='first try'&&isHard(block)?1:0),isBack=training.isBack(c)?1:0;
const rounds=[...queues.values()].flatMap((queue)=>queue.sort((a,b)=>Number(keeps(b))- Number(keeps(a))||times(a.movement)- times(b.movement)||late(a)- late(b)||byWeight(a,b)).map((of,round)=>({of,round})));
rounds.sort((a,b)=>a.round - b.round||isBack*(late(a.of)- late(b.of))||byWeight(a.of,b.of));
const place=({movement})=>tables.pattern_order.indexOf(tables.pattern[movement]);
const kept=all.filter((of)=>!of.first&&of.block==='kept up').sort((a,b)=>Number(keeps(b))- Number(keeps(a))||late(a)- late(b)||times(a.movement)- times(b.movement)||place(a)- place(b)||a.movement - b.movement);
const inGroup=[...training.by(kept,({movement})=>facts.group(movement)).values()],round=new Map(inGroup.flatMap((list)=>list.map((of,i)=>[of,i])));
kept.sort((a,b)=>Number(round.get(a))- Number(round.get(b)));
const served=new Set(all.filter(({block})=>block==='strength').map(({movement})=>facts.group(movement)));
const early=kept.find(({movement})=>!served.has(facts.group(movement))&&!trained(facts.group(movement)));
const of=(isFirst)=>rounds.filter(({round})=>(round===0)===isFirst).map((one)=>one.of);
const later=kept.filter((one)=>one!==early);
const order=[...first,...of(true),...(early?[early]:[]),...later.filter(keeps),...of(false),...later.filter((one)=>!keeps(one))];
const overdue=!isLater?[]:all.filter((one)=>one.gap&&!one.first&&times(one.movement)===0).sort(byWeight).slice(0,c.K.overdue_lines);
return[...first,...overdue,...order.filter((one)=>!one.first&&!overdue.includes(one))];
};
const draftOf=(c,work,week,on,order,mostRange,mostFirst)=>{
const{K,facts}=c,{diary:log}=work;
const warm=Math.min(K.warm_up_most,down(K.warm_up*c.minutes));
const state={left:c.minutes - warm,used:new Map(),sets:new Map(),firsts:0,shows:0,mostRange,mostFirst};
const lines=[];
const lost=[...work.lost];
for(const asked of order){
const line={...asked},of=line.candidate;
if(lines.some(({movement})=>movement===line.movement))continue;
const sameKind=({movement})=>facts.kind(movement)===facts.kind(line.movement);
if(line.eased&&facts.group(of.movement)>=0&&lines.some(sameKind))continue;
const no=barred(c,work,week,{on,line,lines,state});
if(no==='')continue;
const why=no||fitted(c,work,week,{on,line,lines,state});
if(why){
lost.push({movement:line.movement,why});
continue;
}
const counted=isHard(line.block)&&!isTrial(line.rule),kind=facts.kind(line.movement);
state.left -=line.minutes;
state.firsts +=line.rule==='first try'?1:0;
state.shows +=line.rule==='show it'?1:0;
state.used.set(line.block,(state.used.get(line.block)||0)+ line.minutes);
if(counted)state.sets.set(kind,(state.sets.get(kind)||0)+ line.sets);
lines.push(line);
}
return{lines,lost,state,without:(only)=>withoutTime(c,log,on,{lines,lost},only)};
};
const withoutTime=({facts,tables},log,on,{lines,lost},only)=>['pull','push','legs'].filter((name)=>{
const group=tables.group_names.indexOf(name),is=({movement})=>facts.group(movement)===group;
return lost.some((one)=>is(one)&&one.why.key==='left.time')&&!lines.some(is)&&!(only&&log.trained(group,on,WEEK - 1));
}).length;
const session=(c,work,week,on)=>{
const{K,facts}=c,{diary:log,tried}=work;
const order=inTurn(c,work,(m)=>log.times(m,on,K.turns),(group)=>log.trained(group,on,WEEK - 1),(of)=>keepsItsLine(c,work,of,on),on - c.day>=K.overdue).flatMap((of)=>{
const line=training.line(c,of,{on,first:work.first,before:week.before.get(of)||0,tried:tried.has(of.movement),isLimiter:of.gap!==null&&of.gap===work.limiter});
return line?[line]:[];
});
const lay=(most,mostFirst=work.mostFirst)=>draftOf(c,work,week,on,order,most,mostFirst);
let draft=lay(Infinity);
if(draft.without(false))draft=lay(K.range_lines);
for(let fewer=K.range_lines - 1;fewer>=0&&draft.without(true);fewer -=1){
const other=lay(fewer);
if(other.without(true)<draft.without(true))draft=other;
}
const known=Math.max(1,draft.lines.filter(({block,rule})=>block!=='range'&&rule!=='first try'&&rule!=='until it is tested').length);
if(!work.few&&draft.state.firsts>known)draft=lay(draft.state.mostRange,known);
const{lines,lost,state}=draft;
for(const line of lines){
const{candidate}=line,{movement,single}=candidate,m=line.movement;
log.stood(movement,on);
if(!week.lighter&&!line.sore)work.done.set(candidate,(work.done.get(candidate)||0)+ 1);
if(line.sore&&isHard(line.block)&&!isTrial(line.rule))week.sore.add(facts.kind(m));
if(isTrial(line.rule))tried.add(movement);
log.did(m,on,isHard(line.block)||single||facts.has(m,TURNOVER));
}
for(const[kind,sets]of state.sets)week.sets.set(kind,(week.sets.get(kind)||0)+ sets);
for(const line of week.lighter?lines.filter(({block})=>block!=='range'):[]){
state.left +=line.minutes;
line.sets=Math.ceil(line.sets / 2);
line.minutes=minutes(c,line);
state.left -=line.minutes;
}
lines.sort(inOrder(c));
const said=new Set(lines.map(({movement})=>movement));
return{on,week:week.number,name:'',lighter:week.lighter,minutes:c.minutes - state.left,warmUp:warmUp(c,lines),lines,leftOut:lost.filter(({movement})=>{const isNew=!said.has(movement);said.add(movement);return isNew;})};
};
const barred=(c,work,week,{on,line,lines,state})=>{
const{K,facts}=c,{diary:log}=work,{block,rule,movement:m,candidate:of}=line,hard=isHard(block);
const count=(name)=>lines.filter((other)=>other.block===name).length;
if((hard||of.single||facts.has(m,TURNOVER))&&facts.group(m)>=0&&log.groupIsNear(facts.group(m),on))return{key:'left.apart',values:{group:facts.group(m)}};
const tried=rule==='first try'?c.tables.try_group[m]:-1;
if(tried>=0&&log.groupIsNear(tried,on))return{key:'left.apart',values:{group:tried}};
if(log.partIsNear(m,on))return{key:'left.heavy',values:{}};
const itself=line.sore?training.tooMuchOn(c,m,on):-1,sore=line.sore&&itself<0?training.heavyBelow(c,m,of.movement):itself;
if(sore>=0)return{key:'left.sore',values:{part:sore}};
const isBreath=(one)=>isHard(one.block)&&(facts.has(one.movement,STRAIGHT)||(one.unit==='s'&&one.amount>K.long_hold));
if(training.sparesBreath(c)&&isBreath(line)&&lines.filter(isBreath).length>=K.breath_lines)return{key:'left.breath',values:{}};
if(rule==='show it'&&work.tried.has(of.movement))return{key:'left.waits',values:{}};
if(rule==='show it'&&(week.lighter||state.shows>=K.shows))return{key:'left.show_turns',values:{}};
if(rule==='first try'&&(week.lighter||state.firsts + toTry(c,work,{on,line,lines,state})>=state.mostFirst))return{key:'left.try_turns',values:{}};
if(block==='kept up'&&(log.times(of.movement,on,WEEK - 1)>=K.keep_week||(of.goesOn?count('strength')+ count('kept up')>=K.lines_most:lines.filter((other)=>other.block==='kept up'&&!other.candidate.goesOn).length>=Math.max(K.keep_lines,K.lines - count('strength')))))return '';
if(block==='strength'&&count('strength')>=K.lines)return{key:'left.turns',values:{}};
if(block==='range'&&!of.first&&count('range')>=state.mostRange)return{key:'left.time',values:{}};
if(line.worse&&hard&&lines.filter((other)=>other.worse&&isHard(other.block)).length>=K.sore_lines)return{key:'left.enough',values:{}};
return null;
};
const toTry=({facts,tables},{all,tried,diary:log},{on,line,lines})=>{
const waiting=tables.group_names.map((_,group)=>group).filter((group)=>{
const hard=all.filter(({block,movement})=>isHard(block)&&facts.group(movement)===group);
return hard.every(({rule})=>rule==='first try')&&hard.some(({movement})=>!tried.has(movement))&&!log.groupIsNear(group,on)
&&!lines.some(({block,movement})=>isHard(block)&&facts.group(movement)===group);
});
return isHard(line.block)&&waiting.includes(facts.group(line.movement))?0:waiting.length;
};
const fitted=(c,work,week,{on,line,lines,state})=>{
const{K,facts}=c,hard=isHard(line.block),kind=facts.kind(line.movement);
if(hard&&!isTrial(line.rule)){
const full=Math.max(0,Math.max(0,week.full -(week.lighter?1:0))-(work.sore.get(kind)||0)),here=state.sets.get(kind)||0;
const rest=ceiling(c,kind,full,line.sore)-(week.sets.get(kind)||0),lately=line.candidate.goesOn?training.didLately(c,line.movement):null;
const waits=(of)=>facts.kind(of.movement)===kind&&isHard(of.block)&&keepsItsLine(c,work,of,on)&&!lines.some((other)=>other.movement===of.movement);
const share=Math.ceil(rest / Math.min(week.toCome,K.per_week))- here;
const room=lately?Math.max(share,Math.min(training.setsOf(c,lately),rest - here)):work.all.some(waits)?Math.min(share,Math.max(K.fewest,share - K.fewest)):share;
if(room<K.fewest)return{key:'left.sets',values:{}};
line.sets=Math.min(line.sets,room);
}
const cap=hard?state.left:Math.min(state.left,c.minutes*K.block -(state.used.get(line.block)||0));
const least=line.block==='practice'?K.practice_fewest:K.fewest;
const shares=line.candidate===work.balance&&work.all.some((of)=>of.block==='practice'&&of!==work.balance),most=shares?Math.min(cap,(c.minutes*K.block)/ 2):cap;
while(minutes(c,line)>most&&line.rule!=='show it'&&line.sets>least)line.sets -=1;
line.minutes=minutes(c,line);
return line.minutes>cap?{key:'left.time',values:{}}:null;
};
const inOrder=(c)=>{
const{facts,tables}=c;
const key=({block,movement:m,candidate:{single,weight}})=>{
const at=BLOCKS.indexOf(block);
if(block==='practice')return[at,facts.word(m)==='exit'?0:1,single?1:0,-weight,m];
if(block==='range')return[at,-weight,m];
return[at,facts.has(m,STRAIGHT)||facts.has(m,INVERTED)?0:1,tables.pattern_order.indexOf(tables.pattern[m]),-tables.stage[m],m];
};
return(a,b)=>{
const[x,y]=[key(a),key(b)],i=x.findIndex((n,at)=>n!==y[at]);
return i<0?0:x[i]- y[i];
};
};
const gently=(c)=>{
const{tables,found}=c,rests=new Set(found.causes.flatMap(({part})=>(part===null?[]:[part])));
const hurts=training.newestPains(c).filter(({score,part})=>score>0&&!rests.has(part)).map(({part})=>part);
const named=(all)=>all.map((part)=>tables.parts[part]).sort().map((part)=>say(`body.${part.replace('-','_')}`)).join(say('list.separator'));
const above=Math.min(...hurts.map((part)=>readiness.goesOnTo(c.model,c.person,part,c.day)));
return[...(rests.size?[say('training.leave_out',{parts:named([...rests])})]:[]),...(hurts.length?[say('training.go_gently',{parts:named(hurts),n:above})]:[])].join(' ');
};
const warmUp=(c,lines)=>{
const{tables}=c,classes=new Set(lines.flatMap(({movement})=>tables.cautions[movement].map((i)=>tables.classes[i])));
const of=Object.keys(tables.warm_up).filter((key)=>key!=='always'&&classes.has(key)).sort();
const text=['always',...of].flatMap((key)=>tables.warm_up[key]||[]);
const first=lines.find(({block})=>isHard(block));
const easy=first?{movement:first.movement,amount:inWords({...first,sets:1,amount:Math.max(1,Math.floor(first.amount / 2)),load:null,side:null})}:null;
return{sore:gently(c),text,easy};
};
const plan=(model,person,found,day)=>{
const c=training.begin(model,person,found,day),{K,tables}=c;
const goal=training.goalOf(c),gaps=goal?training.gaps(c,goal):new Map();
const{all,lost,limiter,balance}=training.candidates(c,goal,gaps);
const weeks=daysOf(c),start=startOf(c),every=Math.max(1,Math.floor(tables.dose_of_school.lighter_every / WEEK));
const known=all.filter(({rule})=>!isTrial(rule)&&rule!=='range').length;
const work={all,lost,limiter,balance,first:(weeks.flat()[0]||day),mostFirst:known>=K.known?K.first:training.wasLongOff(c)?K.first_back:K.first_new,few:known<K.known,diary:diary(c),tried:new Set(),done:new Map(),sore:new Map()};
const sessions=[];
const weekSets=new Map();
let before=new Map(),full=0,retest=(null);
weeks.forEach((days,w)=>{
const lighter=(Math.floor((day + WEEK*w - start)/ WEEK)+ 1)% every===0;
if(!lighter)before=new Map(work.done);
const week={number:w + 1,lighter,before,full,sets:new Map(),sore:new Set(),toCome:0};
days.forEach((on,i)=>{const of=session(c,work,{...week,toCome:days.length - i},on);if(!sessions.length||of.lines.length)sessions.push(of);});
if(!lighter)full +=1;
if(!lighter)for(const kind of week.sore)work.sore.set(kind,(work.sore.get(kind)||0)+ 1);
if(lighter)retest=(days.length?days[days.length - 1]:day + WEEK*w)+ 1;
});
for(const{movement:m,sets,block,rule}of sessions.filter(({week})=>week===1).flatMap(({lines})=>lines)){
if(isHard(block)&&!isTrial(rule))weekSets.set(c.facts.kind(m),(weekSets.get(c.facts.kind(m))||0)+ sets);
}
named(sessions);
return{trainee:c,goal,gaps,limiter,sessions,retest:retest===null?null:{on:retest,tests:retests(c,goal,gaps,retest)},weekSets};
};
const named=(sessions)=>{
const letters=new Map();
for(const of of sessions){
const key=of.lines.filter(({block})=>block==='strength').map(({movement})=>movement).sort((a,b)=>a - b).join();
if(!letters.has(key))letters.set(key,LETTERS[Math.min(LETTERS.length - 1,letters.size)]);
of.name=String(letters.get(key));
}
if(letters.size<2)for(const of of sessions)of.name='';
};
const retests=(c,goal,gaps,on)=>{
const{K,tables,facts,day}=c,heaviest=[...gaps.values()].sort(heavier),last=tables.results_last_days;
const old=(goal?goal.chain:c.model.order).flatMap((m)=>{
const newest=Math.max(...(c.tests.get(m)||[]).map((of)=>of.on));
return day - newest<=last&&on - newest + K.tests_ahead>last?[{m,newest}]:[];
}).sort((a,b)=>a.newest - b.newest||a.m - b.m);
const all=[...heaviest.filter(({share})=>share===WHOLE).map(({movement})=>movement),...old.map(({m})=>m),...heaviest.map(({movement})=>movement)];
const out=[];
const kinds=new Map();
for(const m of new Set(all)){
const kind=facts.kind(m),known=kinds.get(kind)||0;
const tests=may(c,m)&&training.isOpen(c,m)&&training.hasAll(c,m)&&!((c.minor||(training.isBack(c)&&training.now(c,m)===null))&&facts.has(m,LOADED))&&!training.ease(c,m,on,on).sore&&training.sorePart(c,m)<0;
if(out.length>=K.tests||!tests||(!facts.isMobility(m)&&known>=K.tests_kind))continue;
kinds.set(kind,known + 1);
out.push(m);
}
return out;
};
const gotOf=({sets,amount,unit,seconds,load})=>({
measure:unit==='reps'?targets.REPS:targets.TIME,atMost:false,sets,amount:amount*targets.ONE,seconds:unit==='reps'&&seconds?seconds*targets.ONE:0,
unit:load===null?targets.NO_LOAD:targets.MASS,load:load||0,hits:0,of:0,
});
const inWords=(line)=>targets.words(gotOf(line),units(),line.side!==null);
const units=()=>(globalThis.rungbook.page?globalThis.rungbook.page.units.ofSchool:'metric');
const nameOf=(tables,m)=>{const mark=tables.marks[tables.mark[m]];return `${tables.names[m]}${mark?` [${mark.signal}]`:''}`;};
const valuesOf=(c,{movement,part,pattern,group,cls,got,standard,weight,why,...rest})=>{
const{tables,model}=c;
const what=[movement===undefined?'':nameOf(tables,movement),part===undefined?'':say(`body.${tables.parts[part].replace(/[ -]/g,'_')}`),
pattern===undefined?'':say(`pattern.${tables.patterns[pattern].replace(/[ -]/g,'_')}`),cls===undefined?'':tables.class_names[cls]].find((of)=>of!=='')||'';
return{
...rest,what,movement:what,part:what,pattern:what,group:group===undefined?'':say(`training.group.${tables.group_names[group]}`),got:got?targets.words(got,units()):'',
standard:standard===undefined?'':targets.words(model.target(standard),units()),weight:weight===undefined?'':targets.massInWords(weight,true,units()),why:why?whyOf(c,why):'',
};
};
const whyOf=(c,{key,values})=>say(`training.${key}`,valuesOf(c,values));
const isReached=(goal)=>goal!==null&&goal.route!==null&&goal.route.movements.length===0;
const isRefused=(person,day)=>globalThis.rungbook.health.saysOn(person.screened,day,person.born)==='ask';
const conditions=({trainee:c,gaps})=>[
...(c.person.screened?[]:[say('training.unanswered')]),
...(c.young?[say('training.coach_present')]:[]),
...(c.age!==null&&c.age>=c.K.balance_age?[say('training.wall_near')]:[]),
...(c.minor&&[...gaps.keys()].some((m)=>c.facts.has(m,LOADED))?[say('training.sixes')]:[]),
...(training.sparesBreath(c)?[say('training.breathe_through')]:[]),
];
const timeOf=({training:K},{low:from,high:to})=>{
const months=(path)=>Math.ceil(path / 2000 / K.weeks_a_month);
if(to===0)return null;
const[few,many]=[from,to].map((path)=>Math.max(1,Math.ceil(Math.floor((path + 100)/ 200)/ 10)));
const[unit,low,n]=many<=K.said_in_weeks?['weeks',few,many]:['months',Math.max(1,months(from)),months(to)];
return low===n?say(`training.time.${unit}`,{n}):say(`training.time.between.${unit}`,{low,n});
};
const painWords=(tables,pain,above)=>{
const{part,score,on,signs,nextMorning}=pain;
const name=say(`body.${tables.parts[part].replace('-','_')}`);
let out=say('morning.pain',{part:name,score,day:results.dayText(on)});
if(nextMorning!==null&&nextMorning>score)out=say('morning.pain_morning',{pain:out,n:nextMorning});
if(signs.length)out=say('morning.pain_signs',{pain:out,signs:signs.map((sign)=>say(`training.sign.${sign.replace('-','_')}`)).join(say('list.separator'))});
return above===null?out:say('morning.pain_stops',{pain:out,part:name,until:readiness.untilWords(pain,above)});
};
const clinician=(c)=>c.found.causes.filter(({kind})=>kind==='pain').flatMap(({entry})=>c.person.pains.filter((pain)=>pain.entry===entry)).map((pain)=>painWords(c.tables,pain,readiness.goesOnTo(c.model,c.person,pain.part,c.day)));
const care=({tables},{lines})=>[['alone',say('training.not_alone')],['breath-holding',say('training.breathe')]].flatMap(([id,asks])=>{
const cls=tables.classes.indexOf(id),movements=[...new Set(lines.map(({movement})=>movement).filter((m)=>tables.cautions[m].includes(cls)))];
return movements.length?[{asks,movements}]:[];
});
const lastWeek=(sessions,today)=>{
const days=[0,0,0,0,0,0,0];
for(const{effort,minutes:long,on}of sessions)if(on<=today&&today - on<WEEK)days[today - on]+=effort*long;
const total=days.reduce((all,day)=>all + day,0);
if(total<=0)return null;
const mean=total / WEEK,variance=days.reduce((all,day)=>all +(day - mean)*(day - mean),0)/ WEEK;
const monotony=variance>0?Math.min(MOST_MONOTONY,mean / Math.sqrt(variance)):MOST_MONOTONY;
return{total,monotony,strain:total*monotony};
};
Object.assign(training,{lastWeek,timeOf,painWords,clinician,care,plan,gotOf,inWords,whyOf,valuesOf,conditions,isRefused,isReached,nameOf});
})();
