'use strict';self.rungbookIs+="scale.js=eae207b3 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"body.ankle":"ankle","body.elbow":"elbow","body.fingers":"fingers","body.foot":"foot","body.hamstring":"hamstring","body.hip":"hip","body.knee":"knee","body.lower_back":"lower back","body.neck":"neck","body.shoulder":"shoulder","body.upper_back":"upper back","body.wrist":"wrist","entry.go_back":"Go back","pain.fine":"You can go on while it does not grow. Enter it again here if it comes back.","pain.goes_on":"What hurt it is over for today. Until you enter a pain of 2 or less, only lighter work for: {parts}. If it is not better in a few days, ask a licensed clinician.","pain.how_much":"How much did it hurt, from 0 to 10?","pain.kept":"Entered.","pain.lifted":"Lifted. Begin with less than before, and enter it again if it comes back.","pain.none":"0, not at all","pain.now_ask":"{what}: how is it now, from 0 to 10?","pain.now_says":"The worst of today and this morning. Up to 2 lifts the pause; from 3 on it stays.","pain.rests_now":"Rests from now: {parts}. Ask a licensed clinician before you train that again.","pain.rests_on":"It goes on resting. Ask a licensed clinician if it does not get less.","pain.worse":"Worse the next morning: the next sessions are lighter.","pain.worst":"10, the worst there is"});
'use strict';
'after page.js results.js store.js';
(()=>{
const{results,store,page}=globalThis.rungbook;
const{LIMITS,goesOnTo,worstOfDay}=globalThis.rungbook.health;
const{make}=page;
const{say,number}=globalThis.rungbook.words;
const NUMBERS=Array.from({length:11},(_,n)=>n);
const[FELT]=LIMITS.pain;
const wordOf=(n)=>(n===0?say('pain.none'):n===10?say('pain.worst'):number(n));
const row=(name)=>{
const boxes=NUMBERS.map((n)=>(make('input',{type:'radio',name,value:n,'aria-label':wordOf(n)})));
return{
boxes,whole:make('fieldset',{id:name},make('legend',{text:say('pain.how_much')}),make('div',{class:'chips scale'},...boxes.map((box,n)=>make('label',{class:'chip'},box,number(n))))),
value:()=>{const chosen=boxes.find(({checked})=>checked);return chosen?Number(chosen.value):null;},
};
};
const hurtMore=(part,score)=>store.entries('pain').some(({entry})=>entry.part===part&&entry.on===results.dayText(results.today())&&(entry.score>score||entry.signs));
const follows=(parts,score,signs)=>{
const{born}=store.facts(),age=results.ageOn(born===undefined?null:born,results.today());
if(score===null||signs.length)return 'rests';
const on=results.dayText(results.today()),all=worstOfDay([...store.entries('pain').map(({entry})=>entry),...parts.map((part)=>({part,on,score,signs}))]);
const worst=all.filter((of)=>of.on===on&&parts.includes(of.part));
if(worst.some((of)=>of.signs.length||of.score>goesOnTo(of.part,age)))return 'rests';
return score>=FELT||worst.some((of)=>of.score>=FELT)?'light':'on';
};
const partsText=(parts)=>parts.map((part)=>say(`body.${part.replace('-','_')}`)).join(say('list.separator'));
const saysOf=(what,parts)=>(what==='on'?say('pain.fine'):say(what==='light'?'pain.goes_on':'pain.rests_now',{parts:partsText(parts)}));
const morning=(key,entry,much)=>{
const worse=much>entry.score,rests=follows([entry.part],much,[])==='rests';
store.addAll([['pain',{...entry,next_morning:much}],
...(rests&&worse?[(['pain',{part:entry.part,score:much,on:results.dayText(Number(results.readDay(entry.on))+ 1)}])]:[])]);
store.remove(key);
return rests?saysOf('rests',[entry.part]):worse?say('pain.worse'):say('pain.kept');
};
const partsOf=({part,on})=>(part?[part]:[...new Set(store.entries('pain').filter(({entry})=>entry.on===on&&(entry.score>=FELT||entry.signs)).map(({entry})=>String(entry.part)))]);
const lift=async(key,what)=>{
const pause=[...store.entries('paused'),...store.entries('restrict')].find((of)=>of.key===key);
if(!pause)return '';
const answer=await page.ask(say('pain.now_ask',{what}),[make('p',{text:say('pain.now_says')}),
make('div',{class:'chips scale'},...NUMBERS.map((n)=>make('button',{type:'submit',value:n,class:'quiet','aria-label':wordOf(n),text:number(n)})))],[['',say('entry.go_back')]]);
if(answer===null)return '';
const parts=partsOf(pause.entry),score=Number(answer),on=results.dayText(results.today());
store.addAll(parts.map((part)=>['pain',{part,score,on}]));
if(follows(parts,score,[])!=='on')return say('pain.rests_on');
store.remove(key);
return say('pain.lifted');
};
globalThis.rungbook.scale={row,wordOf,hurtMore,follows,partsText,saysOf,morning,lift,NUMBERS};
})();
