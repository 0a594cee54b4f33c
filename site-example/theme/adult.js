'use strict';self.rungbookIs+="adult.js=2af33991 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"adult.both_first":"Tick both to go on. The second is asked anew each day.","adult.coach":"My coach is in the room today","adult.head":"First, an adult","adult.on":"Go on","adult.parent":"My parent or guardian agrees","adult.to_ticks":"To the two ticks"});
'use strict';
'after page.js results.js store.js';
(()=>{
const{results,store,page}=globalThis.rungbook;
const{make}=page;
const{say}=globalThis.rungbook.words;
const{KEYS,isSaid,isDue}=store.adults;
const ask=(onward)=>{
const place=make('div',{class:'acts'});
const draw=()=>place.replaceChildren(...(isDue()?[make('p',{class:'hint',text:say('adult.both_first')})]:[onward()]));
const boxes=KEYS.map((key)=>{
const box=(make('input',{type:'checkbox',id:`adult-${key}`}));
box.checked=isSaid(key);
box.addEventListener('change',()=>{store.note(key,box.checked?results.dayText(results.today()):null);draw();});
return make('label',{class:'chip'},box,say(`adult.${key}`));
});
draw();
return make('div',{class:'adult'},make('div',{class:'chips'},...boxes),place);
};
globalThis.rungbook.adult={isDue,ask};
})();
