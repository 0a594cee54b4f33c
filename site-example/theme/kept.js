'use strict';self.rungbookIs+="kept.js=fdf3f82a ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"date.day":"{day} {month} {year}","date.span":"{from} to {to}","date.week_to":"in the week to {to}","date.weeks_to":"in the {n} weeks to {to}","home.for":"For {name}.","month.m1":"January","month.m10":"October","month.m11":"November","month.m12":"December","month.m2":"February","month.m3":"March","month.m4":"April","month.m5":"May","month.m6":"June","month.m7":"July","month.m8":"August","month.m9":"September","results.before_it_begins":"{what}: the last day lies before the first","results.clearance":"Clearance {number}","results.did_of":"{what}: “did”","results.entry":"The entry","results.exponent":"“{value}”: write numbers without an exponent","results.file":"The file","results.got_or_sides":"{what} says “got”, or “left” and “right”","results.key_twice":"The key “{key}” stands twice in one record","results.measured_otherwise":"measured the old way, measure it again","results.movement_of":"{what}: the movement","results.name":"The name","results.no_day":"The entry has no day","results.no_such_movement":"this curriculum has no such movement","results.no_such_part":"this curriculum has no such movement, part or class","results.no_text":"{what} is missing or is no text","results.not_a_day":"{what}: “{value}” is not a day","results.not_a_list":"{what} is not a list","results.not_a_load":"{what}: “{value}” is not a weight","results.not_a_record":"{what} is not a record","results.not_a_result":"{what}: “{value}” is not a result","results.not_a_score":"{what}: “{value}” is no number from 0 to 10","results.not_a_session":"{what}: “{value}” is no effort from 0 to 10 or no minutes","results.not_a_weight":"{what}: “{value}” is not a body weight","results.not_a_year":"{what}: “{value}” is not a year of birth","results.not_between":"{what}: “{key}” is a whole number from {least} to {most}","results.not_in_reserve":"{what}: “{value}” is no number in reserve","results.not_json":"The file is not JSON, or was cut off","results.not_one_of":"{what}: “{value}” is none of {words}","results.one_side":"one side only","results.other_measure":"it measures another thing than the standard","results.pain":"Pain {number}","results.part_or_movement":"{what} names a part, a movement, a class or a pattern, one of them","results.pause":"Pause {number}","results.remark":"Remark {number}","results.restriction":"Restriction {number}","results.session":"Session {number}","results.set":"{what}: a set is no number","results.test":"Test {number}","results.to_come":"its day is still to come","results.too_large":"The file is larger than 1 MB","results.training":"Training {number}","results.unknown_key":"{what}: “{key}” is not a key of results","results.unreadable":"The file cannot be read","results.version":"This page reads results of version {version}; the file says “{value}”","stand.no_name":"without a name","stand.not_me":"That is not me","target.added":"{amount} with {weight} added","target.at_most":"at most {amount}","target.body_weight":{"one":"{n} % of body weight","other":"{n} % of body weight"},"target.centimetres":{"one":"{n} cm","other":"{n} cm"},"target.degrees":{"one":"{n}°","other":"{n}°"},"target.done":"done","target.each_rep":"{amount}, {seconds} each","target.each_side":"{amount}, each side","target.help":"{amount} with {weight} of help","target.inches":{"one":"{n} in","other":"{n} in"},"target.kilograms":{"one":"{n} kg","other":"{n} kg"},"target.minutes":{"one":"{n} minute","other":"{n} minutes"},"target.not_done":"not done","target.pounds":{"one":"{n} lb","other":"{n} lb"},"target.reps":{"one":"{n} rep","other":"{n} reps"},"target.seconds":{"one":"{n} second","other":"{n} seconds"},"target.sets":{"one":"{n} set of {amount}","other":"{n} sets of {amount}"},"target.tries":"{amount}, in {hits} of {of} tries"});
(()=>{
const ONE=1000000;
const KILOGRAM=100000000;
const POUND=45359237n;
const INCH=2540000n;
const GRAM=100000;
const LARGEST=100000;
const LONGEST_RUN=40;
const FINER=KILOGRAM / ONE;
const REPS=0,TIME=1,LENGTH=2,ANGLE=3,DONE=4;
const NO_LOAD=0,MASS=1,BODY_WEIGHT=2;
const WORDS=['seconds','second','secs','sec','minutes','minute','mins','min','inches','inch','in','degrees','degree','deg','reps',
'rep','of','not','done','tries','try','with','help','kg','lbs','lb','bw','each','side','at','most','cm','x','s'];
const splitWords=(run)=>{
if(run==='')return[];
for(const word of WORDS){
if(!run.startsWith(word))continue;
const rest=splitWords(run.slice(word.length));
if(rest)return[word,...rest];
}
return null;
};
const readNumber=(text)=>{
const parts=/^([0-9]+)(?:\.([0-9]{1,8}))?$/.exec(text);
if(!parts||Number(parts[1])>LARGEST)return null;
return Number(parts[1])*KILOGRAM + Number((parts[2]||'').padEnd(8,'0'));
};
const readTokens=(text)=>{
const out=[];
for(const part of text.match(/\p{White_Space}+|[0-9.][0-9.,]*|×|\p{Alphabetic}+|./gsu)||[]){
if(/^\p{White_Space}/u.test(part))continue;
if(/^[0-9.]/.test(part)){
const number=readNumber(part);
if(number===null)return null;
out.push(number);
}else if(part==='×'){
out.push('x');
}else if(/^\p{Alphabetic}/u.test(part)){
const run=part.toLowerCase();
const sensible=part.length<=LONGEST_RUN&&/^[A-Za-z]+$/.test(part);
out.push(...((sensible&&splitWords(run))||[run]));
}else{
return null;
}
}
return out;
};
const inUnit=(number,unit,one)=>Number((BigInt(number)*unit)/ BigInt(one));
const readGot=(text)=>{
const tokens=readTokens(text);
if(!tokens)return null;
let at=0;
const take=(...words)=>{
const found=typeof tokens[at]==='string'&&words.includes(String(tokens[at]));
if(found)at +=1;
return found;
};
const fine=()=>(typeof tokens[at]==='number'?Number(tokens[at++]):null);
const micro=(read)=>(read!==null&&read % FINER===0?read / FINER:null);
const number=()=>micro(fine());
const whole=()=>{
const read=number();
return read!==null&&read % ONE===0&&read>=ONE?read / ONE:null;
};
const not=take('not');
const got={measure:REPS,atMost:false,sets:1,amount:ONE,seconds:0,unit:NO_LOAD,load:0,hits:0,of:0};
const seconds=()=>take('s','sec','secs','second','seconds');
const amount=()=>{
let read=number();
if(read===null)return false;
if(take('x')){
if(read % ONE!==0||read<ONE)return false;
got.sets=read / ONE;
read=number();
if(read===null)return false;
}
got.amount=read;
const next=tokens[at];
if(take('reps','rep')||next==='of'||next==='with'||next==='each'||at===tokens.length){
if(!take('of'))return true;
const each=number();
if(each===null||!seconds())return false;
got.seconds=each;
return true;
}
const timed=seconds();
if(timed||take('min','mins','minute','minutes')){
got.measure=TIME;
if(!timed)got.amount*=60;
return got.amount<=LARGEST*ONE&&tries();
}
if(take('cm')){
got.measure=LENGTH;
}else if(take('in','inch','inches')){
got.measure=LENGTH;
got.amount=inUnit(read,INCH,ONE);
if(got.amount>LARGEST*ONE)return false;
}else if(take('deg','degree','degrees')){
got.measure=ANGLE;
}else{
return false;
}
return true;
};
const tries=()=>{
if(!take('in'))return true;
const hits=whole();
if(hits===null||!take('of'))return false;
const of=whole();
if(of===null||!take('tries','try')||hits>of)return false;
got.hits=hits;
got.of=of;
return true;
};
if(take('done')){
got.measure=DONE;
}else if(not||!amount()){
return null;
}
if(not)got.amount=0;
if(take('with')){
const load=fine();
if(load===null)return null;
if(take('kg')){
got.unit=MASS;
got.load=load;
}else if(take('lb','lbs')){
got.unit=MASS;
got.load=inUnit(load,POUND,KILOGRAM);
}else if(take('bw')&&micro(load)!==null){
got.unit=BODY_WEIGHT;
got.load=load / FINER;
}else{
return null;
}
if(take('help'))got.load=-got.load;
}
return at===tokens.length?got:null;
};
const plain=(number,one,places)=>{
const fraction=String(Math.abs(number)% one).padStart(places,'0').replace(/0+$/,'');
return `${number<0?'-':''}${Math.floor(Math.abs(number)/ one)}${fraction?'.':''}${fraction}`;
};
const decimal=(micro)=>plain(micro,ONE,6);
const kilograms=(mass)=>plain(mass,KILOGRAM,8);
const text=(got)=>{
if(got.measure===DONE&&got.amount===0)return 'not done';
let out=got.sets>1?`${got.sets}x`:'';
const amount=decimal(got.amount);
if(got.measure===REPS){
const bare=got.sets>1&&got.seconds===0&&got.unit===NO_LOAD;
out +=bare?amount:`${amount} ${got.amount===ONE?'rep':'reps'}`;
}else{
out +=[,`${amount} s`,`${amount} cm`,`${amount} deg`,'done'][got.measure];
}
if(got.seconds>0)out +=` of ${decimal(got.seconds)} s`;
if(got.of>0)out +=` in ${got.hits} of ${got.of} tries`;
if(got.unit!==NO_LOAD){
const size=Math.abs(got.load);
out +=` with ${got.unit===MASS?`${kilograms(size)} kg`:`${decimal(size)} bw`}${got.load<0?' help':''}`;
}
return out;
};
const towards=(number,unit,up)=>Number((BigInt(number)+(up?unit - 1n:0n))/ unit);
const{say}=globalThis.rungbook.words;
const secondsInWords=(amount)=>(amount>=120*ONE&&amount %(60*ONE)===0?say('target.minutes',{n:amount /(60*ONE)}):say('target.seconds',{n:amount / ONE}));
const massInWords=(size,up,units)=>{
if(units==='imperial')return say('target.pounds',{n:towards(size*10,POUND,up)/ 10});
return say('target.kilograms',{n:size % GRAM===0?size / KILOGRAM:towards(size*10,BigInt(KILOGRAM),up)/ 10});
};
const amountInWords=(got,units)=>{
if(got.measure===REPS)return say('target.reps',{n:got.amount / ONE});
if(got.measure===TIME)return secondsInWords(got.amount);
if(got.measure===ANGLE)return say('target.degrees',{n:got.amount / ONE});
if(units!=='imperial')return say('target.centimetres',{n:got.amount / ONE});
return say('target.inches',{n:towards(got.amount*10,INCH,!got.atMost)/ 10});
};
const words=(got,units,eachSide=false)=>{
let out='';
if(got.measure===DONE){
out=got.amount===0?say('target.not_done'):say('target.done');
}else{
const bare=got.measure===REPS&&got.sets>1;
out=bare?globalThis.rungbook.words.number(got.amount / ONE):amountInWords(got,units);
}
if(got.sets>1)out=say('target.sets',{n:got.sets,amount:out});
if(got.atMost)out=say('target.at_most',{amount:out});
if(got.seconds>0)out=say('target.each_rep',{amount:out,seconds:secondsInWords(got.seconds)});
if(got.unit!==NO_LOAD){
const size=Math.abs(got.load),help=got.load<0;
const weight=got.unit===MASS?massInWords(size,!help,units):say('target.body_weight',{n:size / 10000});
out=help?say('target.help',{amount:out,weight}):say('target.added',{amount:out,weight});
}
if(got.of>0)out=say('target.tries',{amount:out,hits:got.hits,of:got.of});
return eachSide?say('target.each_side',{amount:out}):out;
};
const readMass=(written)=>{
const got=readGot(`1 rep with ${written}`);
return got&&got.unit===MASS?got.load:null;
};
globalThis.rungbook=Object.assign(globalThis.rungbook||{},{
targets:{readGot,text,words,massInWords,decimal,kilograms,readMass,ONE,KILOGRAM,REPS,TIME,LENGTH,ANGLE,DONE,NO_LOAD,MASS,BODY_WEIGHT},
});
})();
(()=>{
const{readGot,readMass,text,DONE}=globalThis.rungbook.targets;
const{say}=globalThis.rungbook.words;
const VERSION=1;
const WEEK=7;
const{LIMITS,ageOn,worstOfDay}=globalThis.rungbook.health,[LIGHTEST,HEAVIEST]=LIMITS.body_weight;
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
const years=new Intl.NumberFormat(globalThis.document?document.documentElement.lang||'en':'en',{useGrouping:false});
const dayWords=(day)=>{
const[year,month,of]=dayText(day).split('-').map(Number);
return say('date.day',{day:of,month:say(`month.m${month}`),year:years.format(year)});
};
const spanWords=(on,until)=>{
const days=until - on + 1,weeks=days / WEEK,said={from:dayWords(on),to:dayWords(until),n:weeks};
return days===WEEK?say('date.week_to',said):days % WEEK===0?say('date.weeks_to',said):say('date.span',said);
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
tested:['movement','got','left','right','on','until','in_reserve','bodyweight'],
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
return{movement:movementOf(entry.movement,what),...sides,on:dayText(dayOr(entry.on,what,day)),...untilOf(entry,what,day),...(reserve?{in_reserve:reserve}:{}),...own};
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
const nobody=()=>({bodyWeight:null,tested:[],otherwise:[],trained:[],sessions:[],pauses:[],have:null,born:null,goal:null,train:null,screened:null,cleared:[],pains:[],remarks:[]});
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
else{
const old=otherwise(movement,entry.on);
(old?out.otherwise:out.tested).push({movement,sides,on,until:lastDay(entry),reserve:entry.in_reserve||0,bodyWeight:entry.bodyweight?readMass(entry.bodyweight):null,entry:i});
if(old)keep(say('results.measured_otherwise'));
}
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
out.pains=worstOfDay(out.pains).map((of)=>{
const mornings=out.pains.flatMap(({part,on,nextMorning})=>(part===of.part&&on===of.on&&nextMorning!==null?[nextMorning]:[]));
return{...of,signs:SIGNS.filter((sign)=>of.signs.includes(sign)),nextMorning:mornings.length?Math.max(...mornings):null};
});
(exported.remarks||[]).forEach((entry)=>{
const movement=model.numbers.get(entry.movement);
if(movement===undefined)aside.push({movement:entry.movement,got:'remark',on:entry.on,why:say('results.no_such_movement')});
else out.remarks.push({movement,on:Number(readDay(entry.on)),words:entry.words});
});
return{person:out,aside};
};
globalThis.rungbook.results={VERSION,KEYS,KINDS,FACTS:Object.keys(FACT),SIGNS,LARGEST_FILE,Refused,check,entry,fact,nobody,readFile,person,ageOn,readDay,dayText,dayWords,spanWords,today};
})();
(()=>{
const{own:OWN,prefix:PREFIX}=globalThis.rungbook.health;
const PROBE=`${PREFIX}probe`;
const TOLD='told:';
const NEVER_CARRIED=['screened','cleared','fit','parent','coach'];
const isCarried=(key)=>!NEVER_CARRIED.includes(key.split(':')[0]);
const kinds=()=>globalThis.rungbook.results.KINDS;
const visit=new Map();
const gone=new Set();
let trouble='';
let seen=null;
const listeners=[];
const changed=()=>{
seen=null;
listeners.forEach((act)=>act());
};
const storage=()=>{
try{
return globalThis.localStorage;
}catch{
trouble='forbidden';
return null;
}
};
const ofTab=()=>{
try{
return globalThis.sessionStorage;
}catch{
return null;
}
};
const read=(key)=>{
if(visit.has(key))return visit.get(key)||null;
if(gone.has(key))return null;
try{
const kept=storage(),tab=isCarried(key)?null:ofTab();
return(tab&&tab.getItem(PREFIX + key))||(kept?kept.getItem(PREFIX + key):null);
}catch{
return null;
}
};
const write=(key,value)=>{
seen=null;
gone.delete(key);
try{
const kept=storage();
if(!kept)throw new Error('forbidden');
try{
kept.setItem(PREFIX + key,value);
}catch{
keys().filter((of)=>of.startsWith(TOLD)).forEach((of)=>kept.removeItem(PREFIX + of));
kept.setItem(PREFIX + key,value);
}
visit.delete(key);
return true;
}catch(error){
trouble=error instanceof DOMException&&error.name==='QuotaExceededError'?'full':trouble||'forbidden';
visit.set(key,value);
try{
const tab=isCarried(key)?null:ofTab();
if(tab)tab.setItem(PREFIX + key,value);
}catch{
}
return false;
}
};
const remove=(key)=>{
seen=null;
visit.delete(key);
try{
const kept=storage(),tab=isCarried(key)?null:ofTab();
if(tab)tab.removeItem(PREFIX + key);
if(kept)kept.removeItem(PREFIX + key);
}catch{
gone.add(key);
}
};
const isMine=(key)=>!key.startsWith('@')&&key!=='who'&&key!=='units';
const keys=()=>{
const out=new Set(visit.keys());
try{
const kept=storage();
for(let i=0;kept&&i<kept.length;i +=1){
const key=kept.key(i);
if(key&&key.startsWith(PREFIX)&&isMine(key.slice(PREFIX.length))&&!gone.has(key.slice(PREFIX.length)))out.add(key.slice(PREFIX.length));
}
}catch{
}
return[...out].sort();
};
let last=0;
const name=()=>{
last=Math.max(Date.now(),last + 1);
const chance=globalThis.crypto.getRandomValues(new Uint32Array(1))[0].toString(36).padStart(7,'0');
return `${last.toString(36).padStart(9,'0')}-${chance}`;
};
const parsed=(written)=>{
try{
return written===null?null:JSON.parse(written);
}catch{
return null;
}
};
const checked=new Map();
const readEntry=(key,kind)=>{
const text=read(key)||'',known=checked.get(key);
if(known&&known.text===text)return{...known.of,text};
const{results}=globalThis.rungbook;
const of=results.entry(kind,parsed(text),results.today());
checked.set(key,{text,of});
return{...of,text};
};
const gathered=(which)=>{
const sound=Object.fromEntries(which.map((kind)=>[kind,[]]));
const odd=[];
for(const key of keys()){
const kind=key.slice(0,key.indexOf(':'));
if(!Object.hasOwn(sound,kind))continue;
const of=readEntry(key,kind);
if(of.sound)sound[kind].push({key,entry:of.sound});
else odd.push({key,why:of.why,text:of.text});
}
for(const kind of which)sound[kind].sort((a,b)=>(a.entry.on<b.entry.on?-1:a.entry.on>b.entry.on?1:a.key<b.key?-1:1));
return{sound,odd};
};
const now=()=>{
if(!seen){
seen={all:gathered([...kinds(),'undated']),facts:facts(),isEmpty:!keys().some(globalThis.rungbook.health.isResult),exported:null};
Promise.resolve().then(()=>{seen=null;});
}
return seen;
};
const entries=(kind)=>[...now().all.sound[kind]];
const aboutMe=()=>{
const kept=parsed(read('about'));
return kept!==null&&typeof kept==='object'&&!Array.isArray(kept)?kept:{};
};
const facts=()=>{
const{results}=globalThis.rungbook,day=results.today();
const said={...aboutMe(),screened:parsed(read('screened'))};
const sound={};
const odd=[];
for(const key of results.FACTS){
if(said[key]===undefined||said[key]===null)continue;
const of=results.fact(key,said[key],day);
if(of.why==='')sound[key]=of.sound;
else odd.push({key:key==='screened'?key:`about:${key}`,why:of.why,text:JSON.stringify(said[key])});
}
return{sound,odd};
};
const adults=(()=>{
const{LIMITS,isChild}=globalThis.rungbook.health;
const KEYS=(['parent','coach']);
const isSaid=(key)=>{const{results}=globalThis.rungbook,on=parsed(read(key));return key==='coach'?on===results.dayText(results.today()):typeof on==='string';};
const isDue=()=>{
const{results}=globalThis.rungbook,{born}=now().facts.sound,age=results.ageOn(born===undefined?null:born,results.today());
return age!==null&&age<LIMITS.youth&&!isChild(born,results.today())&&!KEYS.every(isSaid);
};
return{KEYS,isSaid,isDue};
})();
const NEXT='next';
const askToLast=(kind)=>{
const{storage:lasting}=globalThis.navigator||{};
if(!['tested','trained'].includes(kind)||!lasting||!lasting.persist||read('lasting'))return;
write('lasting','true');
lasting.persist().catch(()=>{});
};
const addAll=(list,soon=false)=>{
const made=list.map(([kind,entry])=>{
const key=`${kind}:${name()}`;
write(key,JSON.stringify(entry));
askToLast(kind);
return key;
});
remove(NEXT);
if(soon)globalThis.rungbook.page.later([changed],'store');
else changed();
return made;
};
const add=(kind,entry,soon)=>addAll([[kind,entry]],soon)[0];
const all=()=>{
const kept=now(),{sound}=kept.all;
if(kept.exported)return kept.exported;
const out={results:1,...kept.facts.sound};
for(const kind of kinds()){
const bare=sound[kind].map(({entry})=>entry);
if(bare.length||['tested','trained','paused'].includes(kind))out[kind]=bare;
}
kept.exported=out;
return out;
};
const odd=()=>[...now().facts.odd,...now().all.odd];
const beyond=(list,other)=>{
const known=new Map();
for(const entry of other)known.set(JSON.stringify(entry),(known.get(JSON.stringify(entry))||0)+ 1);
return list.filter((entry)=>{
const text=JSON.stringify(entry),n=known.get(text)||0;
known.set(text,n - 1);
return n<=0;
});
};
const takeIn=(exported,weightToo)=>{
let added=0,same=0,lost=0;
const written=[];
const{sound}=gathered(kinds());
const put=(kind,entry)=>{
const key=`${kind}:${name()}`,text=JSON.stringify(entry);
written.push(key);
if(!write(key,text))lost +=1;
checked.set(key,{text,of:{sound:entry,why:''}});
};
for(const kind of kinds()){
const theirs=exported[kind]||[],fresh=beyond(theirs,sound[kind].map(({entry})=>entry));
fresh.forEach((entry)=>put(kind,entry));
added +=fresh.length;
same +=theirs.length - fresh.length;
}
const about={...aboutMe()};
for(const key of globalThis.rungbook.results.FACTS){
if(key!=='screened'&&exported[key]!==undefined&&(about[key]===undefined||(key==='bodyweight'&&weightToo)))about[key]=exported[key];
}
const before=read('about');
if(Object.keys(about).length&&!write('about',JSON.stringify(about)))lost +=1;
const careful=['clear','light','ask'],own=facts().sound.screened,theirs=exported.screened,outcome=read('screened');
if(theirs&&(!own||careful.indexOf(theirs.says)>careful.indexOf(own.says)))write('screened',JSON.stringify(theirs));
const undo=()=>{
written.forEach(remove);
for(const[key,text]of([['about',before],['screened',outcome]])){
if(text===null)remove(key);
else write(key,text);
}
};
return{added,same,lost,undo};
};
const whole=(take)=>{
remove(NEXT);
const was=trouble;
const{added,same,lost,undo}=take();
const fits=lost===0||trouble!=='full';
if(!fits){
undo();
trouble=was;
}
changed();
return{added:fits?added:0,same,fits};
};
const beside=(exported)=>{
let there=0,here=0,unlike=0;
const{sound}=gathered(kinds());
for(const kind of kinds()){
const theirs=(exported)[kind]||[],ours=sound[kind].map(({entry})=>entry);
const[onlyThere,onlyHere]=[beyond(theirs,ours),beyond(ours,theirs)];
there +=onlyThere.length;
here +=onlyHere.length;
const day=(of)=>`${of.on} ${of.movement}`,days=new Set(onlyHere.map(day));
if(kind==='tested')unlike +=onlyThere.filter((of)=>days.has(day(of))).length;
}
return{there,here,unlike};
};
const people=()=>{
const found=new Set(['']);
try{
const all=storage();
for(let i=0;all&&i<all.length;i +=1){
const other=/^@([0-9]+):/.exec((all.key(i)||'').startsWith(OWN)?String(all.key(i)).slice(OWN.length):'');
if(other)found.add(other[1]);
}
const here=/@([0-9]+):$/.exec(PREFIX);
if(here)found.add(here[1]);
return[...found].sort((a,b)=>Number(a)- Number(b)).map((who)=>{
const about=parsed(all?all.getItem(`${OWN}${who?`@${who}:`:''}about`):null);
return{who,name:about&&typeof about.name==='string'?about.name:'',isHere:PREFIX===`${OWN}${who?`@${who}:`:''}`};
});
}catch{
return[{who:'',name:'',isHere:true}];
}
};
const become=(who)=>{
const kept=storage();
if(!kept)return;
if(who)kept.setItem(`${OWN}who`,who);
else kept.removeItem(`${OWN}who`);
location.reload();
};
const welcome=(called)=>{
const kept=storage(),who=String(Math.max(0,...people().map(({who:of})=>Number(of)))+ 1);
if(!kept)return;
kept.setItem(`${OWN}@${who}:about`,JSON.stringify({name:called}));
become(who);
};
globalThis.rungbook=Object.assign(globalThis.rungbook||{},{
store:{
adults,
people,become,welcome,
entries,add,addAll,all,odd,beside,
merge:(exported,weightToo)=>whole(()=>takeIn(exported,weightToo)),
replace:(exported)=>whole(()=>{
const before=keys().map((key)=>([key,read(key)]));
before.forEach(([key])=>remove(key));
const taken=takeIn(exported,true);
return{...taken,undo:()=>{
taken.undo();
before.forEach(([key,text])=>{if(text!==null)write(key,text);});
}};
}),
remove:(key)=>{
remove(key);
remove(NEXT);
changed();
},
erase:()=>{
keys().forEach(remove);
changed();
},
get:(key)=>parsed(read(key)),
set:(key,value)=>{
write(key,JSON.stringify(value));
changed();
},
note:(key,value)=>{
if(key==='never')remove(NEXT);
return write(key,JSON.stringify(value));
},
trouble:()=>trouble,
isEmpty:()=>now().isEmpty,
keeps:()=>canKeep('?'),
facts:()=>now().facts.sound,
put:(key,value)=>{
remove(NEXT);
if(key==='screened'&&value===null)remove(key);
else if(key==='screened')write(key,JSON.stringify(value));
else write('about',JSON.stringify({...aboutMe(),[key]:value===null?undefined:value}));
changed();
},
onChange:(act)=>listeners.push(act),
},
});
const CARRIED='#visit=';
const canKeep=(text)=>{
try{
const kept=storage();
if(!kept)return false;
kept.setItem(PROBE,text);
kept.removeItem(PROBE);
return true;
}catch(error){
trouble=error instanceof DOMException&&error.name==='QuotaExceededError'?'full':'forbidden';
return false;
}
};
if(location.hash.startsWith(CARRIED)){
const{store,results}=globalThis.rungbook;
const carried=location.hash.slice(CARRIED.length);
history.replaceState(null,'',`${location.href.split('#')[0]}#`);
try{
if(!canKeep(carried)){
JSON.parse(decodeURIComponent(carried)).forEach(([key,value])=>{if(isCarried(String(key)))visit.set(String(key),String(value));});
seen=null;
results.check(store.all(),results.today());
}
}catch{
visit.clear();
seen=null;
}
}
const folder=(address)=>address.pathname.slice(0,address.pathname.lastIndexOf('/'));
document.addEventListener('click',(event)=>{
const link=event.target instanceof Element?(event.target.closest('a[href]')):null;
const isOurs=link&&link.protocol===location.protocol&&link.host===location.host&&folder(link)===folder(location);
const carries=[...visit].filter(([key])=>isCarried(key));
if(!link||!isOurs||carries.length===0||!link.pathname.endsWith('.html')||link.pathname===location.pathname)return;
const before=link.hash;
link.hash=CARRIED + encodeURIComponent(JSON.stringify(carries));
setTimeout(()=>{link.hash=before;});
},true);
const{page,words}=globalThis.rungbook;
const drawWho=()=>{
const head=document.querySelector('main h1'),all=people(),here=all.find(({isHere})=>isHere),old=document.getElementById('whose');
if(old)old.remove();
if(!head||!here||all.length<2)return;
head.after(page.make('p',{class:'hint',id:'whose'},words.say('home.for',{name:here.name||words.say('stand.no_name')}),' ',page.make('a',{href:'where-i-stand.html#people',text:words.say('stand.not_me')})));
};
if(page&&document.querySelector('#guided, #sets, #rests-list, #number-here, #questions, #pain-form')){
listeners.push(drawWho);
drawWho();
}
globalThis.addEventListener('storage',(event)=>{
if(event.key===null||(event.key.startsWith(PREFIX)&&event.key!==PROBE&&!event.key.startsWith(PREFIX + TOLD)))changed();
});
})();
