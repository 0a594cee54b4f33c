'use strict';self.rungbookIs+="training-known.js=81f28b7a ";
'use strict';
(()=>{
const{targets,readiness}=globalThis.rungbook;
const{ONE,REPS,TIME}=targets;
const{LIMITS}=globalThis.rungbook.health;
const{TRUE,UNKNOWN,UNTESTED,GUARDED,LOWERING,WHOLE}=readiness;
const STRAIGHT=1,STRICT=2,TURNOVER=4,LOADED=16,OWN_DOSE=32,UPRIGHT=64,INVERTED=128;
const NEVER=-Infinity;
const ARM=['shoulder','elbow','wrist'];
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
const isOwned=({found:{known:{shown,presumed}}},m)=>shown[m]===TRUE||(shown[m]===UNTESTED&&presumed[m]===1);
const isOpen=(c,m)=>c.found.needs[m]===TRUE||isOwned(c,m);
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
const may=(c,m)=>c.found.reached[m]===1&&(isOpen(c,m)||wasDone(c,m))&&pulledNerve(c,m)<0&&isAtHand(c,m);
const pulledNerve=(c,m)=>{
const{parts,stresses}=c.tables;
if(!c.facts.isMobility(m)||!parts.some((word,part)=>ARM.includes(word)&&((stresses[m]>>part)&1)===1))return -1;
const pain=newestPains(c).find(({part,signs})=>signs.includes('numb')&&['neck',...ARM].includes(parts[part]));
return pain?pain.part:-1;
};
const isOnlyUnsure=(c,m)=>c.found.needs[m]===UNKNOWN&&!isOwned(c,m)&&!c.model.is(m,GUARDED)&&c.found.reached[m]===1&&isAtHand(c,m)&&sorePart(c,m)<0;
const isHolding=({K},{score,on:day},on)=>score>=LIMITS.pain[0]&&score<LIMITS.pain[1]&&on - day<=K.pain_days;
const sorePart=(c,m)=>{
const pain=newestPains(c).find((one)=>bearsOn(c,m,one.part)&&isHolding(c,one,c.day));
return pain?pain.part:-1;
};
const bearsOn=({tables},m,part)=>(((tables.stresses[m]&~tables.light_on[m])>>part)&1)===1;
const heavyBelow=(c,m,than)=>{
const pain=newestPains(c).find((one)=>isHolding(c,one,c.day)&&bearsOn(c,m,one.part)&&((c.tables.heavy_on[than]>>one.part)&1)===1);
return pain?pain.part:-1;
};
const bearsMore=(c,m,than)=>{
const heavy=(of,part)=>((c.tables.heavy_on[of]>>part)&1)===1;
return newestPains(c).some((pain)=>isHolding(c,pain,c.day)&&((bearsOn(c,m,pain.part)&&!bearsOn(c,than,pain.part))||(heavy(m,pain.part)&&!heavy(than,pain.part))));
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
const sparesBreath=({found,tables})=>found.causes.some(({kind,cls})=>kind==='restrict'&&cls!==null&&tables.classes[cls]==='breath-holding');
const asksForCare=(c)=>{
if(c.memo.care===null)c.memo.care=c.found.causes.some(({kind})=>kind!=='paused')||newestPains(c).some((pain)=>isHolding(c,pain,c.day))||isBack(c);
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
const isTooNew=(c,m)=>now(c,m)===null&&(sorePart(c,m)>=0||(isBack(c)&&c.facts.has(m,LOADED))||(asksForCare(c)&&!c.facts.isMobility(m)&&c.tables.stage[m]>reachOf(c,c.tables.pattern[m])));
const mayTest=(c,m)=>may(c,m)&&isOpen(c,m)&&hasAll(c,m)&&sorePart(c,m)<0&&!(c.minor&&c.facts.has(m,LOADED));
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
out.push({spares:(m)=>readiness.reaches(model,pause,m),until:pause.until});
}
for(const[part,all]of by([...person.pains].filter(({on})=>on<=day).sort((a,b)=>a.on - b.on),(pain)=>pain.part)){
const bad=all.map((pain)=>readiness.isPausing(model,person,pain,day)),last=bad.lastIndexOf(true);
if(last<0||last===bad.length - 1)continue;
const first=bad.lastIndexOf(false,last)+ 1,end=all[last + 1].on;
if(end - all[first].on>=K.pause_days)out.push({spares:(m)=>((c.tables.stresses[m]>>part)&1)===1,until:end - 1});
}
c.memo.ended=out;
return out;
};
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
begin,by,foot,countsFrom,above,ofTest,isOwned,isOpen,wasDone,isBack,wasLongOff,sparesBreath,bearsOn,bearsMore,heavyBelow,isAtHand,hasAll,may,isHolding,sorePart,pulledNerve,isOnlyUnsure,isTooNew,asksForCare,isBackLately,mayTest,isMissed,now,whole,down,share,got,followsFrom,newestPains,ended,NEVER,
TRAITS:{STRAIGHT,STRICT,TURNOVER,LOADED,OWN_DOSE,UPRIGHT,INVERTED},
});
})();
