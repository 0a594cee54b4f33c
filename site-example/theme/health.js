'use strict';self.rungbookIs+="health.js=c264ef83 ";
globalThis.rungbookLimits = {"pain":[3,6],"adult":18,"growing":["wrist","elbow","lower-back","hip","knee","ankle","foot"],"youth":16,"older":65,"alone":12,"clearance":366,"body_weight":[1000000000,50000000000],"class":1000,"near":800,"near_length":3000000,"near_angle":10000000,"same_mass":100,"monotony":10,"far":6,"widest":180000000,"in_reserve":100,"effort":10,"minutes":1440,"pain_days":14};
'use strict';
(()=>{
const LIMITS=globalThis.rungbookLimits;
const ageOn=(born,today)=>(Number.isInteger(born)?new Date(today*86400000).getUTCFullYear()- Number(born)- 1:null);
const isChild=(born,today)=>{const age=ageOn(born,today);return age!==null&&age<LIMITS.alone;};
const saysOn=(screened,today,born)=>{
if(isChild(born,today))return 'ask';
if(!screened||screened.on>today)return null;
return screened.until!==null&&today>Math.min(screened.until,screened.on + Math.min(screened.lasts||LIMITS.clearance,LIMITS.clearance))?'ask':screened.says;
};
const mustAnswer=(screened,today,born)=>{const age=ageOn(born,today);return age!==null&&(age<LIMITS.adult||age>=LIMITS.older)&&saysOn(screened,today,born)===null;};
const goesOnTo=(part,age)=>(age!==null&&age<LIMITS.adult&&LIMITS.growing.includes(part)?0:LIMITS.pain[part==='neck'?0:1]- 1);
const root=globalThis.document?document.documentElement:null;
const own=`rungbook:${root?root.dataset.site||'':''}:`;
const prefix=()=>{
let who='';
try{
who=localStorage.getItem(`${own}who`)||'';
}catch{
}
return /^[1-9][0-9]{0,2}$/.test(who)?`${own}@${who}:`:own;
};
const PREFIX=prefix();
const isResult=(key)=>/^(?:tested|trained|sessions|paused|pain|remarks):/.test(key);
const draw=()=>{
if(!root)return;
let screened=null,born=null,known='',hurts=false,heeds=false;
for(const kept of[()=>sessionStorage,()=>localStorage]){
try{
screened=screened||JSON.parse(kept().getItem(`${PREFIX}screened`)||'null');
const about=JSON.parse(kept().getItem(`${PREFIX}about`)||'null');
born=born||(about&&about.born);
const keys=Object.keys(kept()).filter((key)=>key.startsWith(PREFIX)).map((key)=>key.slice(PREFIX.length)),hasResults=()=>keys.some(isResult);
known=known||(kept().getItem(`${PREFIX}next`)?'next':about&&about.goal?'goal':hasResults()?'numbers':'');
heeds=heeds||Boolean(screened&&screened.says==='light')||keys.some((key)=>key.startsWith('restrict:'));
const last=keys.filter((key)=>key.startsWith('pain:')).sort().pop(),pain=last&&JSON.parse(kept().getItem(PREFIX + last)||'null');
hurts=hurts||keys.some((key)=>key.startsWith('paused:'))||Boolean(pain&&(pain.score>=LIMITS.pain[0]||pain.signs));
}catch{
}
}
const day=(text)=>(typeof text==='string'&&Number.isFinite(Date.parse(text))?Date.parse(text)/ 86400000:null);
const now=new Date(),today=Date.UTC(now.getFullYear(),now.getMonth(),now.getDate())/ 86400000;
const on=screened&&day(screened.on),answers=on===null?null:{says:screened.says,on,until:day(screened.until),lasts:screened.lasts};
const health=saysOn(answers,today,born)||(mustAnswer(answers,today,born)?'unanswered':'none'),years=ageOn(born,today);
const age=isChild(born,today)?'child':years!==null&&years<LIMITS.adult?'minor':'';
if(root.dataset.health!==health)root.dataset.health=health;
if(root.dataset.age!==age)root.dataset.age=age;
if(!hurts)delete root.dataset.hurts;
else if(root.dataset.hurts!=='true')root.dataset.hurts='true';
if(!heeds)delete root.dataset.heeds;
else if(root.dataset.heeds!=='true')root.dataset.heeds='true';
if(known==='')delete root.dataset.known;
else if(root.dataset.known!==known)root.dataset.known=known;
};
const worstOfDay=(pains)=>pains.map((of)=>{
const same=pains.filter(({part,on})=>part===of.part&&on===of.on);
return{...of,score:Math.max(...same.map(({score})=>score)),signs:[...new Set(same.flatMap(({signs})=>(Array.isArray(signs)?signs:[])))]};
});
globalThis.rungbook=Object.assign(globalThis.rungbook||{},{health:{LIMITS,ageOn,saysOn,mustAnswer,isChild,isResult,goesOnTo,worstOfDay,draw,own,prefix:PREFIX}});
draw();
if(root)globalThis.addEventListener('storage',draw);
})();
