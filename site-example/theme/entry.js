'use strict';self.rungbookIs+="entry.js=a4e5f9af ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.centimetres":"Centimetres","entry.could_have_done":"Could have done more","entry.countdown":"five seconds to get into place","entry.degrees":"Degrees","entry.done":"Done","entry.elsewhere":"The chest, the head, the ribs, the belly or the groin are not on this list: what to do then, and what needs a clinician today, stands under","entry.emergency":"Pain or pressure in the chest, fainting, sudden weakness or numbness of a side or between the legs, a blow to the head with sickness, confusion or neck pain, a joint out of place: call the emergency number.","entry.go_back":"Go back","entry.good_tries":"Good tries","entry.helps":"helps me","entry.if_it_hurts":"If it hurts","entry.inches":"Inches","entry.is_added":"is added","entry.it_hurt":"It hurt","entry.just_now":"just now","entry.of_left":"{amount}, left","entry.of_right":"{amount}, right","entry.out_of_tries":"Out of tries","entry.pause":"Pause it","entry.reps":"Reps","entry.seconds":"Seconds","entry.seconds_of_each":"Seconds of each rep","entry.sets":"Sets","entry.start_timer":"Start the hold timer","entry.starts_in":"in {seconds}","entry.stop":"Stop","entry.stop_here":"Stop here. This movement rests until you or your coach lift it.","entry.the_weight":"The weight","entry.weight_in_kilograms":"Weight (kg)","entry.weight_in_pounds":"Weight (lb)","entry.what_was_left":"Could you have done more?","entry.where":"Where did it hurt? If you choose nothing, all that this movement bears on rests.","entry.write_reserve":"Write a whole number from 0 to {most} for what you could have done more.","pain.came_with":"Was any of this with it?","pain.how_much":"How much did it hurt, from 0 to 10?","pain.none":"0, not at all","pain.not_said":"I cannot say","pain.sign_giving_way":"the joint gives way, or was ever out of place","pain.sign_night":"it wakes me at night","pain.sign_numb":"numbness or tingling, or pain into an arm or a leg","pain.sign_sharp":"sharp, stabbing, or after a fall or a knock","pain.what_follows":"Up to 2 you go on, if it does not grow. From 3 to 5 this movement is over for today; for two weeks that part does nothing heavy, nothing new and no stretch, and no more of the rest than before, at 4 and 5 less. Above 5, in the neck from 3, or with any of these, the part rests until you keep 5 or less, in the neck 2 or less, without them; ask a licensed clinician.","pain.worst":"10, the worst there is"});
'use strict';
'after page.js states.js number.js';
(()=>{
const{targets,results,readiness,store,page,states,number:{doubtful,isMeant,fromPicture,SPANS}}=globalThis.rungbook;
const{make,units,blame}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{TIME,LENGTH,DONE,NO_LOAD}=targets;
const COUNTDOWN=5;
const MOST_LEFT=globalThis.rungbook.health.LIMITS.in_reserve;
const WORDS=[say('entry.reps'),say('entry.seconds'),say('entry.centimetres'),say('entry.degrees'),say('entry.done')];
const UNITS=['reps','s','cm','deg','done'];
let count=0;
const field=(says,set)=>{
count +=1;
const id=`field-${count}`;
const input=(make('input',{id,autocomplete:'off',...set}));
return{input,says,whole:make('p',{class:'field'},make('label',{for:id,text:says}),input)};
};
const choice=(says,options)=>{
count +=1;
const id=`field-${count}`;
const input=(make('select',{id},...options.map(([value,words])=>make('option',{value,text:words}))));
return{input,whole:make('p',{class:'field'},make('label',{for:id,text:says}),input)};
};
const number={type:'text',inputmode:'decimal',size:6};
const timer=(side,done)=>{
count +=1;
const id=`timer-${count}`;
const face=make('span',{class:'timer-face',role:'timer',text:'0'});
const button=make('button',{type:'button',class:'quiet',text:say('entry.start_timer'),'aria-describedby':side?id:null});
let started=0,ticking=0;
const tick=()=>{
const passed=(performance.now()- started)/ 1000 - COUNTDOWN;
face.textContent=passed<0?say('entry.starts_in',{seconds:Math.ceil(-passed)}):String(Math.floor(passed));
};
button.addEventListener('click',()=>{
if(ticking){
clearInterval(ticking);
ticking=0;
const held=Math.max(0,Math.floor((performance.now()- started)/ 1000 - COUNTDOWN));
face.textContent=String(held);
button.textContent=say('entry.start_timer');
done(held);
return;
}
started=performance.now();
ticking=Number(setInterval(tick,100));
button.textContent=say('entry.stop');
tick();
});
return make('p',{class:'timer'},...(side?[make('span',{id,text:side}),' ']:[]),button,' ',face,make('span',{class:'hint',text:` ${say('entry.countdown')}`}));
};
const uses=(model,m)=>{
const asked=model.demands[m].map(model.target);
const some=(has)=>asked.some(has);
return{
sets:some((t)=>t.sets>1),seconds:some((t)=>t.seconds>0),tries:some((t)=>t.of>0),
load:some((t)=>t.unit!==NO_LOAD),help:some((t)=>t.load<0),
};
};
const form=(m,options)=>{
const model=(states.model);
const{measure}=model.target(m);
const use=uses(model,m);
const sided=model.is(m,readiness.EACH_SIDE);
const day=results.today();
const inches=measure===LENGTH&&units.current()==='imperial';
const says=inches?say('entry.inches'):WORDS[measure];
const unit=inches?'in':UNITS[measure];
const amounts=sided
?[field(say('entry.of_left',{amount:says}),number),field(say('entry.of_right',{amount:says}),number)]
:[field(says,measure===DONE?{type:'checkbox'}:number)];
const sets=use.sets?field(say('entry.sets'),{...number,value:'1'}):null;
const seconds=use.seconds?field(say('entry.seconds_of_each'),number):null;
const hits=use.tries?[field(say('entry.good_tries'),number),field(say('entry.out_of_tries'),number)]:null;
const weight=units.current()==='imperial'?'lb':'kg';
const load=use.load?field(weight==='lb'?say('entry.weight_in_pounds'):say('entry.weight_in_kilograms'),number):null;
const way=use.load?choice(say('entry.the_weight'),[...(use.help?[['help',say('entry.helps')]]:[]),['added',say('entry.is_added')],...(use.help?[]:[['help',say('entry.helps')]])].map((o)=>(o))):null;
const reserve=field(say('entry.could_have_done'),{...number,placeholder:'0'});
const when=choice(say('entry.when'),([...(options.today?[['0',say('entry.just_now')]]:[['',say('entry.choose')]]),
...SPANS]));
const on=field(say('entry.on_day'),{type:'date',max:results.dayText(day),min:results.dayText(day - 3650)});
on.whole.hidden=true;
when.input.addEventListener('change',()=>{on.whole.hidden=when.input.value!=='day';});
const given=()=>{
if(when.input.value==='long')return null;
const read=when.input.value==='day'?results.readDay(on.input.value):when.input.value===''?null:day - Number(when.input.value);
return read===null||read>day?undefined:read;
};
count +=1;
const fault=make('p',{class:'fault',role:'alert',id:`fault-${count}`});
const written=(of)=>of.input.value.trim().replace(',','.');
const text=(amount)=>{
if(measure===DONE)return amount.input.checked?'done':'not done';
const set=sets&&written(sets)!==''&&written(sets)!=='1'?`${written(sets)}x`:'';
const each=seconds&&written(seconds)!==''?` of ${written(seconds)} s`:'';
const tried=hits&&written(hits[1])!==''?` in ${written(hits[0])} of ${written(hits[1])} tries`:'';
const added=load&&way&&written(load)!==''&&Number(written(load))!==0?` with ${written(load)} ${weight}${way.input.value==='help'?' help':''}`:'';
return `${set}${written(amount)} ${unit}${each}${tried}${added}`;
};
const more=(make('details',{class:'more'},make('summary',{text:say('entry.what_was_left')}),make('div',{class:'fields'},reserve.whole)));
const whole=make('form',{class:'enter-form',novalidate:true,on:{
submit:(event)=>{
event.preventDefault();
const read=amounts.map((amount)=>targets.readGot(text(amount)));
const bad=read.findIndex((got)=>got===null);
const left=Number(written(reserve)||'0');
if(bad>=0){
blame(amounts[bad].input,fault,say('entry.write_numbers'));
return;
}
if(!Number.isInteger(left)||left<0||left>MOST_LEFT){
more.open=true;
blame(reserve.input,fault,say('entry.write_reserve',{most:MOST_LEFT}));
return;
}
const from=given();
if(from===undefined){
blame(when.input.value==='day'?on.input:when.input,fault,say('entry.write_day'));
return;
}
blame(when.input,fault,'');
const texts=read.map((got)=>targets.text((got)));
const sides=sided?{left:texts[0],right:texts[1]}:{got:texts[0]};
const keep=()=>options.kept(from===null?store.add('undated',{movement:model.tables.ids[m],...sides})
:store.add('tested',{movement:model.tables.ids[m],...sides,on:results.dayText(from),...(left?{in_reserve:left}:{})}));
const odd=read.find((got)=>doubtful(model,m,(got)));
if(odd)isMeant(m,odd).then((meant)=>{if(meant)keep();else amounts[0].input.focus();});
else keep();
},
}},
...(measure===TIME&&options.today?amounts.map((amount)=>timer(sided?amount.says:'',(held)=>{amount.input.value=String(held);})):[]),
make('div',{class:'fields'},...[...amounts,sets,seconds,...(hits||[]),load,way].map((part)=>part&&part.whole)),
make('p',{class:'pictures'},...amounts.map(({input})=>fromPicture(m,input))),
make('div',{class:'fields'},when.whole,on.whole),
more,fault,
make('p',{class:'acts'},make('button',{type:'submit',text:say('entry.keep')}),' ',...(options.more||[]),
make('button',{type:'button',class:'hurt',text:say('entry.it_hurt'),on:{click:()=>hurt(m,options.today?'test':'training').then((paused)=>{if(paused)options.hurt();})}})));
return whole;
};
const scores=()=>([['',say('pain.not_said')],...Array.from({length:11},(_,n)=>[String(n),n===0?say('pain.none'):n===10?say('pain.worst'):globalThis.rungbook.words.number(n)])]);
const hurt=async(m,where='training')=>{
const{tables}=(states.model);
const boxes=tables.parts.map((part,i)=>{
const box=(make('input',{type:'checkbox',value:part,id:`part-${part}`}));
return{box,stressed:((tables.stresses[m]>>i)&1)===1,whole:make('li',{},box,' ',make('label',{for:`part-${part}`,text:states.partWord(part)}))};
}).sort((a,b)=>Number(b.stressed)- Number(a.stressed));
const score=choice(say('pain.how_much'),scores());
const signs=results.SIGNS.map((sign)=>{
const box=(make('input',{type:'checkbox',value:sign,id:`sign-${sign}`}));
return{box,whole:make('li',{},box,' ',make('label',{for:`sign-${sign}`,text:say(`pain.sign_${sign.replace('-','_')}`)}))};
});
const answer=await page.ask(say('entry.it_hurt'),[
make('p',{class:'do-not',text:say('entry.emergency')}),make('p',{text:say('entry.stop_here')}),
make('p',{text:say('entry.where')}),make('ul',{class:'plain parts'},...boxes.map(({whole})=>whole)),
score.whole,make('p',{text:say('pain.came_with')}),make('ul',{class:'plain parts'},...signs.map(({whole})=>whole)),
make('p',{class:'hint',text:say('pain.what_follows')}),
make('p',{},say('entry.elsewhere'),' ',make('a',{href:'if-it-hurts.html',text:say('entry.if_it_hurts')}),'.'),
],[['pause',say('entry.pause')],['',say('entry.go_back')]]);
if(answer!=='pause')return false;
const on=results.dayText(results.today()),because=where==='test'?'it hurt in a test':'it hurt in training';
const chosen=boxes.filter(({box})=>box.checked).map(({box})=>box.value),came=signs.filter(({box})=>box.checked).map(({box})=>box.value);
store.add('paused',{movement:tables.ids[m],on,by:'client',because});
const unsaid=chosen.length===0;
for(const part of unsaid?boxes.filter(({stressed})=>stressed).map(({box})=>box.value):chosen){
if(unsaid||score.input.value==='')store.add('paused',{part,on,by:'client',because});
if(!unsaid&&(score.input.value!==''||came.length))store.add('pain',{part,score:Number(score.input.value||'0'),on,...(came.length?{signs:came}:{})});
}
store.set('fit',null);
return true;
};
globalThis.rungbook.entry={form,hurt};
})();
