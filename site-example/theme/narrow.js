'use strict';self.rungbookIs+="narrow.js=65976825 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"search.count_found":{"one":"{n} found","other":"{n} found"},"search.nothing_found":"Nothing found. Try fewer or other words."});
'use strict';
(()=>{
const{say}=globalThis.rungbook.words;
const form=document.getElementById('narrow');
if(!form)return;
const input=(form.querySelector('input'));
const said=(form.querySelector('[role="status"]'));
const plain=(text)=>text.normalize('NFD').replace(/\p{M}/gu,'').toLowerCase();
const items=([...document.querySelectorAll('[data-item]')]).map((item)=>({item,text:plain(item.textContent||'')}));
const MOST_OPEN=30;
const groups=([...document.querySelectorAll('[data-group]')]);
const opened=new Set();
let narrowed=false;
const draw=()=>{
const parts=plain(input.value).split(/\s+/).filter((part)=>part!=='');
if(parts.length>0&&!narrowed)groups.forEach((group)=>(group.hasAttribute('open')?opened.add(group):opened.delete(group)));
let found=0;
for(const{item,text}of items){
item.hidden=!parts.every((part)=>text.includes(part));
if(!item.hidden)found +=1;
}
for(const group of groups){
group.hidden=!group.querySelector('[data-item]:not([hidden])');
if(group instanceof HTMLDetailsElement&&(parts.length>0||narrowed))group.open=parts.length>0&&found<=MOST_OPEN?!group.hidden:opened.has(group);
}
narrowed=parts.length>0;
said.textContent=!narrowed?'':found===0?say('search.nothing_found'):say('search.count_found',{n:found});
};
input.addEventListener('input',draw);
form.addEventListener('submit',(event)=>event.preventDefault());
form.hidden=false;
if(input.value)draw();
})();
