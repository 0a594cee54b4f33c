'use strict';self.rungbookIs+="adult.js=ba5c228d ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"adult.both_first":"Tick both to go on. The second is asked anew each day.","adult.coach":"My coach is in the room today","adult.head":"First, an adult","adult.on":"Go on","adult.parent":"My parent or guardian agrees"});
'use strict';
'after page.js results.js store.js';
(()=>{
const{results,store,page}=globalThis.rungbook;
const{LIMITS,isChild}=globalThis.rungbook.health;
const{make}=page;
const{say}=globalThis.rungbook.words;
const SAID=(['parent','coach']);
const today=()=>results.dayText(results.today());
const isSaid=(key)=>{const on=store.get(key);return key==='coach'?on===today():typeof on==='string';};
const isAsked=()=>{
const{born}=store.facts(),age=results.ageOn(born===undefined?null:born,results.today());
return age!==null&&age<LIMITS.youth&&!isChild(born,results.today());
};
const isDue=()=>isAsked()&&!SAID.every(isSaid);
const ask=(onward)=>{
const place=make('div',{class:'acts'});
const draw=()=>place.replaceChildren(...(isDue()?[make('p',{class:'hint',text:say('adult.both_first')})]:[onward()]));
const boxes=SAID.map((key)=>{
const box=(make('input',{type:'checkbox',id:`adult-${key}`}));
box.checked=isSaid(key);
box.addEventListener('change',()=>{store.note(key,box.checked?today():null);draw();});
return make('label',{class:'chip'},box,say(`adult.${key}`));
});
draw();
return make('div',{class:'adult'},make('div',{class:'chips'},...boxes),place);
};
globalThis.rungbook.adult={isAsked,isDue,ask};
})();
