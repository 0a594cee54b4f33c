'use strict';self.rungbookIs+="map.js=db268a18 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"map.and_more":{"one":", and {n} more","other":", and {n} more"},"map.highest":"The highest that is yours, and two rungs up and down:","map.nothing_owned":"You own nothing here yet. The first rungs:","map.you_are_here":"You are here, {stage}","stage.ground":"first rung","stage.rungs_up":{"one":"{n} rung up","other":"{n} rungs up"}});
'use strict';
(()=>{
const{page}=globalThis.rungbook;
const{make,namedList}=page;
const{say}=globalThis.rungbook.words;
const box=(document.getElementById('map-box'));
const here=document.getElementById('map-here');
if(!box)return;
const SVG='http://www.w3.org/2000/svg';
const MOST=6;
const wide=matchMedia('(min-width: 60rem)');
if(wide.matches)box.open=true;
wide.addEventListener('change',()=>{if(wide.matches)box.open=true;});
addEventListener('beforeprint',()=>{box.open=true;});
const picture=(box.querySelector('.map'));
let you='';
const boxOf=()=>(picture?picture.querySelector(you?`.map-movement[data-movement="${you}"]`:'.map-movement'):null);
const centre=()=>{
const to=boxOf(),view=(box.querySelector('.map-scroll'));
if(!to||!view)return;
const inner=to.getBoundingClientRect(),outer=view.getBoundingClientRect();
view.scrollBy(inner.left + inner.width / 2 - outer.left - outer.width / 2,inner.top + inner.height / 2 - outer.top - outer.height / 2);
};
box.addEventListener('toggle',()=>{if(box.open)centre();});
page.onWork(()=>{
const{readiness,store,states}=globalThis.rungbook;
const{model,mine,mark}=states;
const bar=(className,x,y,width)=>{
const rect=document.createElementNS(SVG,'rect');
for(const[key,value]of Object.entries({class:className,x,y,width,height:8}))rect.setAttribute(key,String(value));
return rect;
};
const state=(stand,slot)=>{
const link=(slot.parentNode),group=(link.parentNode);
const m=model?model.numbers.get(slot.dataset.stateMap||''):undefined;
const word=stand&&m!==undefined?readiness.STATES[stand.found.states[m]]:'';
link.querySelectorAll('.map-shape, .map-shape-half').forEach((old)=>old.remove());
group.setAttribute('class',(group.getAttribute('class')||'').replace(/ map-state-\S+/,'')+(word?` map-state-${word.replace(' ','-')}`:''));
slot.textContent=word&&` ${states.stateWord(readiness.STATES.indexOf(word))}`;
if(!word)return;
const at=Number(slot.getAttribute('x'));
const fromRight=document.documentElement.dir==='rtl';
const x=fromRight?at + 5:at - 21,y=Number(slot.getAttribute('y'))- 8;
slot.before(bar('map-shape',x,y,16),...(word==='almost'?[bar('map-shape-half',fromRight?x + 8:x,y,8)]:[]));
};
const mentions=(ready,m)=>{
const tree=ready.tables.needs[m],out=[];
for(let i=0;i<tree.length;i +=1){
if(tree[i]>=0)out.push(ready.of(tree[i]));
else i +=tree[i]===-3?2:1;
}
return out;
};
const whereYouAre=(stand)=>{
you='';
if(!here)return;
here.hidden=true;
const skill=model&&model.tables.skills.find(({id})=>id===document.body.dataset.skill);
if(!stand||!model||!skill)return;
const{tables}=model;
const owned=skill.members.filter((m)=>stand.found.states[m]===readiness.OWNED);
const at=owned.reduce((best,m)=>(best<0||tables.stage[m]>tables.stage[best]?m:best),-1);
you=at<0?'':tables.ids[at];
const level=at<0?-1:tables.stage[at];
const of=(stage)=>{
const all=skill.members.filter((m)=>tables.stage[m]===stage);
const tied=all.filter((m)=>at>=0&&(stage<level?below.has(m):climb(m).has(at)));
return tied.length?tied:all;
};
const kept=new Map();
const climb=(m)=>{
const done=kept.get(m);
if(done)return done;
const found=new Set(),open=[m];
for(let next=open.pop();next!==undefined;next=open.pop()){
for(const need of mentions(model,next))if(!found.has(need))open.push(need),found.add(need);
}
kept.set(m,found);
return found;
};
const below=at<0?new Set():climb(at);
const words=(stage)=>(stage===0?say('stage.ground'):say('stage.rungs_up',{n:stage}));
const lines=[2,1,0,-1,-2].map((step)=>level + step).filter((stage)=>stage>=0).map((stage)=>{
const list=stage===level?[at]:of(stage);
if(!list.length)return null;
const shown=list.slice(0,MOST);
return make('li',{class:stage===level?'map-you':null},make('span',{class:'map-level',text:stage===level?say('map.you_are_here',{stage:words(stage)}):words(stage)}),
make('ul',{class:'rise'},...shown.map((m)=>make('li',{'data-movement':tables.ids[m]},states.figure(m),make('span',{},...namedList(tables,[m]),' ',mark(stand.found.states[m]))))),list.length>MOST?say('map.and_more',{n:list.length - MOST}):'');
});
here.replaceChildren(make('p',{text:at<0?say('map.nothing_owned'):say('map.highest')}),make('ol',{},...lines));
here.hidden=false;
};
const way=(stand)=>{
if(!picture||!model)return;
picture.classList.toggle('map-mine',stand!==null);
for(const line of(picture.querySelectorAll('[data-to]'))){
const to=(line.dataset.to||'').split(' ').map((id)=>model.numbers.get(id));
line.classList.toggle('map-lit',stand!==null&&to.some((m)=>m!==undefined&&stand.found.states[m]!==readiness.OWNED));
}
};
const draw=()=>{
const stand=mine();
document.querySelectorAll('[data-state-map]').forEach((slot)=>state(stand,(slot)));
way(stand);
whereYouAre(stand);
document.querySelectorAll('.map-here-box').forEach((old)=>old.classList.remove('map-here-box'));
const to=you?boxOf():null;
if(to)to.classList.add('map-here-box');
if(box.open)centre();
};
store.onChange(draw);
draw();
});
})();
