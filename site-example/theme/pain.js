'use strict';self.rungbookIs+="pain.js=717c9303 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.go_back":"Go back","list.separator":", ","number.taken_back":"Taken back.","pain.came_with":"Was any of this with it?","pain.choose_part":"Choose where it hurts.","pain.choose_score":"Choose a number from 0 to 10.","pain.keep_morning":"Enter","pain.kept":"Entered.","pain.less":"Entered. It hurt more earlier today, and of one day the worst counts.","pain.lift_of":"{part}: lift this pause","pain.line":"{day}: {part}, {score} of 10","pain.line_morning":"{line}, {morning} the next morning","pain.line_signs":"{line}; {signs}","pain.next_morning":"The next morning","pain.paused":"{part} rests from now, in every session and on every page, until you lift it here. If it is not better in a few days, ask a licensed clinician.","pain.sign_giving_way":"the joint gives way, or was ever out of place","pain.sign_night":"it wakes me at night","pain.sign_numb":"numbness or tingling, or pain into an arm or a leg","pain.sign_sharp":"sharp, stabbing, or after a fall or a knock","pain.take_back":"Take back","pain.take_back_ask":"Take this pain back?","pain.take_back_says":"Only where it was entered by mistake: what rests because of it does so no more. If it hurts less another day, enter the lower number then.","pain.what_follows":"Up to 2 you go on, if it does not grow. From 3 to 5 what hurt it is over for today, and until you enter 2 or less there is only lighter work for that part, nothing new and no stretch. Above 5, in the neck from 3, or with any of these, the part rests until you enter 5 or less, in the neck 2 or less, without them; ask a licensed clinician.","rests.paused":"{what}, paused since {day}","stand.lift":"Lift this pause"});
'use strict';
(()=>{
const{results,store,page}=globalThis.rungbook;
const{make,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{scale}=globalThis.rungbook;
const{row,wordOf,hurtMore,follows,lift,NUMBERS}=scale;
const parts=[...(document.querySelectorAll('#pain-part input'))];
const tell=(text)=>{
byId('pain-notice').textContent=text;
byId('pain-notice').focus();
};
const signWord=(sign)=>say(`pain.sign_${sign.replace('-','_')}`);
const score=row('pain-score');
const signs=results.SIGNS.map((sign)=>(make('input',{type:'checkbox',id:`pain-${sign}`,value:sign})));
byId('pain-rest').append(score.whole,make('p',{text:say('pain.came_with')}),
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
const aimed=String(make('span',{},...text.map((part)=>part||'')).textContent);
const id=`morning-${i}`,morning=(make('select',{id},make('option',{value:'',text:''}),...NUMBERS.map((n)=>make('option',{value:n,text:wordOf(n)}))));
const fault=make('span',{class:'fault',role:'alert',id:`${id}-fault`});
const keepMorning=(event)=>{
event.preventDefault();
page.blame(morning,fault,morning.value===''?say('pain.choose_score'):'');
if(morning.value==='')return;
tell(scale.morning(key,entry,Number(morning.value)));
};
const ask=entry.next_morning===undefined&&Number(results.readDay(entry.on))<results.today()
?[make('form',{class:'morning',novalidate:true,on:{submit:keepMorning}},make('label',{for:id,text:say('pain.next_morning')}),' ',morning,' ',make('button',{type:'submit',class:'quiet',text:say('pain.keep_morning')}),' ',fault)]:[];
return make('li',{},...text.filter((part)=>part!==null).map((part)=>(part)),' ',...ask,' ',
make('button',{type:'button',class:'quiet',text:say('pain.take_back'),on:{click:async()=>{if(await page.ask(say('pain.take_back_ask'),[make('p',{text:aimed}),make('p',{text:say('pain.take_back_says')})],[['back',say('pain.take_back')],['',say('entry.go_back')]])==='back'){store.remove(key);tell(say('number.taken_back'));}}}}));
};
const draw=()=>{
const kept=store.entries('pain').reverse();
byId('pain-kept').hidden=kept.length===0;
byId('pain-list').replaceChildren(...kept.map(line));
const resting=store.entries('paused').filter(({entry})=>entry.part&&!(entry.until&&Number(results.readDay(entry.until))<results.today()));
byId('pain-resting').hidden=resting.length===0;
byId('pain-resting-list').replaceChildren(...resting.map(({key,entry})=>make('li',{},...sayNodes('rests.paused',{what:partWord(entry.part),day:day(entry.on)}).map((part)=>(part)),' ',
make('button',{type:'button',class:'quiet',text:say('stand.lift'),'aria-label':say('pain.lift_of',{part:partWord(entry.part)}),on:{click:async()=>{const says=await lift(key,partWord(entry.part));if(says)tell(says);}}}))));
};
const drawn=document.querySelector('.body-drawn');
if(drawn)drawn.addEventListener('click',(event)=>{
const{clientX,clientY}=(event),whole=drawn.getBoundingClientRect(),middle=whole.x + whole.width / 2;
const far=(dot)=>{const box=dot.getBoundingClientRect();return Math.hypot(Math.abs(box.x + box.width / 2 - middle)- Math.abs(clientX - middle),box.y + box.height / 2 - clientY);};
const[nearest]=[...(drawn.querySelectorAll('[data-at]'))].sort((a,b)=>far(a)- far(b));
const box=nearest&&far(nearest)<whole.height / 12&&parts.find(({value})=>value===nearest.dataset.at);
if(box)box.click();
});
byId('pain').hidden=false;
const keep=(rests)=>{
const came=signs.filter(({checked})=>checked).map(({value})=>value);
const part=parts.find(({checked})=>checked),much=score.value();
const fault=!part?say('pain.choose_part'):much===null&&!rests?say('pain.choose_score'):'';
page.blame((part?score.boxes:parts)[0],byId('pain-fault'),fault);
if(!part||fault)return;
const on=results.dayText(results.today()),kept=much||0,then=follows([part.value],much,came),isLess=!rests&&hurtMore(part.value,kept);
store.addAll([...(much!==null||came.length?[(['pain',{part:part.value,score:kept,on,...(came.length?{signs:came}:{})}])]:[]),
...(rests?[(['paused',{part:part.value,on,by:'client',because:'it hurts'}])]:[])]);
if(rests||kept>0)store.set('fit',null);
const what=partWord(part.value);
tell(rests?say('pain.paused',{part:what}):`${say(isLess?'pain.less':'pain.kept')} ${scale.saysOf(then,[part.value])}`);
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
