'use strict';self.rungbookIs+="angle.js=f3215abc ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"angle.again":"Set the points again","angle.ask_joint":"Touch point {n} of 3: one end, the joint, the other end.","angle.ask_length":"Touch point {n} of 4: first both ends of the known length, then both ends of what is measured. Write the known length above.","angle.ask_level":"Touch point {n} of 2: the two ends of the line.","angle.ask_seconds":"Step to the first still picture of the hold and mark it, then to the last.","angle.back":"One picture back","angle.begin":"The hold begins here","angle.closer":"Closer","angle.end":"It ends here","angle.file":"A photograph or a clip","angle.head":"Measure in your picture","angle.joint":"an angle at a joint","angle.known":"A length in the picture that you know ({unit})","angle.leave":"Leave it","angle.level":"a line against the level","angle.marked":"Marked. Now the other end.","angle.on":"One picture on","angle.picture":"Your picture; touch it to set the points","angle.point":"Point {n}","angle.says":"{value} {unit}, give or take {off} {unit}","angle.second_back":"1 s back","angle.second_on":"1 s on","angle.stays":"It stays in this page: nothing is sent or kept. Film from the side, the camera level, at the height of the joint.","angle.take":"Take this number","angle.unreadable":"This browser cannot show that file.","angle.way":"What is measured"});
'use strict';
(()=>{
const{make,byId}=globalThis.rungbook.page;
const{say,number}=globalThis.rungbook.words;
const LARGEST=2400,TOUCH=2;
const NEAR=22;
const CLOSEST=8;
const SLIP=4;
const STEP=1 / 30;
const DEGREES=180 / Math.PI;
const far=(a,b)=>Math.hypot(a.x - b.x,a.y - b.y);
const joint=([a,b,c])=>{
const turn=Math.abs(Math.atan2(a.y - b.y,a.x - b.x)- Math.atan2(c.y - b.y,c.x - b.x))*DEGREES;
return turn>180?360 - turn:turn;
};
const level=([a,b])=>Math.atan2(Math.abs(a.y - b.y),Math.abs(a.x - b.x))*DEGREES;
const length=([a,b,c,d],known)=>(far(c,d)/ far(a,b))*known;
const doubt=(of,points,off)=>{
const at=of(points);
const worst=points.map((_,i)=>Math.max(...[[off,0],[-off,0],[0,off],[0,-off]].map(([x,y])=>{
const moved=points.map((p,j)=>(i===j?{x:p.x + x,y:p.y + y}:p));
return Math.abs(of(moved)- at);
})));
return Math.hypot(...worst);
};
const WAYS={joint:3,level:2,length:4,seconds:0};
const open=({measure,unit,done})=>{
const{TIME,LENGTH}=globalThis.rungbook.targets;
let way=measure===TIME?'seconds':measure===LENGTH?'length':'joint';
let points=[];
let picture=null;
let size={x:1,y:1},zoom=1,corner={x:0,y:0},address='';
let marks=[];
const canvas=(make('canvas',{class:'measured','aria-label':say('angle.picture'),role:'img',width:1,height:1}));
const says=make('p',{role:'status',class:'measured-says'});
const known=(make('input',{id:'angle-known',inputmode:'decimal',size:5,autocomplete:'off'}));
const knownField=make('p',{class:'field'},make('label',{for:'angle-known',text:say('angle.known',{unit})}),known);
const file=(make('input',{id:'angle-file',type:'file',accept:measure===TIME?'video/*':'image/*,video/*'}));
const take=(make('button',{type:'button',text:say('angle.take'),disabled:true}));
const handles=make('p',{class:'acts'}),steps=make('p',{class:'acts'});
const kind=(make('select',{id:'angle-way'},make('option',{value:'joint',text:say('angle.joint')}),make('option',{value:'level',text:say('angle.level')})));
const scale=()=>(canvas.clientWidth / size.x)*zoom;
const inside=(event)=>{
const box=canvas.getBoundingClientRect();
return{x:(event.clientX - box.left)/ scale()+ corner.x,y:(event.clientY - box.top)/ scale()+ corner.y};
};
const draw=()=>{
const pen=canvas.getContext('2d');
if(!pen||!picture)return;
const shown={x:size.x / zoom,y:size.y / zoom},dot=(size.x / Math.max(1,canvas.clientWidth));
corner={x:Math.min(Math.max(0,corner.x),size.x - shown.x),y:Math.min(Math.max(0,corner.y),size.y - shown.y)};
pen.drawImage(picture,(corner.x*widthOf())/ size.x,(corner.y*heightOf())/ size.y,widthOf()/ zoom,heightOf()/ zoom,0,0,size.x,size.y);
const at=(p)=>([(p.x - corner.x)*zoom,(p.y - corner.y)*zoom]);
const line=(a,b)=>{
for(const[colour,wide]of([['#fff',4],['#b4472b',2]])){
pen.beginPath();
pen.moveTo(...at(a));
pen.lineTo(...at(b));
pen.strokeStyle=colour;
pen.lineWidth=wide*dot;
pen.stroke();
}
};
for(let i=1;i<points.length;i +=1)if(way!=='length'||i % 2)line(points[i - 1],points[i]);
for(const p of points){
pen.beginPath();
pen.arc(...at(p),6*dot,0,7);
pen.lineWidth=2*dot;
pen.strokeStyle='#fff';
pen.stroke();
pen.beginPath();
pen.arc(...at(p),4.5*dot,0,7);
pen.strokeStyle='#b4472b';
pen.stroke();
}
};
const widthOf=()=>(picture instanceof HTMLVideoElement?picture.videoWidth:picture?picture.width:1);
const heightOf=()=>(picture instanceof HTMLVideoElement?picture.videoHeight:picture?picture.height:1);
const measured=()=>{
if(way==='seconds')return marks.length===2?{value:Math.abs(marks[1]- marks[0]),off:2*STEP}:null;
if(points.length<WAYS[way])return null;
const real=Number(known.value.trim().replace(',','.'));
if(way==='length'&&!(real>0))return null;
const of=way==='joint'?joint:way==='level'?level:(all)=>length(all,real);
return{value:of(points),off:doubt(of,points,Math.max(1,TOUCH / scale()))};
};
const one=(n)=>number(Math.round(n*10)/ 10);
const tell=()=>{
const got=measured();
take.disabled=got===null;
says.textContent=got?say('angle.says',{value:one(got.value),off:one(Math.max(got.off,0.1)),unit}):!picture?'':say(`angle.ask_${way}`,{n:points.length + 1});
handles.replaceChildren(...Array.from({length:WAYS[way]},(_,i)=>make('button',{type:'button',class:'quiet',id:`angle-point-${i}`,text:say('angle.point',{n:i + 1}),on:{keydown:(event)=>nudge(event,i)}})));
draw();
};
const nudge=(event,i)=>{
const by={ArrowLeft:[-1,0],ArrowRight:[1,0],ArrowUp:[0,-1],ArrowDown:[0,1]}[event.key];
if(!by||!picture)return;
event.preventDefault();
while(points.length<=i)points.push({x:corner.x + size.x / zoom / 2,y:corner.y + size.y / zoom / 2});
const far_=event.shiftKey?10:1;
points[i]={x:points[i].x + by[0]*far_,y:points[i].y + by[1]*far_};
tell();
byId(`angle-point-${i}`).focus();
};
const down=new Map();
let held=-1,apart=0,dragged=false,start={x:0,y:0};
canvas.addEventListener('pointerdown',(event)=>{
if(!picture||way==='seconds')return;
down.set(event.pointerId,event);
canvas.setPointerCapture(event.pointerId);
start={x:event.clientX,y:event.clientY};
const at=inside(event);
dragged=false;
held=down.size>1?-1:points.findIndex((p)=>far(p,at)*scale()<NEAR);
});
canvas.addEventListener('pointermove',(event)=>{
if(!down.has(event.pointerId))return;
const before=[...down.values()];
down.set(event.pointerId,event);
const[a,b]=[...down.values()];
if(b){
dragged=true;
const now=Math.hypot(a.clientX - b.clientX,a.clientY - b.clientY),middle=inside(a);
if(apart){
zoom=Math.min(CLOSEST,Math.max(1,(zoom*now)/ apart));
const after=inside(a);
corner={x:corner.x + middle.x - after.x,y:corner.y + middle.y - after.y};
}
apart=now;
draw();
}else if(held>=0&&before.length===1&&(dragged||Math.hypot(event.clientX - start.x,event.clientY - start.y)>SLIP)){
dragged=true;
points[held]=inside(event);
tell();
}
});
const up=(event)=>{
const alone=down.size===1&&!apart;
down.delete(event.pointerId);
if(!down.size){
if(alone&&!dragged&&event.type==='pointerup'&&picture&&points.length<WAYS[way])points.push(inside(event));
held=-1;
apart=0;
tell();
}
};
canvas.addEventListener('pointerup',up);
canvas.addEventListener('pointercancel',up);
const show=()=>{
const big=Math.min(1,LARGEST / Math.max(widthOf(),heightOf()));
size={x:Math.max(1,Math.round(widthOf()*big)),y:Math.max(1,Math.round(heightOf()*big))};
canvas.width=size.x;
canvas.height=size.y;
points=[];
zoom=1;
tell();
};
const step=(clip,by)=>{clip.currentTime=Math.max(0,Math.min(clip.duration||0,clip.currentTime + by));};
const forget=()=>{
if(address)URL.revokeObjectURL(address);
address='';
if(picture&&'close' in picture)picture.close();
picture=null;
};
file.addEventListener('change',async()=>{
const chosen=file.files&&file.files[0];
if(!chosen)return;
forget();
marks=[];
steps.replaceChildren();
try{
if(!chosen.type.startsWith('video/')){
picture=await createImageBitmap(chosen);
show();
return;
}
const clip=(make('video',{muted:true,playsinline:true,preload:'auto'}));
address=URL.createObjectURL(chosen);
await new Promise((resolve,reject)=>{
clip.addEventListener('loadeddata',resolve,{once:true});
clip.addEventListener('error',reject,{once:true});
clip.src=address;
});
picture=clip;
clip.addEventListener('seeked',draw);
const by=(text,seconds)=>make('button',{type:'button',class:'quiet',text,on:{click:()=>step(clip,seconds)}});
const mark=(i,text)=>make('button',{type:'button',class:'quiet',text,on:{click:()=>{
marks[i]=clip.currentTime;
if(marks.filter((at)=>at!==undefined).length<2)says.textContent=say('angle.marked');
else tell();
}}});
steps.replaceChildren(by(say('angle.second_back'),-1),by(say('angle.back'),-STEP),by(say('angle.on'),STEP),by(say('angle.second_on'),1),
...(measure===TIME?[mark(0,say('angle.begin')),mark(1,say('angle.end'))]:[]));
show();
}catch{
says.textContent=say('angle.unreadable');
}
});
known.addEventListener('input',tell);
kind.addEventListener('change',()=>{
way=(kind.value);
points=[];
tell();
});
const dialog=(make('dialog',{class:'measuring','aria-labelledby':'angle-head'},make('h2',{id:'angle-head',tabindex:-1,autofocus:true,text:say('angle.head')}),
make('p',{class:'hint',text:say('angle.stays')}),make('p',{class:'field'},make('label',{for:'angle-file',text:say('angle.file')}),file),
measure===LENGTH||measure===TIME?null:make('p',{class:'field'},make('label',{for:'angle-way',text:say('angle.way')}),kind),measure===LENGTH?knownField:null,
canvas,steps,says,handles,make('p',{class:'acts'},take,' ',make('button',{type:'button',class:'quiet',text:say('angle.again'),on:{click:()=>{points=[];marks=[];tell();}}}),' ',
make('button',{type:'button',class:'quiet',text:say('angle.closer'),on:{click:()=>{zoom=zoom>=CLOSEST?1:zoom*2;draw();tell();}}}),' ',
make('button',{type:'button',class:'quiet',text:say('angle.leave'),on:{click:()=>dialog.close()}}))));
take.addEventListener('click',()=>{
const got=measured();
dialog.close();
if(got)done(got.value,got.off);
});
dialog.addEventListener('close',()=>{
forget();
dialog.remove();
});
document.body.append(dialog);
dialog.showModal();
tell();
};
globalThis.rungbook.angle={open,joint,level,length,doubt};
})();
