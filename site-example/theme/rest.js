'use strict';self.rungbookIs+="rest.js=6e1ec660 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"rest.awake":"Keep the screen on during the rest","rest.begun":"Rest, {n} seconds","rest.over":"The rest is over.","rest.rest":"Rest","rest.shake":"Vibration","rest.sound":"Sound","rest.stop":"Stop","rest.ways":"When the rest is over"});
'use strict';
(()=>{
const{store,page}=globalThis.rungbook;
const{make}=page;
const{say}=globalThis.rungbook.words;
const WAYS=(['sound','shake','awake']);
const PITCH=660,BEEP=0.18;
const silenced=()=>{const kept=store.get('rest');return kept&&typeof kept==='object'?kept:{};};
let audio=null;
const sound=()=>{
if(!audio)return;
for(const at of[0,2*BEEP]){
const tone=audio.createOscillator(),volume=audio.createGain();
tone.frequency.value=PITCH;
volume.gain.value=0.2;
tone.connect(volume).connect(audio.destination);
tone.start(audio.currentTime + at);
tone.stop(audio.currentTime + at + BEEP);
}
};
const timer=()=>{
const face=make('span',{class:'timer-face',role:'timer',text:'0:00'});
const says=make('span',{class:'aside',role:'status'});
const stop=make('button',{type:'button',class:'quiet',text:say('rest.stop'),on:{click:()=>end(false)}});
let until=0,ticking=0;
let awake=null;
const show=()=>{
const left=Math.max(0,Math.ceil((until - performance.now())/ 1000));
face.textContent=`${Math.floor(left / 60)}:${String(left % 60).padStart(2,'0')}`;
if(left===0&&ticking)end(true);
};
const end=(over)=>{
clearInterval(ticking);
ticking=0;
if(awake)awake.release().catch(()=>{});
awake=null;
element.hidden=!over;
stop.hidden=over;
if(!over)return;
says.textContent=say('rest.over');
if(!silenced().sound)sound();
if(!silenced().shake&&navigator.vibrate)navigator.vibrate([200,100,200]);
};
const start=(seconds)=>{
clearInterval(ticking);
until=performance.now()+ seconds*1000;
ticking=Number(setInterval(show,250));
element.hidden=false;
stop.hidden=false;
says.textContent=say('rest.begun',{n:seconds});
if(!silenced().sound&&!audio&&'AudioContext' in globalThis)setTimeout(()=>{audio=audio||new AudioContext();},100);
const{wakeLock}=(navigator);
if(!silenced().awake&&wakeLock&&!awake)wakeLock.request('screen').then((lock)=>{if(ticking)awake=lock;else lock.release();},()=>{});
show();
};
const element=make('div',{class:'timer',hidden:true},make('p',{},say('rest.rest'),' ',face,' ',stop,says));
return{element,start,end:()=>end(false)};
};
const choices=()=>make('details',{class:'rest-ways'},make('summary',{text:say('rest.ways')}),make('ul',{class:'plain parts'},...WAYS.map((way)=>{
const box=(make('input',{type:'checkbox',id:`rest-${way}`}));
box.checked=!silenced()[way];
box.addEventListener('change',()=>store.note('rest',{...silenced(),[way]:!box.checked}));
return make('li',{},box,' ',make('label',{for:`rest-${way}`,text:say(`rest.${way}`)}));
})));
globalThis.rungbook.rest={timer,choices};
})();
