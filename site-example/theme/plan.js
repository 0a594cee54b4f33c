'use strict';self.rungbookIs+="plan.js=1a285836 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"aim.act_doubt":"First look whether this is right: {list}.","aim.act_falls":"Talk over the risk of falls with a clinician first: {movement}, {got}. At your age under {least} is a warning.","aim.act_meanwhile":"Until then: {list}.","aim.act_missing":"To be had first: {list}.","aim.goal":"Your goal","aim.nearest":"the nearest one","aim.nearest_again":"The nearest goal is {goal}. First you need {movement}, {target}. {got}.","aim.nearest_needs":"The nearest goal is {goal}. First you need {movement}: you have {got}, it asks {target}.","aim.nearest_shown":"The nearest goal is {goal}. First you show {movement}, once: {target}. What is known: {got}.","aim.nearest_unknown":"The nearest goal is {goal}. First you need {movement}, {target}. No number yet.","aim.needs":"For {goal} you first need {movement}: you have {got}, it asks {target}.","aim.needs_again":"For {goal} you first need {movement}, {target}. {got}.","aim.needs_shown":"For {goal} you first show {movement}, once: {target}. What is known: {got}.","aim.needs_unknown":"For {goal} you first need {movement}, {target}. No number yet.","aim.nothing":"Nothing on the way to {goal} can be trained now. What stands below is for the rest of the body.","aim.nothing_but":"No step of the way to {goal} can be trained as it is now; what comes nearest stands in its place.","aim.reached":"{goal} is yours. Choose the next goal.","aim.rule_why":"{rule}: {why}","aim.session":"{day}: {minutes} minutes","aim.session_lighter":"{day}: a lighter session, {minutes} minutes","aim.session_named":"{day}: session {name}, {minutes} minutes","aim.sets_of":"{pattern} {n}","aim.sets_straight":"{pattern} with straight arms {n}","aim.step":"{got} of {target}","aim.step_again":"{target}; {got}","aim.step_shown":"show {target}, once ({got})","aim.step_unknown":"{target}, no number yet","aim.towards":"Towards {movement}, {target}","aim.towards_itself":"Towards {target}","aim.week":"Week {n}","aim.week_lighter":"Week {n}, lighter","hurts.now_spine":"Back or neck pain with trouble holding or passing water or stool, numbness between the legs, weakness of both legs, or growing weakness of an arm.","list.and":"{before} and {last}","list.or":"{before} or {next}","morning.begin_left":"Begin with the left, one set more of it: {list}.","morning.begin_right":"Begin with the right, one set more of it: {list}.","morning.doubt_of":"{got} of {movement}","morning.emergency_for":"{pain} Call the emergency number for this: {sign}","morning.left_right":"left {left}, right {right}","morning.missing_of":"{gear} (stops {list})","morning.pain":"{part} hurts {score} of 10 ({day})","morning.pain_morning":"{pain}, {n} next morning","morning.pain_signs":"{pain}, {signs}","morning.pain_stops":"{pain}. Ask a clinician before you train the {part} again; it rests until {until}.","morning.side_of":"{movement} ({got})","morning.time_off":{"one":"A week of less, no test: nothing logged for {n} day.","other":"A week of less, no test: nothing logged for {n} days."},"morning.time_off_long":{"one":"Begin anew, old numbers of what was trained do not count: nothing logged for {n} day.","other":"Begin anew, old numbers of what was trained do not count: nothing logged for {n} days."},"morning.time_off_longer":{"one":"Two weeks of less and easier, no test: nothing logged for {n} day.","other":"Two weeks of less and easier, no test: nothing logged for {n} days."},"shared.and_more":{"one":"and {n} more","other":"and {n} more"},"target.held_bottom":"{n} s held at the bottom","target.held_top":"{n} s held at the top","target.tempo":"tempo {tempo}","training.answer_first":"Answer the health questions on the page “Before you start” first.","training.answer_with_parent":"Answer the health questions on the page “Before you start” first, together with a parent or guardian.","training.ask":"The health questions said: ask a clinician first. Until then there is no plan and no test.","training.breathe":"Breathe out with each effort, do not hold the breath","training.breathe_through":"Keep breathing in every rep and every hold; stop before you strain.","training.child":"Under 12 there is no plan and no test from here: only with a coach in person.","training.coach_present":"With your coach present and a parent’s consent.","training.comes_to":"{target} ({weight})","training.each_side":"each side","training.easy_set":"One easy set of {movement}: {amount}.","training.easy_set_bare":"One easy set of {movement}: {amount}, without added weight.","training.go_gently":"Go gently with what hurts: {parts}. Stop an exercise when its pain reaches {n}.","training.go_gently_more":"Go gently with what hurts: {parts}. Stop an exercise as soon as it hurts more than when you began.","training.group.core":"core","training.group.legs":"legs","training.group.pull":"pull","training.group.push":"push","training.leave_out":"These rest: {parts}. Leave out whatever you feel there, or that brings on tingling or numbness.","training.left.apart":"{group} was trained less than 48 h before","training.left.below":"waits for what is paused","training.left.beyond":"no room in these four weeks","training.left.breath":"one straight-arm or long hold a session while holding the breath is left alone","training.left.careful":"no number yet; nothing like it is tried first while something hurts, rests, or you come back from time off","training.left.enough":"enough on a part that hurts","training.left.equipment":"equipment is missing","training.left.heavy":"heavy work on the same part less than 48 h before","training.left.lately":"new, and too much for what hurt or rested lately: {what}","training.left.light":"light training only","training.left.minor":"waits until you are 18","training.left.not_shown":"what it needs was not shown","training.left.overhead":"nothing overhead while it hurts: {what}","training.left.pain":"paused for pain: {what}","training.left.paused":"rests: {what}","training.left.restricted":"left alone for: {what}","training.left.served":"another line today: {group}","training.left.sets":"enough sets of this kind for now","training.left.show_turns":"to be shown in another session","training.left.sore":"nothing new on it while it hurts: {what}","training.left.spared":"left alone while it hurts: {what}","training.left.stands_in":"nothing harder takes the place of what hurts or rests","training.left.tested":"its test stands in its place","training.left.time":"no time today","training.left.too_hard":"too hard yet, and nothing easier is open","training.left.try_turns":"no number yet, to be tried in another session","training.left.turns":"comes in another session","training.left.waits":"waits for its result","training.left.waits_for":"waits for {movement}, which begins anew","training.left_of":"{movements} ({why})","training.more_left":"one set more left","training.more_right":"one set more right","training.no_answers":"No health answers are on file. Until they are in, there is no plan.","training.no_goal":"Every skill is yours: choose a new one.","training.not_alone":"Not alone, somebody stands by","training.reserve":"{n} in reserve","training.reserve_most":"{n} or more in reserve","training.rest_day":"Your last session went to failure less than 48 h ago. A rest day would do as well today.","training.rest_min":"rest {n} min","training.rest_s":"rest {n} s","training.retest":"Test on {day}: {list}","training.rule.balance":"balance from 65","training.rule.before":"done before","training.rule.builder":"what builds it","training.rule.care":"care first","training.rule.first_try":"try it","training.rule.goes_on":"goes on","training.rule.harder":"harder","training.rule.instead":"instead","training.rule.itself":"the step itself","training.rule.kept_up":"kept up","training.rule.pain":"pain","training.rule.pause":"after a pause","training.rule.practice":"practice","training.rule.range":"range","training.rule.show":"show it","training.rule.shows":"what training shows","training.rule.singles":"singles","training.rule.strict":"strict","training.rule.time_off":"time off","training.rule.two_for_two":"two for two","training.rule.until_tested":"until its number is in","training.sets":"{sets} x {amount}","training.sets_by_number":"{sets} x by its number ({amount} until it is in)","training.sign.giving_way":"gives way","training.sign.night":"wakes at night","training.sign.numb":"numb or tingling","training.sign.sharp":"sharp","training.then.did":"enter what you did","training.then.hold_most":"in the second set hold on while it is clean and you breathe, for {n} s at most, stop before it shakes, and enter that number","training.then.result":"enter the result","training.then.same":"the same again","training.then.step":"all sets done with two to spare, two or three sessions running: a little more; until then the same again","training.then.stop_most":"in the second set go on while it is clean, to {n} reps at most, stop when only two more would go, and enter that number","training.then.stop_two":"in the second set go on while it is clean, stop when only two more would go, and enter that number","training.time.between.months":{"one":"about {low} to {n} month","other":"about {low} to {n} months"},"training.time.between.weeks":{"one":"about {low} to {n} week","other":"about {low} to {n} weeks"},"training.time.months":{"one":"about {n} month","other":"about {n} months"},"training.time.weeks":{"one":"about {n} week","other":"about {n} weeks"},"training.unanswered":"No health answers are on file: answer them before the first set.","training.unknown":"not known","training.until_lower":"What bears on a part that hurts goes up only after a newer entry of {n} or less; enter one.","training.until_seen":"Nothing in this plan goes up until a clinician has seen what is numb, sharp, gives way or wakes you, and a newer entry is without it.","training.wall_near":"Balance and work on one leg beside a wall or a rail, a hand always near it.","training.way.age":"{movement} is shown from {n} on","training.way.equipment":"{movement} needs what is not at hand ({gear})","training.way.falls":"you talk over the risk of falls with a clinician first","training.way.none":"How long is not said: {why}.","training.way.then":"It takes {time}, then {why}.","training.way.then_waits":"It takes {time}, then {movement} waits: {why}.","training.way.whole":"The whole way takes {time}.","training.weaker_first":"each side, weaker first","training.week_sets":"Hard sets this week: {list}","training.why.after_pause":"week {n} after a pause","training.why.ask_harder":"ask your coach for something harder","training.why.asked":"{got}, {standard} is asked","training.why.back_after":{"one":"{n} day off, on the way back to what it was","other":"{n} days off, on the way back to what it was"},"training.why.before":"your number of it counts, though what comes before it was never shown","training.why.best":"{got} in one set","training.why.both":"{why}; {more}","training.why.counts":"counts as {got}, from {movement}","training.why.days_off":{"one":"{n} day off","other":"{n} days off"},"training.why.easy":"{movement} is easy: {got}","training.why.easy_kept":"{movement} is easy","training.why.fell_short":"the last session fell short","training.why.goes_on":"trained lately on the way to the goal","training.why.hurt":"{part} was at {score} of 10, better since: nothing grows yet","training.why.if_done":{"one":"a plate more, if all before it was done in full; every set stops with {n} left","other":"a plate more, if all before it was done in full; every set stops with {n} left"},"training.why.in_full":"three sessions in full with two in reserve","training.why.instead":"in the place of {movement} ({why})","training.why.load":"by the lowest estimate of what you can lift once","training.why.load_held":"{weight} was done in full","training.why.measure":"measure it and enter the number","training.why.measure_again":"{got}, measured the old way: measure it again","training.why.measure_not":"go by feel until it can be measured","training.why.no_gap":"keeps your {pattern}","training.why.not_shown":"{movement}: {got}; what it needs was not all shown","training.why.nothing_known":"you have no number of it yet","training.why.nothing_of_group":"you have no {group} number yet","training.why.of_record":"0.8 of what you lifted","training.why.pain_hold":"{part} {score} of 10, nothing grows, only as far as it hurts no more","training.why.pain_least":"{part} {score} of 10, half as much and easier, only as far as it hurts no more","training.why.pain_less":"{part} {score} of 10, less and easier, only as far as it hurts no more","training.why.pain_near":"{part} {score} of 10: less, and of a form that does not bear on it","training.why.pain_worse":"{part} {score} of 10, worse next morning, less and easier, only as far as it hurts no more","training.why.raised":"hands raised, since lying on the belly is left alone","training.why.short_sets":"in short sets","training.why.show":"{got} is known; the target has to be shown","training.why.show_counts":"counts as {got}, from {movement}; the target has to be shown","training.why.show_far":"if that is true, one easy set, entered as its test, is enough","training.why.single":"{got}: single reps while fresh","training.why.slow":"too easy to count, if the number is true: take 3 s down and 3 s up each","training.why.so_far":"{got} so far","training.why.too_few":"{movement}: {got}, too few for sets","training.why.tried_anew":"after so long off it begins anew","training.why.two_over":"two over in the last set, two sessions running","training.why.until_number":"by its number once that is in; the same again until then","training.why.waits":"{movement} is harder than what you have shown and waits","training.why.whole_body":"so that the whole body is trained","training.write_answers":"A coach writes what follows from the answers, clear, light or ask, into the results file, such as: {example}"});
(()=>{
const{targets,readiness}=globalThis.rungbook;
const{by,isOwned,isOpen,isHolding,takesBack,stresses,bearsOn,whatOf,newestPains,ended,easedPains,isEasedOn,lately,pulledNerve,waitsForAge,LOADED}=globalThis.rungbook.held;
const{ONE,REPS,TIME}=targets;
const{LIMITS}=globalThis.rungbook.health;
const{UNKNOWN,GUARDED,LOWERING,WHOLE}=readiness;
const STRAIGHT=1,STRICT=2,TURNOVER=4,OWN_DOSE=32,UPRIGHT=64,INVERTED=128,OVER_FLOOR=256;
const NEVER=-Infinity;
const facts=(model)=>{
const{tables}=model,school=tables.dose_of_school;
const measure=(m)=>model.target(m).measure;
const has=(m,trait)=>(tables.traits[m]&trait)!==0;
const word=(m)=>tables.patterns[tables.pattern[m]];
const harder=tables.ids.map(()=>[]);
tables.easier.forEach((list,m)=>list.forEach((low)=>harder[low].push(m)));
const dose=tables.dose.map((own,m)=>{
if(own)return{sets:own[1],each:Math.floor(own[2]/ ONE),all:own[1]*own[2],seconds:own[3],unit:own[4],load:own[5]};
const[sets,each]=measure(m)===TIME?[school.hold_sets,school.hold_seconds]:[school.sets,school.reps];
return{sets,each,all:sets*each*ONE,seconds:0,unit:0,load:0};
});
return{
measure,has,harder,word,
dose:(m)=>dose[m],
seconds:(m)=>dose[m].seconds||model.target(m).seconds,
isCounted:(m)=>measure(m)===REPS||measure(m)===TIME,
isMobility:(m)=>word(m)==='mobility',
isPractice:(m)=>word(m)==='balance'||word(m)==='exit'||has(m,TURNOVER),
group:(m)=>tables.groups[tables.pattern[m]],
kind:(m)=>2*tables.pattern[m]+(has(m,STRAIGHT)?1:0),
isByMax:(m)=>has(m,LOADED)&&measure(m)===REPS&&!model.is(m,LOWERING)&&word(m)!=='exit',
};
};
const known=new WeakMap();
const factsOf=(model)=>{
const kept=known.get(model)||facts(model);
known.set(model,kept);
return kept;
};
const begin=(model,person,found,day)=>{
const{tables}=model,K=tables.training;
const log=person.trained.filter(({on,did})=>on<day&&did.length>0).sort((a,b)=>a.on - b.on)
.map((of)=>({...of,load:readiness.mass(of.unit,of.load,person.bodyWeight)||0}));
const school=tables.dose_of_school,train=person.train||{};
const age=globalThis.rungbook.results.ageOn(person.born,day);
const under=(years)=>age!==null&&age<years;
const c={
model,tables,K,person,found,day,log,
facts:factsOf(model),
tests:by(person.tested,({movement})=>movement),trained:by(log,({movement})=>movement),
daysOf:by(log,({movement})=>tables.pattern[movement]),
aWeek:Math.min(7,Math.max(1,train.a_week||school.a_week)),minutes:train.minutes||K.minutes,weekdays:train.days||[],
age,minor:under(LIMITS.adult),young:under(LIMITS.youth),memo:{own:[],now:[],foot:[],fits:[],below:[],builders:[],ended:null,care:null,back:null,before:[],reach:[],lately:[]},
};
return c;
};
const foot=(c,pattern)=>{
const{foot:kept}=c.memo;
if(kept[pattern]!==undefined)return kept[pattern];
const word=c.tables.patterns[pattern];
const days=word==='exit'||word==='mobility'?[]:[...(c.daysOf.get(pattern)||[]).map(({on})=>on),c.day];
kept[pattern]=days.reduce((last,on,i)=>(i + 1<days.length&&days[i + 1]- on>=c.K.off[2]?on:last),NEVER);
return kept[pattern];
};
const hasAll=({tables,person:{have}},m)=>have===null||tables.equipment[m].every((oneOf)=>oneOf.some((word)=>have.includes(word)));
const isAtHand=({tables,facts:of,person:{have}},m)=>have===null||tables.equipment[m].every((oneOf)=>oneOf.some((word)=>have.includes(word)||(of.isMobility(m)&&tables.measures.includes(word))));
const wasDone=(c,m)=>{
const{memo:{before:kept},K,facts:of,model}=c;
if(kept[m]===undefined){
const asked=c.found.needs[m]===UNKNOWN&&of.isCounted(m)&&!model.is(m,GUARDED)&&!isOwned(c,m)&&hasResult(c,m),is=asked?own(c,m):null;
kept[m]=is!==null&&whole(is)>=(of.measure(m)===TIME?K.hold_fits:K.fits[0]);
}
return kept[m];
};
const wasLifted=(c,m)=>{
if(c.found.needs[m]!==UNKNOWN||isOwned(c,m)||c.minor||!c.facts.isByMax(m)||!hasResult(c,m))return false;
const is=own(c,m);
return is!==null&&is.load>0;
};
const lighterStep=(c,m)=>{
const fine=(low)=>{const is=c.facts.isByMax(low)&&may(c,low)?now(c,low):null;return is!==null&&is.load>0;};
const[low]=c.tables.easier[m].filter(fine).sort((a,b)=>c.tables.stage[b]- c.tables.stage[a]||a - b);
return low===undefined?-1:low;
};
const may=(c,m)=>c.found.reached[m]===1&&could(c,m)&&pulledNerve(c,m)<0;
const could=(c,m)=>(isOpen(c,m)||wasDone(c,m))&&isAtHand(c,m);
const isOnlyUnsure=(c,m)=>c.found.needs[m]===UNKNOWN&&!isOwned(c,m)&&!c.model.is(m,GUARDED)&&c.found.reached[m]===1&&isAtHand(c,m)&&sorePart(c,m)<0;
const hasSign=(c)=>newestPains(c).some(({signs})=>signs.length>0);
const sorePart=(c,m)=>{
const pain=newestPains(c).find((one)=>bearsOn(c,m,one.part)&&isHolding(one));
return pain?pain.part:-1;
};
const touchedPart=(c,m)=>{
const pain=newestPains(c).find((one)=>stresses(c,m,one.part)&&isHolding(one));
return pain?pain.part:-1;
};
const heavyBelow=(c,m,than)=>{
const pain=newestPains(c).find((one)=>isHolding(one)&&bearsOn(c,m,one.part)&&((c.tables.heavy_on[than]>>one.part)&1)===1);
return pain?pain.part:-1;
};
const isHeavyOnSore=(c,m)=>heavyBelow(c,m,m)>=0;
const overheadOn=(c,m)=>{
const{tables,K}=c,part=tables.parts.indexOf('shoulder');
if(!tables.cautions[m].includes(tables.classes.indexOf('overhead'))||!bearsOn(c,m,part))return -1;
const less=newestPains(c).some((pain)=>pain.part===part&&isHolding(pain)&&takesBack(c,pain));
return less?part:-1;
};
const bearsMore=(c,m,than)=>{
const heavy=(of,part)=>((c.tables.heavy_on[of]>>part)&1)===1;
return newestPains(c).some((pain)=>isHolding(pain)&&((bearsOn(c,m,pain.part)&&!bearsOn(c,than,pain.part))||(heavy(m,pain.part)&&!heavy(than,pain.part))));
};
const isBackLately=({log,day,K})=>{
const days=[...log.map(({on})=>on),day];
for(let i=days.length - 1;i>0;i -=1)if(days[i]- days[i - 1]>=K.off[0])return day - days[i]<K.off_for[days[i]- days[i - 1]>=K.off[1]?1:0];
return false;
};
const isBack=(c)=>{
if(c.memo.back===null)c.memo.back=isBackLately(c);
return c.memo.back;
};
const wasLongOff=(c)=>c.tables.patterns.some((_,pattern)=>foot(c,pattern)!==NEVER);
const isRestricted=({found,tables},name)=>found.causes.some(({kind,cls})=>kind==='restrict'&&cls!==null&&tables.classes[cls]===name);
const sparesBreath=(c)=>isRestricted(c,'breath-holding');
const gentlest=(c,m)=>{
if(!((c.age!==null&&c.age>=c.K.balance_age)||isRestricted(c,'supine')))return m;
const fine=(low)=>may(c,low)&&now(c,low)===null&&!isTooNew(c,low)&&!c.model.is(low,LOWERING);
const[low]=c.tables.easier[m].filter(fine).sort((a,b)=>c.tables.stage[a]- c.tables.stage[b]||a - b);
return low===undefined?m:gentlest(c,low);
};
const isHeldBack=({found})=>found.causes.some(({kind})=>kind==='restrict'||kind==='light');
const asksForCare=(c)=>{
if(c.memo.care===null)c.memo.care=c.found.causes.some(({kind})=>kind!=='paused')||newestPains(c).some((pain)=>isHolding(pain))||isBack(c);
return c.memo.care;
};
const reachOf=(c,pattern)=>{
const{reach:kept}=c.memo,{tables,model}=c;
if(kept[pattern]===undefined){
const of=model.order.filter((m)=>tables.pattern[m]===pattern),stages=(list)=>list.map((m)=>tables.stage[m]);
const done=of.filter((m)=>isOwned(c,m)||now(c,m)!==null||c.trained.has(m)),open=done.length?[]:of.filter((m)=>may(c,m));
kept[pattern]=done.length?Math.max(...stages(done)):open.length?Math.min(...stages(open)):0;
}
return kept[pattern];
};
const isTooNew=(c,m)=>now(c,m)===null&&(touchedPart(c,m)>=0||(isBack(c)&&c.facts.has(m,LOADED))||(asksForCare(c)&&!c.facts.isMobility(m)&&(c.tables.stage[m]>reachOf(c,c.tables.pattern[m])||(isHeldBack(c)&&c.tables.easier[m].some((low)=>now(c,low)!==null)))));
const isForAll=(c,m)=>{
const says=globalThis.rungbook.health.saysOn(c.person.screened,c.day,c.person.born),isNew=now(c,m)===null&&c.facts.isMobility(m);
return says!==null&&says!=='ask'&&c.found.reached[m]===1&&isOpen(c,m)&&pulledNerve(c,m)<0&&sorePart(c,m)<0&&!isNew&&!isTooNew(c,m);
};
const slips=(c)=>{
const{model,person,day,tables}=c,counts=(on)=>on<=day&&day - on<=tables.results_last_days;
const tested=person.tested.filter(({on})=>counts(on)),newest=(m)=>Math.max(...tested.filter(({movement})=>movement===m).map(({on})=>on));
const all=[...tested.flatMap(({movement,on,sides})=>sides.map(({amount})=>({movement,on,amount}))),...person.trained.filter(({on})=>counts(on)).flatMap(({movement,on,did})=>did.map((amount)=>({movement,on,amount})))];
const largest=new Map();
for(const{movement:m,on,amount}of all){
if(on>=newest(m)&&readiness.doubtful(model,m,{measure:c.facts.measure(m),amount}))largest.set(m,Math.max(largest.get(m)||0,amount));
}
return[...largest].sort(([a],[b])=>a - b);
};
const daysOff=({person,day})=>{
const last=Math.max(...[...person.trained,...person.sessions].map(({on})=>on).filter((on)=>on<=day));
return Number.isFinite(last)?day - last:0;
};
const mayTest=(c,m)=>may(c,m)&&isOpen(c,m)&&hasAll(c,m)&&sorePart(c,m)<0&&!waitsForAge(c,m);
const isBetter=(c,m,a,b)=>a.load>b.load||(a.load===b.load&&(c.model.target(m).atMost?a.amount<b.amount:a.amount>b.amount));
const said=({did},reserve)=>Math.max(0,...did)+ reserve*ONE;
const isMissed=({did,reserve})=>!reserve&&did.some((set)=>set<did[0]);
const ofTest=(c,m,{sides,reserve,bodyWeight})=>{
const reps=c.facts.measure(m)===REPS,{atMost}=c.model.target(m),weight=bodyWeight===null?c.person.bodyWeight:bodyWeight;
const amounts=sides.map((side)=>side.amount +(reps?(reserve +(side.sets>=c.K.several?c.K.sets_hide:0))*ONE:0));
const tries=sides.map(({hits,of})=>(of>0?{hits,of}:{hits:1,of:1})).reduce((a,b)=>(b.hits*a.of<a.hits*b.of?b:a));
return{
amount:atMost?Math.max(...amounts):Math.min(...amounts),load:Math.min(...sides.map((side)=>readiness.mass(side.unit,side.load,weight)||0)),
left:amounts.length>1?amounts[0]:null,right:amounts.length>1?amounts[1]:null,...tries,
};
};
const plainly=(amount,load)=>({amount,load,left:null,right:null,hits:1,of:1});
const withLog=(c,m,shown,since)=>{
const log=c.facts.isCounted(m)?(c.trained.get(m)||[]).filter(({on})=>on>since):[];
if(!log.length)return shown;
const reps=c.facts.measure(m)===REPS;
const all=(of)=>said(of,reps?Math.min(of.reserve||0,c.K.reserve):0);
const newest=log[log.length - 1];
const best=shown?{...shown}:plainly(all(newest),newest.load);
const counting=log.filter(({load})=>load>=best.load);
best.amount=Math.max(best.amount,...counting.map(all));
const two=counting.slice(-2);
if(two.length===2&&two.every((of)=>isMissed(of)&&said(of,0)<c.K.missed*best.amount - 1e-6))best.amount=Math.max(...two.map((of)=>said(of,0)));
return best;
};
const own=(c,m)=>{
const{own:kept}=c.memo;
if(kept[m]!==undefined)return kept[m];
const{model}=c,last=foot(c,c.tables.pattern[m]),standard=model.target(m);
let since=Math.max(last,c.day - c.tables.results_last_days - 1);
const tests=(c.tests.get(m)||[]).filter(({on})=>on>since&&on<=c.day);
let best=null;
if(tests.length){
since=Math.max(...tests.map(({on})=>on));
for(const tested of tests){
const one=tested.on===since?ofTest(c,m,tested):null;
if(one&&(!best||isBetter(c,m,one,best)))best=one;
}
}
best=withLog(c,m,best,since);
if(!best&&isOwned(c,m)&&last===NEVER)best=plainly(standard.amount,readiness.mass(standard.unit,standard.load,c.person.bodyWeight)||0);
if(best&&c.facts.isCounted(m))best={...best,amount:Math.floor(best.amount / ONE)*ONE};
kept[m]=best;
return best;
};
const countsFrom=(c,m)=>Math.max(foot(c,c.tables.pattern[m]),c.day - c.tables.results_last_days - 1);
const hasResult=(c,m)=>{
const from=countsFrom(c,m);
const counts=({on})=>on>from&&on<=c.day;
return(c.tests.get(m)||[]).some(counts)||(c.trained.get(m)||[]).some(counts);
};
const above=({facts:of,tables},m)=>{
const seen=new Set([m]),todo=[m];
for(let low=todo.pop();low!==undefined;low=todo.pop()){
for(const up of of.harder[low]){
if(seen.has(up)||tables.phase[up]!==tables.phase[m]||of.measure(up)!==of.measure(m)||of.seconds(up)!==of.seconds(m))continue;
seen.add(up);
todo.push(up);
}
}
seen.delete(m);
return seen;
};
const now=(c,m)=>{
const{now:kept}=c.memo;
if(kept[m]!==undefined)return kept[m];
const clip=(of)=>of&&(c.facts.has(m,LOADED)||!c.facts.isCounted(m)?of:{...of,load:Math.min(0,of.load)});
const mine=clip(own(c,m));
const measured=hasResult(c,m);
let best=mine;
if(c.facts.isCounted(m)){
for(const up of above(c,m)){
const theirs=clip(own(c,up));
if(!theirs||(mine&&measured&&theirs.load<mine.load))continue;
const one=mine&&measured?{...mine,amount:Math.max(mine.amount,theirs.amount)}:theirs;
if(!best||isBetter(c,m,one,best))best=one;
}
}
kept[m]=best;
return best;
};
const whole=(of)=>Math.floor(of.amount / ONE);
const down=(n)=>Math.floor(n + 1e-9);
const ratio=(part,of)=>(of<=0||part>=of?WHOLE:Math.floor((Math.max(part,0)*WHOLE)/ of));
const loadShare=(done,asked)=>{
if(asked===null)return 0;
if(asked<=0&&done>=0)return WHOLE;
if(Math.sign(done)!==Math.sign(asked))return 0;
return asked>0?ratio(done,asked):ratio(-asked,-done);
};
const share=(c,of,target)=>{
if(!of)return 0;
if(target.atMost)return ratio(target.amount,of.amount);
const tries=target.of>0?ratio(of.hits*target.of,target.hits*of.of):WHOLE;
return Math.min(ratio(of.amount,target.amount),tries,loadShare(of.load,readiness.mass(target.unit,target.load,c.person.bodyWeight)));
};
const got=(c,m)=>{
const of=now(c,m),measure=c.facts.measure(m);
if(!of)return null;
return{measure,atMost:false,sets:1,amount:of.amount,seconds:measure===REPS?c.facts.seconds(m):0,unit:of.load?targets.MASS:targets.NO_LOAD,load:of.load,hits:0,of:0};
};
const measuredOtherwise=(c,m)=>{
if(now(c,m))return null;
const all=c.person.otherwise.filter(({movement,on})=>movement===m&&on>countsFrom(c,m)).sort((a,b)=>a.on - b.on),newest=all[all.length - 1];
return newest?newest.sides:null;
};
const apart=(c,m)=>{
const of=now(c,m),is=got(c,m);
if(!of||!is||of.left===null||of.right===null||of.left===of.right||(of.amount!==of.left&&of.amount!==of.right))return null;
return[{...is,amount:of.left},{...is,amount:of.right}];
};
const comesTo=(c,target)=>(target.unit===targets.BODY_WEIGHT?readiness.mass(target.unit,target.load,c.person.bodyWeight):null);
const followsFrom=(c,m)=>{
const is=now(c,m),alike=(of)=>of!==null&&is!==null&&whole(of)===whole(is);
if(!is)return null;
const mine=alike(own(c,m)),{presumed,roots}=c.found.known,root=(of)=>(presumed[of]?Number(roots.get(of)):null);
if(mine&&hasResult(c,m))return null;
if(mine&&root(m)!==null)return root(m);
if(!c.facts.isCounted(m))return null;
const[up]=[...above(c,m)].filter((of)=>alike(own(c,of))).sort((a,b)=>Number(hasResult(c,b))- Number(hasResult(c,a))||a - b);
return up===undefined?null:hasResult(c,up)?up:root(up);
};
globalThis.rungbook.training=({
begin,by,lately,foot,countsFrom,above,ofTest,isOwned,isOpen,wasDone,wasLifted,lighterStep,isBack,wasLongOff,isHeldBack,isRestricted,sparesBreath,gentlest,reachOf,whatOf,overheadOn,hasResult,bearsOn,bearsMore,heavyBelow,isHeavyOnSore,isAtHand,hasAll,may,could,isHolding,sorePart,touchedPart,stresses,pulledNerve,isOnlyUnsure,isTooNew,isForAll,asksForCare,isBackLately,mayTest,slips,daysOff,isMissed,now,own,whole,down,share,got,measuredOtherwise,apart,comesTo,followsFrom,newestPains,ended,easedPains,isEasedOn,takesBack,hasSign,NEVER,
TRAITS:{STRAIGHT,STRICT,TURNOVER,LOADED,OWN_DOSE,UPRIGHT,INVERTED,OVER_FLOOR},
});
})();
(()=>{
const{readiness,training}=globalThis.rungbook;
const{TRUE,WHOLE}=readiness,{ONE,TIME}=globalThis.rungbook.targets;
const ALL=-1,ANY=-2;
const NOTHING={k:0,leaf:-1,all:true,parts:[]};
const nested=(flat,isTrue)=>{
let at=0;
const node=()=>{
const kind=flat[at++];
if(kind>=0)return isTrue(kind)?NOTHING:{k:1,leaf:kind,all:false,parts:[]};
const first=flat[at++],count=kind<ANY?flat[at++]:first;
return{k:kind===ALL?count:kind===ANY?1:first,leaf:-1,all:kind===ALL,parts:Array.from({length:count},()=>node())};
};
return flat.length?node():NOTHING;
};
const holds=(tree,of)=>{
if(tree.leaf>=0)return of(tree.leaf);
let met=0;
for(const part of tree.parts)if(met<tree.k&&holds(part,of))met +=1;
return met>=tree.k;
};
const leaves=(tree)=>(tree.leaf>=0?[tree.leaf]:tree.parts.flatMap(leaves));
const searcher=(c,goal)=>{
const{model,tables}=c;
const trees=new Map();
const todo=[goal];
for(let m=todo.pop();m!==undefined;m=todo.pop()){
if(trees.has(m))continue;
const of=c.found.judge(m),tree=nested(tables.needs[m],(leaf)=>of(leaf)===TRUE);
trees.set(m,tree);
todo.push(...leaves(tree).map(model.of));
}
const chain=[...trees.keys()].sort((a,b)=>a - b),place=new Map(chain.map((m,i)=>[m,i]));
const needs=chain.map((m)=>(trees.get(m)));
const at=(leaf)=>Number(place.get(model.of(leaf)));
const above=chain.map(()=>[]);
needs.forEach((tree,i)=>leaves(tree).forEach((leaf)=>above[at(leaf)].push(i)));
const reached=(stands)=>{
const out=new Uint8Array(chain.length);
const isReached=(leaf)=>out[at(leaf)]===1;
let front=chain.map((_,i)=>i).filter((i)=>stands(i)&&holds(needs[i],isReached));
while(front.length){
front.forEach((i)=>{out[i]=1;});
front=[...new Set(front.flatMap((i)=>above[i]))].filter((i)=>!out[i]&&stands(i)&&holds(needs[i],isReached));
}
return out;
};
const fromGround=chain.map((_,i)=>i).sort((a,b)=>tables.stage[chain[a]]- tables.stage[chain[b]]);
return{chain,place,needs,at,reached,fromGround,cost:chain.map((m)=>tables.weeks[2*m]+ tables.weeks[2*m + 1])};
};
const essentials=(of,isReached,first,count)=>{
const words=Math.ceil(count / 32),whole=()=>new Uint32Array(words).fill(0xffffffff);
const sets=of.chain.map(whole);
const full=whole();
const without=(tree)=>{
if(tree.leaf>=0)return isReached[of.at(tree.leaf)]?sets[of.at(tree.leaf)]:full;
const{parts,k}=tree;
if(k===0)return new Uint32Array(words);
if(parts.length>0&&(k===parts.length||k===1)){
const out=Uint32Array.from(without(parts[0]));
for(let p=1;p<parts.length;p +=1){
const more=without(parts[p]);
if(k===1)for(let w=0;w<words;w +=1)out[w]&=more[w];
else for(let w=0;w<words;w +=1)out[w]|=more[w];
}
return out;
}
const enough=Array.from({length:k + 1},(_,i)=>new Uint32Array(words).fill(i?0:0xffffffff));
for(const part of parts){
const lacks=without(part);
for(let n=k;n>0;n -=1)for(let w=0;w<words;w +=1)enough[n][w]|=enough[n - 1][w]&~lacks[w];
}
return enough[k].map((word)=>~word);
};
const order=of.fromGround.filter((i)=>isReached[i]);
for(let changed=true;changed;){
changed=false;
for(const i of order){
const bits=without(of.needs[i]),set=of.needs[i].leaf>=0?Uint32Array.from(bits):bits;
if(i>=first&&i<first + count)set[(i - first)>>5]|=1<<((i - first)&31);
if(set.some((word,w)=>word!==sets[i][w])){
sets[i]=set;
changed=true;
}
}
}
return(i)=>{
const out=[];
for(let bit=0;bit<count;bit +=1)if((sets[i][bit>>5]>>>(bit&31))&1&&isReached[first + bit])out.push(first + bit);
return out;
};
};
const drawn=(i)=>{
const mix=(n)=>{
const a=Math.imul(n ^(n>>>16),0x45d9f3b),b=Math.imul(a ^(a>>>16),0x45d9f3b);
return(b ^(b>>>16))>>>0;
};
return mix(2*i + 1)*0x100000 +(mix(2*i + 0x5eed)>>>12);
};
const MODULUS=2**52;
const shorter=(a,b)=>{
const by=a.cost - b.cost||a.set.length - b.set.length;
if(by)return by;
for(let i=0;i<a.set.length;i +=1)if(a.set[i]!==b.set[i])return a.set[i]- b.set[i];
return 0;
};
const heap=(compare)=>{
const all=[];
const swap=(a,b)=>{[all[a],all[b]]=[all[b],all[a]];};
return{
push:(one)=>{
all.push(one);
for(let i=all.length - 1;i>0&&compare(all[i],all[(i - 1)>>1])<0;i=(i - 1)>>1)swap(i,(i - 1)>>1);
},
pop:()=>{
if(all.length)swap(0,all.length - 1);
const top=all.pop();
for(let i=0;;){
const[left,right]=[2*i + 1,2*i + 2];
let least=left<all.length&&compare(all[left],all[i])<0?left:i;
if(right<all.length&&compare(all[right],all[least])<0)least=right;
if(least===i)return top;
swap(i,least);
i=least;
}
},
};
};
const route=(c,leaf)=>{
const goal=c.model.of(leaf);
if(c.found.judge(goal)(leaf)===TRUE)return{movements:[],cost:0};
const of=searcher(c,goal),{chain,needs,at}=of,n=chain.length,top=Number(of.place.get(goal));
const isReached=of.reached(()=>true);
if(!isReached[top])return null;
const{looked_at:most,large:block}=c.tables.route,large=n>block;
const blocks=Array.from({length:Math.ceil(n / block)},(_,i)=>i*block);
const essential=(first)=>essentials(of,isReached,first,Math.min(block,n - first));
const kept=[];
const all=large?null:essential(0);
kept[top]=all?all(top):blocks.flatMap((first)=>essential(first)(top));
const without=(i)=>(kept[i]||(kept[i]=all?all(i):[i]));
const placeIn=(set,i)=>{
let low=0,high=set.length;
while(low<high){
const middle=(low + high)>>1;
if(set[middle]<i)low=middle + 1;
else high=middle;
}
return low;
};
const has=(set,i)=>set[placeIn(set,i)]===i;
const grown=({cost,set,from,key},option)=>{
const more=[...new Set(option.flatMap(without))].filter((i)=>!has(set,i)).sort((a,b)=>a - b);
const all=new Uint32Array(set.length + more.length);
let at=0,taken=0,weeks=cost,sum=key;
for(const i of more){
let end=taken;
while(end<set.length&&set[end]<i)end +=1;
all.set(set.subarray(taken,end),at);
at +=end - taken;
taken=end;
all[at]=i;
at +=1;
weeks +=of.cost[i];
sum=(sum + drawn(i))% MODULUS;
}
all.set(set.subarray(taken),at);
return{cost:weeks,set:all,from:Math.min(from,more.length?more[0]:Infinity),key:sum};
};
const ways=(tree,has)=>{
if(tree.leaf>=0)return isReached[at(tree.leaf)]?[[at(tree.leaf)]]:[];
const open=tree.parts.filter((part)=>!holds(part,has));
return(tree.all?open.slice(0,1):open).flatMap((part)=>ways(part,has));
};
const inside=new Uint8Array(n);
const options=(node)=>{
const{set}=node,isIn=(l)=>has(set,at(l));
let first=placeIn(set,node.from);
while(first<set.length&&holds(needs[set[first]],isIn))first +=1;
node.from=first<set.length?set[first]:Infinity;
if(first<set.length)return ways(needs[set[first]],isIn);
inside.fill(0);
set.forEach((i)=>{inside[i]=1;});
const derived=of.reached((i)=>inside[i]===1);
if(derived[top])return null;
const outside=[...set].filter((i)=>!derived[i]).flatMap((i)=>leaves(needs[i]).map(at)).filter((i)=>!inside[i]&&isReached[i]);
return[...new Set(outside)].sort((a,b)=>a - b).map((i)=>[i]);
};
const found=search(grown({cost:0,set:new Uint32Array(),from:Infinity,key:0},[top]),options,grown,most);
return found&&{movements:[...found.set].map((i)=>chain[i]),cost:found.cost};
};
const search=(start,options,grown,most)=>{
const open=heap(shorter),seen=new Set();
open.push(start);
let looked=0;
for(let node=open.pop();node;node=open.pop()){
let ways=options(node);
if(!ways)return node;
if(looked>=most){
for(let best=node;;ways=options(best)){
if(!ways)return best;
const set=best,larger=ways.map((way)=>grown(set,way)).sort(shorter);
if(!larger.length)return null;
best=larger[0];
}
}
looked +=1;
for(const way of ways){
const larger=grown(node,way);
if(seen.has(larger.key))continue;
seen.add(larger.key);
open.push(larger);
}
}
return null;
};
const chainOf=(model,from)=>{
const seen=new Set(from),todo=[...from];
for(let m=todo.pop();m!==undefined;m=todo.pop()){
for(const leaf of readiness.leavesOf(model.tables.needs[m])){
const below=model.of(leaf);
if(seen.has(below))continue;
seen.add(below);
todo.push(below);
}
}
return[...seen];
};
const ofSkill=(c,skill,chosen)=>({id:skill.id,leaf:skill.goal,chain:skill.members,chosen,route:route(c,skill.goal)});
const goalOf=(c)=>{
const{tables,model,person:{goal}}=c;
const skill=tables.skills.find(({id})=>id===goal);
if(skill)return ofSkill(c,skill,true);
const movement=goal?model.numbers.get(goal):undefined;
if(goal&&movement!==undefined)return{id:tables.ids[movement],leaf:movement,chain:chainOf(model,[movement]),chosen:true,route:route(c,movement)};
const owned=({members})=>members.filter((m)=>training.isOwned(c,m)).length;
const open=tables.skills.filter((one)=>c.found.judge(model.of(one.goal))(one.goal)!==TRUE)
.map((one)=>({one,part:owned(one),of:one.members.length})).sort((a,b)=>b.part*a.of - a.part*b.of);
while(open.length){
const[first]=open,alike=open.filter(({part,of})=>part*first.of===first.part*of);
const reached=alike.map(({one})=>ofSkill(c,one,false)).filter((one)=>one.route);
if(reached.length)return reached.reduce((a,b)=>(Number(b.route&&b.route.cost)<Number(a.route&&a.route.cost)?b:a));
open.splice(0,alike.length);
}
return null;
};
const untrue=(tree,isTrue)=>{
if(holds(tree,isTrue))return[];
return tree.leaf>=0?[tree.leaf]:tree.parts.flatMap((part)=>untrue(part,isTrue));
};
const hardness=(c,{sets,amount,seconds,unit,load,hits,atMost})=>[readiness.mass(unit,load,c.person.bodyWeight)||0,sets,atMost?-amount:amount,seconds,hits];
const easiest=(c,asked)=>asked.map((leaf)=>({leaf,hard:hardness(c,c.model.target(leaf))}))
.reduce((a,b)=>(b.hard[b.hard.findIndex((n,i)=>n!==a.hard[i])]<a.hard[b.hard.findIndex((n,i)=>n!==a.hard[i])]?b:a)).leaf;
const heavier=(a,b)=>b.weight - a.weight||b.opens.length - a.opens.length||a.movement - b.movement;
const gaps=(c,goal)=>{
const{model,tables}=c,top=model.of(goal.leaf);
const onRoute=new Set(goal.route?goal.route.movements:[]);
const all=new Map();
if(!onRoute.has(top))return new Map();
all.set(top,{asked:[],over:new Set()});
const todo=[top];
for(let m=todo.pop();m!==undefined;m=todo.pop()){
if(training.isOwned(c,m))continue;
const of=c.found.judge(m);
for(const leaf of untrue(nested(tables.needs[m],()=>false),(l)=>of(l)===TRUE)){
const below=model.of(leaf);
if(!onRoute.has(below))continue;
const known=all.get(below)||{asked:[],over:new Set()};
if(!all.has(below))todo.push(below);
all.set(below,known);
known.asked.push(leaf);
known.over.add(m);
}
}
const out=new Map();
for(const[m,{asked,over}]of all){
const leaf=m===top?goal.leaf:easiest(c,asked),now=training.now(c,m);
out.set(m,{movement:m,leaf,now,share:training.share(c,now,model.target(leaf)),opens:[...over].sort((a,b)=>a - b),weight:0,low:0,high:0,stop:null});
}
weigh(c,out);
return out;
};
const weigh=(c,all)=>{
const{weeks}=c.tables;
const paths=new Map();
const next=new Map();
const more=(a,b)=>a[0]- b[0]||a[1]- b[1]||a[2]- b[2];
const longest=(m,seen)=>{
const kept=paths.get(m);
if(kept)return kept;
const{opens,share}=(all.get(m)),left=WHOLE - share,[low,high]=[weeks[2*m],weeks[2*m + 1]];
seen.add(m);
let best=[-1,0,0];
for(const up of opens){
if(seen.has(up))continue;
const path=longest(up,seen);
if(more(path,best)>0){best=path;next.set(m,up);}
}
if(best[0]<0)best=[0,0,0];
seen.delete(m);
const path=[(low + high)*left + best[0],low*left + best[1],high*left + best[2]];
paths.set(m,path);
return path;
};
for(const gap of all.values())[gap.weight,gap.low,gap.high]=longest(gap.movement,new Set());
stop(c,all,next);
};
const missing=({tables,person:{have}},m)=>(have===null?[]:tables.equipment[m].filter((oneOf)=>!oneOf.some((word)=>have.includes(word))));
const toBeHad=(c,all,next)=>{
const by=new Map(),stop=next&&next.stop?next.stop.by:-1,place=(m)=>(m===stop?-1:c.tables.stage[m]);
for(const{movement:m}of[...all.values()].sort(training.heavier)){
for(const oneOf of missing(c,m)){
const key=oneOf.join(),of=by.get(key)||{oneOf,stops:[]};
of.stops.push(m);
by.set(key,of);
}
}
for(const{stops}of by.values())stops.sort((a,b)=>place(a)- place(b));
return[...by.values()].sort((a,b)=>place(a.stops[0])- place(b.stops[0])||b.stops.length - a.stops.length);
};
const falls=(c)=>{
const{K,age,model,facts}=c;
if(age===null||age<K.balance_age)return null;
for(let m=0;m<model.count;m +=1){
if(!facts.has(m,training.TRAITS.UPRIGHT)||!model.is(m,readiness.EACH_SIDE)||facts.measure(m)!==TIME)continue;
const is=training.own(c,m);
if(is&&is.left!==null&&is.right!==null&&Math.min(is.left,is.right)<K.one_leg_s*ONE)return{movement:m,left:is.left,right:is.right};
}
return null;
};
const stop=(c,all,next)=>{
const order=[...all.values()].sort(heavier),short=falls(c);
const closed=new Map();
for(const{movement:m}of order){
const lacks=missing(c,m);
if(short&&short.movement===m)closed.set(m,{by:m,why:'falls',missing:[]});
else if(lacks.length)closed.set(m,{by:m,why:'equipment',missing:lacks});
else if(c.minor&&c.facts.has(m,training.TRAITS.LOADED))closed.set(m,{by:m,why:'age',missing:[]});
}
const held=new Map(closed),whole=new Map(order.map(({movement,low,high})=>[movement,[low,high]]));
for(const[from,why]of closed){
const open=[from];
for(let m=open.pop();m!==undefined;m=open.pop()){
const gap=all.get(m);
for(const up of gap?gap.opens:[])if(all.has(up)&&!held.has(up)){held.set(up,why);open.push(up);}
}
}
const first=short?closed.get(short.movement):undefined;
for(const gap of order){
let at=(gap.movement);
while(at!==undefined&&!held.has(at))at=next.get(at);
const end=first?gap.movement:at,why=first||(at===undefined?undefined:held.get(at));
if(end===undefined||!why)continue;
const[low,high]=(whole.get(end));
gap.low -=low;
gap.high -=high;
gap.stop={at:end,...why};
}
};
const limiter=(c,candidates)=>{
const worked=candidates.flatMap(({gap,insteadOf,rule})=>(gap&&insteadOf===null&&rule!=='care first'?[gap]:[]));
const last=({now,share,movement})=>(now===null||share===WHOLE?2:0)+(training.isOpen(c,movement)?0:1);
return worked.sort((a,b)=>last(a)- last(b)||heavier(a,b))[0]||null;
};
const onward=(c,m,inChain,fits,isTooEasy)=>{
const{facts,tables}=c;
if(facts.group(m)<0||facts.isPractice(m))return null;
const other=(up)=>(JSON.stringify(tables.equipment[up])===JSON.stringify(tables.equipment[m])?0:1);
const next=(of,is)=>facts.harder[of]
.filter((up)=>tables.phase[up]===tables.phase[m]&&facts.measure(up)===facts.measure(m)&&!facts.has(up,training.TRAITS.LOADED)&&is(up))
.sort((a,b)=>Number(inChain.has(b))- Number(inChain.has(a))||other(a)- other(b)||tables.stage[a]- tables.stage[b]||a - b)[0];
const known=(up)=>training.may(c,up)&&fits(c,up)===true;
let top=m;
for(let up=next(m,known);up!==undefined;up=next(up,known))top=up;
if(top!==m)return top;
const fresh=(up)=>(training.may(c,up)||training.isOnlyUnsure(c,up))&&fits(c,up)===null&&!training.isTooNew(c,up);
const first=isTooEasy(c,m)?next(m,fresh):undefined;
return first===undefined?null:first;
};
Object.assign(training,{onward,goalOf,gaps,heavier,limiter,chainOf,missing,toBeHad,falls});
})();
(()=>{
const{targets:{ONE},readiness:{LOWERING},training}=globalThis.rungbook;
const{now,foot}=training,WEEK=7;
const timeOff=(c,m,first)=>{
const pattern=c.tables.pattern[m],own=c.daysOf.get(pattern)||[],tested=own.length===0&&now(c,m)!==null,since=foot(c,pattern);
const days=[...new Set((tested?c.log:own).map(({on})=>on))].filter((day)=>day>since),ends=[...days.slice(1),Math.max(c.day,first)];
for(let i=days.length - 1;i>=0;i -=1)if(ends[i]- days[i]>=c.K.off[0])return{from:days[i],to:ends[i],tested};
return null;
};
const mostAfter=(c,m,{from,to},on)=>{
if(on - to>=c.K.back_most)return null;
const since=foot(c,c.tables.pattern[m]),log=c.trained.get(m)||[],last=log.filter((of)=>of.on<=from&&of.on>since).pop();
if(!last||(c.tests.get(m)||[]).some((test)=>test.on>from&&test.on<=c.day))return null;
const again=log.some((of)=>of.on>from&&of.did.every((set)=>set>=of.did[0])&&of.did[0]>=last.did[0]&&of.load>=last.load);
const whole=Math.floor(last.did[0]/ ONE),less=last.reserve===0&&whole>1?1:0;
return again?null:{amount:whole - less,sets:Math.max(c.K.fewest,last.did.length),load:last.load,reserve:last.reserve===null?null:last.reserve + less};
};
const afterTimeOff=(c,m,on,first)=>{
const{K,facts}=c,off=facts.isMobility(m)||facts.word(m)==='exit'?null:timeOff(c,m,first);
if(!off)return{};
const days=off.to - off.from,longer=days>=K.off[1],since=on - off.to,less=K.off_for[longer?1:0],down=longer&&!off.tested;
const step=less +(down?K.back_for:0),again=since>=less,most=mostAfter(c,m,off,on);
if(since>=step + K.back_for||(again&&now(c,m)===null))return{most};
const why={key:again?'why.back_after':'why.days_off',values:{n:days}};
return{light:true,nearly:since>=step,easier:!again&&(down||c.model.is(m,LOWERING)),hold:true,rule:'time off',why,most};
};
const comesBack=({why})=>why!==null&&why.key==='why.back_after';
const shareOf=({K},{light,least,nearly})=>(!light?1:least?K.least:nearly?K.back:K.light);
const leavesBack=({most},amount)=>(most===null||most.reserve===null?Infinity:most.reserve + Math.max(0,most.amount - amount));
const waitsLately=(c,m,on)=>{
const{tables,facts}=c,{STRICT,UPRIGHT}=training.TRAITS;
if(now(c,m)!==null||facts.isMobility(m))return null;
const grave=training.isGrave(c,m)||(facts.has(m,STRICT)&&!facts.has(m,UPRIGHT))||tables.stage[m]>training.reachOf(c,tables.pattern[m]),overhead=tables.cautions[m].includes(tables.classes.indexOf('overhead'));
const heavy=(part)=>part!==undefined&&(((tables.heavy_on[m]>>part)&1)===1||(overhead&&tables.parts[part]==='shoulder'));
return training.lately(c,m,on).find(({what,why})=>why.key==='why.after_pause'||grave||heavy(what.part))||null;
};
const isGrave=({tables},m)=>(tables.marks[tables.mark[m]]||{signal:null}).signal==='warning';
Object.assign(training,{waitsLately,isGrave,afterTimeOff,comesBack,shareOf,leavesBack});
})();
(()=>{
const{targets,readiness,training}=globalThis.rungbook;
const{ONE,REPS,TIME,LENGTH,ANGLE,DONE,KILOGRAM}=targets;
const{GUARDED,LOWERING,EACH_SIDE,WHOLE}=readiness;
const{now,whole,down,may,foot,got,heavier,NEVER}=training;
const{STRAIGHT,STRICT,LOADED,OWN_DOSE,UPRIGHT,OVER_FLOOR}=training.TRAITS;
const FULL=4;
const because=(key,values={})=>({key,values});
const told=(c,m,key)=>{const is=got(c,m);return is?[because(key,{movement:m,got:is,standard:m})]:[];};
const FOLLOWS={'why.show':'why.show_counts','why.easy':'why.easy_kept'};
const measured=(c,m,key)=>{
const from=training.followsFrom(c,m),instead_=FOLLOWS[key]||'why.counts';
return from===null?told(c,m,key):told(c,m,instead_).map(({key:of,values})=>because(of,{...values,movement:instead_==='why.easy_kept'?m:from}));
};
const spared=(c,m)=>{
const[cause]=c.found.pausedBy(m);
if(!cause)return because('left.below');
const{kind}=cause,what=training.whatOf(cause);
if(kind==='light')return because('left.light');
return because(kind==='pain'?'left.pain':kind==='restrict'?'left.restricted':'left.paused',what);
};
const whyNot=(c,m)=>{
const part=training.pulledNerve(c,m);
return c.found.reached[m]!==1?spared(c,m):part>=0?because('left.pain',{part}):because('left.equipment');
};
const isLowering=(c,m)=>c.model.is(m,LOWERING);
const isGuarded=(c,m)=>c.model.is(m,GUARDED);
const isTimed=(c,m)=>c.facts.measure(m)===TIME;
const higher=({tables:{stage}})=>(a,b)=>stage[b]- stage[a]||a - b;
const lower=({tables:{stage}})=>(a,b)=>stage[a]- stage[b]||a - b;
const isAnew=(c,m)=>now(c,m)===null&&foot(c,c.tables.pattern[m])!==NEVER;
const inPlates=(c,kilos)=>down(kilos / plateOf(c))*plateOf(c);
const plateOf=({tables})=>Math.max(1,tables.dose_of_school.smallest_plate);
const repsLoaded=(c,m)=>Math.max(c.facts.dose(m).each,c.minor?c.K.minor_reps:1);
const bound=(c,m,reps)=>{
const least=reps*ONE,{person}=c;
const tested=(c.tests.get(m)||[]).flatMap(({sides,bodyWeight})=>sides.filter(({amount})=>amount>=least)
.map(({unit,load})=>readiness.mass(unit,load,bodyWeight===null?person.bodyWeight:bodyWeight)||0));
const lifted=[...tested,...(c.trained.get(m)||[]).filter(({did})=>Math.max(0,...did)>=least).map(({load})=>load)];
const most=Math.max(...lifted);
return lifted.length?Math.max(raised(c,most),loadFromAbove(c,m,reps)):Infinity;
};
const raised=(c,kilos)=>Math.max(kilos*c.K.bound,kilos + plateOf(c));
const boundOfSteps=(c,m,reps)=>{
const above=loadFromAbove(c,m,reps);
return Math.max(bound(c,m,reps),above>0?raised(c,above):0);
};
const withReserve=({K},{did,reserve,load:kilos})=>({load:kilos,reps:Math.floor(Math.max(0,...did)/ ONE)+ Math.min(reserve||0,K.reserve)});
const shown=(c,m)=>{
const is=now(c,m),from=training.countsFrom(c,m),tests=(c.tests.get(m)||[]).filter(({on})=>on>from&&on<=c.day);
const since=tests.length?Math.max(...tests.map(({on})=>on)):from,log=(c.trained.get(m)||[]).filter(({on})=>on>since);
const known=is?[{load:is.load,reps:whole(is)}]:[],short=log.length>0&&training.isMissed(log[log.length - 1]);
const own=[...tests.filter(({on})=>on===since).map((tested)=>training.ofTest(c,m,tested)).map((of)=>({load:of.load,reps:whole(of)})),...log.map((of)=>withReserve(c,of))];
return[...known,...(short?[]:own)].filter(({load:kilos})=>kilos>0);
};
const carried=({tables,person:{bodyWeight}},m)=>(bodyWeight===null||tables.share[m]===undefined?null:bodyWeight*tables.share[m]);
const lowest=({tables:{one_rep:factors}},moved,reps)=>(reps<1?0:moved*factors[Math.min(reps,factors.length)- 1]);
const oneRep=(c,body,sets)=>{
const several=sets.filter(({reps})=>reps>=2);
return Math.max(0,...(several.length?several:sets).map(({load:kilos,reps})=>lowest(c,body + kilos,reps)));
};
const heldLately=(c,m,reps)=>{
const{K}=c,tested=Math.max(NEVER,...(c.tests.get(m)||[]).map(({on})=>on).filter((on)=>on<=c.day));
const log=(c.trained.get(m)||[]).filter(({on})=>c.day - on<K.off[0]&&on>tested);
if(!log.length||training.isMissed(log[log.length - 1]))return 0;
return Math.max(0,...log.filter(({did,reserve})=>did.every((set)=>set>=did[0])&&did[0]>=reps*ONE&&(reserve||0)>=K.left).map((of)=>of.load));
};
const triedLoad=(c,m)=>{
const{K,person:{bodyWeight},facts,model,tables}=c,dose=facts.dose(m),asked=readiness.mass(dose.unit,dose.load,bodyWeight);
const needed=[...new Set(readiness.leavesOf(tables.needs[m]).map(model.of))].filter((low)=>facts.isByMax(low)&&model.order.includes(low));
const lifted=needed.flatMap((low)=>shown(c,low)).filter(({reps})=>reps>=K.try_reps).map(({load:kilos})=>kilos*K.of_record);
const most=Math.max(...lifted,bodyWeight===null?-Infinity:bodyWeight*K.of_body),standard=model.target(m),stands=readiness.mass(standard.unit,standard.load,bodyWeight);
const ofSide=!model.is(m,EACH_SIDE)?[]:[(bodyWeight||0)*K.of_body_side,...(stands!==null&&stands>0?[stands*K.of_standard]:[])];
const bounds=[...(asked!==null&&asked>0?[asked]:[]),...ofSide];
const least=Math.min(most>0?most:Infinity,...bounds);
return Number.isFinite(least)?Math.max(plateOf(c),inPlates(c,least)):plateOf(c);
};
const loadOf=(c,m,reps)=>{
const{K,tables:{chart},person:{bodyWeight}}=c,sets=shown(c,m),body=carried(c,m),dose=c.facts.dose(m),asked=readiness.mass(dose.unit,dose.load,bodyWeight);
const heaviest=(least)=>Math.max(0,...sets.filter((set)=>set.reps>=least).map((set)=>set.load));
const most=body===null?0:oneRep(c,body,sets);
const worked=body===null?Math.max(Math.min(heaviest(0)*K.of_record,asked!==null&&asked>0?asked:Infinity),heaviest(reps)*K.of_record,plateOf(c))
:most>0?(most*chart[Math.min(reps + K.load_reps,chart.length)- 1])/ 100 - body:0;
const limit=bound(c,m,reps),held=Math.max(heaviest(reps + K.load_reps),heldLately(c,m,reps));
return Math.max(0,inPlates(c,Math.min(worked,limit)),held<=limit?held:0);
};
const load=(c,m)=>{
const{K,person:{bodyWeight},facts}=c,is=now(c,m),dose=facts.dose(m),asked=readiness.mass(dose.unit,dose.load,bodyWeight);
if(!is||is.load<=0)return triedLoad(c,m);
if(facts.isByMax(m))return Math.max(loadOf(c,m,repsLoaded(c,m)),loadFromAbove(c,m,repsLoaded(c,m)));
const record=facts.word(m)==='exit'?Math.min(is.load,asked!==null&&asked>0?asked:Infinity):is.load*K.of_record;
return Math.max(plateOf(c),inPlates(c,record));
};
const shownAbove=(c,m)=>c.facts.harder[m].filter((up)=>training.wasLifted(c,up)&&training.lighterStep(c,up)===m).flatMap((up)=>shown(c,up));
const loadFromAbove=(c,m,reps)=>{
const{K,tables:{chart}}=c,sets=shownAbove(c,m),body=carried(c,m),most=body===null?0:oneRep(c,body,sets);
if(body===null||most<=0)return 0;
return Math.max(0,Math.min(inPlates(c,(most*chart[Math.min(reps + K.load_reps,chart.length)- 1])/ 100 - body),...sets.map((set)=>set.load).sort((a,b)=>b - a).slice(0,1)));
};
const whyLoad=(c,m,kilos)=>{
const reps=shown(c,m).filter((set)=>set.load===kilos).map((set)=>set.reps);
if(!reps.length)return because(carried(c,m)===null?'why.of_record':'why.load');
return because('why.best',{got:{measure:REPS,atMost:false,sets:1,amount:Math.max(...reps)*ONE,seconds:c.facts.seconds(m),unit:targets.MASS,load:kilos,hits:0,of:0}});
};
const farAbove=(c,m)=>{
const{facts,tables,K}=c;
if(facts.has(m,LOADED)||facts.isPractice(m))return[];
const ownPace=facts.seconds(m)>0||(tables.rep_s[m]||K.rep_s)!==K.rep_s;
return[...(facts.measure(m)===REPS&&!ownPace?[because('why.slow')]:[]),...(harder(c,m)===undefined?[because('why.ask_harder')]:[])];
};
const leaves=(c,m,kilos,reps,more)=>{
const{K,tables:{chart,one_rep:factors}}=c,body=carried(c,m),counts=chart.map((_,i)=>i + 1);
const can=[];
for(const sets of[[...shown(c,m),...more],shownAbove(c,m)]){
can.push(...sets.filter((set)=>set.load>=kilos).map((set)=>set.reps));
if(body===null)continue;
const moved=body + kilos,most=oneRep(c,body,sets),near=1e-6*KILOGRAM;
can.push(...counts.filter((n)=>most>0&&(moved*100)/ chart[n - 1]<=most + near));
for(const set of sets){
if(set.load<kilos)can.push(...counts.filter((n)=>set.reps>=1&&moved*factors[n - 1]<=lowest(c,body + set.load,set.reps)+ near));
}
}
const left=can.length?Math.max(...can)- reps:0;
return left>0?Math.min(left,K.reserve):null;
};
const fits=(c,m)=>{
const{fits:kept}=c.memo;
if(kept[m]===undefined)kept[m]=isFitting(c,m);
return kept[m];
};
const isFitting=(c,m)=>{
const is=now(c,m),{K,facts}=c;
if(!is)return null;
if(facts.isByMax(m)&&is.load>0)return load(c,m)>=plateOf(c);
if(c.minor&&facts.has(m,LOADED)&&facts.measure(m)===REPS&&facts.group(m)>=0)return whole(is)>K.minor_reps;
return whole(is)>=(isTimed(c,m)?K.hold_fits:Math.max(K.fits[0],Math.min(facts.dose(m).each,K.fits[1])));
};
const depths=(model)=>{
const{tables,order}=model,words=Math.ceil(model.count / 32),sets=tables.ids.map(()=>new Uint32Array(words));
const asked=tables.needs.map((need)=>[...new Set(readiness.leavesOf(need).map(model.of))]),up=[...order].sort((a,b)=>tables.stage[a]- tables.stage[b]);
for(let changed=true;changed;){
changed=false;
for(const m of up){
const set=sets[m];
for(const low of asked[m]){
const more=sets[low];
for(let w=0;w<words;w +=1){
const all=set[w]|more[w]|(w===low>>5?1<<(low&31):0);
if(all>>>0!==set[w]){set[w]=all;changed=true;}
}
}
}
}
return sets;
};
const known=new WeakMap();
const isUnder=({model},from)=>{
const sets=known.get(model)||depths(model);
known.set(model,sets);
return(low)=>from.some((m)=>(sets[m][low>>5]>>>(low&31))&1);
};
const builders=(c,pattern)=>{
const{builders:kept}=c.memo,{tables,facts,model}=c;
if(!kept[pattern])kept[pattern]=model.order.filter((low)=>tables.pattern[low]===pattern&&facts.isCounted(low)&&!isLowering(c,low)&&may(c,low)).sort(higher(c));
return kept[pattern];
};
const isAlike=({tables:{phase},model},m,low)=>(phase[low]||FULL)===(model.is(m,LOWERING)?FULL:phase[m]||FULL);
const below=(c,m)=>{
const{below:kept}=c.memo;
if(kept[m])return kept[m];
const{tables,facts,model}=c,fine=builders(c,tables.pattern[m]).filter((low)=>low!==m),armed=fine.filter((low)=>facts.has(low,STRAIGHT)===facts.has(m,STRAIGHT));
const named=readiness.leavesOf(tables.needs[m]).map(model.of);
const all=[...new Set([...fine.filter((low)=>tables.easier[m].includes(low)),...armed.filter((low)=>named.includes(low)),...armed.filter(isUnder(c,[m,...tables.easier[m]]))])];
kept[m]=[...all.filter((low)=>isAlike(c,m,low)),...all.filter((low)=>!isAlike(c,m,low))];
return kept[m];
};
const builder=(c,m,plain=false)=>{
const list=below(c,m).filter((low)=>!(plain&&isGuarded(c,low))&&!training.isTooNew(c,low)),alike=list.filter((low)=>isAlike(c,m,low));
const first=(of,is)=>of.find((low)=>fits(c,low)===is);
return[first(alike,true),first(alike,null),first(list,true),first(list,null)].find((low)=>low!==undefined);
};
const isTooEasy=(c,m)=>{
const is=now(c,m),{each}=c.facts.dose(m);
if(!is||c.facts.has(m,LOADED))return false;
return isTimed(c,m)?whole(is)>c.K.easy_hold*each:whole(is)>=each + c.K.easy;
};
const harder=(c,m)=>(isTooEasy(c,m)?c.facts.harder[m].filter((up)=>may(c,up)&&!isLowering(c,up)&&fits(c,up)!==false&&!training.isTooNew(c,up)).sort(lower(c))[0]:undefined);
const isLeftOf=(c,m,pain)=>!c.facts.isMobility(m)&&readiness.isPausing(c.model,c.person,pain,c.day)&&(((c.tables.stresses[m]>>pain.part)&1)===1
||(c.facts.isCounted(m)&&[...training.above(c,m)].some((up)=>training.bearsOn(c,up,pain.part)&&now(c,up)!==null)));
const ease=(c,m,on,first)=>{
const{K,tables}=c;
const out={light:false,nearly:false,easier:false,hold:false,sore:false,worse:false,least:false,rule:null,why:null,most:null,...training.afterTimeOff(c,m,on,first)};
if(training.hasSign(c))out.hold=true;
for(const of of training.easedPains(c)){
if(training.isEasedOn(c,of,m)&&on - of.on<=K.pain_days)Object.assign(out,{hold:true,rule:'pain',why:because('why.hurt',{part:of.part,score:of.score})});
}
for(const pain of training.newestPains(c)){
const{part,score,nextMorning}=pain;
const rests=isLeftOf(c,m,pain);
if(!rests&&!(training.isHolding(pain)&&((tables.stresses[m]>>part)&1)===1))continue;
const lightly=!training.bearsOn(c,m,part);
if(lightly&&now(c,m)===null)continue;
const next=nextMorning!==null&&nextMorning>score,worse=rests||(!lightly&&training.takesBack(c,pain)),least=worse&&(rests||score>=K.pain_least);
const key=least?'why.pain_least':worse&&next?'why.pain_worse':worse?'why.pain_less':'why.pain_hold';
Object.assign(out,{hold:true,sore:true,worse:out.worse||worse,least:out.least||least,nearly:out.nearly&&!worse,light:out.light||worse,easier:out.easier||worse,rule:'pain',why:because(key,{part,score})});
}
for(const{spares,until}of training.ended(c)){
const week=Math.floor((on - until - 1)/ 7);
if(!spares(m)||week>=K.pause_weeks)continue;
Object.assign(out,{nearly:out.nearly&&week===1,light:out.light||week!==1,easier:out.easier||week<2,hold:true,rule:'after a pause',why:because('why.after_pause',{n:week + 1})});
}
return out;
};
const andSore=(of,other)=>(other.sore&&!of.sore?{...of,hold:true,sore:true,worse:other.worse,least:other.least,nearly:of.nearly&&!other.worse,light:of.light||other.worse,rule:other.rule,why:other.why,most:other.most}:{...of,most:other.most});
const didLately=(c,m)=>{
const{lately:kept}=c.memo;
if(kept[m]!==undefined)return kept[m];
const recent=c.log.filter(({on})=>c.day - on<c.K.off[0]).reverse(),up=recent.length&&c.facts.isCounted(m)?training.above(c,m):new Set();
kept[m]=recent.find(({movement})=>movement===m)||recent.find(({movement})=>up.has(movement))||null;
return kept[m];
};
const tooMuchOn=(c,m,day)=>{
const pain=training.newestPains(c).find((one)=>training.isHolding(one)&&(c.facts.isMobility(m)?training.stresses(c,m,one.part):training.bearsOn(c,m,one.part)
&&(((c.tables.heavy_on[m]>>one.part)&1)===1||one.on===day)));
return pain?pain.part:-1;
};
const setsOf=({K},{did})=>Math.max(K.fewest,did.length);
const said=(c,m,at)=>{
const since=Math.max(foot(c,c.tables.pattern[m]),...(c.tests.get(m)||[]).map(({on})=>on)),strict=c.facts.has(m,STRICT);
const log=(c.trained.get(m)||[]).filter((of)=>of.on>since&&(at===null||of.load===at)),last=log[log.length - 1];
if(!last||c.day - last.on>=c.K.off[0]||!last.did.length)return{last:null,full:false,missed:false,earned:false,alike:0};
const full=({did})=>did.every((set)=>set>=did[0]);
const alike=(of)=>full(of)&&of.did[0]===last.did[0]&&of.load===last.load;
const good=(of)=>alike(of)&&(strict?(of.reserve||0)>=c.K.left:of.did[of.did.length - 1]>=of.did[0]+ c.K.over*ONE);
const other=[...log].reverse().findIndex((of)=>!good(of)),running=other<0?log.length:other;
return{last,full:full(last),missed:!full(last)&&training.isMissed(last),earned:running>=everyOf(c,m),alike:running};
};
const everyOf=({K,facts},m)=>(facts.has(m,STRICT)?K.three:K.two);
const planned=(c,m,times,taken)=>(taken.hold?0:Math.min(c.K.planned,Math.floor(times / everyOf(c,m))));
const setsFor=(c,m,amount)=>{
const{K,facts}=c,practice=facts.isPractice(m),held=isTimed(c,m)&&!practice,{all}=facts.dose(m);
const volume=held?Math.min(Math.max(all,K.held[0]*ONE),K.held[1]*ONE):all;
const[least,most]=practice?[facts.has(m,OWN_DOSE)?1:K.attempts[0],K.attempts[1]]:K.sets;
return Math.max(least,Math.min(most,Math.floor((2*volume + amount*ONE)/(2*amount*ONE))));
};
const isStep=(c,kilos)=>plateOf(c)<=c.K.plate_share*((c.person.bodyWeight||0)+ kilos)+ 1e-6;
const byWeight=(c,m,before,taken)=>{
const{K}=c,{last,full,missed,earned,alike}=said(c,m,null),least=repsLoaded(c,m);
let kilos=load(c,m),each=least,{sets}=c.facts.dose(m),rule='',why=whyLoad(c,m,kilos),times=before;
const more=[];
if(last&&full&&last.did[0]>=least*ONE){
why=because('why.load_held',{weight:last.load});
if(kilos<=last.load){
times +=earned?0:alike;
[kilos,each]=[last.load,Math.max(least,Math.min(K.reps,Math.floor(last.did[0]/ ONE)))];
sets=Math.min(sets,Math.max(setsFor(c,m,each),last.did.length));
}
if(earned&&!taken.hold&&isStep(c,kilos))[kilos,rule,why]=[kilos + plateOf(c),'strict',because('why.in_full')];
}else if(last&&missed){
[kilos,rule,why]=[Math.min(kilos,last.load),'what training shows',because('why.fell_short')];
}else{
const did=didLately(c,m),inFull=did&&did.movement!==m&&did.did.every((set)=>set>=did.did[0])&&did.did[0]>=least*ONE;
if(did&&inFull&&did.load>kilos){
[kilos,why]=[did.load,because('why.load_held',{weight:did.load})];
more.push(withReserve(c,did));
}
}
const lately=taken.sore?didLately(c,m):null;
if(lately)[kilos,sets]=[Math.min(kilos,lately.load),Math.min(sets,setsOf(c,lately))];
const{most}=taken,before_=most&&most.load>0?most:null;
if(before_)sets=Math.min(sets,before_.sets);
const steps=isStep(c,kilos)?planned(c,m,times,taken):0,is=kilos;
const asks=Math.min(kilos + steps*plateOf(c),boundOfSteps(c,m,each),before_?before_.load:Infinity)*training.shareOf(c,taken);
kilos=Math.max(plateOf(c),asks===kilos||(before_&&asks===before_.load)?asks:inPlates(c,asks));
const left=leaves(c,m,kilos,each,more);
const least_=Math.max(K.left_step,left||0);
if(steps>0&&kilos>is)return{sets,amount:each,load:kilos,rule,why:because('why.if_done',{n:least_}),left:least_};
return{sets,amount:each,load:kilos,rule,why,left};
};
const amounts=(c,m,is,before,taken)=>{
const{K,facts}=c,timed=isTimed(c,m),practice=facts.isPractice(m),own=facts.has(m,OWN_DOSE)&&practice,dose=facts.dose(m);
const strict=facts.has(m,STRICT),step=timed?K.step_s:1,can=whole(is);
if(facts.isByMax(m)&&is.load>0)return byWeight(c,m,before,taken);
const part=(of)=>down(can*of);
let top=0,amount=0;
if(practice){
amount=own?Math.min(dose.each,part(K.share)):part(K.hold);
top=timed?can:can - 1;
}else{
top=timed?K.hold_most:isGuarded(c,m)||isLowering(c,m)||facts.has(m,STRAIGHT)?K.reps_strict:K.reps;
amount=Math.min(top,part(timed?K.hold:K.share));
top=Math.min(top,timed?part(K.share):can - 1);
}
const fewest=c.minor&&facts.has(m,LOADED)&&!timed&&facts.group(m)>=0?K.minor_reps:1;
amount=Math.max(fewest,amount);
const{last,full,missed,earned,alike}=said(c,m,is.load),done=last?Math.floor(last.did[0]/ ONE):0;
let rule='',[why]=measured(c,m,'why.best'),times=before;
if(full){
amount=Math.max(amount,done);
if(!earned&&amount===done)times +=alike;
if(earned&&!taken.hold)[amount,rule,why]=[amount + step,strict?'strict':'two for two',because(strict?'why.in_full':'why.two_over')];
}else if(missed){
[amount,rule,why]=[Math.min(amount,done),'what training shows',because('why.fell_short')];
}
amount=Math.max(fewest,Math.min(amount,top));
amount=Math.max(amount,Math.min(amount + planned(c,m,times,taken)*step,timed||practice?top:Math.min(top,can - K.left)));
let sets=setsFor(c,m,amount);
const lately=taken.sore?didLately(c,m):null;
if(lately)[amount,sets]=[Math.max(fewest,Math.min(amount,Math.floor(lately.did[0]/ ONE))),Math.min(sets,setsOf(c,lately))];
if(taken.most)[amount,sets]=[Math.max(fewest,Math.min(amount,taken.most.amount)),practice?sets:Math.min(sets,taken.most.sets)];
if(taken.light)amount=Math.max(fewest,down(amount*training.shareOf(c,taken)));
return{sets,amount,load:facts.has(m,LOADED)&&is.load>=0?load(c,m):is.load||null,rule,why,left:timed?null:Math.min(K.reserve,Math.max(0,Math.min(can - amount,training.leavesBack(taken,amount))))};
};
const triedSet=(c,m)=>{
const{K,facts}=c,dose=facts.dose(m),loaded=facts.has(m,LOADED),few=isGuarded(c,m)||isLowering(c,m)||dose.each<=K.try_dose;
const amount=isTimed(c,m)?Math.min(facts.word(m)==='carry'?K.try_carry:K.try_s,dose.each):loaded&&c.minor&&facts.group(m)>=0?K.minor_reps:Math.min(dose.each,few?K.try_reps_few:K.try_reps);
return{amount:Math.max(1,amount),kilos:loaded?load(c,m):readiness.mass(dose.unit,dose.load,c.person.bodyWeight)||null};
};
const firstSet=(c,m)=>{
const{K,facts}=c,measure=facts.measure(m),plain={atMost:false,sets:1,seconds:0,unit:targets.NO_LOAD,load:0,hits:0,of:0};
if(facts.isMobility(m))return{...plain,measure:TIME,amount:(isTimed(c,m)?K.unknown_s:K.range_s)*ONE};
const{amount,kilos}=triedSet(c,m);
return{...plain,measure,amount:amount*ONE,seconds:measure===REPS?facts.seconds(m):0,unit:kilos?targets.MASS:targets.NO_LOAD,load:kilos||0};
};
const asked=(c,of,m,taken,{before,tried:goesOn,again,isLimiter})=>{
const{K,facts}=c,is=now(c,m),dose=facts.dose(m),timed=isTimed(c,m),loaded=facts.has(m,LOADED);
if(facts.isMobility(m)&&(of.rule!=='show it'||taken.rule)){
const amount=!timed?K.range_s:!is?K.unknown_s:Math.max(1,Math.min(dose.each,down(whole(is)*K.share)));
const old=training.measuredOtherwise(c,m);
const[why]=is?told(c,m,of.gap?'why.so_far':'why.asked'):[!training.hasAll(c,m)?because('why.measure_not'):old?because('why.measure_again',{sides:old}):because('why.measure')];
return{sets:isLimiter&&is?K.range_limiter:timed&&is?dose.sets:K.range_sets,amount,load:null,rule:'',why,left:null};
}
if(!is){
if(taken.rule)return null;
const{amount,kilos}=triedSet(c,m);
const more=facts.has(m,OWN_DOSE)?Math.max(K.fewest,Math.min(K.again,dose.sets)):K.again;
return{sets:goesOn?more:K.try_sets,amount,load:kilos,rule:goesOn?'until it is tested':'first try',why:goesOn?because('why.until_number'):null,
left:!timed&&(isGuarded(c,m)||isLowering(c,m)||facts.word(m)==='exit')?K.left:null};
}
if(of.rule==='show it'&&of.gap){
if(taken.rule)return null;
const target=c.model.target(of.gap.leaf);
return{sets:target.of||target.sets,amount:Math.floor(target.amount / ONE),load:readiness.mass(target.unit,target.load,c.person.bodyWeight)||(!loaded?null:is.load>0?is.load:load(c,m)),rule:'',why:facts.isCounted(m)&&whole(is)>=K.far*Math.floor(target.amount / ONE)?because('why.show_far'):null,left:null};
}
if(of.single)return taken.rule?null:{sets:K.single_sets,amount:1,load:is.load||null,rule:'',why:null,left:null};
const out=amounts(c,m,is,of.block==='kept up'?0:before,taken);
if(out.rule==='what training shows'&&!again)out.sets=Math.min(out.sets,K.short_sets);
else if(out.rule==='what training shows')[out.rule,out.why]=['',facts.isByMax(m)&&out.load!==null&&out.load>0?whyLoad(c,m,out.load):measured(c,m,'why.best')[0]];
if(!taken.rule&&whole(is)>=K.far*out.amount)out.more=farAbove(c,m);
if(of.block==='kept up'){
const lately=taken.sore?didLately(c,m):null;
out.sets=Math.min(K.keep_sets[c.age!==null&&c.age>=K.keep_age?1:0],lately?setsOf(c,lately):Infinity);
}
return out;
};
const sides=(c,m)=>{
if(!c.model.is(m,EACH_SIDE))return{side:null,weaker:null};
const is=now(c,m),{atMost}=c.model.target(m),measure=c.facts.measure(m);
if(!is||is.left===null||is.right===null||is.left===is.right)return{side:'each',weaker:null};
const[low,high]=[Math.min(is.left,is.right),Math.max(is.left,is.right)];
const apart=measure===LENGTH?c.K.sides_cm*ONE:measure===ANGLE?c.K.sides_deg*ONE:measure===DONE?ONE:c.K.sides*high + 1e-6;
return{side:'weaker first',weaker:high - low>apart?((is.left<is.right)!==atMost?'left':'right'):null};
};
const workOfSide=(c,m,unit,amount)=>amount*(c.facts.seconds(m)&&unit==='reps'?c.facts.seconds(m)/ ONE:unit==='s'?1:c.tables.rep_s[m]||c.K.rep_s);
const work=(c,m,unit,amount)=>workOfSide(c,m,unit,amount)*(c.model.is(m,EACH_SIDE)?2:1);
const restOf=(c,m,unit,amount)=>{
const{K:{rest,short},facts}=c,word=facts.word(m),grouped=facts.group(m)>=0;
if(c.tables.rest_s[m])return c.tables.rest_s[m];
if(facts.isMobility(m)||((word==='balance'||word==='exit')&&workOfSide(c,m,unit,amount)<=short))return rest.range;
if(isGuarded(c,m)&&grouped)return rest.guarded;
return!grouped||word==='core'||unit==='s'?rest.easy:rest.strength;
};
const minutes=(c,{movement,unit,amount,sets,weaker,rest})=>Math.ceil(((2*sets +(weaker?1:0))*(work(c,movement,unit,amount)+ rest))/ 120 - 1e-9);
const tried=(c,{movement:m,unit,gap,amount},on)=>{
const{K}=c;
if(isGuarded(c,m)||isLowering(c,m)||c.facts.word(m)==='exit'||training.isHeldBack(c)||training.lately(c,m,on).length>0)return{then:'did',most:0};
const hurts=training.newestPains(c).some(({part,score})=>score>0&&((c.tables.stresses[m]>>part)&1)===1),isBack=training.isBack(c);
const isBound=isBack||hurts||(c.age!==null&&c.age>=K.balance_age)||c.model.is(m,EACH_SIDE),[reps,held]=K.try_back;
if(unit==='reps')return isBound?{then:'stop_most',most:reps}:{then:'stop_two',most:0};
const target=c.model.target(gap&&gap.movement===m?gap.leaf:m);
const most=Math.min(Math.floor(target.amount / ONE),isBound?held:Infinity,isBack?K.try_back_s:Infinity);
return most>amount?{then:'hold_most',most}:{then:'did',most:0};
};
const handsRaised=(c,m)=>{
if(!training.isRestricted(c,'prone')||c.facts.group(m)<0||!c.facts.has(m,OVER_FLOOR))return m;
const[low]=c.tables.easier[m].filter((one)=>(may(c,one)||training.isOnlyUnsure(c,one))&&!c.facts.has(one,OVER_FLOOR)&&!isGuarded(c,one)&&c.facts.isCounted(one)&&now(c,one)!==null).sort(higher(c));
return low===undefined?m:low;
};
const line=(c,of,at)=>{
const eased=ease(c,of.movement,at.on,at.first);
let m=of.movement;
if(eased.easier&&!c.facts.isMobility(m)){
const plain=(one)=>!isGuarded(c,one)&&now(c,one)!==null,low=below(c,m).find(plain);
if(low===undefined&&(isGuarded(c,m)||isLowering(c,m)))return null;
const next=low!==undefined&&ease(c,low,at.on,at.first).least?below(c,low).find((one)=>plain(one)&&c.tables.easier[low].includes(one)):undefined;
if(low!==undefined)m=next===undefined?low:next;
}
const low=of.single||of.rule==='show it'?m:handsRaised(c,m),isRaised=low!==m;
m=low;
const both=andSore(eased,ease(c,m,at.on,at.first)),isOver=both.why!==null&&['why.hurt','why.after_pause'].includes(both.why.key);
const late=isOver&&now(c,m)===null&&!c.facts.isMobility(m)&&!training.afterTimeOff(c,m,at.on,at.first).rule?both.why:null;
if(late&&training.waitsLately(c,m,at.on))return null;
const taken=late?{...both,light:false,easier:false,nearly:false,rule:null,why:null}:both;
const shown=of.rule==='show it'&&(at.tried||taken.rule!==null||taken.most!==null);
const goesOn=of.block==='range'?'range':of.block==='practice'?'practice':fits(c,of.movement)?'the gap itself':'show it';
const by=shown&&goesOn!=='show it'?{...of,rule:goesOn,why:[]}:of;
const does=asked(c,by,m,taken,at);
if(!does)return null;
const{facts,K}=c,unit=facts.measure(m)===REPS&&(!facts.isMobility(m)||(by.rule==='show it'&&!taken.rule))?'reps':'s';
let{rule}=by;
if(does.rule==='first try'||does.rule==='until it is tested'||['strict','two for two','what training shows'].includes(does.rule))rule=does.rule;
const said_=now(c,m)===null?by.why:by.why.filter(({key})=>key!=='why.nothing_known'&&key!=='why.tried_anew');
const why=does.rule==='until it is tested'?[]:said_.filter(({key,values})=>!((key==='why.easy'||key==='why.easy_kept')&&values.movement===m));
if(does.why)why.push(does.why);
why.push(...(does.more||[]));
if(isRaised)why.unshift(because('why.raised'));
if(taken.rule&&taken.why){
rule=taken.rule;
why.unshift(training.stresses(c,m,Number(taken.why.values.part))||!taken.why.key.startsWith('why.pain')?taken.why:because('why.pain_near',taken.why.values));
}
if(late)why.unshift(late);
const first=rule==='first try'||rule==='until it is tested';
const out={
block:of.block,movement:m,sets:taken.light?Math.max(K.fewest,Math.ceil(does.sets / 2)):does.sets,amount:does.amount,unit,seconds:unit==='reps'&&facts.seconds(m)?facts.seconds(m)/ ONE:null,
load:does.load,...sides(c,m),rest:restOf(c,m,unit,does.amount),left:does.left,minutes:0,gap:of.gap,insteadOf:of.insteadOf,rule,why,
then:rule==='show it'?'result':taken.hold?'same':'step',most:0,eased:(taken.light||taken.easier)&&!training.comesBack(taken),sore:taken.sore,worse:taken.worse,candidate:of,
};
if(first)Object.assign(out,tried(c,out,at.on));
out.minutes=minutes(c,out);
return out;
};
Object.assign(training,{because,told,measured,isLowering,isGuarded,higher,lower,isAnew,fits,builder,isTooEasy,harder,line,firstSet,sides,whyNot,minutes,ease,didLately,setsOf,tooMuchOn});
})();
(()=>{
const{targets:{REPS},readiness,training}=globalThis.rungbook;
const{because,told,measured,isLowering,isGuarded,higher,lower,isAnew,fits,builder,isTooEasy,harder,whyNot,didLately,now,whole,may,foot,heavier,NEVER}=training;
const{STRAIGHT,STRICT,LOADED,UPRIGHT}=training.TRAITS,{WHOLE}=readiness,FULL=4;
const candidates=(c,goal,gaps)=>{
const out=new Map();
const pool={
out,lost:[],rests:false,
add:(m,gap,rule,more={})=>{
const{why=[],single=false,insteadOf=null,block,then=null,after=null}=more,key=`${m} ${single}`;
if(out.has(key))return;
if(gap&&training.waitsLately(c,m,c.day))pool.rests=true;
const unknown=now(c,m)===null&&!c.facts.isMobility(m);
const first=unknown&&!why.length?[because(foot(c,c.tables.pattern[m])===NEVER?'why.nothing_known':'why.tried_anew')]:[];
const stands=block||(c.facts.isMobility(m)?'range':c.facts.isPractice(m)||single?'practice':'strength');
const before=!unknown&&(stands==='strength'||stands==='kept up')&&training.wasDone(c,m);
out.set(key,{
movement:m,gap,single,insteadOf,rule:unknown?'first try':before?'done before':rule,why:[...why,...first,...(before?[because('why.before')]:[])],
weight:gap?gap.weight:0,first:false,goesOn:false,mainstay:false,block:stands,then,after,
});
},
};
const chain=new Set(goal?goal.chain:c.model.order);
for(const gap of[...gaps.values()].sort(heavier))forGap(c,pool,gap,gaps,chain);
const limiter=training.limiter(c,[...out.values()]);
const low=limiter&&limiter.now===null&&isAnew(c,limiter.movement)?[...out.values()].find(({gap,rule})=>gap===limiter&&rule==='first try'):undefined;
if(limiter&&low&&low.movement!==limiter.movement)pool.lost.push({movement:limiter.movement,why:because('left.waits_for',{movement:low.movement})});
keptUp(c,pool,goal,chain);
const balance=upright(c,pool);
for(const of of out.values()){
of.first=(balance!==null&&of===balance)||(of.gap!==null&&of.gap===limiter);
of.goesOn=chain.has(of.movement)&&didLately(c,of.movement)!==null;
}
for(const of of mainstays(c,goal,[...out.values()]))of.mainstay=true;
return{all:[...out.values()],lost:pool.lost,limiter,balance};
};
const mainstays=(c,goal,all)=>{
const{facts,model}=c,known=all.filter(({block,rule,then})=>(block==='strength'||block==='kept up')&&rule!=='first try'&&then===null);
const kinds=training.by(known.filter(({block})=>block==='strength'),({movement})=>facts.kind(movement));
const heaviest=[...kinds.values()].map((list)=>list.reduce((a,b)=>((b.weight - a.weight||a.movement - b.movement)>0?b:a)));
if(!goal)return heaviest;
const own=model.of(goal.leaf),needed=readiness.leavesOf(c.tables.needs[own]).map(model.of);
const road=known.filter(({movement})=>facts.kind(movement)===facts.kind(own)&&needed.includes(movement)).sort((a,b)=>higher(c)(a.movement,b.movement));
return[...heaviest,...road.slice(0,1)];
};
const forGap=(c,pool,gap,gaps,inChain)=>{
const m=gap.movement,{facts}=c,loaded=facts.has(m,LOADED);
if(!training.isOpen(c,m)&&!training.wasDone(c,m)){
const low=training.wasLifted(c,m)?training.lighterStep(c,m):-1;
if(low>=0)pool.add(low,gap,'builder',{why:told(c,m,'why.not_shown')});
return;
}
if(!may(c,m)){
instead(c,pool,gap,inChain);
return;
}
if(c.minor&&loaded&&isLowering(c,m)){
pool.lost.push({movement:m,why:because('left.minor')});
return;
}
if(training.isTooNew(c,m)){
easedIn(c,pool,gap,gaps);
return;
}
const anew=isAnew(c,m);
if(gap.share===WHOLE&&facts.isCounted(m)&&training.isOpen(c,m)&&!(c.minor&&loaded))toShow(c,pool,gap,inChain);
else if(facts.isMobility(m))pool.add(m,gap,'range');
else if(facts.isPractice(m)&&!(anew&&isLowering(c,m)))pool.add(m,gap,'practice');
else if(gap.now===null&&!anew)pool.add(training.gentlest(c,m),gap,'first try');
else if(!anew&&fits(c,m)){
const up=harder(c,m);
if(up===undefined||!fits(c,up))pool.add(m,gap,'the gap itself');
if(up!==undefined)pool.add(up,gap,'harder',{why:measured(c,m,'why.easy')});
}else built(c,pool,gap,anew);
};
const toShow=(c,pool,gap,inChain)=>{
const m=gap.movement,up=training.onward(c,m,inChain,fits,isTooEasy);
pool.add(m,gap,'show it',{why:measured(c,m,'why.show'),then:up});
if(up!==null)pool.add(up,gap,'harder',{why:isTooEasy(c,m)?measured(c,m,'why.easy'):[],after:may(c,up)?null:m});
};
const leftFor=(c,m,part)=>because(now(c,m)?'left.spared':'left.sore',{part});
const whyNotToday=(c,m)=>{const part=training.touchedPart(c,m);return c.found.reached[m]!==1||training.pulledNerve(c,m)>=0?whyNot(c,m):part>=0?leftFor(c,m,part):null;};
const whyNotNew=(c,m)=>{const part=training.touchedPart(c,m);return part>=0?leftFor(c,m,part):because('left.careful');};
const easedIn=(c,pool,gap,gaps)=>{
const m=gap.movement,low=c.facts.group(m)>=0&&!c.facts.isPractice(m)?builder(c,m,true):undefined;
if(low!==undefined&&!gaps.has(low))pool.add(low,gap,'care first',{why:[because('why.waits',{movement:m})]});
else pool.lost.push({movement:m,why:whyNotNew(c,m)});
};
const built=(c,pool,gap,anew)=>{
const m=gap.movement,{facts,K}=c,is=gap.now,reps=is?whole(is):0;
const itself=!isLowering(c,m)&&(anew?!facts.has(m,LOADED):!isGuarded(c,m)&&reps>=K.itself);
const low=builder(c,m,anew);
if(low!==undefined&&!(isTooEasy(c,low)&&itself)){
pool.add(low,gap,'builder',{why:anew?[]:measured(c,m,'why.too_few')});
const single=!anew&&reps>=1&&reps<=K.singles&&facts.measure(m)===REPS&&c.tables.phase[m]===FULL&&!facts.has(m,STRICT)&&!c.minor;
if(single)pool.add(m,gap,'singles',{why:measured(c,m,'why.single'),single:true});
}else if(itself){
pool.add(m,gap,'the gap itself',{why:[because('why.short_sets')]});
}else{
pool.lost.push({movement:m,why:because('left.too_hard')});
}
};
const isKeptFrom=(c,m,[kind,which])=>{
const{tables,found,person}=c;
if(kind===2)return tables.equipment[m].flat().includes(String(which))&&person.have!==null&&!person.have.includes(String(which))&&!training.isAtHand(c,m);
const own=kind===0?((tables.stresses[m]>>Number(which))&1)===1:tables.cautions[m].includes(Number(which));
return own&&found.states[m]===readiness.PAUSED&&found.pausedBy(m).some(({part,cls})=>(kind===0?part:cls)===which);
};
const isNoHarder=({tables:{stage,cautions}},one,than)=>stage[one]<=stage[than]&&cautions[one].every((cls)=>cautions[than].includes(cls));
const isGentler=(c,other,m)=>c.found.reached[m]===1||isNoHarder(c,other,m);
const byCoach=(c,m)=>{
const of=(c.tables.instead[m]||[]).find((one)=>isKeptFrom(c,m,one)&&may(c,one[2])&&!training.isTooNew(c,one[2])&&!training.bearsMore(c,one[2],m)&&isGentler(c,one[2],m)&&(c.facts.isMobility(one[2])||(c.facts.isCounted(one[2])&&fits(c,one[2])!==false)));
return of===undefined?undefined:of[2];
};
const instead=(c,pool,gap,inChain)=>{
const m=gap.movement,{tables,facts}=c;
const why=whyNot(c,m);
const away=(other)=>Math.abs(tables.stage[other]- tables.stage[m]);
const can=facts.group(m)<0||facts.isPractice(m)?[]:c.model.order.filter((other)=>tables.pattern[other]===tables.pattern[m]&&facts.has(other,STRAIGHT)===facts.has(m,STRAIGHT)
&&facts.isCounted(other)&&!facts.isPractice(other)&&(tables.phase[other]===tables.phase[m]||!isLowering(c,other))&&may(c,other)&&fits(c,other)!==false&&!training.isTooNew(c,other)
&&!training.bearsMore(c,other,m)&&isGentler(c,other,m)&&(fits(c,other)||(tables.stage[other]<=tables.stage[m]&&(inChain.has(other)||tables.easier[m].includes(other)))));
const own=byCoach(c,m);
if(!can.length&&own===undefined){
pool.rests=true;
pool.lost.push({movement:m,why});
return;
}
const nearest=own!==undefined?own:can.reduce((a,b)=>((away(b)- away(a)||lower(c)(b,a))<0?b:a));
pool.add(nearest,gap,'instead',{why:[because('why.instead',{movement:m,why})],insteadOf:m});
};
const keptUp=(c,pool,goal,inChain)=>{
const{tables,facts}=c,all=()=>[...pool.out.values()];
const known=new Set(all().filter(({block,rule})=>block==='strength'&&rule!=='first try'&&rule!=='show it').map(({movement})=>tables.pattern[movement]));
const chain=new Set((goal?goal.chain:c.model.order).map((m)=>tables.pattern[m]));
const can=c.model.order.filter((m)=>facts.group(m)>=0&&facts.isCounted(m)&&!isLowering(c,m)&&!facts.isPractice(m)&&may(c,m));
const straight=(m)=>(facts.has(m,STRAIGHT)?1:0),sore=(m)=>(training.sorePart(c,m)>=0?1:0);
const keep=(list,why)=>{
const[m]=list.filter((one)=>fits(c,one)&&!pool.out.has(`${one} false`)).sort((a,b)=>sore(a)- sore(b)||straight(a)- straight(b)||higher(c)(a,b));
if(m===undefined)return false;
known.add(tables.pattern[m]);
const up=harder(c,m);
if(up===undefined||!fits(c,up))pool.add(m,null,'kept up',{why:[why],block:'kept up'});
if(up!==undefined)pool.add(up,null,'harder',{why:measured(c,m,'why.easy'),block:'kept up'});
return true;
};
const late=(m)=>(training.gentlest(c,m)===m?0:1);
const tryOne=(list,why)=>{
const[m]=list.filter((one)=>now(c,one)===null&&!pool.out.has(`${one} false`)&&!training.isTooNew(c,one)&&!training.waitsLately(c,one,c.day))
.sort((a,b)=>Number(c.trained.has(b))- Number(c.trained.has(a))||late(a)- late(b)||tables.stage[a]- tables.stage[b]||straight(a)- straight(b)||tables.cautions[a].length - tables.cautions[b].length||a - b);
if(m!==undefined)pool.add(m,null,'first try',{why:[c.trained.has(m)?because('why.tried_anew'):why],block:'kept up'});
};
const isHard=({block})=>block==='strength'||block==='kept up',stands=(of)=>isHard(of)&&!training.waitsLately(c,of.movement,c.day);
const nameResting=(group)=>{
if(all().some((of)=>isHard(of)&&of.rule!=='first try'&&facts.group(of.movement)===group))return;
const[m]=c.model.order.filter((one)=>facts.group(one)===group&&facts.isCounted(one)&&!isLowering(c,one)&&!facts.isPractice(one)&&!isGuarded(c,one)&&now(c,one)===null&&training.could(c,one))
.sort((a,b)=>tables.stage[a]- tables.stage[b]||straight(a)- straight(b)||tables.cautions[a].length - tables.cautions[b].length||a - b);
if(m!==undefined&&!may(c,m))pool.lost.push({movement:m,why:whyNot(c,m)});
};
for(const pattern of tables.pattern_order){
if(chain.has(pattern)&&!known.has(pattern))keep(can.filter((m)=>tables.pattern[m]===pattern),because('why.no_gap',{pattern}));
}
for(let group=0;group<tables.group_names.length;group +=1){
const plain=can.filter((m)=>facts.group(m)===group&&!isGuarded(c,m));
if(![...known].some((pattern)=>tables.groups[pattern]===group))keep(plain,because('why.whole_body'));
const ofGroup=all().filter((of)=>facts.group(of.movement)===group&&stands(of));
if(ofGroup.length&&ofGroup.every(({movement})=>training.isHeavyOnSore(c,movement)))keep(plain.filter((m)=>!training.isHeavyOnSore(c,m)),because('why.whole_body'));
if(!ofGroup.length)tryOne(plain,c.model.order.some((m)=>facts.group(m)===group&&now(c,m)!==null)?because('why.nothing_known'):because('why.nothing_of_group',{group}));
nameResting(group);
}
for(const m of can){
const did=didLately(c,m);
if(inChain.has(m)&&did&&did.movement===m&&fits(c,m)&&!isTooEasy(c,m))pool.add(m,null,'goes on',{why:[because('why.goes_on')],block:'kept up'});
}
for(const pattern of pool.rests?tables.pattern_order:[]){
const plain=can.filter((m)=>tables.pattern[m]===pattern&&!isGuarded(c,m)),lines=tables.patterns[pattern]==='core'?2:1;
for(let i=0;i<lines;i +=1){
const full=all().filter((of)=>stands(of)&&tables.pattern[of.movement]===pattern).length>=lines;
const isNew=!full&&!keep(plain,because('why.whole_body'));
if(isNew&&(['core','legs'].includes(tables.group_names[tables.groups[pattern]])||!all().some((of)=>stands(of)&&facts.group(of.movement)===tables.groups[pattern])))tryOne(plain,because('why.whole_body'));
}
}
const few=all().filter((of)=>isHard(of)&&of.rule!=='first try').length<2||!all().some((of)=>stands(of)&&tables.group_names[facts.group(of.movement)]==='legs');
if(pool.rests&&few&&!all().some((of)=>facts.has(of.movement,UPRIGHT))){
const[m]=c.model.order.filter((one)=>facts.has(one,UPRIGHT)&&may(c,one)&&!training.isTooNew(c,one)).sort(lower(c));
if(m!==undefined)pool.add(m,null,'kept up',{why:[because('why.whole_body')]});
}
for(const m of pool.rests?c.model.order:[]){
if(facts.isMobility(m)&&!isGuarded(c,m)&&may(c,m)&&!training.isTooNew(c,m))pool.add(m,null,'range',{why:[because('why.whole_body')]});
}
const balances=(m)=>facts.word(m)==='balance',of=goal?goal.chain:c.model.order;
if(all().some(({movement})=>balances(movement)))return;
const[still]=of.filter((m)=>{const is=now(c,m);return balances(m)&&may(c,m)&&is!==null&&whole(is)>=1;}).sort(higher(c));
if(still!==undefined)pool.add(still,null,'kept up',{why:[because('why.no_gap',{pattern:tables.pattern[still]})]});
};
const upright=(c,pool)=>{
if(c.age===null||c.age<c.K.balance_age)return null;
const stands=(m)=>c.facts.has(m,UPRIGHT)&&may(c,m);
const of=[...pool.out.values()].find(({movement,rule})=>stands(movement)&&rule!=='show it');
if(of)return of;
const all=c.model.order.filter(stands).sort(higher(c)),m=all.find((one)=>!training.isTooNew(c,one));
if(m===undefined){
if(all.length)pool.lost.push({movement:all[0],why:whyNotNew(c,all[0])});
return null;
}
pool.out.delete(`${m} false`);
pool.add(m,null,'balance from 65');
return pool.out.get(`${m} false`)||null;
};
Object.assign(training,{candidates,whyNotToday,leftFor,isNoHarder});
})();
(()=>{
const{readiness:{WHOLE},training}=globalThis.rungbook;
const{may,heavier}=training,WEEK=7;
const retestDays=(c,days,last,tests)=>{
const{K,facts}=c,trainsFrom=(from)=>Math.min(...days.filter((day)=>day>=from));
const rested=last + K.apart,following=trainsFrom(last + 1),goesOn=following<c.day + WEEK*K.weeks&&following>rested;
const on=Math.min(rested,goesOn?following - K.apart:following),place=(m)=>(facts.isMobility(m)?4:0)+(facts.measure(m)===globalThis.rungbook.targets.REPS?0:2)+(facts.isPractice(m)?1:0);
const all=tests(on).map((m)=>({m,at:place(m)})).sort((a,b)=>a.at - b.at).map(({m})=>m),later=all.splice(K.tests_day),next=trainsFrom(on + K.apart);
return[{on,tests:all},...(later.length&&Number.isFinite(next)?[{on:next,tests:later}]:[])];
};
const runningOut=({K,tables,day,model,tests},goal,on)=>(goal?goal.chain:model.order).flatMap((m)=>{
const newest=Math.max(...(tests.get(m)||[]).map((of)=>of.on)),last=tables.results_last_days;
return day - newest<=last&&on - newest + K.tests_ahead>last?[{m,newest}]:[];
}).sort((a,b)=>a.newest - b.newest||a.m - b.m).map(({m})=>m);
const retests=(c,goal,gaps,on,sessions)=>{
const{K}=c,heaviest=[...gaps.values()].sort(heavier);
const before=sessions.filter((of)=>of.on<on),lines=before.flatMap((of)=>of.lines),least=Math.min(K.tests_times,Math.max(0,...before.map(({week})=>week)));
const daysWith=(is)=>before.filter((of)=>of.lines.some(is)).map((of)=>of.on);
const daysOf=(m)=>daysWith(({movement})=>movement===m),times=(m)=>daysOf(m).length;
const wasShown=(m)=>daysWith(({movement,rule})=>movement===m&&rule==='show it').length>0;
const isEnough=(m)=>times(m)>0&&(times(m)>=least||wasShown(m));
const formOf=(gap)=>[...new Set([gap.movement,...lines.filter((line)=>line.gap===gap).map(({movement})=>movement)])].filter(isEnough)
.sort((a,b)=>times(b)- times(a)||Math.max(...daysOf(b))- Math.max(...daysOf(a))||Number(b===gap.movement)- Number(a===gap.movement)||a - b).slice(0,1);
const often=(list)=>list.map((m)=>({m,n:times(m)})).sort((a,b)=>b.n - a.n).map(({m})=>m);
const stood=(is)=>often([...new Set(lines.filter(is).map(({movement})=>movement))].sort((a,b)=>a - b).filter(isEnough));
const whole=new Set(heaviest.filter(({share})=>share===WHOLE).map(({movement})=>movement));
const isNeeded=(m)=>!((whole.has(m)&&wasShown(m))||(training.sparesBreath(c)&&(whole.has(m)||training.isOwned(c,m))));
const[form,...others]=heaviest.flatMap(formOf),forms=form===undefined?[]:[form,...often(others)];
let out=someOf(c,[...forms.slice(0,1),...[...whole,...runningOut(c,goal,on)].filter(isEnough),...forms].filter(isNeeded),on,K.tests,[]);
const ofWay=out.length>0;
if(out.length<K.tests_day&&!training.asksForCare(c))out=someOf(c,stood(({rule,movement})=>rule==='until it is tested'&&training.now(c,movement)===null),on,K.tests_day,out);
return ofWay||training.asksForCare(c)?out:someOf(c,stood(()=>true).filter(isNeeded),on,K.tests,out);
};
const someOf=(c,all,on,most,out)=>{
const{K,facts}=c,list=[...out];
for(const m of new Set(all)){
const known=list.filter((other)=>facts.kind(other)===facts.kind(m)).length;
const tests=may(c,m)&&training.hasAll(c,m)&&!((c.minor||(training.isBack(c)&&training.now(c,m)===null))&&facts.has(m,training.TRAITS.LOADED))&&!training.ease(c,m,on,on).sore&&training.sorePart(c,m)<0;
if(list.length<most&&!list.includes(m)&&tests&&(facts.isMobility(m)||known<K.tests_kind))list.push(m);
}
return list;
};
const makeRoom=({K},sessions,days)=>sessions.flatMap((of)=>{
const near=days.filter(({on})=>of.on>=days[0].on&&of.on<on + K.apart),tested=new Set(near.flatMap(({tests})=>tests));
const gone=of.lines.filter(({movement})=>tested.has(movement)),lines=of.lines.filter(({movement})=>!tested.has(movement));
if(!gone.length)return[of];
const leftOut=[...of.leftOut,...gone.map(({movement})=>({movement,why:{key:'left.tested',values:{}}}))];
return lines.length?[{...of,lines,leftOut,minutes:gone.reduce((sum,line)=>sum - line.minutes,of.minutes)}]:[];
});
Object.assign(training,{retestDays,retests,makeRoom});
})();
(()=>{
const{targets,results,readiness,training}=globalThis.rungbook;
const{WHOLE}=readiness;
const{may,down,heavier,minutes}=training;
const{TURNOVER,LOADED,STRAIGHT,STRICT,UPRIGHT,INVERTED}=training.TRAITS;
const{say}=globalThis.rungbook.words;
const BLOCKS=['practice','strength','kept up','range'];
const WEEK=7,DAYS=['mon','tue','wed','thu','fri','sat','sun'];
const LETTERS='ABCDEFGH',{LIMITS}=globalThis.rungbook.health,MOST_MONOTONY=LIMITS.monotony;
const isTrial=(rule)=>rule==='first try'||rule==='show it';
const isHard=(block)=>block==='strength'||block==='kept up';
const daysOf=({day,aWeek,weekdays},count)=>Array.from({length:count},(_,week)=>{
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
const isOff=({tried},{movement,then,after})=>(then!==null&&tried.has(movement))||(after!==null&&!tried.has(after));
const keepsItsLine=({K},{diary:log},of,on)=>of.goesOn&&log.times(of.movement,on,WEEK - 1)<K.keep_week;
const isMainstayDue=({K},{diary:log,perWeek},of,on)=>of.mainstay&&log.times(of.movement,on,WEEK - 1)<Math.min(K.keep_week,Math.max(0,perWeek - 1));
const hasToCome=(c,work,of,on)=>{
const tried=!isTrial(of.rule)||work.tried.has(of.movement),isLate=of.gap!==null&&work.diary.times(of.movement,on,WEEK - 1)===0;
return isHard(of.block)&&!isOff(work,of)&&(keepsItsLine(c,work,of,on)||(tried&&(isLate||isMainstayDue(c,work,of,on))));
};
const inTurn=(c,work,times,trained,keeps,isDue,isLater)=>{
const{facts,tables}=c,{all,balance}=work;
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
const overdue=!isLater?[]:all.filter((one)=>(one.gap||late(one))&&!one.first&&!isOff(work,one)&&times(one.movement)===0).sort(byWeight).slice(0,c.K.overdue_lines);
return[...new Set([...first,...all.filter(isDue).sort(byWeight),...overdue,...order])];
};
const draftOf=(c,work,week,on,order,mostRange,mostFirst)=>{
const{K,facts}=c,{diary:log}=work;
const warm=Math.min(K.warm_up_most,down(K.warm_up*c.minutes));
const state={left:c.minutes - warm,used:new Map(),sets:new Map(),firsts:0,shows:0,mostRange,mostFirst};
const lines=[];
const lost=[...work.lost];
for(const{movement,asked,late}of order){
if(!asked){
if(late)lost.push({movement,why:{key:'left.lately',values:late.what}});
continue;
}
const line={...asked},of=line.candidate;
if(lines.some(({movement})=>movement===line.movement))continue;
const sameKind=({movement})=>facts.kind(movement)===facts.kind(line.movement);
if(line.eased&&facts.group(of.movement)>=0&&lines.some(sameKind))continue;
const no=barred(c,work,week,{on,line,lines,state});
if(no==='')continue;
const unfit=no||fitted(c,work,week,{on,line,lines,state}),stepped=!unfit&&stepsIn(c,work,line,on);
if(stepped&&!of.gap&&line.block==='range')continue;
const why=unfit||(stepped?{key:'left.stands_in',values:{}}:null);
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
const order=inTurn(c,work,(m)=>log.times(m,on,K.turns),(group)=>log.trained(group,on,WEEK - 1),(of)=>keepsItsLine(c,work,of,on),(of)=>isMainstayDue(c,work,of,on),on - c.day>=K.overdue).filter((of)=>!isOff(work,of)).map((of)=>{
const asked=training.line(c,of,{on,first:work.first,before:week.lighter?0:week.before.get(of)||0,tried:tried.has(of.movement),again:log.times(of.movement,on,on - work.first)>0,isLimiter:of.gap!==null&&of.gap===work.limiter});
return{movement:of.movement,asked,late:asked?null:training.waitsLately(c,of.movement,on)};
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
const isTraining=({block,movement:m,candidate:{single}})=>isHard(block)||single||facts.has(m,TURNOVER)||facts.has(m,LOADED)||facts.has(m,INVERTED);
const isThin=draft.lines.length<2||!draft.lines.some(isTraining);
if(isThin&&work.hasFull){
draft.lines.length=0;
draft.state.sets.clear();
}
work.hasFull=work.hasFull||!isThin;
const{lines,lost,state}=draft;
if(on===work.first)lost.push(...absent(c,work,on,lines,lost));
for(const line of lines){
const{candidate}=line,{movement,single}=candidate,m=line.movement;
log.stood(movement,on);
if(!week.lighter&&!line.sore&&line.rule!=='time off')work.done.set(candidate,(work.done.get(candidate)||0)+ 1);
if(line.sore&&isHard(line.block)&&!isTrial(line.rule))week.sore.add(facts.kind(m));
if(isTrial(line.rule))tried.add(movement);
log.did(m,on,isHard(line.block)||single||facts.has(m,TURNOVER));
}
for(const[kind,sets]of state.sets)week.sets.set(kind,(week.sets.get(kind)||0)+ sets);
for(const line of lines){
const key=`${line.movement} ${line.block}`;
state.left +=line.minutes;
if(week.lighter&&line.block!=='range')lighten(c,line,work.full.get(key));
else if(!week.lighter)work.full.set(key,{...line});
state.left -=line.minutes;
}
lines.sort(inOrder(c));
easyFirst(c,lines);
const said=new Set(lines.map(({movement})=>movement));
return{on,week:week.number,name:'',lighter:week.lighter,minutes:c.minutes - state.left,warmUp:warmUp(c,lines),lines,leftOut:lost.filter(({movement})=>{const isNew=!said.has(movement);said.add(movement);return isNew;})};
};
const lighten=(c,line,full)=>{
if(full){
const less=Math.max(0,line.amount - full.amount);
line.sets=Math.min(line.sets,full.sets);
line.amount -=less;
if(line.load!==null&&full.load!==null)line.load=Math.min(line.load,full.load);
if(line.left!==null)line.left=Math.min(c.K.reserve,line.left + less);
}
line.sets=Math.ceil(line.sets / 2);
line.minutes=minutes(c,line);
};
const absent=(c,{limiter,diary:log},on,lines,lost)=>{
const{tables,facts,model}=c;
const out=[];
const say_=(m)=>out.push({movement:m,why:whyAbsent(c,log,m,on,lines)});
if(limiter&&!lines.some(({gap,movement})=>gap===limiter||movement===limiter.movement)&&!lost.some(({movement})=>movement===limiter.movement))say_(limiter.movement);
for(const pattern of tables.pattern_order){
const of=({movement})=>tables.pattern[movement]===pattern;
if(lost.some(of)||out.some(of)||lines.some(of))continue;
const[known]=model.order.filter((m)=>of({movement:m})&&facts.isCounted(m)&&!facts.isPractice(m)&&training.hasResult(c,m)).sort((a,b)=>tables.stage[b]- tables.stage[a]||a - b);
if(known!==undefined)say_(known);
}
return out;
};
const whyAbsent=(c,log,m,on,lines)=>{
const group=c.facts.group(m),part=training.sorePart(c,m),because=(key,values={})=>({key,values});
if(!training.isOpen(c,m)&&!training.wasDone(c,m))return because('left.not_shown');
if(!may(c,m))return training.whyNot(c,m);
if(part>=0)return because('left.spared',{part});
if(group>=0&&log.groupIsNear(group,on))return because('left.apart',{group});
if(training.now(c,m)===null)return because('left.careful');
if(group>=0&&lines.some(({block,movement})=>isHard(block)&&c.facts.group(movement)===group))return because('left.served',{group});
return because('left.turns');
};
const beginsAnewBelow=(c,{all,tried},m,days)=>(c.facts.word(m)!=='exit'?undefined:readiness.leavesOf(c.tables.needs[m]).map(c.model.of)
.find((low)=>!(days>=c.K.exit_from&&tried.has(low))&&training.foot(c,c.tables.pattern[low])!==training.NEVER&&all.some(({movement,rule})=>movement===low&&rule==='first try')));
const barred=(c,work,week,{on,line,lines,state})=>{
const{K,facts}=c,{diary:log}=work,{block,rule,movement:m,candidate:of}=line,hard=isHard(block);
const count=(name)=>lines.filter((other)=>other.block===name).length;
if((hard||of.single||facts.has(m,TURNOVER))&&facts.group(m)>=0&&log.groupIsNear(facts.group(m),on))return{key:'left.apart',values:{group:facts.group(m)}};
const tried=rule==='first try'?c.tables.try_group[m]:-1;
if(tried>=0&&log.groupIsNear(tried,on))return{key:'left.apart',values:{group:tried}};
if(log.partIsNear(m,on))return{key:'left.heavy',values:{}};
const overhead=line.sore?training.overheadOn(c,m):-1;
if(overhead>=0)return{key:'left.overhead',values:{part:overhead}};
const itself=line.sore?training.tooMuchOn(c,m,on):-1,sore=line.sore&&itself<0?training.heavyBelow(c,m,of.movement):itself;
if(sore>=0)return training.leftFor(c,m,sore);
const need=beginsAnewBelow(c,work,of.movement,on - work.first);
if(need!==undefined)return{key:'left.waits_for',values:{movement:need}};
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
const isConcerned=(c,m)=>{
const parts=new Set([...training.newestPains(c).filter(({score,signs})=>score>0||signs.length>0),...training.easedPains(c)].map(({part})=>part));
const causes=c.found.causes.filter(({kind,cls})=>kind!=='light'&&!(kind==='restrict'&&cls!==null));
return[m,...c.tables.easier[m]].some((of)=>[...parts].some((part)=>training.stresses(c,of,part))||causes.some((cause)=>readiness.reaches(c.model,cause,of)));
};
const isGentle=({facts,tables},m)=>{
const mark=tables.marks[tables.mark[m]],isFree=!mark||mark.signal==='notice';
return(!facts.has(m,STRICT)||facts.has(m,UPRIGHT))&&(isFree||!facts.isMobility(m));
};
const stepsIn=(c,{unhurt,all},{movement:m,candidate:{movement:asked}},on)=>{
const stood=unhurt?unhurt.lines.filter((of)=>of.on<=on):[];
if(!unhurt||training.now(c,m)!==null||stood.some(({of})=>of===asked))return false;
const left=stood.filter(({of,movement})=>!all.some((other)=>other.movement===of)||training.sorePart(c,movement)>=0);
if(training.isGrave(c,m))return true;
const{stage}=c.tables,gentle=stage[m]<=Math.max(0,...stood.map(({movement})=>stage[movement]))&&isGentle(c,m);
return!left.some(({movement})=>training.isNoHarder(c,m,movement))&&(isConcerned(c,m)||!gentle);
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
const full=training.hasSign(c)?0:Math.max(0,Math.max(0,week.full -(week.lighter?1:0))-(work.sore.get(kind)||0)),here=state.sets.get(kind)||0;
const rest=ceiling(c,kind,full,line.sore)-(week.sets.get(kind)||0),left_=rest - here,lately=line.candidate.goesOn?training.didLately(c,line.movement):null;
const waiting=work.all.filter((of)=>of.movement!==line.candidate.movement&&facts.kind(of.movement)===kind&&hasToCome(c,work,of,on)&&!(lately&&keepsItsLine(c,work,of,on))&&!lines.some((other)=>other.movement===of.movement)).length;
const toCome=Math.min(week.toCome,K.per_week),whole=Math.ceil(rest / toCome)- here,share=waiting?Math.min(whole,Math.max(K.fewest,whole - K.fewest)):whole;
const later=work.all.some((of)=>of.first&&isHard(of.block)&&facts.kind(of.movement)===kind)?K.fewest*(toCome - 1):0;
const heavy=line.block==='strength'&&facts.isByMax(line.movement)&&line.load!==null&&line.load>0&&!line.eased&&!line.sore&&!c.minor;
const room=lately?Math.max(share,Math.min(training.setsOf(c,lately),waiting?left_ - K.fewest*waiting - later:left_))
:heavy?Math.max(share,Math.min(K.heavy_sets,left_)):hasToCome(c,work,line.candidate,on)&&left_ - later>=K.fewest?Math.max(share,K.fewest):share;
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
const easyFirst=({facts,tables},lines)=>{
const sort=({block,movement:m})=>(BLOCKS.indexOf(block)*tables.patterns.length + tables.pattern[m])*2 +(facts.has(m,STRAIGHT)||facts.has(m,INVERTED)?1:0);
const places=lines.flatMap(({block,rule},at)=>(isHard(block)&&(rule==='first try'||rule==='until it is tested')?[at]:[]));
for(const of of training.by(places,(at)=>sort(lines[at])).values()){
const easy=of.map((at)=>lines[at]).sort((a,b)=>tables.stage[a.movement]- tables.stage[b.movement]||a.movement - b.movement);
of.forEach((at,i)=>{lines[at]=easy[i];});
}
};
const gently=(c)=>{
const{tables,found}=c,rests=new Set(found.causes.flatMap(({part})=>(part===null?[]:[part])));
const pains=training.newestPains(c).filter(({score,part})=>score>0&&!rests.has(part)),hurts=pains.map(({part})=>part);
const named=(all)=>all.map((part)=>tables.parts[part]).sort().map((part)=>say(`body.${part.replace('-','_')}`)).join(say('list.separator'));
const more=pains.some(({score})=>score>=LIMITS.pain[0]),above=Math.min(...pains.map(({part,score})=>Math.min(score + 1,readiness.goesOnTo(c.model,c.person,part,c.day))));
return[...(rests.size?[say('training.leave_out',{parts:named([...rests])})]:[]),
...(hurts.length?[more?say('training.go_gently_more',{parts:named(hurts)}):say('training.go_gently',{parts:named(hurts),n:above})]:[])].join(' ');
};
const warmUp=(c,lines)=>{
const{tables}=c,classes=new Set(lines.flatMap(({movement})=>tables.cautions[movement].map((i)=>tables.classes[i])));
const of=Object.keys(tables.warm_up).filter((key)=>key!=='always'&&classes.has(key)).sort();
const{person:{have}}=c,spared=new Set([...c.found.causes.flatMap(({part})=>(part===null?[]:[part])),...training.newestPains(c).filter(({score})=>score>=LIMITS.pain[0]).map(({part})=>part)]);
const isFine=([,parts,wants])=>![...spared].some((part)=>(parts>>part)&1)&&(have===null||wants.every((oneOf)=>oneOf.some((word)=>have.includes(word))));
const text=['always',...of].flatMap((key)=>tables.warm_up[key]||[]).filter(isFine).map(([said])=>said);
return{sore:gently(c),text,easy:toEaseIn(c,lines).flatMap((line)=>easySet(c,line))};
};
const toEaseIn=(c,lines)=>{
const hard=lines.filter(({block})=>isHard(block)),group=({movement})=>c.tables.group_names[c.facts.group(movement)],served=new Set(hard.slice(0,1).map(group));
return hard.filter((line,i)=>{
if(i===0)return true;
if(served.has(group(line))||group(line)==='core'||training.sorePart(c,line.movement)<0)return false;
served.add(group(line));
return true;
});
};
const easySet=({K,tables},line)=>{
const half=Math.floor(line.amount / 2),plate=Math.max(1,tables.dose_of_school.smallest_plate);
const load=line.load!==null&&line.load>0?down((line.load*0.5)/ plate)*plate:line.load;
return half<(line.unit==='s'?K.hold_fits:K.fits[0])?[]:[{movement:line.movement,bare:load===0,amount:inWords({...line,sets:1,amount:half,load:load||null,side:null})}];
};
const plan=(model,person,found,day,count)=>{
const of=laid(training.begin(model,person,found,day),unhurtOf(model,person,day,count),count),c=of.trainee;
const sessions=training.makeRoom(c,of.sessions,of.retests).map((one)=>({...one,warmUp:warmUp(c,one.lines)}));
named(sessions);
sayBeyond(sessions);
return{...of,sessions};
};
const unhurtOf=(model,person,day,count)=>{
const pauses=person.pauses.filter(({kind,cls})=>kind==='restrict'&&cls!==null);
if(!person.pains.length&&pauses.length===person.pauses.length)return null;
const bare={...person,pains:[],pauses},{sessions}=laid(training.begin(model,bare,readiness.assess(model,bare,day),day),null,count);
return{lines:sessions.flatMap(({on,lines})=>lines.map(({candidate:{movement:of},movement})=>({on,of,movement})))};
};
const laid=(c,unhurt,count)=>{
const{K,tables,day}=c;
const goal=training.goalOf(c),gaps=goal?training.gaps(c,goal):new Map();
const{all,lost,limiter,balance}=training.candidates(c,goal,gaps);
const weeks=daysOf(c,K.weeks).slice(0,count),start=startOf(c),every=Math.max(1,Math.floor(tables.dose_of_school.lighter_every / WEEK));
const known=all.filter(({rule})=>!isTrial(rule)&&rule!=='range').length;
const work={all,lost,limiter,balance,first:(weeks.flat()[0]||day),mostFirst:known>=K.known?K.first:training.wasLongOff(c)?K.first_back:K.first_new,few:known<K.known,perWeek:weeks.length?weeks[0].length:0,hasFull:false,diary:diary(c),tried:new Set(),done:new Map(),sore:new Map(),full:new Map(),unhurt};
const sessions=[];
const weekSets=new Map();
let before=new Map(),full=0,last=(null);
weeks.forEach((days,w)=>{
const lighter=(Math.floor((day + WEEK*w - start)/ WEEK)+ 1)% every===0;
if(!lighter)before=new Map(work.done);
const week={number:w + 1,lighter,before,full,sets:new Map(),sore:new Set(),toCome:0};
days.forEach((on,i)=>{const of=session(c,work,{...week,toCome:days.length - i},on);if(!sessions.length||of.lines.length)sessions.push(of);});
if(!lighter)full +=1;
if(!lighter)for(const kind of week.sore)work.sore.set(kind,(work.sore.get(kind)||0)+ 1);
if(lighter)last=days.length?days[days.length - 1]:day + WEEK*w;
});
for(const{movement:m,sets,block,rule}of sessions.filter(({week})=>week===1).flatMap(({lines})=>lines)){
if(isHard(block)&&!isTrial(rule))weekSets.set(c.facts.kind(m),(weekSets.get(c.facts.kind(m))||0)+ sets);
}
return{trainee:c,goal,gaps,limiter,sessions,retests:last===null?[]:training.retestDays(c,daysOf(c,K.weeks + 2).flat(),last,(on)=>training.retests(c,goal,gaps,on,sessions)),weekSets};
};
const sayBeyond=(sessions)=>{
const toCome=new Set(),promised=['left.turns','left.try_turns','left.show_turns'];
for(const of of[...sessions].reverse()){
of.leftOut=of.leftOut.map((one)=>(promised.includes(one.why.key)&&!toCome.has(one.movement)?{...one,why:{key:'left.beyond',values:{}}}:one));
for(const{movement}of of.lines)toCome.add(movement);
}
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
const gotOf=({sets,amount,unit,seconds,load})=>({
measure:unit==='reps'?targets.REPS:targets.TIME,atMost:false,sets,amount:amount*targets.ONE,seconds:unit==='reps'&&seconds?seconds*targets.ONE:0,
unit:load===null?targets.NO_LOAD:targets.MASS,load:load||0,hits:0,of:0,
});
const inWords=(line)=>targets.words(gotOf(line),units(),line.side!==null);
const units=()=>(globalThis.rungbook.page?globalThis.rungbook.page.units.ofSchool:'metric');
const nameOf=(tables,m)=>{const mark=tables.marks[tables.mark[m]];return `${tables.names[m]}${mark?` [${mark.signal}]`:''}`;};
const sidesInWords=([one,other])=>(other?say('morning.left_right',{left:targets.words(one,units()),right:targets.words(other,units())}):targets.words(one,units()));
const valuesOf=(c,{movement,part,pattern,group,cls,got,sides,standard,weight,why,...rest})=>{
const{tables,model}=c;
const what=[movement===undefined?'':nameOf(tables,movement),part===undefined?'':say(`body.${tables.parts[part].replace(/[ -]/g,'_')}`),
pattern===undefined?'':say(`pattern.${tables.patterns[pattern].replace(/[ -]/g,'_')}`),cls===undefined?'':tables.class_names[cls]].find((of)=>of!=='')||'';
return{
...rest,what,movement:what,part:what,pattern:what,group:group===undefined?'':say(`training.group.${tables.group_names[group]}`),got:sides?sidesInWords(sides):got?targets.words(got,units()):'',
standard:standard===undefined?'':targets.words(model.target(standard),units()),weight:weight===undefined?'':targets.massInWords(weight,true,units()),why:why?whyOf(c,why):'',
};
};
const whyOf=(c,{key,values})=>{
const[kind,which]=key.split('.'),of=valuesOf(c,values);
return kind==='left'?say(`training.left.${which}`,of):say(`training.why.${which}`,of);
};
const wordsOf=({key})=>`training.${key}`;
const thenOf=({then,most})=>say(`training.then.${then}`,{n:most});
const isReached=(goal)=>goal!==null&&goal.route!==null&&goal.route.movements.length===0;
const isRefused=({screened,born},day)=>{const{saysOn,mustAnswer}=globalThis.rungbook.health;return saysOn(screened,day,born)==='ask'||mustAnswer(screened,day,born);};
const refusal=({screened,born},day)=>{
const{isChild,mustAnswer}=globalThis.rungbook.health;
if(isChild(born,day))return say('training.child');
if(!mustAnswer(screened,day,born))return say('training.ask');
const first=Number(results.ageOn(born,day))<LIMITS.adult?say('training.answer_with_parent'):say('training.answer_first');
return[say('training.no_answers'),first,say('training.write_answers',{example:`screened: { says: ask, on: ${results.dayText(day)} }`})].join(' ');
};
const overLately=(c)=>{
const out=new Map(),hurt=training.easedPains(c).map(({part,on})=>({what:{part},until:on + c.K.pain_days}));
const rested=training.ended(c).map(({what,until})=>({what,until:until + WEEK*c.K.pause_weeks}));
for(const one of[...hurt,...rested].filter(({until})=>until>=c.day)){
const key=JSON.stringify(one.what),known=out.get(key);
if(!known)out.set(key,one);
else known.until=Math.max(known.until,one.until);
}
return[...out.values()];
};
const latelyWords=(c)=>overLately(c).map(({what,until})=>say('training.lately',{...valuesOf(c,what),day:results.dayText(until)}));
const conditions=({trainee:c,gaps})=>[
...(c.person.screened?[]:[say('training.unanswered')]),
...(c.young?[say('training.coach_present')]:[]),
...(c.age!==null&&c.age>=c.K.balance_age?[say('training.wall_near')]:[]),
...(c.minor&&[...gaps.keys()].some((m)=>c.facts.has(m,LOADED))?[say('training.sixes')]:[]),
...(training.sparesBreath(c)?[say('training.breathe_through')]:[]),
...(training.newestPains(c).some((pain)=>training.isHolding(pain)&&!readiness.isPausing(c.model,c.person,pain,c.day))?[say('training.until_lower',{n:globalThis.rungbook.health.LIMITS.pain[0]- 1})]:[]),
...(training.hasSign(c)?[say('training.until_seen')]:[]),
...latelyWords(c),
...(daysOf(c,c.K.weeks).flat()[0]===c.day&&c.log.some(({on,did,reserve})=>c.day - on<c.K.apart&&reserve===0&&did.some((set)=>set<did[0]))?[say('training.rest_day')]:[]),
];
const asksInWords=(c,leaf)=>{
const{tables,model}=c,target=model.target(leaf),mass=training.comesTo(c,target);
const words=targets.words(target,units(),tables.targets[tables.leaves[2*leaf + 1]][9]===1);
return mass===null?words:say('training.comes_to',{target:words,weight:targets.massInWords(Math.abs(mass),mass>=0,units())});
};
const timeOf=({training:K},{low:from,high:to})=>{
const months=(path)=>Math.ceil(path / 2000 / K.weeks_a_month);
if(to===0)return null;
const[few,many]=[from,to].map((path)=>Math.max(1,Math.ceil(Math.floor((path + 100)/ 200)/ 10)));
const[unit,low,n]=many<=K.said_in_weeks?['weeks',few,many]:['months',Math.max(1,months(from)),months(to)];
return low===n?say(`training.time.${unit}`,{n}):say(`training.time.between.${unit}`,{low,n});
};
const gearWords=({gear},oneOf)=>oneOf.map((word)=>gear[word]||word.replace(/-/g,' ')).reduce((before,next)=>say('list.or',{before,next}));
const howLong=({tables},gap,{say:tell,name})=>{
const time=timeOf(tables,gap),{stop}=gap;
if(!stop||gap.weight===0)return time===null?null:tell('training.way.whole',{time});
const movement=name(stop.by),all=stop.missing.map((oneOf)=>gearWords(tables,oneOf)),last=all.pop()||'';
const why=stop.why==='age'?tell('training.way.age',{movement,n:LIMITS.adult}):stop.why==='falls'?tell('training.way.falls',{})
:tell('training.way.equipment',{movement,gear:all.length?say('list.and',{before:all.join(say('list.separator')),last}):last});
if(time===null)return tell('training.way.none',{why});
return stop.at===stop.by?tell('training.way.then',{time,why}):tell('training.way.then_waits',{time,movement:name(stop.at),why});
};
const paceInWords=(tables,line)=>{
const side=line.side===null?[]:[say(line.side==='each'?'training.each_side':'training.weaker_first'),...(line.weaker?[say(`training.more_${line.weaker}`)]:[])];
const[end,held]=tables.hold[line.movement]||['',0],tempo=tables.tempo[line.movement];
const paced=line.unit!=='reps'?[]:[...(tempo?[say('target.tempo',{tempo})]:[]),...(held?[say(end==='top'?'target.held_top':'target.held_bottom',{n:held})]:[])];
return[...paced,...side];
};
const setsInWords=(tables,line)=>{
const values={sets:line.sets,amount:targets.words(gotOf({...line,sets:1}),units())};
return[line.rule==='until it is tested'?say('training.sets_by_number',values):say('training.sets',values),...paceInWords(tables,line)].join(say('list.separator'));
};
const painWords=(tables,pain,above)=>{
const{part,score,on,signs,nextMorning}=pain;
const name=say(`body.${tables.parts[part].replace('-','_')}`);
let out=say('morning.pain',{part:name,score,day:results.dayText(on)});
if(nextMorning!==null&&nextMorning>score)out=say('morning.pain_morning',{pain:out,n:nextMorning});
if(signs.length)out=say('morning.pain_signs',{pain:out,signs:signs.map((sign)=>say(`training.sign.${sign.replace('-','_')}`)).join(say('list.separator'))});
return above===null?out:say('morning.pain_stops',{pain:out,part:name,until:readiness.untilWords(pain,above)});
};
const SPINE=['neck','upper-back','lower-back'];
const clinician=(c)=>c.found.causes.filter(({kind})=>kind==='pain').flatMap(({entry})=>c.person.pains.filter((pain)=>pain.entry===entry)).map((pain)=>{
const said=painWords(c.tables,pain,readiness.goesOnTo(c.model,c.person,pain.part,c.day));
return SPINE.includes(c.tables.parts[pain.part])?say('morning.emergency_for',{pain:said,sign:say('hurts.now_spine')}):said;
});
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
Object.assign(training,{lastWeek,sidesInWords,asksInWords,howLong,timeOf,gearWords,paceInWords,setsInWords,thenOf,painWords,clinician,care,latelyWords,plan,gotOf,inWords,whyOf,wordsOf,valuesOf,conditions,isRefused,refusal,isReached,nameOf});
})();
(()=>{
const{targets,results,readiness,store,page,states,training}=globalThis.rungbook;
const{make,named,namedList,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model}=states;
if(!model)return;
const{tables}=model;
const MINUTE=60;
const isNever=({movement})=>states.neverTried().includes(tables.ids[movement]);
const BLOCKS=(['practice','strength','kept up','range']);
const inOrder=(lines)=>[...lines].sort((a,b)=>BLOCKS.indexOf(a.block)- BLOCKS.indexOf(b.block)||Number(isNever(a))- Number(isNever(b)));
const isDone=({movement,rule},on)=>store.entries(rule==='show it'?'tested':'trained').some(({entry:of})=>of.on===on&&model.numbers.get(of.movement)===movement);
const noteNext=(of,{found,day})=>{
const[session]=of.sessions,on=results.dayText(day),lines=session?inOrder(session.lines):[];
const[line]=session&&session.on===day?lines.filter((one)=>!isDone(one,on)):lines,settles=training.latelyWords(of.trainee).map(dated);
const note=(next)=>{if(JSON.stringify(store.get('next'))!==JSON.stringify(next))store.note('next',next);};
if(!line||!of.goal){
if(lines.length||settles.length)note({on,done:lines.length>0&&!line,settles});
return;
}
const m=line.movement,own=training.hasResult(of.trainee,m)&&training.followsFrom(of.trainee,m)===null,got=own?training.got(of.trainee,m):null,skill=tables.skills.find(({id})=>of.goal&&id===of.goal.id);
note({on,settles,id:tables.ids[m],name:tables.names[m],mark:tables.marks[tables.mark[m]]||null,sets:sets(line).textContent,got:got?states.shown(got).textContent:'',
goal:skill?skill.name:page.marked(tables,model.of(of.goal.leaf)),test:skill&&skill.id,
drawn:model.is(m,readiness.DRAWN),places:Object.fromEntries(tables.skills.map(({id,members})=>[id,Math.max(-1,...members.filter((one)=>found.states[one]===readiness.OWNED).map((one)=>tables.stage[one]))]))});
};
const plans=new WeakMap();
const planOf=(stand)=>{
const known=plans.get(stand)||training.plan(model,stand.person,stand.found,stand.day);
plans.set(stand,known);
if(!training.isRefused(stand.person,stand.day))noteNext(known,stand);
return known;
};
const aims=new WeakMap();
const aimOf=(stand)=>{
const known=plans.get(stand)||aims.get(stand)||training.plan(model,stand.person,stand.found,stand.day,0),{goal,limiter}=known;
if(goal&&!limiter&&!training.isReached(goal))return planOf(stand);
aims.set(stand,known);
return known;
};
const isPlanned=(stand)=>plans.has(stand);
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
states.keepsGoal(select);
return make('p',{class:'goal-choice screen-only'},make('label',{for:select.id,text:say('aim.goal')}),' ',select);
};
const asked=({trainee},{movement,leaf})=>{
const got=training.got(trainee,movement),from=training.followsFrom(trainee,movement),sides=training.apart(trainee,movement),old=training.measuredOtherwise(trainee,movement);
const there=old?say('training.why.measure_again',{got:training.sidesInWords(old)}):!got?say('training.unknown'):from!==null?nodes(sayNodes('training.why.counts',{got:states.shown(got),movement:named(tables,from)}))
:sides?nodes(sayNodes('morning.left_right',{left:states.shown(sides[0]),right:states.shown(sides[1])})):states.shown(got);
const mass=training.comesTo(trainee,model.target(leaf)),asks=states.target(leaf);
return{movement:named(tables,movement),got:there,target:mass===null?asks:nodes(sayNodes('training.comes_to',{target:asks,weight:targets.massInWords(Math.abs(mass),mass>=0,page.units.ofSchool)}))};
};
const keyOf=({trainee},{now,share,movement},[known,show,old,unknown])=>(now?(share===readiness.WHOLE?show:known):training.measuredOtherwise(trainee,movement)?old:unknown);
const sentence=(of)=>{
const{goal,limiter}=of;
if(!goal)return[say('training.no_goal')];
const named_={goal:goalName(goal)};
if(training.isReached(goal))return nodes(sayNodes('aim.reached',named_));
if(!limiter)return nodes(sayNodes(of.sessions.some(({lines})=>lines.some(({gap})=>gap!==null))?'aim.nothing_but':'aim.nothing',named_));
const key=keyOf(of,limiter,goal.chosen?['aim.needs','aim.needs_shown','aim.needs_again','aim.needs_unknown']:['aim.nearest_needs','aim.nearest_shown','aim.nearest_again','aim.nearest_unknown']);
return nodes(sayNodes(key,{...named_,...asked(of,limiter)}));
};
const sentenceText=(of)=>states.plain(sentence(of));
const howLong=({goal,limiter,trainee})=>{
const told=goal&&limiter?training.howLong(trainee,limiter,{say:(key,values)=>nodes(sayNodes(key,values)),name:(m)=>named(tables,m)}):null;
return told===null?[]:told;
};
const way=(of,field=()=>null)=>{
const{limiter,gaps,goal}=of;
if(!goal||!limiter)return null;
const steps=[];
for(let at=(limiter);at&&!steps.includes(at);){
steps.push(at);
at=at.opens.map((m)=>gaps.get(m)).filter((gap)=>gap!==undefined).map((gap)=>(gap)).sort(training.heavier)[0];
}
return make('ol',{class:'ladder way-up'},...steps.map((gap)=>make('li',{'data-movement':tables.ids[gap.movement]},states.figure(gap.movement),named(tables,gap.movement),
make('div',{},...nodes(sayNodes(keyOf(of,gap,['aim.step','aim.step_shown','aim.step_again','aim.step_unknown']),asked(of,gap)))),field(gap.movement))));
};
const dated=(text)=>text.replace(/[0-9]{4}-[0-9]{2}-[0-9]{2}/g,(day)=>results.dayWords(Number(results.readDay(day))));
const MOST_ACTS=3;
const amountOf=(c,m,amount)=>states.shown({measure:c.facts.measure(m),atMost:false,sets:1,amount,seconds:0,unit:targets.NO_LOAD,load:0,hits:0,of:0});
const bothSides=(c,m,left,right)=>nodes(sayNodes('morning.left_right',{left:amountOf(c,m,left),right:amountOf(c,m,right)}));
const few=(all)=>[...all.slice(0,MOST_ACTS).flatMap((one,i)=>[i?say('list.separator'):null,...one]),...(all.length>MOST_ACTS?[' ',say('shared.and_more',{n:all.length - MOST_ACTS})]:[])];
const doneBefore=(c)=>{
const slips=training.slips(c),falls=training.falls(c),off=training.daysOff(c),key=['morning.time_off','morning.time_off_longer','morning.time_off_long'][c.K.off.filter((days)=>off>=days).length - 1];
return[
...(slips.length?[sayNodes('aim.act_doubt',{list:few(slips.map(([m,amount])=>sayNodes('morning.doubt_of',{got:amountOf(c,m,amount),movement:named(tables,m)})))})]:[]),
...(falls?[sayNodes('aim.act_falls',{movement:named(tables,falls.movement),got:bothSides(c,falls.movement,falls.left,falls.right),least:amountOf(c,falls.movement,c.K.one_leg_s*targets.ONE)})]:[]),
...(key?[[say(key,{n:off})]]:[]),
].map(nodes);
};
const toBeHad=({trainee:c,gaps,limiter})=>{
const all=training.toBeHad(c,gaps,limiter);
return all.length?[nodes(sayNodes('aim.act_missing',{list:few(all.map(({oneOf,stops})=>sayNodes('morning.missing_of',{gear:training.gearWords(tables,oneOf),list:few(stops.map((m)=>[named(tables,m)]))})))}))]:[];
};
const weakerSides=(c)=>['left','right'].flatMap((side)=>{
const all=[...c.tests.keys()].sort((a,b)=>a - b).filter((m)=>training.may(c,m)&&training.sides(c,m).weaker===side);
const list=few(all.map((m)=>{const{left,right}=training.now(c,m)||{};return sayNodes('morning.side_of',{movement:named(tables,m),got:bothSides(c,m,Number(left),Number(right))});}));
return all.length?[nodes(side==='left'?sayNodes('morning.begin_left',{list}):sayNodes('morning.begin_right',{list}))]:[];
});
const meanwhile=({goal,limiter,sessions:[session]})=>{
const hard=session&&goal&&!limiter&&!training.isReached(goal)?session.lines.filter(({block})=>block==='strength'||block==='kept up'):[];
return hard.length?[nodes(sayNodes('aim.act_meanwhile',{list:few(hard.map(({movement})=>[named(tables,movement)]))}))]:[];
};
const acts=(of)=>[...doneBefore(of.trainee),...toBeHad(of),...meanwhile(of),...weakerSides(of.trainee)].slice(0,MOST_ACTS).map((told)=>make('li',{},...told));
const word=(id,text)=>make('a',{href:`words.html#${id}`,text});
const sets=(line)=>{
const got=training.gotOf(line),[first,...others]=training.paceInWords(tables,line),isPaced=line.unit==='reps'&&tables.tempo[line.movement];
const other=targets.words(got,page.units.ofOther),own=targets.words(got,page.units.ofSchool);
const pace=first===undefined?[]:[isPaced?word('tempo',first):first,...others];
return make('span',{},make('bdi',{text:own,'data-other':own===other?null:other}),...pace.flatMap((one)=>[say('list.separator'),one]));
};
const restWords=({rest,left})=>[rest % MINUTE?say('training.rest_s',{n:rest}):say('training.rest_min',{n:rest / MINUTE}),
...(left===null?[]:[say('list.separator'),word('in-reserve',say(left>=tables.training.reserve?'training.reserve_most':'training.reserve',{n:left}))])];
const reason=({trainee},because)=>{
const it=because.values.movement===undefined?{}:{movement:named(tables,because.values.movement),what:named(tables,because.values.movement)};
return nodes(sayNodes(training.wordsOf(because),{...training.valuesOf(trainee,because.values),...it}));
};
const why=(of,line)=>{
const key=tables.rules[line.rule],link=make('a',{href:`about-the-numbers.html#rule-${key.replace(/_/g,'-')}`,text:say(`training.rule.${key}`)});
const all=line.why.map((one)=>reason(of,one)).reduce((before,more)=>(before.length?nodes(sayNodes('training.why.both',{why:before,more})):more),([]));
return all.length?nodes(sayNodes('aim.rule_why',{rule:link,why:all})):[link];
};
const towards=(of,{gap,movement})=>(gap&&!(gap.share===readiness.WHOLE&&gap.movement!==movement)?nodes(sayNodes(gap.movement===movement?'aim.towards_itself':'aim.towards',{movement:named(tables,gap.movement),target:states.target(gap.leaf)})):null);
const head=({on,week,name,minutes,lighter})=>{
const values={day:states.dayOf(on),n:week,name,minutes};
return nodes(sayNodes(lighter?'aim.session_lighter':name?'aim.session_named':'aim.session',values));
};
const warmUp=({trainee:{tables:{names}}},{warmUp:{sore,text,easy}})=>[
...(sore?[make('li',{text:sore})]:[]),...text.map((line)=>make('li',{text:line})),
...(names?easy:[]).map(({bare,amount,movement})=>make('li',{},...nodes(sayNodes(bare?'training.easy_set_bare':'training.easy_set',{amount,movement:named(tables,movement)})))),
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
const weeksEnd=({retests,weekSets})=>{
const kinds=[...weekSets].map(([kind,count])=>{
const pattern=say(`pattern.${tables.patterns[kind>>1].replace(/ /g,'_')}`);
return say(kind&1?'aim.sets_straight':'aim.sets_of',{pattern,n:count});
});
return[...retests.map(({on,tests})=>make('p',{},...nodes(sayNodes('training.retest',{day:states.dayOf(on),list:namedList(tables,tests)})))),
...(kinds.length?[make('p',{class:'hint',text:say('training.week_sets',{list:kinds.join(say('list.separator'))})})]:[])];
};
globalThis.rungbook.aim={BLOCKS,dated,planOf,aimOf,isPlanned,goalName,goalChoice,sentenceText,sentence,howLong,acts,way,inOrder,sets,restWords,reason,why,towards,head,warmUp,care,leftOut,weeks,weeksEnd,nodes};
})();
