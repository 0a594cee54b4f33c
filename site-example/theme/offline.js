'use strict';self.rungbookIs+="offline.js=67b55c2f ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"offline.home":"Home","offline.if_it_hurts":"If it hurts","offline.kept_from":"The network did not answer. This is the copy of {day}: a caution may have changed since.","offline.not_kept":"This page is not on this device","offline.open_it_once":"There is no network now, and this page was not opened here before. With a network, open it once and it stays."});
'use strict';
(()=>{
const{site,version,shell,language}=globalThis.rungbookOffline;
const OWN=`rungbook-${site}-`;
const CACHE=OWN + version;
const PATIENCE=3000;
const WHEN='x-kept';
const scope=(globalThis);
const here=(path)=>new URL(path,scope.registration.scope).href;
const isVersioned=(url)=>/(guard[.]|theme[/]|data[/])[^/?]+[?]v=[0-9a-f]+$/.test(url);
const isFigure=(url)=>/figures[/][a-z0-9-]+[.]svg$/.test(url);
const say=(key,values={})=>String((globalThis.rungbookWords||{})[key]).replace(/\{([a-z_]+)\}/g,(hole,name)=>values[name]||hole)
.replace(/[&<>"']/g,(letter)=>`&#${letter.charCodeAt(0)};`);
const addressOf=(url)=>{
const path=url.split('#')[0].split('?')[0].slice(here('').length).replace(/[/]+$/,'');
if(path==='')return here('index.html');
return here(path.slice(path.lastIndexOf('/')+ 1).includes('.')?path:`${path}.html`);
};
const keptAt=async(cache,url)=>await cache.match(url)||await caches.match(url);
const fetched=async(url)=>{
const response=await fetch(url,{cache:'no-cache'});
if(!response.ok)throw new Error(`${url}: ${response.status}`);
return response;
};
const isNamed=async(url,response)=>{
const named=/([^/]+[.](?:js|css))[?]v=([0-9a-f]+)$/.exec(url);
if(!named)return true;
const text=await response.clone().text();
return text.includes(`${named[1]}=${named[2]}`)||text.includes(`"version":"${named[2]}"`);
};
const asset=async(url)=>{
const response=await fetch(url);
if(response.ok&&await isNamed(url,response))return[response,true];
const again=await fetch(url,{cache:'reload'});
return[again,again.ok&&await isNamed(url,again)];
};
const keep=async(cache,address,page)=>{
const html=await page.text();
const named=[...html.matchAll(/(?:src|href)="([^"]+[?]v=[0-9a-f]+)"/g)].map((found)=>new URL(found[1],address).href);
for(const url of new Set(named)){
if(await cache.match(url))continue;
const[response,isRight]=await asset(url);
if(!isRight)throw new Error(`${url}: of another version`);
await cache.put(url,response);
}
const headers={'content-type':'text/html; charset=utf-8',[WHEN]:String(Date.now())};
await cache.put(address,new Response(html,{headers}));
};
const keepFigure=async(cache,url)=>{
const response=await fetch(url,{cache:'no-cache'});
if(response.ok)await cache.put(url,response.clone());
return response;
};
const keepFigures=async(cache,address)=>{
const page=await cache.match(address),html=page?await page.text():'';
for(const[,path]of html.matchAll(/src="(figures[/][a-z0-9-]+[.]svg)"/g)){
if(!await cache.match(here(path)))await keepFigure(cache,here(path)).catch(()=>{});
}
};
const install=async()=>{
const cache=await caches.open(CACHE);
for(const path of shell){
const address=here(path);
await keep(cache,address,await fetched(address));
}
await keepFigures(cache,here('index.html'));
for(const name of(await caches.keys()).filter((other)=>other.startsWith(OWN)&&other!==CACHE)){
for(const{url}of await(await caches.open(name)).keys()){
if(isVersioned(url)||await cache.match(url))continue;
await(isFigure(url)?keepFigure(cache,url):fetched(url).then((response)=>keep(cache,url,response))).catch(()=>{});
}
}
};
const activate=async()=>{
const names=await caches.keys();
await Promise.all(names.filter((name)=>name.startsWith(OWN)&&name!==CACHE).map((name)=>caches.delete(name)));
await scope.clients.claim();
};
const versioned=async(request)=>{
const cache=await caches.open(CACHE);
const kept=await keptAt(cache,request.url);
if(kept)return kept;
const[response,isRight]=await asset(request.url);
if(isRight)await cache.put(request.url,response.clone());
return response;
};
const figure=async({url})=>{
const cache=await caches.open(CACHE),kept=await cache.match(url);
return kept||keepFigure(cache,url).catch(async()=>await caches.match(url)||Response.error());
};
const answer=(html)=>new Response(html,{headers:{'content-type':'text/html; charset=utf-8'}});
const shown=async(kept)=>{
const day=new Intl.DateTimeFormat(language,{dateStyle:'long'}).format(Number(kept.headers.get(WHEN)));
const note=`<p class="kept-from" role="status">${say('offline.kept_from',{day})}</p>`;
return answer((await kept.text()).replace(/<main\b[^>]*>/,(main)=>main + note));
};
const nothing=async(cache)=>{
const home=await keptAt(cache,here('index.html'));
if(!home)return Response.error();
const says=`<main id="main"><h1>${say('offline.not_kept')}</h1><p>${say('offline.open_it_once')}</p><p><a href="${here('index.html')}">${say('offline.home')}</a> <a href="${here('if-it-hurts.html')}">${say('offline.if_it_hurts')}</a></p></main>`;
const html=(await home.text()).replace(/<main\b[^]*<[/]main>/,()=>says).replace(/<script\b[^>]*><[/]script>/g,'');
return answer(html.replace(/<title>[^<]*/,()=>`<title>${say('offline.not_kept')}`));
};
const page=async(request,finish)=>{
const address=addressOf(request.url);
const cache=await caches.open(CACHE);
const network=fetch(request.url,{cache:'no-cache',redirect:'manual'});
const copied=network.then((response)=>(response.ok?keep(cache,address,response.clone()):null));
finish(copied.catch(()=>{}));
const kept=await keptAt(cache,address);
const late=new Promise((resolve)=>setTimeout(resolve,kept?PATIENCE:60000));
try{
const response=await Promise.race([network,late]);
if(response instanceof Response)return response;
}catch{
}
return kept?shown(kept):nothing(cache);
};
scope.addEventListener('install',(event)=>{
scope.skipWaiting();
event.waitUntil(install());
});
scope.addEventListener('activate',(event)=>event.waitUntil(activate()));
scope.addEventListener('fetch',(event)=>{
const{request}=event;
if(request.method!=='GET'||!request.url.startsWith(scope.registration.scope))return;
if(request.mode==='navigate')event.respondWith(page(request,(work)=>event.waitUntil(work)));
else if(isVersioned(request.url))event.respondWith(versioned(request));
else if(isFigure(request.url))event.respondWith(figure(request));
});
scope.addEventListener('message',(event)=>{
const asked=event.data&&Array.isArray(event.data.keep)?event.data.keep.filter((p)=>typeof p==='string'):[];
event.waitUntil((async()=>{
const cache=await caches.open(CACHE);
for(const path of asked){
const url=here(path);
if(url.startsWith(scope.registration.scope)&&!(await cache.match(addressOf(url)))){
await fetched(url).then((response)=>keep(cache,addressOf(url),response)).catch(()=>{});
}
if(event.data.whole===true)await keepFigures(cache,addressOf(url));
}
})());
});
})();
