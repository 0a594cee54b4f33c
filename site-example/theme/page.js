'use strict';self.rungbookIs+="page.js=9fc26a1a ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"list.separator":", ","number.not_loaded":"This device does not have what is needed for it. Open this page once with a network.","part.name_with_signal":"{name} [{signal}]"});
'use strict';
(()=>{
const root=globalThis.document?document.documentElement:null;
const language=root?root.lang||'en':globalThis.rungbookLanguage||'en';
const plural=new Intl.PluralRules(language);
const numbers=new Intl.NumberFormat(language,({useGrouping:'min2',maximumFractionDigits:6}));
const number=(n)=>numbers.format(n);
const form=(key,values)=>{
const entry=(globalThis.rungbookWords||{})[key];
if(entry===undefined)return key;
return typeof entry==='string'?entry:entry[plural.select(Number(values.n))]||entry.other;
};
const say=(key,values={})=>form(key,values).replace(/\{([a-z_]+)\}/g,(hole,name)=>{
const value=values[name];
return value===undefined?hole:typeof value==='number'?number(value):value;
});
const sayNodes=(key,values)=>form(key,values).split(/(\{[a-z_]+\})/).flatMap((part)=>{
const value=/^\{/.test(part)?values[part.slice(1,-1)]:part;
return value===undefined?part:typeof value==='number'?number(value):value;
}).filter((part)=>part!==''&&part!==null);
globalThis.rungbook=Object.assign(globalThis.rungbook||{},{words:{say,sayNodes,number}});
if(!root)return;
const UNITS=['metric','imperial'];
const UNITS_KEY=`rungbook:${root.dataset.site}:units`;
const ofSchool=root.dataset.units||'metric';
const ofOther=UNITS[1 - UNITS.indexOf(ofSchool)];
let chosen=ofSchool;
try{
const kept=JSON.parse(localStorage.getItem(UNITS_KEY)||'null');
if(UNITS.includes(kept))chosen=kept;
}catch{
}
const onUnits=[];
const drawUnits=()=>{
const differing=(document.querySelectorAll('[data-other]'));
for(const element of differing){
const{dataset}=element;
if(dataset.own===undefined&&chosen===ofSchool)continue;
if(dataset.own===undefined)dataset.own=element.textContent||'';
const text=chosen===ofSchool?dataset.own:dataset.other||'';
if(element.textContent!==text)element.textContent=text;
}
const place=document.getElementById('units');
if(!place)return;
if(differing.length)place.hidden=false;
for(const button of place.querySelectorAll('button')){
const pressed=String(button.value===chosen);
if(button.getAttribute('aria-pressed')!==pressed)button.setAttribute('aria-pressed',pressed);
}
};
const choose=(units)=>{
chosen=units;
try{
localStorage.setItem(UNITS_KEY,JSON.stringify(units));
}catch{
}
drawUnits();
onUnits.forEach((act)=>act());
};
for(const button of document.querySelectorAll('#units button'))button.addEventListener('click',()=>choose((button).value));
drawUnits();
let waiting=false;
new MutationObserver(()=>{
if(waiting)return;
waiting=true;
queueMicrotask(()=>{waiting=false;drawUnits();});
}).observe(document.body,{childList:true,subtree:true});
const units={
ofSchool,ofOther,current:()=>chosen,
onChange:(act)=>onUnits.push(act),
};
const make=(name,set={},...inside)=>{
const element=document.createElement(name);
for(const[key,value]of Object.entries(set)){
if(value===null||value===undefined||value===false)continue;
if(key==='on')Object.entries((value)).forEach(([event,act])=>element.addEventListener(event,act));
else if(key==='text')element.textContent=String(value);
else element.setAttribute(key,value===true?'':String(value));
}
element.append(...inside.filter((part)=>part!==null).map((part)=>(part)));
return element;
};
const TIE='\u00a0';
const markOf=(tables,m)=>{
const mark=tables.marks[tables.mark[m]];
return mark?make('a',{class:`mark mark-${mark.signal}`,'data-caution':mark.signal,href:mark.href,title:mark.says},
make('span',{class:'mark-word',text:mark.word}),make('span',{class:'aside',text:`: ${mark.says}`})):null;
};
const marked=(tables,m)=>{
const mark=tables.marks[tables.mark[m]];
return mark?say('part.name_with_signal',{name:tables.names[m],signal:mark.word}):tables.names[m];
};
const named=(tables,m)=>{
const mark=markOf(tables,m);
return make('span',{class:'named','data-movement':tables.ids[m]},
make('a',{href:`${tables.ids[m]}.html`,text:tables.names[m]}),mark?TIE:null,mark);
};
const namedSkill=(tables,skill,goal)=>make('span',{class:'named','data-skill':skill.id},
make('a',{href:`${skill.id}.html`,text:skill.plain}),TIE,markOf(tables,goal));
const namedList=(tables,list)=>list.flatMap((m,i)=>[i?say('list.separator'):null,named(tables,m)]);
const byId=(id)=>{
const found=document.getElementById(id);
if(!found)throw new Error(`the page has no element ${id}`);
return found;
};
const download=(name,content,type)=>{
const url=URL.createObjectURL(new Blob([content],{type}));
const link=make('a',{href:url,download:name,hidden:true});
document.body.append(link);
link.click();
link.remove();
setTimeout(()=>URL.revokeObjectURL(url),60000);
};
const ask=(title,inside,choices)=>new Promise((resolve)=>{
const head=make('h2',{id:'ask-head',tabindex:'-1',autofocus:true,},...[title].flat());
const buttons=choices.map(([value,says],i)=>make('button',{value,type:'submit',class:value===''||(i>0&&choices.every(([any])=>any!==''))?'quiet':null,text:says}));
const dialog=(make('dialog',{'aria-labelledby':'ask-head'},
make('form',{method:'dialog'},head,...inside,make('p',{class:'acts'},...buttons))));
dialog.addEventListener('close',()=>{
dialog.remove();
resolve(dialog.returnValue||null);
});
document.body.append(dialog);
dialog.showModal();
});
const blame=(input,fault,why)=>{
fault.textContent=why;
(input.closest('form, article')||document).querySelectorAll('[aria-invalid]').forEach((field)=>field.removeAttribute('aria-invalid'));
if(why==='')return;
input.setAttribute('aria-invalid','true');
input.setAttribute('aria-describedby',fault.id);
(input).focus();
};
const hold=(draw,place)=>{
const was=document.activeElement;
draw();
if(!was||was===document.body||document.activeElement!==document.body)return;
const to=(was.id&&document.getElementById(was.id))||document.getElementById(place);
if(to)to.focus({preventScroll:true});
const head=document.querySelector('h1');
if(document.activeElement!==document.body||!head)return;
head.tabIndex=-1;
head.focus({preventScroll:true});
};
let steps=[];
const busy=document.querySelector('main');
const takeStep=()=>{
const first=steps.shift();
if(busy&&!steps.length)busy.removeAttribute('aria-busy');
if(first)hold(first.step,first.place);
};
const takeSteps=()=>{
try{
takeStep();
}finally{
if(steps.length)setTimeout(takeSteps);
}
};
const later=(all,place)=>{
const isUnderWay=steps.length>0;
steps=[...steps.filter((one)=>one.place!==place),...all.map((step)=>({step,place}))];
if(isUnderWay)return;
if(busy)busy.setAttribute('aria-busy','true');
if(document.hidden)setTimeout(takeSteps);
else requestAnimationFrame(()=>setTimeout(takeSteps));
};
addEventListener('pagehide',()=>{while(steps.length)takeStep();});
const go=(href)=>{
const link=make('a',{href,hidden:true});
document.body.append(link);
link.click();
};
let policy=null;
const trusted=(url)=>{
const tt=(globalThis).trustedTypes;
if(tt&&!policy)policy=tt.createPolicy('rungbook-worker',{createScriptURL:(of)=>of});
return policy?policy.createScriptURL(url):url;
};
const loads=new Map();
const loaded=(src)=>{
const known=loads.get(src);
if(known)return known;
const waits=new Promise((resolve,reject)=>{
const on={load:resolve,error:()=>{loads.delete(src);reject(new Error(src));}};
const script=(make('script',{on}));
if(src.includes('.js?'))script.src=trusted(src);
document.head.append(script.src?script:make('link',{rel:'stylesheet',href:src,on}));
});
loads.set(src,waits);
return waits;
};
const isKnown=()=>Boolean(document.documentElement.dataset.known||document.documentElement.dataset.heeds)||location.hash.startsWith('#visit=');
const isTold=()=>Boolean(globalThis.rungbook.told&&globalThis.rungbook.told.holds());
const load=async(id)=>{
const parts=([...document.querySelectorAll(`#${id} [data-src]`)]),known=isKnown();
const plans=id!=='mine'||(known&&!isTold()),all=parts.filter((part)=>plans||!part.closest('#plan-here')).map(({dataset:{src=''}})=>src)
.filter((src)=>/^(?:theme|data)[/][a-z-]+[.](?:js|css)[?]v=[0-9a-f]+$/.test(src)&&!document.querySelector(`script[defer][src="${src}"], link[rel=stylesheet][href="${src}"]`));
for(const href of all.slice(1).filter((src)=>src.includes('.js?')&&!loads.has(src)))document.head.append(make('link',{rel:'preload',as:'script',href}));
for(const src of all)await loaded(src);
};
const bring=async(id)=>{
if(busy)busy.setAttribute('aria-busy','true');
try{
await load(id);
}finally{
if(busy&&!steps.length)busy.removeAttribute('aria-busy');
}
};
const forWork=[];
let working=null;
const work=()=>{
if(working)return working;
working=bring('mine').then(()=>{forWork.splice(0).forEach((act)=>act());});
working.catch(()=>{working=null;});
return working;
};
const onWork=(act)=>{if(globalThis.rungbook.states)act();else forWork.push(act);};
const begin=()=>{
const mine=document.getElementById('mine'),button=document.querySelector('#number-form button');
if(!mine)return;
const start=()=>{work().catch(()=>{});};
const whenKnown=()=>{if(isKnown())start();};
const oncePainted=()=>{
if(busy)busy.setAttribute('aria-busy','true');
if(document.hidden)setTimeout(start);else requestAnimationFrame(()=>setTimeout(start));
};
if(isKnown())document.addEventListener('DOMContentLoaded',()=>(isTold()?oncePainted:start)());
else if(mine.classList.contains('for-all'))oncePainted();
else if(button instanceof HTMLElement){
byId('number-here').hidden=false;
const first=()=>{if(!globalThis.rungbook.states)work().then(()=>{button.removeEventListener('click',first);button.click();},()=>{byId('number-news').textContent=say('number.not_loaded');});};
button.addEventListener('click',first);
}
addEventListener('storage',whenKnown);
addEventListener('pageshow',whenKnown);
};
const keepPages=async(pages,whole=false)=>{
if(!document.documentElement.dataset.worker||!('serviceWorker' in navigator)||!location.protocol.startsWith('http'))return;
const{active}=await navigator.serviceWorker.ready;
if(active)active.postMessage({keep:pages,whole});
};
globalThis.rungbook=Object.assign(globalThis.rungbook||{},{page:{make,named,namedSkill,namedList,marked,byId,download,ask,blame,hold,later,go,load,bring,onWork,keepPages,units}});
begin();
const worker=document.documentElement.dataset.worker;
if(worker&&location.protocol.startsWith('http'))document.head.append(make('link',{rel:'manifest',href:'manifest.webmanifest'}));
if(!CSS.supports('selector(::details-content)'))addEventListener('beforeprint',()=>document.querySelectorAll('details.unroll').forEach((part)=>{(part).open=true;}));
if(worker&&'serviceWorker' in navigator&&location.protocol.startsWith('http')){
const had=Boolean(navigator.serviceWorker.controller);
navigator.serviceWorker.register(trusted(worker),{updateViaCache:'none'}).then(()=>{
const{skill}=document.body.dataset;
return skill?keepPages([`${skill}.html`,`self-test-${skill}.html`]):null;
}).catch(()=>{});
navigator.serviceWorker.addEventListener('controllerchange',()=>{if(had)document.body.dataset.newer='true';});
}
})();
