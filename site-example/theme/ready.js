'use strict';self.rungbookIs+="ready.js=fdbe0586 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"adult.to_ticks":"To the two ticks","aside.cleared":"a clearance","aside.pain":"a pain","aside.paused":"a pause","aside.remark":"a remark","aside.restrict":"something to leave alone","body.ankle":"ankle","body.elbow":"elbow","body.fingers":"fingers","body.foot":"foot","body.hamstring":"hamstring","body.hip":"hip","body.knee":"knee","body.lower_back":"lower back","body.neck":"neck","body.shoulder":"shoulder","body.upper_back":"upper back","body.wrist":"wrist","list.separator":", ","number.closed":"Do not try it today. First: {list}.","number.enter":"Enter your number","number.not_loaded":"This device does not have what is needed for it. Open this page once with a network.","number.taken_back":"Taken back.","number.told":"I did this already","pattern.balance":"balance","pattern.carry":"carry","pattern.core":"core","pattern.exit":"exit","pattern.hinge":"hinge","pattern.horizontal_pull":"horizontal pull","pattern.horizontal_push":"horizontal push","pattern.mobility":"mobility","pattern.squat":"squat","pattern.vertical_pull":"vertical pull","pattern.vertical_push":"vertical push","rests.because":"{pause}: {because}","rests.by":"{pause} by {who}","rests.by_client":"you","rests.by_coach":"your coach","rests.by_screening":"the health questions","rests.classes":"what is marked {list}","rests.hurt_in_test":"it hurt in a test","rests.hurt_in_training":"it hurt in training","rests.hurts":"it hurts","rests.left_alone":"{what}, left alone since {day}","rests.lift_light":"until the questions say otherwise","rests.lift_pain":"until {until}","rests.lift_screening":"until a clinician allows it, or you answer anew","rests.light":"what is upside down, with weight or only lowers: light training only, by the health questions of {day}","rests.over_for_today":"{what}, over for today","rests.pain":"{what}, for the pain of {day}","rests.paused":"{what}, paused since {day}","rests.sore":"{part}, {score} of 10 on {day}: nothing new and nothing harder for it","rests.sore_better":"Say how it is now","rests.this_rests":"Leave this alone for now:","rests.until":"{pause}, until {day}","rests.until_entry":"an entry of {n} or less","rests.until_none":"an entry of 0","rests.until_sign":"that is gone and a clinician has seen it","rests.where_lifted":"What rests, and how it ends","screening.young":"You are under 16: first a parent’s consent, and a coach in the room. Without both, do nothing of this.","site.load_again":"Load again","site.mixed":"A new version of this site was published while the page was loading, and its parts do not fit together. Load the page again. Your results are safe.","stand.both_sides":"left {left}, right {right}","stand.counted":"{state}, counted","stand.take_back":"Take back","state.almost":"almost","state.ask_first":"ask first","state.not_yet":"not yet","state.open":"open","state.owned":"owned","state.paused":"paused","state.test_first":"test first","state.with_coach":"only with a coach in person","test.do_not":"Do not try it today: {why}. Give only the most you did in the last four weeks, counted in the same way.","test.not_shown":"what must be there first is not shown","training.lately":"Only just settled: {what}. Until {day} nothing that bears on it goes up, and what is new and too much for it waits.","training.sixes":"Under 18: added weight in sets of six reps or more, and a little of it to practise the way out. No single reps and no tests with weight until you are 18."});
(()=>{
const{text,ONE,REPS,LENGTH,ANGLE,DONE,NO_LOAD,BODY_WEIGHT}=globalThis.rungbook.targets;
const{LIMITS,saysOn}=globalThis.rungbook.health;
const FALSE=0,UNKNOWN=1,TRUE=2,UNTESTED=3;
const MEETS=0,MISSES=1,SILENT=2,UNSURE=3;
const EACH_SIDE=1,GUARDED=2,NEVER_PRESUMED=4,LOWERING=8,DRAWN=16;
const STATES=['paused','owned','open','almost','not yet','test first'];
const PAUSED=0,OWNED=1,OPEN=2,ALMOST=3,NOT_YET=4,TEST_FIRST=5;
const ALL=-1,ANY=-2;
const WHOLE=1000;
const prepare=(tables)=>{
const targets=tables.targets.map(([measure,atMost,sets,amount,seconds,unit,load,hits,of])=>
({measure,atMost:atMost===1,sets,amount,seconds,unit,load,hits,of}));
const count=tables.ids.length;
const demands=tables.ids.map(()=>[]);
for(let leaf=0;2*leaf<tables.leaves.length;leaf +=1)demands[tables.leaves[2*leaf]].push(leaf);
const order=tables.ids.map((_,m)=>m).sort((a,b)=>tables.stage[a]- tables.stage[b]||a - b);
const numbers=new Map(tables.ids.map((id,m)=>[id,m]));
for(const[old,m]of Object.entries(tables.old))if(!numbers.has(old))numbers.set(old,m);
return{
tables,count,demands,order,numbers,
target:(leaf)=>targets[tables.leaves[2*leaf + 1]],
of:(leaf)=>tables.leaves[2*leaf],
is:(m,flag)=>(tables.flags[m]&flag)!==0,
};
};
const mass=(unit,load,bodyWeight)=>{
if(unit!==BODY_WEIGHT)return load;
if(bodyWeight===null)return null;
const twice=BigInt(load)*BigInt(bodyWeight)*2n + BigInt(ONE),by=BigInt(ONE)*2n;
const cut=twice / by;
return Number(twice % by!==0n&&twice<0n?cut - 1n:cut);
};
const compareLoads=(got,target,bodyWeight)=>{
const kind=(side)=>(side.unit===BODY_WEIGHT?1:0);
const[a,b]=[got.load,target.load];
if(kind(got)===kind(target)||Math.sign(a)!==Math.sign(b)||a===0)return a - b;
const[x,y]=[mass(got.unit,a,bodyWeight),mass(target.unit,b,bodyWeight)];
if(x===null||y===null)return null;
return Math.abs(x - y)<=LIMITS.same_mass?0:x - y;
};
const tries=(got)=>(got.of>0?got:{hits:1,of:1});
const others=(got,target)=>{
const done=tries(got);
const asked=target.of>0;
return[
got.sets - target.sets,got.seconds - target.seconds,
asked?done.hits - target.hits:0,asked?done.hits*target.of - target.hits*done.of:0,
];
};
const verdict=({sides,reserve},target,bodyWeight)=>{
if(target.atMost)return sides.every((got)=>got.amount<=target.amount)?MEETS:MISSES;
const loads=sides.map((got)=>compareLoads(got,target,bodyWeight));
const parts=sides.map((got)=>[got.amount - target.amount,...others(got,target)]);
if(parts.every((side)=>side.every((by)=>by>=0))&&loads.every((by)=>by===null||by>=0)){
return loads.every((by)=>by!==null)?MEETS:UNSURE;
}
const asksAll=parts[0].every((_,i)=>parts.some((side)=>side[i]<=0))&&loads.some((by)=>by!==null&&by<=0);
return asksAll&&reserve===0?MISSES:SILENT;
};
const ratio=(part,of)=>{
if(of<=0||part>=of)return WHOLE;
const done=Math.max(part,0);
return done<9e12?Math.floor((done*1000)/ of):Number((BigInt(done)*1000n)/ BigInt(of));
};
const loadShare=(got,target,bodyWeight)=>{
if(target.load<=0&&got.load>=0)return WHOLE;
if(Math.sign(got.load)!==Math.sign(target.load))return 0;
const one=(got.unit===BODY_WEIGHT)===(target.unit===BODY_WEIGHT);
const done=one?got.load:mass(got.unit,got.load,bodyWeight);
const asked=one?target.load:mass(target.unit,target.load,bodyWeight);
if(done===null||asked===null)return 0;
return asked>0?ratio(done,asked):ratio(-asked,-done);
};
const otherShare=(got,target,bodyWeight)=>{
if(target.atMost)return WHOLE;
const done=tries(got);
const tried=target.of>0?Math.min(ratio(done.hits,target.hits),ratio(done.hits*target.of,done.of*target.hits)):WHOLE;
return Math.min(ratio(got.sets,target.sets),ratio(got.seconds,target.seconds),loadShare(got,target,bodyWeight),tried);
};
const amountShare=(got,target)=>{
if(!target.atMost)return ratio(got.amount,target.amount);
return target.amount===0?WHOLE:ratio(target.amount,got.amount);
};
const share=(tested,target,bodyWeight)=>
Math.min(...tested.sides.map((got)=>Math.min(amountShare(got,target),otherShare(got,target,bodyWeight))));
const isNear=(tested,target,bodyWeight)=>{
if(target.measure!==LENGTH&&target.measure!==ANGLE)return share(tested,target,bodyWeight)>=LIMITS.near;
const limit=target.measure===LENGTH?LIMITS.near_length:LIMITS.near_angle;
return tested.sides.every((got)=>{
const short=target.atMost?got.amount - target.amount:target.amount - got.amount;
return short<=limit&&otherShare(got,target,bodyWeight)>=LIMITS.near;
});
};
const sidesText=({sides},atMost)=>{
if(sides.length===1)return text(sides[0]);
const[a,b]=sides;
const kinds=a.unit!==NO_LOAD&&b.unit!==NO_LOAD&&a.unit!==b.unit;
if(kinds||a.hits!==b.hits||a.of!==b.of)return `left ${text(a)}, right ${text(b)}`;
let loaded=a.load<=b.load?a:b;
if((a.unit===NO_LOAD)!==(b.unit===NO_LOAD)){
const one=a.unit===NO_LOAD?b:a;
loaded=one.load<0?one:a.unit===NO_LOAD?a:b;
}
return text({
...a,sets:Math.min(a.sets,b.sets),amount:atMost?Math.max(a.amount,b.amount):Math.min(a.amount,b.amount),
seconds:Math.min(a.seconds,b.seconds),unit:loaded.unit,load:loaded.load,
});
};
const value=(tree,of)=>{
let at=0;
const node=()=>{
const kind=tree[at++];
if(kind>=0)return of(kind);
let least=kind===ANY?1:tree[at++];
const parts=kind===ALL?least:tree[at++];
let met=0,possible=0;
for(let i=0;i<parts;i +=1){
const part=node();
if(part===TRUE)met +=1;
if(part!==FALSE)possible +=1;
}
return met>=least?TRUE:possible>=least?UNKNOWN:FALSE;
};
return tree.length===0?TRUE:node();
};
const cheapest=(tree,cost)=>{
let at=0;
const less=(a,b)=>a.leaves - b.leaves||a.shortfall - b.shortfall;
const node=()=>{
const kind=tree[at++];
if(kind>=0){
const paid=cost(kind);
return paid&&{leaves:paid[0],shortfall:paid[1],which:paid[0]>0?[kind]:[]};
}
const least=kind===ANY?1:tree[at++];
const parts=kind===ALL?least:tree[at++];
const ways=[];
for(let i=0;i<parts;i +=1){
const way=node();
if(way)ways.push({i,way});
}
if(ways.length<least)return null;
ways.sort((a,b)=>less(a.way,b.way)||a.i - b.i);
ways.length=least;
ways.sort((a,b)=>a.i - b.i);
return{
leaves:ways.reduce((sum,{way})=>sum + way.leaves,0),shortfall:ways.reduce((sum,{way})=>sum + way.shortfall,0),
which:ways.flatMap(({way})=>way.which),
};
};
return tree.length===0?{leaves:0,shortfall:0,which:[]}:node();
};
const leavesOf=(tree)=>{
const out=[];
for(let at=0;at<tree.length;at +=tree[at]>=0?1:tree[at]>=ANY?2:3)if(tree[at]>=0)out.push(tree[at]);
return out;
};
const evidence=(model,person,today)=>{
const{tables}=model;
const latest=new Map();
for(const tested of person.tested){
const age=today - tested.on;
if(age<0||age>tables.results_last_days)continue;
const of=latest.get(tested.movement);
if(!of||tested.on>of[0].on)latest.set(tested.movement,[tested]);
else if(tested.on===of[0].on)of.push(tested);
}
const shown=new Uint8Array(tables.leaves.length / 2).fill(UNTESTED);
const presumed=new Uint8Array(shown.length);
const bodyWeight=(tested)=>(tested.bodyWeight===null?person.bodyWeight:tested.bodyWeight);
for(const[m,results]of latest){
for(const leaf of model.demands[m]){
const verdicts=results.map((tested)=>verdict(tested,model.target(leaf),bodyWeight(tested)));
shown[leaf]=verdicts.includes(MEETS)?TRUE:verdicts.includes(UNSURE)?UNKNOWN:verdicts.includes(MISSES)?FALSE:UNKNOWN;
}
}
const owned=[...latest.keys()].filter((m)=>shown[m]===TRUE).sort((a,b)=>a - b);
const roots=new Map();
if(tables.presume)owned.forEach((root)=>presume(model,[root],(m)=>latest.has(m),presumed,(leaf)=>roots.set(leaf,root)));
return{latest,shown,presumed,roots,bodyWeight};
};
const presume=(model,owned,isTested,presumed,tell=()=>{})=>{
const open=[...owned];
for(let owner=open.pop();owner!==undefined;owner=open.pop()){
for(const leaf of model.tables.necessary[owner]){
const below=model.of(leaf);
if(model.is(below,NEVER_PRESUMED)||isTested(below)||presumed[leaf])continue;
for(const follows of[leaf,...model.tables.implied[leaf]]){
if(!presumed[follows])tell(follows);
presumed[follows]=1;
}
open.push(below);
}
}
};
const goesOnTo=(model,person,part,today)=>globalThis.rungbook.health.goesOnTo(model.tables.parts[part],globalThis.rungbook.results.ageOn(person.born,today));
const untilWords=({signs},above)=>{
const{say}=globalThis.rungbook.words;
return signs.length?say('rests.until_sign'):above===0?say('rests.until_none'):say('rests.until_entry',{n:above});
};
const isPausing=(model,person,{part,score,signs},today)=>{
return score>goesOnTo(model,person,part,today)||signs.length>0;
};
const pausingPains=(model,person,today)=>{
const newest=new Map();
for(const pain of person.pains){
const known=newest.get(pain.part);
if(pain.on<=today&&(!known||pain.on>=known.on))newest.set(pain.part,pain);
}
return[...newest.values()].filter((pain)=>isPausing(model,person,pain,today)).sort((a,b)=>a.part - b.part);
};
const causes=(model,person,today)=>{
const nothing={movement:null,part:null,cls:null,pattern:null,until:null,by:null,because:null};
const lifted=({cls,on})=>cls!==null&&person.cleared.some((of)=>of.cls===cls&&on<=of.on&&of.on<=today
&&today<=Math.min(of.until===null?Infinity:of.until,of.on + LIMITS.clearance));
const holding=person.pauses.filter((pause)=>pause.on<=today&&(pause.until===null||today<=pause.until)&&!lifted(pause));
const pains=pausingPains(model,person,today).map(({part,on,entry})=>({...nothing,kind:('pain'),part,on,entry}));
const screened=saysOn(person.screened,today,person.born)==='light'&&person.screened
?[{...nothing,kind:('light'),on:person.screened.on,entry:0}]:[];
return[...holding,...pains,...screened];
};
const reaches=({tables,is},{kind,movement,part,cls,pattern},m)=>(kind==='light'?is(m,GUARDED)||is(m,LOWERING)
:movement!==null?movement===m:part!==null?((tables.stresses[m]>>part)&1)===1
:cls!==null?tables.cautions[m].includes(cls):pattern===tables.pattern[m]);
const rest=(model,person,today)=>{
const{tables}=model;
const all=causes(model,person,today);
const exit=tables.patterns.indexOf('exit');
const direct=new Map();
const gone=new Map();
const hit=(of,m,i)=>of.set(m,[...(of.get(m)||[]),i]);
all.forEach((cause,i)=>{
for(let m=0;m<model.count;m +=1){
if(!reaches(model,cause,m))continue;
hit(direct,m,i);
if(cause.movement!==null||tables.pattern[m]===exit)hit(gone,m,i);
}
});
const standing=new Uint8Array(model.count).fill(gone.size?0:1);
for(let changed=gone.size>0;changed;){
changed=false;
for(const m of model.order){
if(standing[m]||gone.has(m))continue;
if(value(tables.needs[m],(leaf)=>(standing[model.of(leaf)]?TRUE:FALSE))===TRUE){
standing[m]=1;
changed=true;
}
}
}
const reached=standing.map((is,m)=>(is&&!direct.has(m)?1:0));
return{all,direct,gone,standing,reached};
};
const assess=(model,person,today)=>{
const{tables}=model;
const known=evidence(model,person,today);
const{latest,shown,presumed,bodyWeight}=known;
const{all,direct,gone,standing,reached}=rest(model,person,today);
const open=(leaf)=>(presumed[leaf]&&shown[leaf]===UNTESTED?TRUE:shown[leaf]===UNTESTED?UNKNOWN:shown[leaf]);
const guarded=(leaf)=>(shown[leaf]===UNTESTED?UNKNOWN:shown[leaf]);
const judge=(m)=>(model.is(m,GUARDED)?guarded:open);
const near=new Map();
for(const[m,results]of latest){
const missed=model.demands[m].filter((leaf)=>results.some((tested)=>{
const target=model.target(leaf),weight=bodyWeight(tested);
return verdict(tested,target,weight)===MISSES&&isNear(tested,target,weight);
}));
if(missed.length)near.set(m,missed);
}
const nearly=(m)=>{
if(near.size===0)return -1;
const of=judge(m);
const found=leavesOf(tables.needs[m]).find((leaf)=>{
const missed=near.get(model.of(leaf));
if(!missed||!missed.includes(leaf))return false;
const reachedNow=tables.implied[leaf];
return value(tables.needs[m],(other)=>(other===leaf||reachedNow.includes(other)?TRUE:of(other)))===TRUE;
});
return found===undefined?-1:found;
};
const states=new Uint8Array(model.count);
const needs=new Uint8Array(model.count);
const counted=new Uint8Array(model.count);
for(let m=0;m<model.count;m +=1){
needs[m]=value(tables.needs[m],judge(m));
const byPresumption=shown[m]===UNTESTED&&presumed[m]===1;
if(!reached[m])states[m]=PAUSED;
else if(shown[m]===TRUE||byPresumption)states[m]=OWNED;
else if(needs[m]===TRUE)states[m]=OPEN;
else if(nearly(m)>=0)states[m]=ALMOST;
else states[m]=needs[m]===FALSE?NOT_YET:TEST_FIRST;
counted[m]=states[m]===OWNED&&byPresumption?1:0;
}
const closest=(leaf)=>{
let best=null;
for(const tested of latest.get(model.of(leaf))||[]){
const reachedShare=share(tested,model.target(leaf),bodyWeight(tested));
if(!best||reachedShare>best.share)best={share:reachedShare,tested};
}
return best;
};
const missing=(m)=>{
const of=judge(m);
const repair=cheapest(tables.needs[m],(leaf)=>{
if(of(leaf)===TRUE)return[0,0];
const best=closest(leaf);
return[1,WHOLE -(best?best.share:0)];
});
const leaves=[...new Set(repair?repair.which:[])];
return leaves.map(lack);
};
const lack=(leaf)=>{
const best=closest(leaf);
return{leaf,movement:model.of(leaf),got:best&&sidesText(best.tested,model.target(leaf).atMost),share:best&&best.share};
};
const may=(m)=>reached[m]===1&&needs[m]===TRUE;
const chosen=(m,lower)=>{
const near=nearly(m);
if(near>=0&&!lower&&reached[model.of(near)])return{which:[near],asWritten:true};
const of=judge(m);
const barred=(below)=>!reached[below]||(lower&&!may(below)&&tables.stage[below]>=tables.stage[m]);
const way=(tests,bar)=>cheapest(tables.needs[m],(leaf)=>{
const shows=of(leaf);
if(shows===TRUE)return[0,0];
if(bar(model.of(leaf)))return null;
if(tests)return shows===UNKNOWN?[1,0]:null;
const best=closest(leaf);
return[1,WHOLE -(best?best.share:0)];
});
const doubtful=needs[m]===UNKNOWN;
const written=way(doubtful,()=>false);
if(written&&!written.which.some((leaf)=>barred(model.of(leaf))))return{which:written.which,asWritten:true};
const round=way(doubtful,barred)||way(false,barred);
return{which:round?round.which:[],asWritten:false};
};
const down=(m,lower)=>{
const seen=[m],steps=([]);
let direct=!lower;
for(let at=0;at<seen.length;at +=1){
const{which,asWritten}=chosen(seen[at],lower);
direct=direct&&asWritten;
for(const leaf of which){
const below=model.of(leaf);
if(may(below)){
if(!steps.includes(leaf))steps.push(leaf);
continue;
}
direct=false;
if(!seen.includes(below))seen.push(below);
}
}
return{direct,steps:steps.map(lack)};
};
const first=(m)=>{
const found=down(m,false);
return found.steps.length?found:down(m,true);
};
const pausedBy=(m)=>{
const own=direct.get(m);
if(own)return own.map((i)=>all[i]);
const seen=new Set([m]),found=new Set(),waiting=[m];
for(let at=waiting.pop();at!==undefined;at=waiting.pop()){
const missed=gone.get(at);
if(missed){
missed.forEach((i)=>found.add(i));
continue;
}
for(const leaf of leavesOf(tables.needs[at])){
const below=model.of(leaf);
if(!standing[below]&&!seen.has(below)){
seen.add(below);
waiting.push(below);
}
}
}
return[...found].sort((a,b)=>(all[a].kind==='pain'&&all[b].kind==='pain'?all[a].entry - all[b].entry:a - b)).map((i)=>all[i]);
};
const countedBecause=(m)=>(counted[m]?Number(known.roots.get(m)):-1);
return{states,needs,counted,countedBecause,known,judge,reached,causes:all,missing,first,nearly,pausedBy,closest};
};
const doubtful=(of,m,{measure,amount})=>{
if(measure===REPS&&amount % ONE!==0)return true;
if(measure===ANGLE)return amount>LIMITS.widest;
const most=Math.max(...of.demands[m].map((leaf)=>of.target(leaf).amount));
return measure!==DONE&&amount>LIMITS.far*most;
};
globalThis.rungbook.readiness={
prepare,assess,doubtful,evidence,presume,value,leavesOf,sidesText,verdict,mass,reaches,isPausing,goesOnTo,untilWords,WHOLE,STATES,TRUE,UNKNOWN,FALSE,UNTESTED,MEETS,MISSES,EACH_SIDE,GUARDED,LOWERING,DRAWN,
PAUSED,OWNED,OPEN,ALMOST,NOT_YET,TEST_FIRST,
};
})();
(()=>{
const{readiness}=globalThis.rungbook;
const{LIMITS,ageOn}=globalThis.rungbook.health;
const{TRUE,UNTESTED}=readiness;
const WEEK=7;
const LOADED=16;
const ARM=['neck','shoulder','elbow','wrist'],LEG=['lower-back','hamstring'];
const by=(list,key)=>{
const out=new Map();
for(const one of list){
const at=out.get(key(one));
if(at)at.push(one);
else out.set(key(one),[one]);
}
return out;
};
const begin=(model,person,found,day)=>{
const age=ageOn(person.born,day);
return{model,tables:model.tables,K:model.tables.training,person,found,day,minor:age!==null&&age<LIMITS.adult,memo:{ended:null}};
};
const isOwned=({found:{known:{shown,presumed}}},m)=>shown[m]===TRUE||(shown[m]===UNTESTED&&presumed[m]===1);
const isOpen=(c,m)=>c.found.needs[m]===TRUE||isOwned(c,m);
const isHolding=({score})=>score>=LIMITS.pain[0]&&score<LIMITS.pain[1];
const takesBack=({K},{score,nextMorning})=>score>=K.pain_less||(nextMorning!==null&&nextMorning>score);
const stresses=({tables},m,part)=>((tables.stresses[m]>>part)&1)===1;
const bearsOn=({tables},m,part)=>(((tables.stresses[m]&~tables.light_on[m])>>part)&1)===1;
const whatOf=({movement,part,cls,pattern})=>(movement!==null?{movement}:part!==null?{part}:cls!==null?{cls}:{pattern:Number(pattern)});
const newestPains=({person,day})=>{
const newest=new Map();
for(const pain of[...person.pains].sort((a,b)=>a.on - b.on))if(pain.on<=day)newest.set(pain.part,pain);
return[...newest.values()].sort((a,b)=>a.part - b.part);
};
const ended=(c)=>{
if(c.memo.ended)return c.memo.ended;
const{model,person,day,K}=c;
const out=[];
for(const pause of person.pauses){
if(pause.kind!=='paused'||pause.until===null||pause.until>=day||pause.until - pause.on + 1<K.pause_days)continue;
out.push({spares:(m)=>readiness.reaches(model,pause,m),from:pause.on,until:pause.until,what:whatOf(pause)});
}
for(const[part,all]of[...painsByPart(c)].sort(([a],[b])=>a - b)){
const stops=(pain)=>readiness.isPausing(model,person,pain,day);
const rested=longRun(c,all,stops),hurt=longRun(c,all,(pain)=>stops(pain)||isHolding(pain));
if(rested)out.push({spares:(m)=>stresses(c,m,part),from:rested.run[0].on,until:rested.until,what:{part}});
if(hurt&&hurt.run.some((pain)=>stops(pain)||takesBack(c,pain)))out.push({spares:(m)=>bearsOn(c,m,part),from:hurt.run[0].on,until:hurt.until,what:{part}});
}
c.memo.ended=out;
return out;
};
const painsByPart=({person,day})=>by([...person.pains].filter(({on})=>on<=day).sort((a,b)=>a.on - b.on),(pain)=>pain.part);
const longRun=({K},all,is)=>{
const bad=all.map(is),last=bad.lastIndexOf(true);
if(last<0||last===bad.length - 1)return null;
const first=bad.lastIndexOf(false,last)+ 1,end=all[last + 1].on;
return end - all[first].on>=K.pause_days?{run:all.slice(first,last + 1),until:end - 1}:null;
};
const easedPains=(c)=>[...painsByPart(c)].sort(([a],[b])=>a - b).flatMap(([part,all])=>{
const stops=all.map((pain)=>readiness.isPausing(c.model,c.person,pain,c.day)),bad=all.map((pain,i)=>stops[i]||isHolding(pain)),last=bad.lastIndexOf(true);
const first=bad.lastIndexOf(false,last)+ 1;
return last>=0&&last<all.length - 1?[{part,score:all[last].score,on:all[last].on,from:all[first].on,rested:stops.slice(first,last + 1).includes(true)}]:[];
});
const isEasedOn=(c,{part,rested},m)=>bearsOn(c,m,part)||(rested&&stresses(c,m,part));
const lately=(c,m,on)=>{
const{K}=c,hurt=easedPains(c).filter((of)=>isEasedOn(c,of,m));
return[...hurt.map(({part,score,from,on:day})=>({what:{part},from,until:day + K.pain_days,why:{key:'why.hurt',values:{part,score}}})),
...ended(c).filter(({spares})=>spares(m)).map(({what,from,until})=>({what,from,until:until + WEEK*K.pause_weeks,why:{key:'why.after_pause',values:{n:Math.floor((on - until - 1)/ WEEK)+ 1}}}))].filter(({until})=>on<=until);
};
const sorePains=(c)=>newestPains(c).filter((pain)=>readiness.isPausing(c.model,c.person,pain,c.day)||pain.score>=LIMITS.pain[0]);
const pulledNerve=(c,m)=>{
const{parts,stresses,cautions,classes}=c.tables,on=(of)=>parts.some((word,part)=>of.includes(word)&&((stresses[m]>>part)&1)===1);
const stretch=c.tables.patterns[c.tables.pattern[m]]==='mobility'&&on([...ARM,...LEG]),lifted=on(ARM)&&cautions[m].includes(classes.indexOf('overhead'));
const pain=newestPains(c).find(({part,signs})=>signs.includes('numb')&&(stretch||(lifted&&ARM.includes(parts[part]))));
return pain?pain.part:-1;
};
const waitsForAge=(c,m)=>c.minor&&(c.tables.traits[m]&LOADED)!==0;
const heldBy=(c,m)=>{
if(c.found.reached[m]!==1||pulledNerve(c,m)>=0)return 'rests';
if(sorePains(c).some(({part})=>stresses(c,m,part)))return 'sore';
if(waitsForAge(c,m))return 'age';
if(lately(c,m,c.day).length)return 'lately';
return isOpen(c,m)?null:'closed';
};
globalThis.rungbook=Object.assign(globalThis.rungbook,{held:{by,begin,isOwned,isOpen,isHolding,takesBack,stresses,bearsOn,whatOf,newestPains,ended,easedPains,isEasedOn,lately,sorePains,pulledNerve,waitsForAge,heldBy,LOADED}});
})();
(()=>{
const{readiness,held,results,store,page}=globalThis.rungbook;
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
const standing=()=>{
const day=results.today(),exported=store.all();
if(kept&&kept.value.day===day&&kept.value.exported===exported)return kept.value;
const key=`${day}:${JSON.stringify(exported)}`;
if(!kept||kept.key!==key)kept={key,value:current((model),day,exported)};
else kept.value.exported=exported;
return kept.value;
};
const mine=()=>(!model||(store.isEmpty()&&!store.facts().goal)?null:standing());
const latest=()=>(kept?kept.value:mine());
const heeding=()=>mine()||(model&&(store.entries('restrict').length||health()==='light')?standing():null);
const stateWord=(state)=>(health()==='ask'&&(state===readiness.OPEN||state===readiness.TEST_FIRST)?say(isChild()?'state.with_coach':'state.ask_first'):say(`state.${readiness.STATES[state].replace(' ','_')}`));
const MOST_FIRST=3;
const nodesOf=(parts)=>parts.map((part)=>(part||''));
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
const when=({on,until})=>(until===null?dayOf(on):page.make('span',{text:results.spanWords(on,until)}));
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
const heeds=new WeakMap();
const heedOf=(stand)=>{
const known=heeds.get(stand)||held.begin((model),stand.person,stand.found,stand.day);
heeds.set(stand,known);
return known;
};
const sore=(stand)=>held.sorePains(heedOf(stand));
const bearsOnSore=(stand,m)=>sore(stand).some(({part})=>held.stresses(heedOf(stand),m,part));
const isHeld=(stand,m)=>{const by=held.heldBy(heedOf(stand),m);return by!==null&&by!=='closed';};
const hurtsToday=()=>{
const stand=mine();
return stand!==null&&(sore(stand).some(({on})=>on===stand.day)
||stand.found.causes.some(({kind,on,by,because})=>kind==='paused'&&on===stand.day&&by==='client'&&/^it hurt/.test(because||'')));
};
const asks=(m)=>{
if(!model||store.adults.isDue()||hurtsToday())return '';
const stand=standing(),by=held.heldBy(heedOf(stand),m),causes=stand.found.pausedBy(m);
if(by==='rests')return causes.length&&causes.every(({kind})=>kind==='light')?'told':'';
return by===null?'today':by==='sore'||by==='age'?'':'told';
};
const mayAsk=(m)=>asks(m)!=='';
const neverTried=()=>{const kept=store.get('never');return kept&&kept.on===results.dayText(results.today())&&Array.isArray(kept.movements)?kept.movements.map(String):[];};
const soreLines=(stand,m)=>sore(stand).filter(({part,entry})=>(m===undefined||(((model).tables.stresses[m]>>part)&1)===1)&&!stand.found.causes.some((cause)=>cause.kind==='pain'&&cause.entry===entry))
.map(({part,score,on})=>make('li',{},...sayNodes('rests.sore',{part:partWord((model).tables.parts[part]),score,day:dayOf(on)}).map((piece)=>(piece)),' ',
make('a',{href:'if-it-hurts.html#pain',text:say('rests.sore_better')})));
const whatRests=(all)=>{
const{tables}=(model);
const word=(list,i)=>list[Number(i)];
const single=all.filter(({cls})=>cls===null).map(({movement,part,pattern})=>(movement!==null?page.named(tables,movement):part!==null?partWord(word(tables.parts,part)):say(`pattern.${word(tables.patterns,pattern).replace(/ /g,'_')}`)));
const classes=all.flatMap(({cls})=>(cls===null?[]:[tables.class_names[cls]]));
return([...single,...(classes.length?[sayNodes('rests.classes',{list:classes.join(say('list.separator'))})]:[])].flatMap((one,i)=>[...(i?[say('list.separator')]:[]),...[one].flat()]));
};
const plain=(parts)=>parts.map((part)=>{
if(part===null||typeof part==='string')return part||'';
const copy=(part.cloneNode(true));
copy.querySelectorAll('.aside').forEach((aside)=>aside.remove());
copy.querySelectorAll('.mark-word').forEach((word)=>{word.textContent=`[${word.textContent}]`;});
return String(copy.textContent);
}).join('');
const causeWords=(cause,all=[cause])=>{
const since=dayOf(cause.on);
if(cause.kind==='light')return(sayNodes('rests.light',{day:since}));
const what=whatRests(all);
if(cause.kind==='pain')return(sayNodes('rests.pain',{what,day:since}));
let out=cause.kind==='restrict'?sayNodes('rests.left_alone',{what,day:since}):sayNodes('rests.paused',{what,day:since});
if(cause.kind==='paused'&&cause.until===cause.on)out=sayNodes('rests.over_for_today',{what});
else if(cause.by)out=sayNodes('rests.by',{pause:out,who:who(cause.by)});
if(cause.until!==null&&cause.until!==cause.on)out=sayNodes('rests.until',{pause:out,day:dayOf(cause.until)});
if(cause.because)out=sayNodes('rests.because',{pause:out,because:BECAUSE[cause.because]||cause.because});
return(out);
};
const whyHeld=(m)=>{
const stand=standing(),{found}=stand,c=heedOf(stand),bare={movement:null,part:null,cls:null,pattern:null};
switch(held.heldBy(c,m)){
case 'rests':{
const own=found.pausedBy(m),nerve=held.pulledNerve(c,m);
return(own.length?own:found.causes.filter(({kind,part})=>kind==='pain'&&part===nerve)).map((cause)=>causeWords(cause));
}
case 'sore':return soreLines(stand,m).map((line)=>[...line.childNodes]);
case 'age':return[[say('training.sixes')]];
case 'lately':{
const last=new Map(held.lately(c,m,c.day).sort((a,b)=>a.until - b.until).map((of)=>[JSON.stringify(of.what),of]));
return[...last.values()].map(({what,until})=>nodesOf(sayNodes('training.lately',{what:whatRests([(({...bare,...what}))]),day:dayOf(until)})));
}
case 'closed':{
const first=[...new Set(found.first(m).steps.map(({movement})=>movement))].slice(0,MOST_FIRST);
return[first.length?nodesOf(sayNodes('number.closed',{list:page.namedList(c.tables,first)})):[say('test.do_not',{why:say('test.not_shown')})]];
}
default:return[];
}
};
const since=(m)=>{const all=held.lately(heedOf(standing()),m,standing().day).map(({from})=>from);return all.length?Math.min(...all):null;};
const hints=(m)=>{
const rests=held.heldBy(heedOf(standing()),m)==='rests'?[say('rests.this_rests'),' ']:[];
return whyHeld(m).map((why)=>page.make('p',{class:'hint'},...rests,...why));
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
const m=model&&here?model.numbers.get((here).dataset.movement||''):undefined;
if(!place||m===undefined)return;
const stand=heeding(),by=stand?held.heldBy(heedOf(stand),m):null,rests=by==='rests';
place.hidden=!rests&&by!=='sore';
if(!stand||place.hidden)return;
const lines=whyHeld(m).map((line)=>make('li',{},...line));
place.replaceChildren(...(rests?[make('p',{text:say('rests.this_rests')}),make('ul',{class:'plain'},...lines),
make('p',{},make('a',{href:'where-i-stand.html#rests',text:say('rests.where_lifted')}))]:[make('ul',{class:'plain'},...lines)]));
};
const adultsFirst=()=>make('p',{class:'advice do-not'},say('screening.young'),' ',make('a',{href:'today.html',text:say('adult.to_ticks')}));
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
if(!mayAsk(m))return;
await page.load('number-here');
const{number:of,entry}=globalThis.rungbook;
const ask=()=>{
const stand=mine();
const told=asks(m)==='told',kept=(key)=>page.later([()=>{tell({key,news:of.news(m,stand,key)});ask();}],'number-form');
const field=of.isPlain(m)?of.line(m,(news)=>{tell(news);ask();},true):make('div',{},...(told?hints(m):[]),entry.form(m,{today:false,told,kept,hurt:()=>{form.replaceChildren();}}));
form.replaceChildren(...(field?[field]:[]));
return field;
};
const field=ask(),first=field&&field.querySelector(asks(m)==='told'?'select':'input, a');
if(first instanceof HTMLElement)first.focus();
};
const button=form.querySelector('button');
if(!button)return;
button.addEventListener('click',()=>{open().catch(()=>{page.byId('number-news').textContent=say('number.not_loaded');});});
let was='today';
const draw=()=>{
const how=asks(m),now=store.adults.isDue()?'due':held.waitsForAge(heedOf(standing()),m)?'age':how;
place.hidden=!now;
if(now===was)return;
was=now;
button.textContent=say(how==='told'?'number.told':'number.enter');
form.replaceChildren(...(now==='due'?[adultsFirst()]:now==='age'?hints(m):how==='told'?[...hints(m),button]:[button]));
};
store.onChange(draw);
draw();
};
const drawSlots=()=>{
const slots=(document.querySelectorAll('[data-state-of]'));
const stand=!slots.length||store.isEmpty()?null:mine();
for(const slot of slots){
const m=model?model.numbers.get(slot.dataset.stateOf||''):undefined;
slot.replaceChildren(...(stand&&m!==undefined?[mark(stand.found.states[m],stand.found.counted[m]===1)]:[]));
slot.hidden=!stand;
}
};
const draw=()=>{
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
const keepsGoal=(select)=>select.addEventListener('change',()=>{
store.put('goal',select.value||null);
const drawn=document.getElementById(select.id);
if(drawn)drawn.focus();
});
globalThis.rungbook.states={model,mine,latest,keepsGoal,figure,mark,stateWord,shown,target,got,partWord,day,dayOf,health,isChild,barred,causeWords,sore,bearsOnSore,soreLines,isHeld,whyHeld,hints,since,hurtsToday,asks,mayAsk,adultsFirst,neverTried,when,together,plain,whatRests,liftedBy,asideGot};
store.onChange(()=>{draw();page.later([drawSlots,follow],'main');});
drawSlots();
draw();
number();
follow();
})();
