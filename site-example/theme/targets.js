'use strict';self.rungbookIs+="targets.js=dac2bba5 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"target.added":"{amount} with {weight} added","target.at_most":"at most {amount}","target.body_weight":{"one":"{n} % of body weight","other":"{n} % of body weight"},"target.centimetres":{"one":"{n} cm","other":"{n} cm"},"target.degrees":{"one":"{n}°","other":"{n}°"},"target.done":"done","target.each_rep":"{amount}, {seconds} each","target.each_side":"{amount}, each side","target.help":"{amount} with {weight} of help","target.inches":{"one":"{n} in","other":"{n} in"},"target.kilograms":{"one":"{n} kg","other":"{n} kg"},"target.minutes":{"one":"{n} minute","other":"{n} minutes"},"target.not_done":"not done","target.pounds":{"one":"{n} lb","other":"{n} lb"},"target.reps":{"one":"{n} rep","other":"{n} reps"},"target.seconds":{"one":"{n} second","other":"{n} seconds"},"target.sets":{"one":"{n} set of {amount}","other":"{n} sets of {amount}"},"target.tries":"{amount}, in {hits} of {of} tries"});
'use strict';
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
