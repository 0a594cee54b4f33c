'use strict';self.rungbookIs+="store.js=010d234b ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"home.for":"For {name}.","stand.no_name":"without a name","stand.not_me":"That is not me"});
'use strict';
(()=>{
const{own:OWN,prefix:PREFIX}=globalThis.rungbook.health;
const PROBE=`${PREFIX}probe`;
const NEVER_CARRIED=['screened','cleared','fit'];
const isCarried=(key)=>!NEVER_CARRIED.includes(key.split(':')[0]);
const kinds=()=>globalThis.rungbook.results.KINDS;
const visit=new Map();
const gone=new Set();
let trouble='';
const listeners=[];
const changed=()=>listeners.forEach((act)=>act());
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
gone.delete(key);
try{
const kept=storage();
if(!kept)throw new Error('forbidden');
kept.setItem(PREFIX + key,value);
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
const entries=(kind)=>gathered([kind]).sound[kind];
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
const NEXT='next';
const askToLast=(kind)=>{
const{storage:lasting}=globalThis.navigator||{};
if(!['tested','trained'].includes(kind)||!lasting||!lasting.persist||read('lasting'))return;
write('lasting','true');
lasting.persist().catch(()=>{});
};
const addAll=(list)=>{
const made=list.map(([kind,entry])=>{
const key=`${kind}:${name()}`;
write(key,JSON.stringify(entry));
askToLast(kind);
return key;
});
remove(NEXT);
changed();
return made;
};
const add=(kind,entry)=>addAll([[kind,entry]])[0];
const all=()=>{
const{sound}=gathered(kinds());
const out={results:1,...facts().sound};
for(const kind of kinds()){
const bare=sound[kind].map(({entry})=>entry);
if(bare.length||['tested','trained','paused'].includes(kind))out[kind]=bare;
}
return out;
};
const odd=()=>[...facts().odd,...gathered(kinds()).odd];
const takeIn=(exported,weightToo)=>{
let added=0,same=0,lost=0;
const written=[];
const{sound}=gathered(kinds());
for(const kind of kinds()){
const known=new Set(sound[kind].map(({entry})=>JSON.stringify(entry)));
for(const entry of exported[kind]||[]){
const text=JSON.stringify(entry);
if(known.has(text)){
same +=1;
continue;
}
known.add(text);
const key=`${kind}:${name()}`;
written.push(key);
if(!write(key,text))lost +=1;
checked.set(key,{text,of:{sound:entry,why:''}});
added +=1;
}
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
const written=(list)=>new Map(list.map((entry)=>[JSON.stringify(entry),entry]));
let there=0,here=0,unlike=0;
const{sound}=gathered(kinds());
for(const kind of kinds()){
const theirs=written((exported)[kind]||[]),ours=written(sound[kind].map(({entry})=>entry));
const only=(of,other)=>[...of].filter(([text])=>!other.has(text)).map(([,entry])=>entry);
const[onlyThere,onlyHere]=[only(theirs,ours),only(ours,theirs)];
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
note:(key,value)=>write(key,JSON.stringify(value)),
trouble:()=>trouble,
isEmpty:()=>!keys().some((key)=>/^(tested|trained|sessions|paused|pain|remarks):/.test(key)),
keeps:()=>canKeep('?'),
facts:()=>facts().sound,
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
results.check(store.all(),results.today());
}
}catch{
visit.clear();
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
if(event.key===null||(event.key.startsWith(PREFIX)&&event.key!==PROBE))changed();
});
})();
