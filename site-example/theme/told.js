'use strict';self.rungbookIs+="told.js=31202f7c ";
'use strict';
'after page.js';
(()=>{
const{page,health}=globalThis.rungbook;
const SVG='http://www.w3.org/2000/svg';
const KIND='told:';
const SILENT=/^(?:told:.*|next|probe|lasting|install-said|ticks)$/;
const MOST=150000;
const DRAWN='a article b bdi button caption details div form h2 h3 h4 img input label li ol option p section select small span strong summary table tbody td th thead time tr ul svg path g rect circle line ellipse polyline polygon text tspan title desc'.split(' ');
const CONTROLS='input, select, button, form';
const[here]=String(location.pathname.split('/').pop()).split('.');
const storage=(of)=>{
try{
return of();
}catch{
return null;
}
};
const keyNow=()=>{
const now=new Date(),own=health.prefix,parts=[`${now.getFullYear()} ${now.getMonth()} ${now.getDate()}`];
for(const kept of[storage(()=>localStorage),storage(()=>sessionStorage)]){
for(const key of Object.keys(kept||{}).sort()){
const name=key.startsWith(own)?key.slice(own.length):'';
if(kept&&((name&&!name.startsWith('@')&&!SILENT.test(name))||key===`${health.own}units`||key===`${health.own}who`))parts.push(key,String(kept.getItem(key)));
}
}
for(const file of document.querySelectorAll('[data-src], script[defer]'))parts.push(file.getAttribute('data-src')||String(file.getAttribute('src')));
let[a,b]=[0x811c9dc5,0x9747b28c];
const text=parts.join('\n');
for(let i=0;i<text.length;i +=1){
const c=text.charCodeAt(i);
a=Math.imul(a ^ c,0x01000193);
b=Math.imul(b ^ c,0x5bd1e995)^(b>>>15);
}
return `${(a>>>0).toString(36)}-${(b>>>0).toString(36)}-${text.length.toString(36)}`;
};
const flat=(node)=>{
if(!(node instanceof Element))return node.textContent||'';
const set={};
for(const{name,value}of node.attributes)set[name]=value;
if(node instanceof HTMLInputElement)Object.assign(set,node.type==='checkbox'?(node.checked?{checked:''}:{}):{value:node.value});
if(node instanceof HTMLOptionElement&&node.selected)set.selected='';
return[node.localName,set,...[...node.childNodes].map(flat)];
};
const isSafe=(name,value)=>!/^on|^style$|^form/.test(name)&&(name==='href'?/^(?:[a-z0-9-]+[.]html)?(?:#[a-z0-9-]+)?$/.test(value):name!=='src'||/^figures[/][a-z0-9-]+[.]svg$/.test(value));
const grown=(of,isDrawing=false)=>{
if(!Array.isArray(of))return document.createTextNode(String(of));
const[name,set,...inside]=of,isSvg=isDrawing||name==='svg';
if(!DRAWN.includes(name))return document.createTextNode('');
const made=isSvg?document.createElementNS(SVG,name):document.createElement(name);
for(const[key,value]of Object.entries(set))if(isSafe(key,String(value)))made.setAttribute(key,String(value));
made.append(...inside.map((one)=>grown(one,isSvg)));
if(made.matches(CONTROLS))made.setAttribute('inert','');
return made;
};
const read=(name)=>{
const kept=storage(()=>localStorage);
try{
return kept&&JSON.parse(kept.getItem(health.prefix + name)||'null');
}catch{
return null;
}
};
const tick=(more)=>{
const ticks=read('ticks');
if(!more||!ticks||ticks.on!==more.on)return;
for(const[id,{ticks:all}]of Object.entries((ticks.of||{}))){
for(const[i,is]of Object.entries(all||[])){
const box=document.getElementById(`tick-${id}-${i}`);
if(box instanceof HTMLInputElement)box.checked=is===true;
}
}
};
let shown=null;
const undo=[];
const fill=(parts,isLate)=>{
for(const[id,part]of Object.entries(parts)){
const place=document.getElementById(id),{isHidden,of}=(part);
if(!place||((part).isLate===true)!==isLate)continue;
const{hidden}=place;
undo.push(()=>{place.hidden=hidden;if(of)place.replaceChildren();});
place.hidden=isHidden===true;
if(of)place.replaceChildren(...of.map((one)=>grown(one)));
}
};
const{dataset}=document.documentElement;
const show=()=>{
const record=location.hash.startsWith('#visit=')?null:read(KIND + here);
if(!record||record.key!==keyNow()||typeof record.parts!=='object')return;
shown={key:record.key,more:record.more};
fill(record.parts,false);
dataset.telling='true';
const end=()=>{
delete dataset.telling;
if(!shown)return;
fill(record.parts,true);
tick(record.more);
};
if(document.hidden)setTimeout(end);
else requestAnimationFrame(()=>setTimeout(end));
};
const holds=()=>shown!==null&&shown.key===keyNow();
const more=()=>(shown?shown.more:null);
const drop=()=>{
undo.splice(0).forEach((act)=>act());
shown=null;
};
const keep=(key,whole,frames,late,with_)=>{
const kept=storage(()=>localStorage);
if(!kept||key!==keyNow())return;
const of=(id,isWhole)=>{const place=page.byId(id);return[id,{isHidden:place.hidden,isLate:late.includes(id),...(isWhole?{of:[...place.childNodes].map(flat)}:{})}];};
const text=JSON.stringify({key,parts:Object.fromEntries([...whole.map((id)=>of(id,true)),...frames.map((id)=>of(id,false))]),more:with_}),name=health.prefix + KIND + here;
try{
if(text.length>MOST)kept.removeItem(name);
else if(kept.getItem(name)!==text)kept.setItem(name,text);
}catch{
}
};
show();
globalThis.rungbook.told={keyNow,holds,more,drop,keep};
})();
