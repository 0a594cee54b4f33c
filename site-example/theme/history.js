'use strict';self.rungbookIs+="history.js=f257fd7d ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"history.asked":"Asked of it: {list}.","history.day":"day","history.early":"A trend takes {n} test days in {weeks} weeks, in one measure.","history.falls":"Falls: {first}, then {then}; was {best} on {day}.","history.less":"Goes down by {amount} a week.","history.level":"Stays level.","history.more":"Goes up by {amount} a week.","history.rested":"Rested from {first} to {last}.","history.result":"result","history.slides":{"one":"Less from test to test, no better for {n} week: {advice}.","other":"Less from test to test, no better for {n} weeks: {advice}."},"history.still":{"one":"No better for {n} week: {advice}.","other":"No better for {n} weeks: {advice}."},"history.trained":{"one":"Trained on {n} day in this time.","other":"Trained on {n} days in this time."},"morning.advice.below":"work on {movement} first","morning.advice.days":"one more day a week","morning.advice.harder":"fewer reps of {movement}","morning.advice.lighter_week":"a lighter week first, there was none for five","morning.advice.rest":"a lighter week, then the same again","morning.advice.sets":"more sets a week"});
'use strict';
'after page.js states.js training.js aim.js';
(()=>{
const{targets,readiness,results,training,page}=globalThis.rungbook;
const{ONE,KILOGRAM,DONE,MASS,NO_LOAD}=targets;
const{LIMITS}=globalThis.rungbook.health;
const{LOADED}=training.TRAITS;
const{say}=globalThis.rungbook.words;
const WEEK=7;
const isAbove=(a,b,atMost)=>a.load>b.load||(a.load===b.load&&(atMost?a.amount<b.amount:a.amount>b.amount));
const covers=(a,b,atMost)=>(atMost?a.amount<=b.amount:a.amount>=b.amount)&&a.load>=b.load&&a.hits*b.of>=b.hits*a.of;
const points=(c,m,of=c.tests.get(m)||[])=>{
const{atMost}=c.model.target(m);
const byDay=new Map();
for(const tested of of){
const weight=tested.bodyWeight===null?c.person.bodyWeight:tested.bodyWeight;
if(tested.on>c.day||tested.sides.some(({unit,load})=>load!==0&&readiness.mass(unit,load,weight)===null))continue;
const point={...training.ofTest(c,m,tested),on:tested.on},best=byDay.get(tested.on);
if(!best||isAbove(point,best,atMost))byDay.set(tested.on,point);
}
return[...byDay.values()].sort((a,b)=>a.on - b.on);
};
const slope=(x,y)=>{
const all=x.flatMap((a,i)=>x.slice(i + 1).map((b,j)=>(a===b?null:(y[i + 1 + j]- y[i])/(b - a)))).filter((n)=>n!==null).map(Number).sort((a,b)=>a - b);
const middle=Math.floor(all.length / 2);
return all.length===0?null:all.length % 2?all[middle]:(all[middle - 1]+ all[middle])/ 2;
};
const trend=({day,tables:{history:H}},all)=>{
const recent=all.filter(({on})=>on<=day&&day - on<=H.trend_days),[first]=recent;
if(recent.length<H.tests||recent.some(({hits,of})=>hits!==first.hits||of!==first.of))return null;
const byLoad=recent.some(({load})=>load!==first.load);
if(byLoad&&recent.some(({amount})=>amount!==first.amount))return null;
const perWeek=slope(recent.map(({on})=>(on - first.on)/ WEEK),recent.map(({amount,load})=>(byLoad?load / KILOGRAM:amount / ONE)));
return perWeek===null?null:{perWeek,byLoad};
};
const slides=({tables:{history:H}},all,{perWeek,byLoad},atMost)=>{
const turn=atMost?-1:1,best=Math.max(...all.map(({amount,load})=>turn*(byLoad?load / KILOGRAM:amount / ONE)));
const lost=(-turn*perWeek*H.still_days)/ WEEK;
return lost>0&&lost*1000>=Math.abs(best)*H.sliding;
};
const stalled=({day,tables:{history:H}},all,atMost)=>{
const bests=all.filter((one,i)=>!all.slice(0,i).some((before)=>covers(before,one,atMost))),newest=bests[bests.length - 1];
if(!newest||day - newest.on<H.still_days||all.filter(({on})=>on<=day&&day - on<H.still_days).length<H.tests)return null;
return{since:newest.on,weeks:Math.floor((day - newest.on)/ WEEK)};
};
const fallen=({day,tables:{history:H}},all,atMost)=>{
if(all.length<3)return null;
const last=all.slice(-2),before=all.slice(0,-2);
if(day - last[0].on>H.trend_days)return null;
const low=(now,then)=>BigInt(now)*1000n<BigInt(then)*BigInt(H.falling);
const isBelow=(now,best)=>(atMost?best.amount>0&&low(best.amount,now.amount)
:(now.load<=best.load&&low(now.amount,best.amount))||(best.load>0&&now.amount<=best.amount&&low(now.load,best.load)));
const above=before.filter((best)=>last.every((now)=>isBelow(now,best)));
return above.length?{best:above.reduce((a,b)=>(isAbove(b,a,atMost)?b:a)),last}:null;
};
const inLog=(c,kind,from,to)=>c.log.filter((of)=>of.on>=from&&of.on<=to&&(kind===null||c.facts.kind(of.movement)===kind));
const sets=(log)=>log.reduce((n,{did})=>n + did.length,0);
const isExplained=(c,m)=>{
const{K,day,person,model,tables,tables:{history:H}}=c,begins=day + 1 - H.still_days;
const long=(p)=>readiness.reaches(model,p,m)&&Math.min(p.until===null?day:p.until,day)- Math.max(p.on,begins)+ 1>=K.pause_days;
if(training.isRefused(person,day))return true;
const hurts=person.pains.some((p)=>p.on>=begins&&p.on<=day&&((tables.stresses[m]>>p.part)&1)===1&&(p.score>=LIMITS.pain[0]||readiness.isPausing(model,person,p,day)));
if(hurts||c.found.states[m]===readiness.PAUSED||person.pauses.some(long))return true;
const kind=c.facts.kind(m),before=sets(inLog(c,kind,begins - H.still_days,begins - 1));
if(before>0&&2*sets(inLog(c,kind,begins,day))<=before)return true;
const days=[...(c.daysOf.get(tables.pattern[m])||[]).map(({on})=>on),day];
return days.some((on,i)=>i>0&&on>begins&&on - Math.max(days[i - 1],begins)>=K.off[0]);
};
const isLighterDue=(c)=>{
const{day,tables:{history:H}}=c,begins=day - H.lighter_days,weeks=Math.floor(H.lighter_days / WEEK);
if(!c.log.length||c.log[0].on>begins)return false;
const total=sets(inLog(c,null,begins,day - 1));
for(let start=0;start<=H.lighter_days - WEEK;start +=1)if(2*weeks*sets(inLog(c,null,begins + start,begins + start + WEEK - 1))<=total)return false;
return true;
};
const harder=(c,m)=>{
const{model,tables,facts}=c;
const lowest=(of)=>of.filter((up)=>training.may(c,up)&&(!c.minor||!facts.has(up,LOADED))).sort((a,b)=>tables.stage[a]- tables.stage[b]||a - b)[0];
const up=lowest(facts.harder[m]);
const asks=(of)=>readiness.leavesOf(tables.needs[of]).some((leaf)=>model.of(leaf)===m&&model.target(leaf).amount>=ONE);
return up!==undefined?up:lowest(model.order.filter((of)=>facts.has(of,LOADED)&&tables.pattern[of]===tables.pattern[m]&&asks(of)));
};
const advice=(c,limiter,m,falling)=>{
const{K,day,tables:{history:H}}=c,plain=(key)=>({key,movement:null});
if(isLighterDue(c))return plain('lighter_week');
if(falling)return plain('rest');
if(limiter!==null&&limiter!==m&&training.chainOf(c.model,[m]).includes(limiter))return{key:'below',movement:limiter};
const log=inLog(c,c.facts.kind(m),day - K.logged,day),weeks=Math.floor(K.logged / WEEK);
if(sets(log)<K.cap[0]*weeks)return plain('sets');
if(new Set(log.map(({on})=>on)).size<H.days_a_week*weeks)return plain('days');
const up=harder(c,m);
return up===undefined?plain('rest'):{key:'harder',movement:up};
};
const histories=(c,limiter)=>[...c.tests.keys()].sort((a,b)=>a - b).filter((m)=>c.facts.measure(m)!==DONE).map((m)=>{
const{atMost}=c.model.target(m),all=points(c,m),since=stalled(c,all,atMost),of=trend(c,all),falling=of!==null&&slides(c,all,of,atMost);
return{movement:m,points:all,trend:of,still:since&&!isExplained(c,m)?{...since,falling,advice:advice(c,limiter,m,falling)}:null,fallen:fallen(c,all,atMost)};
});
const limiterOf=(c)=>{
if(training.isRefused(c.person,c.day))return null;
const goal=training.goalOf(c),gaps=goal?training.gaps(c,goal):new Map(),{limiter}=training.candidates(c,goal,gaps);
return limiter?limiter.movement:null;
};
const units=()=>(page&&page.units?page.units.ofSchool:'metric');
const gotOf=(measure,amount,load)=>({measure,atMost:false,sets:1,amount,seconds:0,unit:load?MASS:NO_LOAD,load,hits:0,of:0});
const line=(c,{movement,trend:of,still,fallen:fall},say,name)=>{
const{tables:{history:H}}=c,measure=c.facts.measure(movement);
const shown=({amount,load})=>targets.words(gotOf(measure,amount,load),units());
if(fall)return say('history.falls',{first:shown(fall.last[0]),then:shown(fall.last[1]),best:shown(fall.best),day:results.dayWords(fall.best.on)});
if(still){
const of_=still.advice,values={n:still.weeks,advice:say(`morning.advice.${of_.key}`,of_.movement===null?{}:{movement:name(of_.movement)})};
return still.falling?say('history.slides',values):say('history.still',values);
}
if(!of)return say('history.early',{n:H.tests,weeks:Math.floor(H.trend_days / WEEK)});
const tenths=Math.round(Math.abs(of.perWeek)*10);
if(tenths===0)return say('history.level',{});
const amount=of.byLoad?targets.massInWords(tenths*(KILOGRAM / 10),true,units()):targets.words(gotOf(measure,tenths*(ONE / 10),0),units());
return of.perWeek>0?say('history.more',{amount}):say('history.less',{amount});
};
const drawing=(c,{movement:m,points:all})=>{
if(!all.length)return null;
const{left,right,top,foot,apart,narrowest}=c.tables.drawing;
const{model,person,day}=c,[first]=all,newest=all[all.length - 1],standard=model.target(m);
const byLoad=all.some(({load})=>load!==first.load)&&all.every(({amount})=>amount===first.amount);
const value=(of)=>(byLoad?of.load:of.amount);
const asked=[m,...model.demands[m]].map((leaf)=>{const of=model.target(leaf);return{amount:of.amount,load:of.load===0?0:readiness.mass(of.unit,of.load,person.bodyWeight)};})
.filter(({amount,load})=>load!==null&&(byLoad?amount<=first.amount:load===newest.load)).map(({amount,load})=>value({amount,load:Number(load)}));
const steps=[...new Set(asked)].sort((a,b)=>a - b),values=all.map(value);
const low=Math.min(0,...steps,...values),high=Math.max(low + 1,...steps,...values);
const y=(v)=>{const part=Math.floor(((v - low)*(foot - top))/(high - low));return standard.atMost?top + part:foot - part;};
const span=Math.max(1,day - first.on),x=(on)=>left + Math.floor(((on - first.on)*(right - left))/ span);
const rungs=steps.map((v)=>({y:y(v),at:byLoad?gotOf(standard.measure,first.amount,v):gotOf(standard.measure,v,0),named:true}));
let last=(null);
for(const rung of[...rungs].reverse()){
rung.named=last===null||Math.abs(last - rung.y)>=apart;
if(rung.named)last=rung.y;
}
const days=[...new Set((c.trained.get(m)||[]).map(({on})=>on))].filter((on)=>on>=first.on);
const kinds=['paused','restrict'],order=(p)=>kinds.indexOf(p.kind);
const rests=person.pauses.filter((p)=>order(p)>=0&&readiness.reaches(model,p,m)).sort((a,b)=>order(a)- order(b))
.map((p)=>[Math.max(p.on,first.on),p.until===null?day:Math.min(p.until,day)]).filter(([begins,ends])=>begins<=ends);
return{
rungs,marks:all.map((of)=>[x(of.on),y(value(of))]),ticks:days.map(x),bands:rests.map(([begins,ends])=>[x(begins),Math.max(x(ends)- x(begins),narrowest)]),from:first.on,to:day,rests,
};
};
const inText=(tables,m)=>{const mark=tables.marks[tables.mark[m]];return mark?say('part.name_with_signal',{name:tables.names[m],signal:mark.word}):tables.names[m];};
const answer=(model,person,found,day)=>{
const c=training.begin(model,person,found,day);
const point=({on,amount,load})=>[results.dayText(on),amount,load];
return Object.fromEntries(histories(c,limiterOf(c)).map((of)=>{
const drawn=drawing(c,of),at=(got)=>targets.words(got,units());
return[c.tables.ids[of.movement],{
tests:of.points.map(point),trend:of.trend&&Math.round(of.trend.perWeek*1000)/ 1000,by_load:of.trend&&of.trend.byLoad,
still:of.still&&[results.dayText(of.still.since),of.still.weeks,of.still.advice.key,of.still.advice.movement===null?null:c.tables.ids[of.still.advice.movement]],
fallen:of.fallen&&[of.fallen.best,...of.fallen.last].map(point),says:line(c,of,say,(m)=>inText(c.tables,m)),
drawn:drawn&&{rungs:drawn.rungs.map(({y,at:got,named})=>[y,at(got),named]),marks:drawn.marks,ticks:drawn.ticks,bands:drawn.bands,rests:drawn.rests.map((two)=>two.map(results.dayText))},
}];
}));
};
const SVG='http://www.w3.org/2000/svg';
const svg=(tag,attributes,text)=>{
const out=document.createElementNS(SVG,tag);
for(const[key,of]of Object.entries(attributes))out.setAttribute(key,String(of));
if(text!==undefined)out.textContent=text;
return out;
};
const picture=(c,of)=>{
const drawn=drawing(c,of);
if(!drawn)return null;
const{width,height,left,right,band,tick,days,mark,drop}=c.tables.drawing;
const measure=c.facts.measure(of.movement),{marks}=drawn,dot=marks[marks.length - 1];
const label=(got,at)=>{
const own=targets.words(got,page.units.ofSchool),other=targets.words(got,page.units.ofOther);
return svg('text',own===other?at:{...at,'data-other':other},own);
};
const got=({amount,load})=>gotOf(measure,amount,load);
const direction=document.documentElement.dir==='rtl'?'rtl':'ltr',[starts,ends]=direction==='rtl'?['end','start']:['start','end'];
const out=svg('svg',{class:'history-drawing',viewBox:`0 0 ${width} ${height}`,direction,'aria-hidden':'true'});
out.append(...drawn.bands.map(([x,wide])=>svg('rect',{class:'rests',x,y:band[0],width:wide,height:band[1]- band[0]})),
...drawn.rungs.flatMap(({y,at,named})=>[svg('path',{class:'rung',d:`M${left} ${y}H${right}`}),...(named?[label(at,{x:left - 40,y:y + drop,'text-anchor':ends})]:[])]),
svg('polyline',{points:marks.map(([x,y])=>`${x},${y}`).join(' ')}),...marks.map(([cx,cy])=>svg('circle',{cx,cy,r:mark})),
...drawn.ticks.map((x)=>svg('path',{class:'tick',d:`M${x} ${tick[0]}V${tick[1]}`})),
...(marks.length>1&&!drawn.rungs.some(({y,named})=>named&&y===marks[0][1])?[label(got(of.points[0]),{x:marks[0][0]+ 20,y:marks[0][1]- 60,'text-anchor':starts})]:[]),
label(got(of.points[of.points.length - 1]),{class:'newest',x:right + 50,y:dot[1]+ drop,'text-anchor':starts}),
svg('text',{x:left,y:days,'text-anchor':'middle'},results.dayWords(drawn.from)),svg('text',{x:right,y:days,'text-anchor':'middle'},results.dayWords(drawn.to)));
return out;
};
const beside=(c,of)=>{
const drawn=drawing(c,of);
if(!drawn)return[];
const list=drawn.rungs.map(({at})=>targets.words(at,units())).join(say('list.separator'));
const{make}=page;
return[...(list?[make('p',{text:say('history.asked',{list})})]:[]),...(drawn.ticks.length?[make('p',{text:say('history.trained',{n:drawn.ticks.length})})]:[]),
...drawn.rests.map(([first,last])=>make('p',{text:say('history.rested',{first:results.dayWords(first),last:results.dayWords(last)})}))];
};
const table=(c,{movement,points:all})=>{
const{make}=page,measure=c.facts.measure(movement);
return make('table',{class:'history-table'},make('thead',{},make('tr',{},make('th',{scope:'col',text:say('history.day')}),make('th',{scope:'col',text:say('history.result')}))),
make('tbody',{},...all.map(({on,amount,load})=>make('tr',{},make('th',{scope:'row',text:results.dayWords(on)}),make('td',{text:targets.words(gotOf(measure,amount,load),units())})))));
};
const says=(c,of)=>page.make('p',{},...(line(c,of,(globalThis.rungbook.words.sayNodes),(m)=>page.named(c.tables,m))));
globalThis.rungbook.history={points,isAbove,covers,histories,limiterOf,line,drawing,picture,table,beside,says,answer};
})();
