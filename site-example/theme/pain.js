'use strict';self.rungbookIs+="pain.js=ebe81485 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"list.separator":", ","pain.came_with":"Was any of this with it?","pain.choose_part":"Choose where it hurts.","pain.choose_score":"Choose a number from 0 to 10.","pain.fine":"You can go on while it does not grow. Keep a number again if it comes back.","pain.goes_on":"What hurt it is over for today. For two weeks that part does nothing heavy, nothing new and no stretch, and no more of the rest than before, at 4 and 5 less.","pain.how_much":"How much did it hurt, from 0 to 10?","pain.keep_morning":"Keep","pain.kept":"Kept.","pain.lift_of":"{part}: lift this pause","pain.lifted":"Lifted.","pain.line":"{day}: {part}, {score} of 10","pain.line_morning":"{line}, {morning} the next morning","pain.line_signs":"{line}; {signs}","pain.next_morning":"The next morning","pain.none":"0, not at all","pain.paused":"{part} rests from now, in every session and on every page, until you lift it here. If it is not better in a few days, ask a licensed clinician.","pain.rests_now":"The part rests from now. Ask a licensed clinician before you train it again.","pain.sign_giving_way":"the joint gives way, or was ever out of place","pain.sign_night":"it wakes me at night","pain.sign_numb":"numbness or tingling, or pain into an arm or a leg","pain.sign_sharp":"sharp, stabbing, or after a fall or a knock","pain.take_back":"Take back","pain.what_follows":"Up to 2 you go on, if it does not grow. From 3 to 5 this movement is over for today; for two weeks that part does nothing heavy, nothing new and no stretch, and no more of the rest than before, at 4 and 5 less. Above 5, in the neck from 3, or with any of these, the part rests until you keep 5 or less, in the neck 2 or less, without them; ask a licensed clinician.","pain.worse":"Worse the next morning: the next sessions are lighter.","pain.worst":"10, the worst there is","rests.paused":"{what}, paused since {day}","stand.lift":"Lift this pause"});
'use strict';
(()=>{
const{results,store,page}=globalThis.rungbook;
const{make,byId}=page;
const{say,sayNodes,number}=globalThis.rungbook.words;
const[FELT,RESTS]=globalThis.rungbook.health.LIMITS.pain;
const parts=[...(document.querySelectorAll('#pain-part input'))];
const tell=(text)=>{
byId('pain-notice').textContent=text;
byId('pain-notice').focus();
};
const signWord=(sign)=>say(`pain.sign_${sign.replace('-','_')}`);
const scoreWord=(n)=>(n===0?say('pain.none'):n===10?say('pain.worst'):number(n));
const scores=(id)=>(make('select',{id},make('option',{value:'',text:''}),
...Array.from({length:11},(_,n)=>make('option',{value:n,text:scoreWord(n)}))));
const score=Array.from({length:11},(_,n)=>(make('input',{type:'radio',name:'pain-score',value:n,'aria-label':scoreWord(n)})));
const signs=results.SIGNS.map((sign)=>(make('input',{type:'checkbox',id:`pain-${sign}`,value:sign})));
byId('pain-rest').append(make('fieldset',{id:'pain-score'},make('legend',{text:say('pain.how_much')}),make('div',{class:'chips'},...score.map((box,n)=>make('label',{class:'chip'},box,number(n))))),make('p',{text:say('pain.came_with')}),
make('ul',{class:'plain parts'},...signs.map((box)=>make('li',{},box,' ',make('label',{for:box.id,text:signWord(box.value)})))),make('p',{class:'hint',text:say('pain.what_follows')}));
const partWord=(part)=>{
const box=parts.find(({value})=>value===part);
return box&&box.parentElement?String(box.parentElement.textContent):part;
};
const day=(text)=>make('time',{datetime:text,text:results.dayWords(Number(results.readDay(text)))});
const line=({key,entry},i)=>{
let text=sayNodes('pain.line',{day:day(entry.on),part:partWord(entry.part),score:entry.score});
if(entry.next_morning!==undefined)text=sayNodes('pain.line_morning',{line:text,morning:entry.next_morning});
if(entry.signs)text=sayNodes('pain.line_signs',{line:text,signs:entry.signs.map(signWord).join(say('list.separator'))});
const morning=scores(`morning-${i}`);
const ask=entry.next_morning===undefined&&Number(results.readDay(entry.on))<results.today()
?[make('label',{for:`morning-${i}`,text:say('pain.next_morning')}),' ',morning,' ',make('button',{type:'button',class:'quiet',text:say('pain.keep_morning'),on:{click:()=>{
if(morning.value==='')return;
const worse=Number(morning.value)>entry.score;
store.remove(key);
store.add('pain',{...entry,next_morning:Number(morning.value)});
if(Number(morning.value)>=RESTS&&worse)store.add('pain',{part:entry.part,score:Number(morning.value),on:results.dayText(Number(results.readDay(entry.on))+ 1)});
tell(Number(morning.value)>=RESTS?say('pain.rests_now'):worse?say('pain.worse'):say('pain.kept'));
}}})]:[];
return make('li',{},...text.filter((part)=>part!==null).map((part)=>(part)),' ',...ask,' ',
make('button',{type:'button',class:'quiet',text:say('pain.take_back'),on:{click:()=>store.remove(key)}}));
};
const draw=()=>{
const kept=store.entries('pain').reverse();
byId('pain-kept').hidden=kept.length===0;
byId('pain-list').replaceChildren(...kept.map(line));
const resting=store.entries('paused').filter(({entry})=>entry.part&&!(entry.until&&Number(results.readDay(entry.until))<results.today()));
byId('pain-resting').hidden=resting.length===0;
byId('pain-resting-list').replaceChildren(...resting.map(({key,entry})=>make('li',{},...sayNodes('rests.paused',{what:partWord(entry.part),day:day(entry.on)}).map((part)=>(part)),' ',
make('button',{type:'button',class:'quiet',text:say('stand.lift'),'aria-label':say('pain.lift_of',{part:partWord(entry.part)}),on:{click:()=>{store.remove(key);tell(say('pain.lifted'));}}}))));
};
byId('pain').hidden=false;
const keep=(rests)=>{
const came=signs.filter(({checked})=>checked).map(({value})=>value);
const part=parts.find(({checked})=>checked),much=score.find(({checked})=>checked);
const fault=!part?say('pain.choose_part'):!much&&!rests?say('pain.choose_score'):'';
page.blame((part?score:parts)[0],byId('pain-fault'),fault);
if(!part||fault)return;
const on=results.dayText(results.today()),kept=Number(much?much.value:0);
store.addAll([...(much||came.length?[(['pain',{part:part.value,score:kept,on,...(came.length?{signs:came}:{})}])]:[]),
...(rests?[(['paused',{part:part.value,on,by:'client',because:'it hurts'}])]:[])]);
if(rests||kept>0)store.set('fit',null);
const what=partWord(part.value);
tell(rests?say('pain.paused',{part:what}):`${say('pain.kept')} ${kept>=(part.value==='neck'?FELT:RESTS)||came.length?say('pain.rests_now'):kept>=FELT?say('pain.goes_on'):say('pain.fine')}`);
(byId('pain-form')).reset();
};
byId('pain-form').addEventListener('submit',(event)=>{
event.preventDefault();
keep(false);
});
byId('pain-pause').addEventListener('click',()=>keep(true));
store.onChange(()=>page.hold(draw,'pain-notice'));
draw();
})();
