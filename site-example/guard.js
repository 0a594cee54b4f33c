'use strict';self.rungbookIs+="guard.js=9bf00dff ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"guard.gone":"This page does not show every caution mark. Treat every movement on it as one with a warning, and read the cautions first.","guard.mixed":"Parts of this page are of an older version. Load it again."});
'use strict';
(()=>{
const words=globalThis.rungbookWords||{};
const say=(key)=>String(words[key]);
const script=document.currentScript;
const expected=script?Number(script.dataset.marks):0;
const cautioned=new Set();
const written=[];
const isSeen=(element)=>{
if(!element.checkVisibility({opacityProperty:true,visibilityProperty:true,contentVisibilityAuto:true}))return false;
const{left,right,top,bottom,width,height}=element.getBoundingClientRect();
if(width<4||height<4||right<0||left>Math.max(innerWidth,document.documentElement.scrollWidth)||bottom + scrollY<0)return false;
const x=(left + right)/ 2,y=(top + bottom)/ 2;
if(x<0||y<0||x>innerWidth||y>innerHeight)return true;
const over=document.elementFromPoint(x,y);
for(let at=over;at;at=at.parentElement)if(/sticky|fixed/.test(getComputedStyle(at).position))return innerHeight>2*at.clientHeight;
return!over||element.contains(over)||over.contains(element)||!element.parentElement||!element.parentElement.contains(over);
};
const isFolded=(element)=>Boolean(element.closest('details:not([open]), dialog:not([open]), svg'));
const isGone=()=>written.some(({mark,around})=>around.isConnected&&!isFolded(around)&&!isFolded(mark)&&isSeen(around)&&!(mark.isConnected&&isSeen(mark)))
||[...document.querySelectorAll('[data-movement]')].some((element)=>cautioned.has(element.getAttribute('data-movement'))
&&!element.querySelector('[data-caution]')&&!element.closest('svg')&&isSeen(element));
const tell=(text,name,...more)=>{
if(document.getElementById(name))return;
const note=document.createElement('p');
note.className='guard-gone';
note.id=name;
note.setAttribute('role','alert');
note.append(text,' ',...more);
document.body.prepend(note);
};
const look=()=>{
if(!isGone())return;
const link=document.createElement('a');
link.href=new URL('cautions.html',script?(script).src:location.href).href;
link.textContent='cautions.html';
tell(say('guard.gone'),'guard-gone',link);
};
const begin=()=>{
const marks=document.querySelectorAll('[data-caution]');
for(const mark of marks){
const about=mark.closest('[data-movement], [data-skill], [data-family]');
if(about&&about.hasAttribute('data-movement'))cautioned.add(about.getAttribute('data-movement'));
if(mark.parentElement&&!mark.closest('svg'))written.push({mark,around:mark.parentElement});
}
if(marks.length<expected)tell(say('guard.gone'),'guard-gone');
};
const end=()=>{
const is=String((globalThis).rungbookIs);
for(const{src}of document.scripts){
const named=/([^/]+[.]js)[?]v=([0-9a-f]+)$/.exec(src);
if(named&&named[1]!=='tables.js'&&!is.includes(`${named[1]}=${named[2]}`)&&!document.getElementById('mixed'))tell(say('guard.mixed'),'mixed');
}
look();
let waits=false;
new MutationObserver(()=>{
if(waits)return;
waits=true;
setTimeout(()=>{waits=false;look();},500);
}).observe(document.documentElement,{childList:true,subtree:true,attributes:true,attributeFilter:['class','style','hidden','data-caution']});
};
begin();
addEventListener('load',()=>setTimeout(end,0));
})();
