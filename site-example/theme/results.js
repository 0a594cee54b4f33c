'use strict';self.rungbookIs+="results.js=1688c42a ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"date.day":"{day} {month} {year}","month.m1":"January","month.m10":"October","month.m11":"November","month.m12":"December","month.m2":"February","month.m3":"March","month.m4":"April","month.m5":"May","month.m6":"June","month.m7":"July","month.m8":"August","month.m9":"September","results.before_it_begins":"{what}: the last day lies before the first","results.clearance":"Clearance {number}","results.did_of":"{what}: “did”","results.entry":"The entry","results.exponent":"“{value}”: write numbers without an exponent","results.file":"The file","results.got_or_sides":"{what} says “got”, or “left” and “right”","results.key_twice":"The key “{key}” stands twice in one record","results.measured_otherwise":"since then it is measured in another way","results.movement_of":"{what}: the movement","results.name":"The name","results.no_day":"The entry has no day","results.no_such_movement":"this curriculum has no such movement","results.no_such_part":"this curriculum has no such movement, part or class","results.no_text":"{what} is missing or is no text","results.not_a_day":"{what}: “{value}” is not a day","results.not_a_list":"{what} is not a list","results.not_a_load":"{what}: “{value}” is not a weight","results.not_a_record":"{what} is not a record","results.not_a_result":"{what}: “{value}” is not a result","results.not_a_score":"{what}: “{value}” is no number from 0 to 10","results.not_a_session":"{what}: “{value}” is no effort from 0 to 10 or no minutes","results.not_a_weight":"{what}: “{value}” is not a body weight","results.not_a_year":"{what}: “{value}” is not a year of birth","results.not_between":"{what}: “{key}” is a whole number from {least} to {most}","results.not_in_reserve":"{what}: “{value}” is no number in reserve","results.not_json":"The file is not JSON, or was cut off","results.not_one_of":"{what}: “{value}” is none of {words}","results.one_side":"one side only","results.other_measure":"it measures another thing than the standard","results.pain":"Pain {number}","results.part_or_movement":"{what} names a part, a movement, a class or a pattern, one of them","results.pause":"Pause {number}","results.remark":"Remark {number}","results.restriction":"Restriction {number}","results.session":"Session {number}","results.set":"{what}: a set is no number","results.test":"Test {number}","results.to_come":"its day is still to come","results.too_large":"The file is larger than 1 MB","results.training":"Training {number}","results.unknown_key":"{what}: “{key}” is not a key of results","results.unreadable":"The file cannot be read","results.version":"This page reads results of version {version}; the file says “{value}”"});
'use strict';
(()=>{
const{readGot,readMass,text,DONE}=globalThis.rungbook.targets;
const{say}=globalThis.rungbook.words;
const VERSION=1;
const{LIMITS}=globalThis.rungbook.health,[LIGHTEST,HEAVIEST]=LIMITS.body_weight;
const LARGEST_FILE=1000000;
const readDay=(written)=>{
const parts=typeof written==='string'?/^\s*([0-9]{4})-([0-9]{2})-([0-9]{2})\s*$/.exec(written):null;
if(!parts||Number(parts[1])<1900)return null;
const time=Date.UTC(Number(parts[1]),Number(parts[2])- 1,Number(parts[3]));
return new Date(time).toISOString().slice(0,10)===parts[0].trim()?time / 86400000:null;
};
const ALWAYS=['tested','trained','paused'];
const yearOf=(day)=>Number(dayText(day).slice(0,4));
const dayText=(day)=>new Date(day*86400000).toISOString().slice(0,10);
const dayWords=(day)=>{
const[year,month,of]=dayText(day).split('-').map(Number);
return say('date.day',{day:of,month:say(`month.m${month}`),year:new Intl.NumberFormat(globalThis.document?document.documentElement.lang||'en':'en',{useGrouping:false}).format(year)});
};
const today=()=>{
const now=new Date();
return Date.UTC(now.getFullYear(),now.getMonth(),now.getDate())/ 86400000;
};
class Refused extends Error{}
const demand=(fine,why)=>{
if(!fine)throw new Refused(why());
};
const record=(value,what)=>{
demand(typeof value==='object'&&value!==null&&!Array.isArray(value),()=>say('results.not_a_record',{what}));
return(value);
};
const list=(value,what)=>{
demand(value===undefined||value===null||Array.isArray(value),()=>say('results.not_a_list',{what}));
return(value||[]);
};
const words=(value,what)=>{
demand(typeof value==='string'&&value.trim()!==''&&value.length<=500,()=>say('results.no_text',{what}));
return String(value).trim();
};
const movementOf=(value,what)=>{
demand(typeof value==='string'&&value.trim()!==''&&value.length<=500,()=>say('results.no_text',{what:say('results.movement_of',{what})}));
return String(value).trim();
};
const maybeWords=(value,what)=>(value===undefined||value===null?null:words(value,what));
const dayOr=(value,what,usual)=>{
if(value===undefined||value===null)return usual;
const day=readDay(value);
demand(day!==null,()=>say('results.not_a_day',{what,value:String(value)}));
return Number(day);
};
const weight=(value,what)=>{
if(value===undefined||value===null)return null;
const read=typeof value==='string'?readMass(value):null;
demand(read!==null&&read>=LIGHTEST&&read<=HEAVIEST,()=>say('results.not_a_weight',{what,value:String(value)}));
return read;
};
const got=(value,what)=>{
const read=typeof value==='string'?readGot(value):null;
demand(read!==null,()=>say('results.not_a_result',{what,value:String(value)}));
return(read);
};
const written=new Map();
const gotText=(value,what)=>{
const known=typeof value==='string'?written.get(value):undefined;
if(known!==undefined)return known;
const kept=text(got(value,what));
if(written.size<10000)written.set(String(value),kept);
return kept;
};
const readSet=(set,unit)=>readGot(/^[0-9.]+$/.test(set)?`${set} ${unit}`:set);
const wholeOf=(value,least,most,why)=>{
const fine=(typeof value==='number'||typeof value==='string')&&/^\s*[0-9]{1,4}\s*$/.test(String(value));
demand(fine&&Number(value)>=least&&Number(value)<=most,why);
return Number(value);
};
const reserveOf=(value,what)=>(value===undefined||value===null?0:wholeOf(value,0,LIMITS.in_reserve,()=>say('results.not_in_reserve',{what,value:String(value)})));
const oneOf=(value,of,what)=>{
demand(typeof value==='string'&&of.includes(value),()=>say('results.not_one_of',{what,value:String(value),words:of.join(', ')}));
return String(value);
};
const KEYS={
file:['results','name','bodyweight','have','tested','trained','sessions','paused','born','goal','train','screened','restrict','cleared','pain','remarks'],
tested:['movement','got','left','right','on','in_reserve','bodyweight'],
trained:['movement','did','with','in_reserve','on'],
sessions:['effort','minutes','on'],
paused:['part','movement','class','pattern','on','until','by','because'],
train:['a_week','minutes','days'],
screened:['says','on','until','by','was','lasts'],
cleared:['class','on','until','by'],
pain:['part','score','next_morning','on','signs'],
remarks:['movement','words','on'],
};
const DAYS=['mon','tue','wed','thu','fri','sat','sun'];
const SIGNS=['sharp','night','numb','giving-way'];
const SAYS=['clear','light','ask'];
const keyed=(value,what,keys)=>{
const read=record(value,what);
const odd=Object.keys(read).find((key)=>!keys.includes(key));
demand(odd===undefined,()=>say('results.unknown_key',{what,key:String(odd)}));
return read;
};
const untilOf=(entry,what,day)=>{
if(entry.until===undefined||entry.until===null)return{};
const until=dayOr(entry.until,what,day);
demand(until>=dayOr(entry.on,what,day),()=>say('results.before_it_begins',{what}));
return{until:dayText(until)};
};
const saidOf=(entry,what,keys)=>Object.fromEntries(keys.map((key)=>[key,maybeWords(entry[key],what)]).filter(([,text])=>text!==null));
const pauseOf=(item,what,day)=>{
const entry=keyed(item,what,KEYS.paused);
const named=['part','movement','class','pattern'].filter((key)=>entry[key]!==undefined);
demand(named.length===1,()=>say('results.part_or_movement',{what}));
return{[named[0]]:words(entry[named[0]],what),on:dayText(dayOr(entry.on,what,day)),...untilOf(entry,what,day),...saidOf(entry,what,['by','because'])};
};
const ENTRY={
tested:(item,what,day)=>{
const entry=keyed(item,what,KEYS.tested);
demand(entry.got===undefined||(entry.left===undefined&&entry.right===undefined),()=>say('results.got_or_sides',{what}));
const side=(name)=>(entry[name]===undefined?{}:{[name]:gotText(entry[name],what)});
const sides=entry.got===undefined&&(entry.left!==undefined||entry.right!==undefined)?{...side('left'),...side('right')}:{got:gotText(entry.got,what)};
const own=entry.bodyweight===undefined?{}:{bodyweight:(weight(entry.bodyweight,what),String(entry.bodyweight))};
const reserve=reserveOf(entry.in_reserve,what);
return{movement:movementOf(entry.movement,what),...sides,on:dayText(dayOr(entry.on,what,day)),...(reserve?{in_reserve:reserve}:{}),...own};
},
trained:(item,what,day)=>{
const entry=keyed(item,what,KEYS.trained);
const did=list(entry.did,say('results.did_of',{what})).map((set)=>{
demand((typeof set==='number'&&set>=0)||(typeof set==='string'&&set.length<40),()=>say('results.set',{what}));
demand(readSet(String(set),'reps')!==null,()=>say('results.set',{what}));
return(set);
});
demand(entry.with===undefined||readGot(`1 rep with ${entry.with}`)!==null,()=>say('results.not_a_load',{what,value:String(entry.with)}));
const kept={...(entry.with===undefined?{}:{with:words(entry.with,what)}),...(entry.in_reserve===undefined?{}:{in_reserve:reserveOf(entry.in_reserve,what)})};
return{movement:movementOf(entry.movement,what),did,...kept,on:dayText(dayOr(entry.on,what,day))};
},
sessions:(item,what,day)=>{
const entry=keyed(item,what,KEYS.sessions);
const number=(value,most)=>wholeOf(value,0,most,()=>say('results.not_a_session',{what,value:String(value)}));
return{effort:number(entry.effort,LIMITS.effort),minutes:number(entry.minutes,LIMITS.minutes),on:dayText(dayOr(entry.on,what,day))};
},
paused:pauseOf,
restrict:pauseOf,
cleared:(item,what,day)=>{
const entry=keyed(item,what,KEYS.cleared);
return{class:words(entry.class,what),on:dayText(dayOr(entry.on,what,day)),...untilOf(entry,what,day),...saidOf(entry,what,['by'])};
},
pain:(item,what,day)=>{
const entry=keyed(item,what,KEYS.pain);
const score=(value)=>wholeOf(value,0,10,()=>say('results.not_a_score',{what,value:String(value)}));
const signs=list(entry.signs,what).map((sign)=>oneOf(sign,SIGNS,what));
return{
part:words(entry.part,what),score:score(entry.score),...(entry.next_morning===undefined||entry.next_morning===null?{}:{next_morning:score(entry.next_morning)}),
on:dayText(dayOr(entry.on,what,day)),...(signs.length?{signs}:{}),
};
},
remarks:(item,what,day)=>{
const entry=keyed(item,what,KEYS.remarks);
return{movement:movementOf(entry.movement,what),on:dayText(dayOr(entry.on,what,day)),words:words(entry.words,what)};
},
};
const KINDS=Object.keys(ENTRY);
const undated=(item,what)=>{
const read=keyed(item,what,['movement','got','left','right']);
const sides=['got','left','right'].filter((side)=>read[side]!==undefined).map((side)=>[side,gotText(read[side],what)]);
demand(sides.length>0,()=>say('results.no_text',{what}));
return{movement:words(read.movement,what),...Object.fromEntries(sides)};
};
const NAMES={tested:'test',trained:'training',sessions:'session',paused:'pause',restrict:'restriction',cleared:'clearance',pain:'pain',remarks:'remark'};
const nameOf=(kind,number)=>say(`results.${NAMES[kind]}`,{number});
const FACT={
name:(value,what)=>words(value,what),
bodyweight:(value,what)=>(weight(value,what),String(value)),
have:(value,what)=>list(value,what).map((item)=>words(item,what)),
born:(value,what,day)=>wholeOf(value,1900,yearOf(day),()=>say('results.not_a_year',{what,value:String(value)})),
goal:(value,what)=>words(value,what),
train:(value,what)=>{
const entry=keyed(value,what,KEYS.train);
const number=(key,least,most)=>(entry[key]===undefined?{}:{[key]:wholeOf(entry[key],least,most,()=>say('results.not_between',{what,key,least,most}))});
const days=entry.days===undefined?{}:{days:list(entry.days,what).map((name)=>oneOf(name,DAYS,what))};
return{...number('a_week',1,7),...number('minutes',10,240),...days};
},
screened:(value,what,day)=>{
const entry=keyed(value,what,KEYS.screened);
const{was,lasts}=entry;
return{says:oneOf(entry.says,SAYS,what),on:dayText(dayOr(entry.on,what,day)),...untilOf(entry,what,day),...saidOf(entry,what,['by']),
...(was===undefined?{}:{was:oneOf(was,SAYS,what)}),...(lasts===undefined?{}:{lasts:wholeOf(lasts,1,366,()=>say('results.not_between',{what,key:'lasts',least:1,most:366}))})};
},
};
const tried=(read)=>{
try{
return{sound:read(),why:''};
}catch(error){
if(!(error instanceof Refused))throw error;
return{sound:null,why:error.message};
}
};
const THE_ENTRY=say('results.entry');
const entry=(kind,item,day)=>tried(()=>{
const what=THE_ENTRY;
if(kind==='undated')return undated(item,what);
demand(readDay(record(item,what).on)!==null,()=>say('results.no_day'));
return ENTRY[kind](item,what,day);
});
const fact=(key,value,day)=>tried(()=>FACT[key](value,`“${key}”`,day));
const check=(object,day)=>{
const loose=record(object,say('results.file'));
demand(String(loose.results)===String(VERSION),()=>say('results.version',{version:VERSION,value:String(loose.results)}));
const root=keyed(object,say('results.file'),KEYS.file);
const out={results:VERSION};
for(const[key,read]of Object.entries(FACT))if(root[key]!==undefined&&root[key]!==null)out[key]=read(root[key],key==='name'?say('results.name'):`“${key}”`,day);
for(const kind of KINDS){
const read=list(root[kind],`“${kind}”`).map((item,i)=>ENTRY[kind](item,nameOf(kind,i + 1),day));
if(read.length||ALWAYS.includes(kind))out[kind]=read;
}
return(out);
};
const strict=(written)=>{
const open=[];
let isKey=false;
for(const[token]of written.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+/g)){
if(token==='{'||token==='[')open.push(token==='{'?new Set():null);
else if(token==='}'||token===']')open.pop();
else if(token[0]==='"'&&isKey){
const keys=open[open.length - 1],key=JSON.parse(token);
demand(!keys||!keys.has(key),()=>say('results.key_twice',{key}));
if(keys)keys.add(key);
}else demand(!/^-?[0-9.]+[eE]/.test(token),()=>say('results.exponent',{value:token}));
isKey=token==='{'||(token===','&&Boolean(open[open.length - 1]));
}
};
const readFile=(written,day)=>{
demand(written.length<=LARGEST_FILE,()=>say('results.too_large'));
let object;
try{
object=JSON.parse(written);
}catch{
throw new Refused(say('results.not_json'));
}
strict(written);
return check(object,day);
};
const ageOn=(born,today)=>(born===null?null:yearOf(today)- born - 1);
const nobody=()=>({bodyWeight:null,tested:[],trained:[],sessions:[],pauses:[],have:null,born:null,goal:null,train:null,screened:null,cleared:[],pains:[],remarks:[]});
const lastDay=({until})=>(until===undefined?null:Number(readDay(until)));
const of=(words,word)=>(word===undefined?null:words.indexOf(word));
const person=(exported,model,day)=>{
const out=nobody();
out.bodyWeight=exported.bodyweight?readMass(exported.bodyweight):null;
out.have=exported.have||null;
out.born=exported.born===undefined?null:exported.born;
out.goal=exported.goal||null;
out.train=exported.train||null;
if(exported.screened)out.screened={says:exported.screened.says,on:Number(readDay(exported.screened.on)),until:lastDay(exported.screened),by:exported.screened.by||null,lasts:exported.screened.lasts||null};
const aside=[];
const otherwise=(movement,on)=>on<(model.tables.since[movement]||'');
exported.tested.forEach((entry,i)=>{
const sides=[entry.got,entry.left,entry.right].filter((side)=>side!==undefined).map((side)=>(readGot(String(side))));
const movement=model.numbers.get(entry.movement);
const on=Number(readDay(entry.on));
const keep=(why)=>aside.push({movement:entry.movement,got:sides.map(text).join(', '),on:entry.on,why});
if(entry.got===undefined&&sides.length<2)keep(say('results.one_side'));
else if(movement===undefined)keep(say('results.no_such_movement'));
else if(sides.some((side)=>side.measure!==model.target(movement).measure))keep(say('results.other_measure'));
else if(on>day)keep(say('results.to_come'));
else if(otherwise(movement,entry.on))keep(say('results.measured_otherwise'));
else out.tested.push({movement,sides,on,reserve:entry.in_reserve||0,bodyWeight:entry.bodyweight?readMass(entry.bodyweight):null,entry:i});
});
exported.trained.forEach((entry)=>{
const movement=model.numbers.get(entry.movement);
const on=Number(readDay(entry.on));
if(movement===undefined||on>day){
aside.push({movement:entry.movement,got:entry.did.join(', '),on:entry.on,why:movement===undefined?say('results.no_such_movement'):say('results.to_come')});
return;
}
const{measure}=model.target(movement);
const did=entry.did.map((set)=>readSet(String(set),['reps','s','cm','deg','reps'][measure]));
if(did.some((set)=>set===null||(set.measure!==measure&&measure!==DONE))){
aside.push({movement:entry.movement,got:entry.did.join(', '),on:entry.on,why:say('results.other_measure')});
return;
}
if(otherwise(movement,entry.on)){
aside.push({movement:entry.movement,got:entry.did.join(', '),on:entry.on,why:say('results.measured_otherwise')});
return;
}
const load=entry.with===undefined?null:readGot(`1 rep with ${entry.with}`);
if(entry.with!==undefined&&!load)return;
out.trained.push({movement,did:did.map((set)=>(set).amount),unit:load?load.unit:0,load:load?load.load:0,reserve:entry.in_reserve===undefined?null:entry.in_reserve,on});
});
for(const{effort,minutes,on}of exported.sessions||[])out.sessions.push({effort,minutes,on:Number(readDay(on))});
const pauses=(kind)=>(exported[kind]||[]).forEach((entry,i)=>{
const movement=entry.movement===undefined?null:model.numbers.get(entry.movement);
const[part,cls,pattern]=[of(model.tables.parts,entry.part),of(model.tables.classes,entry.class),of(model.tables.patterns,entry.pattern)];
if(movement===undefined||part===-1||cls===-1||pattern===-1){
aside.push({movement:String(entry.movement||entry.part||entry.class||entry.pattern),got:kind,on:entry.on,why:say('results.no_such_part')});
return;
}
out.pauses.push({kind,movement,part,cls,pattern,on:Number(readDay(entry.on)),until:lastDay(entry),by:entry.by||null,because:entry.because||null,entry:i});
});
pauses('paused');
pauses('restrict');
(exported.cleared||[]).forEach((entry,i)=>{
const cls=model.tables.classes.indexOf(entry.class),on=Number(readDay(entry.on));
if(cls===-1)aside.push({movement:entry.class,got:'cleared',on:entry.on,why:say('results.no_such_part')});
else out.cleared.push({cls,on,until:lastDay(entry),by:entry.by||null,entry:i});
});
(exported.pain||[]).forEach((entry,i)=>{
const part=model.tables.parts.indexOf(entry.part),on=Number(readDay(entry.on));
if(part===-1||on>day)aside.push({movement:'pain',got:`${entry.part} ${entry.score}`,on:entry.on,why:part===-1?say('results.no_such_part'):say('results.to_come')});
else out.pains.push({part,score:entry.score,nextMorning:entry.next_morning===undefined?null:entry.next_morning,signs:entry.signs||[],on,entry:i});
});
(exported.remarks||[]).forEach((entry)=>{
const movement=model.numbers.get(entry.movement);
if(movement===undefined)aside.push({movement:entry.movement,got:'remark',on:entry.on,why:say('results.no_such_movement')});
else out.remarks.push({movement,on:Number(readDay(entry.on)),words:entry.words});
});
return{person:out,aside};
};
globalThis.rungbook.results={VERSION,KEYS,KINDS,FACTS:Object.keys(FACT),SIGNS,LARGEST_FILE,Refused,check,entry,fact,nobody,readFile,person,ageOn,readDay,dayText,dayWords,today};
})();
