'use strict';self.rungbookIs+="search.js=807b183a ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"search.also_before":"beginner, beginning, first time, health, pregnant, blood pressure, doctor, clinician, age","search.also_hurts":"pain, painful, sore, ache, hurt, injured, injury; neck, shoulder, elbow, wrist, fingers, back, hip, hamstring, knee, ankle, foot","search.also_people":"coach, class, clients, group, athletes","search.also_stand":"my numbers, results, copy, send, share, my coach, backup, erase, delete, remove, progress, limiter","search.also_test":"beginner, begin, start, first session, level, questions","search.also_today":"session, plan, training, workout","search.caution_class":"caution class","search.count_found":{"one":"{n} found","other":"{n} found"},"search.family":"family","search.nothing_found":"Nothing found. Try fewer or other words.","search.other_names":"pistol = single-leg squat; pistol squat = single-leg squat; press-up = push-up; chin-up = pull-up; chin = pull-up; inverted row = row; bodyweight row = row; sit-up = core; deadlift = hinge; toes = leg raise; lat = pull-up; abs = core; biceps = pull-up; triceps = dip; chest = push-up; quads = squat; glutes = hinge; calf = calf raise; shoulders = shoulder; wrists = wrist; knees = knee; hamstrings = hamstring; hips = hip; ankles = ankle","search.skill":"skill","search.to_read":"to read","shared.before_you_start":"Before you start","shared.if_it_hurts":"If it hurts","shared.my_people":"My people","shared.self_test":"Self-test","shared.today":"Today","shared.where_i_stand":"Where I stand","signal.caution":"caution","signal.notice":"notice","signal.warning":"warning"});
'use strict';
(()=>{
const{make,byId}=globalThis.rungbook.page;
const{say}=globalThis.rungbook.words;
const own=(id,name,also)=>['page',id,name,'','','',[also],''];
const entries=[...(globalThis.rungbookSearch||[]),own('if-it-hurts',say('shared.if_it_hurts'),say('search.also_hurts')),own('before-you-start',say('shared.before_you_start'),say('search.also_before')),
own('self-test',say('shared.self_test'),say('search.also_test')),own('my-people',say('shared.my_people'),say('search.also_people')),
own('today',say('shared.today'),say('search.also_today')),own('where-i-stand',say('shared.where_i_stand'),say('search.also_stand'))];
const MOST=40;
const NAME=9,ALSO=7,TEXT=2;
const wordsOf=(text)=>text.normalize('NFD').replace(/\p{M}/gu,'').toLowerCase().match(/[\p{L}\p{N}]+/gu)||[];
const index=new Map();
entries.forEach((entry,i)=>{
const put=(text,weight)=>{
const words=wordsOf(text);
const joined=weight===TEXT?[]:words.slice(1).map((word,at)=>words[at]+ word);
for(const word of[...words,...joined]){
const of=index.get(word)||new Map();
of.set(i,Math.max(of.get(i)||0,weight));
index.set(word,of);
}
};
put(entry[2],NAME);
entry[6].forEach((also)=>put(also,ALSO));
put(entry[7],TEXT);
});
const vocabulary=[...index.keys()];
const distance=(a,b,most)=>{
if(Math.abs(a.length - b.length)>most)return most + 1;
let before=([]),last=Array.from({length:b.length + 1},(_,i)=>i);
for(let i=1;i<=a.length;i +=1){
const row=[i];
let least=i;
for(let j=1;j<=b.length;j +=1){
const same=a[i - 1]===b[j - 1]?0:1;
let best=Math.min(last[j]+ 1,row[j - 1]+ 1,last[j - 1]+ same);
if(i>1&&j>1&&a[i - 1]===b[j - 2]&&a[i - 2]===b[j - 1])best=Math.min(best,before[j - 2]+ 1);
row.push(best);
least=Math.min(least,best);
}
if(least>most)return most + 1;
before=last;
last=row;
}
return last[b.length];
};
const answers=(typed,word)=>{
if(word===typed)return 6;
if(word.startsWith(typed))return 5;
const most=typed.length>=7?2:typed.length>=4?1:0;
if(most===0)return 0;
const near=distance(typed,word,most);
if(near<=most)return 4 - near;
return word.length>typed.length&&distance(typed,word.slice(0,typed.length),most)<=most?1:0;
};
const OTHER=say('search.other_names').split(';').map((pair)=>pair.split('=').map(wordsOf)).filter((pair)=>pair.length===2&&pair[0].length&&pair[1].length);
const otherwise=(typed)=>OTHER.flatMap(([name,here])=>{
const at=typed.findIndex((_,i)=>name.every((word,j)=>typed[i + j]===word||(j===name.length - 1&&typed[i + j]===`${word}s`)));
return at<0?[]:[[...typed.slice(0,at),...here,...typed.slice(at + name.length)]];
});
const answer=(parts)=>{
let found=null;
for(const part of parts){
const here=new Map();
for(const word of vocabulary){
const worth=answers(part,word);
if(worth===0)continue;
for(const[i,weight]of(index.get(word)))here.set(i,Math.max(here.get(i)||0,worth*weight));
}
const both=new Map();
for(const[i,worth]of here){
const sofar=found?found.get(i):0;
if(sofar!==undefined)both.set(i,sofar + worth);
}
found=both;
}
return found||new Map();
};
const find=(typed)=>{
const words=wordsOf(typed);
const all=new Map();
for(const of of[words,...otherwise(words)])for(const[i,worth]of answer(of))all.set(i,Math.max(all.get(i)||0,worth));
return[...all].sort((a,b)=>b[1]- a[1]||entries[a[0]][2].length - entries[b[0]][2].length||a[0]- b[0]).map(([i])=>i);
};
globalThis.rungbook.search={find};
const input=(byId('find'));
const list=byId('found'),said=byId('said');
const KINDS={movement:'',family:say('search.family'),skill:say('search.skill'),page:say('search.to_read'),caution:say('search.caution_class')};
const draw=()=>{
const typed=input.value.trim();
const found=typed===''?[]:find(typed);
said.textContent=typed===''?'':found.length===0?say('search.nothing_found'):say('search.count_found',{n:found.length});
list.replaceChildren(...found.slice(0,MOST).map((i)=>{
const[kind,id,name,signal,says,href]=entries[i];
const link=make('a',{href:kind==='caution'?id:`${id}.html`,text:name});
const mark=signal?make('a',{class:`mark mark-${signal}`,'data-caution':signal,href,title:says},make('span',{class:'mark-word',text:say(`signal.${signal}`)}),make('span',{class:'aside',text:`: ${says}`})):null;
const what=KINDS[(kind)];
return make('li',{},make('span',['movement','skill','family'].includes(kind)?{class:'named',[`data-${kind}`]:id}:{},link,mark?'\u00a0':null,mark),what?make('span',{class:'hint',text:` ${what}`}):null);
}));
};
byId('search').hidden=false;
input.addEventListener('input',draw);
byId('search').addEventListener('submit',(event)=>event.preventDefault());
draw();
})();
