'use strict';self.rungbookIs+="log.js=b788bb75 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.reps":"Reps","entry.seconds":"Seconds","log.change":"Change","log.change_of":"Change {movement}, {day}","log.day":"Day","log.delete":"Delete","log.delete_of":"Delete {movement}, {day}","log.earlier":{"one":"{n} earlier day","other":"{n} earlier days"},"log.help":"with {weight} of help","log.keep":"Save the change","log.leave":"Leave it","log.line":"{movement}: {sets}","log.no_day":"Give a day up to today.","log.sets":"{unit} of each set","log.weight":"Weight","log.with":"with {weight}","log.write_sets":"Write what you did in each set as a number from 0 on, with commas between: 8, 8, 7.","training.reserve":"{n} in reserve"});
'use strict';
'after page.js targets.js states.js today.js';
(()=>{
const{targets,results,store,page,states}=globalThis.rungbook;
const{make,named,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{LIMITS}=globalThis.rungbook.health;
const{model}=states;
const place=document.getElementById('log');
if(!model||!place)return;
const{tables}=model;
const OPEN=5;
const UNITS=['reps','s','cm','deg','reps'];
const did=({did:all})=>all.map(String).join(say('list.separator'));
const load=({with:written})=>{
const got=written?targets.readGot(`1 rep with ${written}`):null;
if(!got||got.load===0)return '';
const size=Math.abs(got.load),weight=got.unit===targets.MASS?targets.massInWords(size,true,page.units.ofSchool):say('target.body_weight',{n:size / 10000});
return got.load<0?say('log.help',{weight}):say('log.with',{weight});
};
const words=(of)=>[did(of),load(of),of.in_reserve===undefined?'':say('training.reserve',{n:of.in_reserve})].filter((text)=>text!=='').join(say('list.separator'));
let changing='';
let count=0;
const field=(says,set)=>{
count +=1;
const input=(make('input',{id:`log-${count}`,autocomplete:'off',...set}));
return{input,whole:make('p',{class:'field'},make('label',{for:input.id,text:says}),input)};
};
const read=(of,{sets,weight,left,on})=>{
const all=sets.split(/[\s,;،]+/).filter((set)=>set!=='').map((set)=>Number(set.replace(',','.')));
const load_=weight.trim()===''?{}:{with:/[a-z]/i.test(weight)?weight.trim():`${weight.trim().replace(',','.')} kg`};
const entry={movement:of.movement,did:all,...load_,...(left.trim()===''?{}:{in_reserve:Number(left)}),on};
const isReps=UNITS[model.target(Number(model.numbers.get(of.movement))).measure]==='reps',spare=left.trim()===''?0:Number(left);
if(!all.length||all.some((set)=>!Number.isFinite(set)||set<0))return{sound:null,why:say('log.write_sets'),at:'sets'};
if(isReps&&all.some((set)=>!Number.isInteger(set)))return{sound:null,why:say('today.whole_reps'),at:'sets'};
if(load_.with&&targets.readGot(`1 rep with ${load_.with}`)===null)return{sound:null,why:say('today.no_weight'),at:'weight'};
if(!Number.isInteger(spare)||spare<0||spare>LIMITS.in_reserve)return{sound:null,why:say('today.whole_left',{most:LIMITS.in_reserve}),at:'left'};
const day=results.readDay(on);
if(day===null||day>results.today())return{sound:null,why:say('log.no_day'),at:'on'};
return{...results.entry('trained',entry,results.today()),at:'sets'};
};
const form=(key,of)=>{
const m=Number(model.numbers.get(of.movement));
const sets=field(say('log.sets',{unit:UNITS[model.target(m).measure]==='reps'?say('entry.reps'):say('entry.seconds')}),{value:of.did.map(String).join(', '),size:14});
const weight=field(say('log.weight'),{value:of.with||'',size:8});
const left=field(say('today.left_in_reserve'),{value:of.in_reserve===undefined?'':of.in_reserve,inputmode:'numeric',size:3});
const on=field(say('log.day'),{type:'date',value:of.on,max:results.dayText(results.today())});
count +=1;
const fault=make('p',{class:'fault',role:'alert',id:`log-fault-${count}`});
return make('form',{class:'log-form',novalidate:true,on:{submit:(event)=>{
event.preventDefault();
const{sound,why,at}=read(of,{sets:sets.input.value,weight:weight.input.value,left:left.input.value,on:on.input.value});
page.blame({sets,weight,left,on}[at].input,fault,why);
if(!sound)return;
changing='';
store.add('trained',sound);
store.remove(key);
byId('log-head').focus();
}}},make('div',{class:'fields'},sets.whole,weight.whole,left.whole,on.whole),fault,
make('p',{class:'acts'},make('button',{type:'submit',text:say('log.keep')}),' ',make('button',{type:'button',class:'quiet',text:say('log.leave'),on:{click:()=>{changing='';draw();byId('log-head').focus();}}})));
};
const line=({key,entry})=>{
const m=model.numbers.get(entry.movement),name=m===undefined?make('bdi',{text:entry.movement}):named(tables,m);
if(changing===key&&m!==undefined)return make('li',{'data-movement':entry.movement},name,form(key,entry));
const about={movement:m===undefined?entry.movement:tables.names[m],day:results.dayWords(Number(results.readDay(entry.on)))};
return make('li',{'data-movement':entry.movement},...sayNodes('log.line',{movement:name,sets:make('bdi',{text:words(entry)})}).map((part)=>(part)),' ',
make('button',{type:'button',class:'quiet',text:say('log.change'),'aria-label':say('log.change_of',about),on:{click:()=>{
changing=key;
draw();
const input=(place.querySelector('.log-form input'));
if(input)input.focus();
}}}),' ',
make('button',{type:'button',class:'quiet',text:say('log.delete'),'aria-label':say('log.delete_of',about),on:{click:()=>{store.remove(key);byId('log-head').focus();}}}));
};
const draw=()=>{
const days=new Map();
for(const kept of store.entries('trained').reverse()){
const{on}=kept.entry,known=days.get(on);
if(known)known.unshift(kept);
else days.set(on,[kept]);
}
place.hidden=days.size===0;
const all=[...days].map(([on,list])=>make('section',{},make('h3',{},states.day(on)),make('ul',{class:'plain log-day'},...list.map(line))));
byId('log-list').replaceChildren(...all.slice(0,OPEN),...(all.length>OPEN?[make('details',{},make('summary',{text:say('log.earlier',{n:all.length - OPEN})}),...all.slice(OPEN))]:[]));
};
store.onChange(()=>page.later([draw],'log-head'));
draw();
})();
