'use strict';self.rungbookIs+="session.js=b9e6662b ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"adult.head":"First, an adult","adult.on":"Go on","entry.if_it_hurts":"If it hurts","entry.it_hurt":"It hurt","hurts.now_blow":"A blow to the head or neck, or a fall, with sickness, confusion, neck pain or tingling, or after which you cannot move normally; a joint out of place.","hurts.now_pregnant":"In pregnancy: bleeding, fluid, contractions, a hard headache, or a child that moves less.","rest.awake":"Keep the screen on during the rest","rest.begun":"Rest, {n} seconds","rest.over":"The rest is over.","rest.rest":"Rest","rest.shake":"Vibration","rest.sound":"Sound","rest.stop":"Stop","rest.ways":"When the rest is over","screening.allowed":"Allowed on {day}, until {until}.","screening.allowed_by":"Allowed by {by} on {day}, until {until}.","screening.says_allowed_hard":"Your answers said to ask a clinician first. Hard effort was allowed.","screening.says_allowed_light":"Your answers said to ask a clinician first. Light to moderate effort was allowed.","stand.lift":"Lift this pause","test.before_you_start":"Before you start","test.over":"No more tests today","today.allowed_stop":"Stop at once and get help at any of these, whatever else is said here:","today.another_set":"Another set","today.back_when":"Go back when: {signs}.","today.between":"You trained a short time ago: what needs 48 hours waits, and the next whole session is on {day}.","today.block_beside":"A few sets for the whole body.","today.block_kept_up":"Fewer sets, so that what you have stays.","today.block_practice":"While fresh, few tries. End at the first that is not clean.","today.block_range":"Slowly, without pain.","today.block_strength":"What stands between you and the goal.","today.done":"Done today: {sets}.","today.enter_measured":"Enter what you measured","today.first_shown":"{list} first.","today.head_beside":"Beside that","today.head_done":"Done today","today.head_kept_up":"Kept up","today.head_practice":"Practice","today.head_range":"Range","today.head_strength":"Strength","today.help_used":"Help used","today.install":"Put it there","today.install_says":"Put this site on your home screen? It opens without a network.","today.instead_of":"In the place of {movement}.","today.keep":"Save these sets","today.keep_set":"Add this set","today.kilograms":"kg","today.left_in_reserve":"Could you have done more?","today.morning":"{part}, {score} of 10 on {day}. How was it on the morning of {next}, 0 to 10?","today.next":"Today is free. Next: {session}","today.no_effort":"Write a whole number from 0 to {most} for the effort.","today.no_minutes":"Write the minutes as a whole number, from 1 to {most}.","today.no_weight":"Write the weight as a number.","today.none_for_goal":"No {pattern} today: {why}","today.not_kept":"These ticks are for you alone; a stretch is not written into the log.","today.not_now":"Not now","today.nothing_open":"Nothing can be trained today with the equipment at hand. Test something first.","today.paper_each_set":"Done","today.paper_left":"In reserve","today.paper_movement":"Movement","today.paper_rest":"Rest","today.paper_what":"Sets","today.pounds":"lb","today.reps":"reps","today.seconds":"s","today.session":"Saved: effort {effort}, {minutes} minutes.","today.set":"Set {number}","today.set_done":"{set}, done","today.take_back":"Take back","today.take_back_session":"Take back: effort {effort}, {minutes} minutes","today.taken":"Taken. {says}","today.tick":"Tick the sets that you did.","today.weight_used":"Weight used","today.whole_left":"Write a whole number from 0 to {most} for what you could have done more.","today.whole_reps":"Only whole reps count.","today.why":"Why this","today.write_set":"{set}: write what you did as a number from 0 on, such as 8.","training.more_left":"one set more left","training.more_right":"one set more right"});
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
(()=>{
const{targets,results,readiness,store,page,states,rest,adult,told}=globalThis.rungbook;
let{training,aim}=globalThis.rungbook;
const{LIMITS}=globalThis.rungbook.health;
const{make,named,namedList,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model,mine}=states;
if(!model){
told.drop();
return;
}
const{tables}=model;
const nodes=(parts)=>parts.filter((part)=>part!==null).map((part)=>(part));
const MOST_FIRST=3;
const timer=rest.timer();
byId('timer').replaceChildren(timer.element);
byId('rest-ways').replaceChildren(rest.choices());
const drafts=(on)=>{const kept=store.get('ticks');return kept&&kept.on===on&&kept.of?kept.of:{};};
const isLogged=({movement,unit})=>{
const{measure}=model.target(movement);
return measure===(unit==='reps'?targets.REPS:targets.TIME);
};
const inPounds=()=>page.units.current()==='imperial';
const typed=(mass)=>String(inPounds()?Math.round((Math.abs(mass)/ 45359237)*10)/ 10:Math.abs(mass)/ targets.KILOGRAM);
const dated=(text)=>aim.dated(text);
const ticks=(line,draft)=>{
const id=tables.ids[line.movement],count=line.sets +(line.weaker?1:0);
return Array.from({length:count},(_,i)=>{
const more=i===line.sets,name=more?say(`training.more_${line.weaker}`):say('today.set',{number:i + 1});
const tick=(make('input',{type:'checkbox',id:`tick-${id}-${i}`,'aria-label':name}));
const amount=(make('input',{type:'text',inputmode:'decimal',size:4,value:draft.amounts[i]===undefined?line.amount:draft.amounts[i],'aria-label':say('today.set_done',{set:name})}));
tick.checked=Boolean(draft.ticks[i]);
tick.addEventListener('change',()=>{if(tick.checked&&i + 1<count)timer.start(line.rest);});
return{tick,amount,whole:make('li',{},make('label',{for:tick.id},tick,make('span',{text:more?name:globalThis.rungbook.words.number(i + 1)})),amount,make('span',{class:'unit',text:say(line.unit==='reps'?'today.reps':'today.seconds')}))};
});
};
const field=(id,says,value,after='')=>{
const input=(make('input',{type:'text',inputmode:'decimal',size:4,id,value,autocomplete:'off'}));
return{input,whole:make('p',{class:'beside'},make('label',{for:id,text:says}),' ',input,after?make('span',{class:'unit',text:after}):null)};
};
const number=(text)=>{
const bare=[say('today.reps'),say('today.seconds'),'reps','rep','s'].reduce((of,unit)=>(of.endsWith(unit)?of.slice(0,-unit.length).trim():of),text.trim());
return bare===''?NaN:Number(bare.replace(',','.'));
};
const keep=(line,on,sets,left,weight)=>{
const ticked=sets.slice(0,line.sets).filter(({tick})=>tick.checked),did=ticked.map(({amount})=>number(amount.value));
const reserve=left.value.trim()===''?null:number(left.value),load=weight===null||weight.value.trim()===''?0:number(weight.value);
const bad=did.findIndex((n)=>!Number.isFinite(n)||n<0||n>MOST),part=line.unit==='reps'?did.findIndex((n)=>!Number.isInteger(n)):-1;
if(!did.length)return[sets[0].tick,say('today.tick')];
if(bad>=0)return[ticked[bad].amount,say('today.write_set',{set:say('today.set',{number:sets.indexOf(ticked[bad])+ 1})})];
if(part>=0)return[ticked[part].amount,say('today.whole_reps')];
if(reserve!==null&&(!Number.isInteger(reserve)||reserve<0||reserve>LIMITS.in_reserve))return[left,say('today.whole_left',{most:LIMITS.in_reserve})];
if(weight&&(!Number.isFinite(load)||load<0||load>1000))return[weight,say('today.no_weight')];
const help=(line.load||0)<0?' help':'';
store.add('trained',{movement:tables.ids[line.movement],did,...(load?{with:`${load} ${inPounds()?'lb':'kg'}${help}`}:{}),...(reserve===null?{}:{in_reserve:reserve}),on});
return[left,''];
};
const entry=()=>page.load('entry-here').then(()=>globalThis.rungbook.entry);
const MOST=100000;
const MANY=3;
const slip=async(line,sets)=>{
const of=({amount})=>number(amount.value)||0,[most]=sets.filter(({tick})=>tick.checked).sort((a,b)=>of(b)- of(a));
const got=most&&of(most)>MANY*line.amount?targets.readGot(`${of(most)} ${line.unit}`):null;
if(!got)return null;
if(!await entry().catch(()=>null))return null;
const{isMeant}=globalThis.rungbook.number;
return readiness.doubtful(model,line.movement,got)&&!await isMeant(line.movement,got)?most.amount:null;
};
const numberOf=({movement,rule})=>{
const place=make('div',{});
if(!states.mayAsk(movement))return rule==='show it'?make('p',{text:say('test.over')}):null;
const show=()=>{entry().then(({form})=>place.replaceChildren(form(movement,{today:states.asks(movement)==='today',kept:()=>{},hurt:()=>{}})),()=>{place.textContent=say('number.not_loaded');});};
if(rule==='show it'){
show();
return place;
}
return make('details',{class:'number',on:{toggle:()=>{if(!place.firstChild)show();}}},make('summary',{text:say('today.enter_measured')}),place);
};
const about=(line,of)=>{
const towards=aim.towards(of,line);
return[make('p',{class:'dose'},aim.sets(line)),make('p',{class:'line-facts'},make('span',{},...aim.restWords(line)),towards?' ':null,towards?make('span',{},...towards):null),
line.insteadOf===null?null:make('p',{class:'line-facts'},...nodes(sayNodes('today.instead_of',{movement:named(tables,line.insteadOf)}))),
tables.back_when[line.movement]?make('p',{class:'line-facts',text:say('today.back_when',{signs:tables.back_when[line.movement].join('; ')})}):null,
make('p',{class:'hint says',text:training.thenOf(line)}),make('details',{class:'because hint'},make('summary',{text:say('today.why')}),make('p',{class:'says'},...aim.why(of,line)))];
};
const anotherSet=(line,tells,on,done)=>{
const{key,entry:was}=done[done.length - 1];
if(!isLogged(line))return null;
const one={...line,sets:1,weaker:null},[set]=ticks(one,{ticks:[true],amounts:[],left:'',weight:null}),fault=make('p',{class:'fault',role:'alert',id:`fault-${tables.ids[line.movement]}`});
const keeps=make('button',{type:'button',class:'quiet',text:say('today.keep_set'),on:{click:async()=>{
const did=number(set.amount.value),why=!Number.isFinite(did)||did<0||did>MOST?say('today.write_set',{set:say('today.set',{number:was.did.length + 1})}):line.unit==='reps'&&!Number.isInteger(did)?say('today.whole_reps'):'';
page.blame(set.amount,fault,why);
if(why)return;
if(await slip(one,[set])){set.amount.focus();return;}
store.add('trained',{...was,did:[...was.did,did]});
store.remove(key);
redraw(line,tells,on);
}}});
return make('details',{},make('summary',{text:say('today.another_set')}),make('p',{class:'fields'},set.amount,make('span',{class:'unit',text:say(line.unit==='reps'?'today.reps':'today.seconds')}),' ',keeps),fault);
};
const card=(line,tells,on)=>{
const id=tables.ids[line.movement];
const done=store.entries('trained').filter(({entry:one})=>one.on===on&&model.numbers.get(one.movement)===line.movement);
const head=make('h3',{tabindex:-1},states.figure(line.movement,72),named(tables,line.movement));
const hurt=make('button',{type:'button',class:'hurt',text:say('entry.it_hurt'),on:{click:()=>{entry().then(({hurt:ask})=>{timer.end();return ask(line.movement).then((then)=>{if(then)tell(then.says);});},()=>{location.href='if-it-hurts.html';});}}});
if(done.length){
return make('article',{class:'check line done','data-movement':id},head,make('p',{text:say('today.done',{sets:done.map(({entry:one})=>one.did.join(say('list.separator'))).join(say('list.separator'))})}),
anotherSet(line,tells,on,done),make('p',{class:'acts'},make('button',{type:'button',class:'quiet',text:say('today.take_back'),on:{click:()=>{done.forEach(({key})=>store.remove(key));redraw(line,tells,on);}}}),' ',hurt));
}
if(line.rule==='show it')return make('article',{class:'check line','data-movement':id},head,...tells(line),numberOf(line));
const draft=drafts(on)[id]||{ticks:[],amounts:[],left:'',weight:null};
const sets=ticks(line,draft),logged=isLogged(line);
const left=logged?field(`left-${id}`,say('today.left_in_reserve'),draft.left,say(line.unit==='reps'?'today.reps':'today.seconds')):null;
const weight=logged&&line.load?field(`weight-${id}`,say(line.load<0?'today.help_used':'today.weight_used'),draft.weight===null?typed(line.load):draft.weight,say(inPounds()?'today.pounds':'today.kilograms')):null;
const note=()=>store.note('ticks',{on,of:{...drafts(on),[id]:{ticks:sets.map(({tick})=>tick.checked),amounts:sets.map(({amount})=>amount.value),left:left?left.input.value:'',weight:weight?weight.input.value:null}}});
const jot=()=>{
note();
const known=shown.cards.get(line.movement);
if(known)known.from=fromOf(line,on);
};
const fault=make('p',{class:'fault',role:'alert',id:`fault-${id}`});
const keeps=make('button',{type:'button',text:say('today.keep'),on:{click:async()=>{
if(!left)return;
const meant=await slip(line,sets);
if(meant){
page.blame(meant,fault,'');
meant.focus();
return;
}
const[at,why]=keep(line,on,sets,left.input,weight&&weight.input);
page.blame(at,fault,why);
if(why==='')redraw(line,tells,on);
}}});
return make('article',{class:'check line','data-movement':id,on:{input:jot}},head,...tells(line),make('ul',{class:'ticks'},...sets.map(({whole})=>whole)),
weight&&weight.whole,left&&left.whole,logged?null:make('p',{class:'hint',text:say('today.not_kept')}),line.block==='range'&&!logged?numberOf(line):null,fault,make('p',{class:'acts'},logged?keeps:null,logged?' ':null,hurt));
};
const shown={order:'',cards:new Map()};
const fromOf=(line,on)=>{
const id=tables.ids[line.movement],kept=(kind)=>store.entries(kind).filter(({entry:one})=>one.on===on&&one.movement===id);
return JSON.stringify([line,on,page.units.current(),kept('trained'),kept('tested'),drafts(on)[id],states.mayAsk(line.movement)]);
};
const cardOf=(line,tells,on)=>{
const from=fromOf(line,on),known=shown.cards.get(line.movement);
if(known&&known.from===from)return known.card;
const made=card(line,tells,on);
shown.cards.set(line.movement,{from,card:made});
return made;
};
const redraw=(line,tells,on)=>{
const was=shown.cards.get(line.movement),made=cardOf(line,tells,on);
if(!was||was.card===made)return;
const hadFocus=was.card.contains(document.activeElement);
was.card.replaceWith(made);
const head=made.querySelector('h3');
if(hadFocus&&head)head.focus({preventScroll:true});
};
const tell=(text)=>{
byId('said').textContent=text;
byId('said').focus();
};
const lift=async(key,cause)=>{
await page.load('scale-here');
const says=await globalThis.rungbook.scale.lift(key,states.plain(states.whatRests([cause])));
if(says)tell(says);
};
const drawRests=(stand)=>{
const{causes}=stand.found;
const sore=states.soreLines(stand);
byId('rests-today').hidden=causes.length===0&&sore.length===0;
const kept={paused:store.entries('paused'),restrict:store.entries('restrict')};
const hasButton=(cause)=>(cause.kind==='paused'||cause.kind==='restrict')&&states.liftedBy(cause)===null&&cause.until!==stand.day;
const groups=[...causes.filter(hasButton).map((cause)=>[cause]),...states.together(causes.filter((cause)=>!hasButton(cause)))];
byId('rests-today-list').replaceChildren(...groups.map(([cause,...alike])=>make('li',{},...states.causeWords(cause,[cause,...alike]),' ',hasButton(cause)
?make('button',{type:'button',class:'quiet',text:say('stand.lift'),on:{click:()=>{lift(kept[(cause.kind)][cause.entry].key,cause).catch(()=>tell(say('number.not_loaded')));}}})
:cause.until===stand.day?null:make('a',{href:cause.kind==='pain'?'if-it-hurts.html#pain':'before-you-start.html#health',text:cause.kind==='pain'?say('entry.if_it_hurts'):say('test.before_you_start')}))),...sore);
};
const drawAllowed=()=>{
const{screened}=store.facts(),place=byId('allowed'),isShort=Boolean(screened&&screened.was==='ask'&&screened.until&&screened.lasts);
place.hidden=!isShort;
if(!screened||!isShort)return;
const words={by:make('bdi',{text:screened.by||''}),day:states.day(screened.on),until:states.day(String(screened.until))};
place.replaceChildren(make('p',{},say(screened.says==='light'?'screening.says_allowed_light':'screening.says_allowed_hard'),' ',...nodes(sayNodes(screened.by?'screening.allowed_by':'screening.allowed',words))),
make('p',{},say('today.allowed_stop'),' ',make('a',{href:'if-it-hurts.html',text:say('entry.if_it_hurts')})),make('ul',{},...[say('hurts.now_pregnant'),say('hurts.now_blow')].map((text)=>make('li',{text}))));
};
const paper=(of,session)=>{
const box=({sets,weaker})=>Array.from({length:sets +(weaker?1:0)},()=>make('span',{class:'box'}));
const row=(line)=>make('tr',{'data-movement':tables.ids[line.movement]},make('th',{scope:'row'},states.figure(line.movement),named(tables,line.movement)),make('td',{},aim.sets(line),line.rule==='first try'?make('small',{text:`${say('list.separator')}${training.thenOf(line)}`}):null),make('td',{},...aim.restWords(line)),make('td',{class:'boxes'},...box(line)),make('td',{class:'boxes'},make('span',{class:'box'})));
return make('table',{class:'paper'},make('caption',{},...aim.head(session)),make('thead',{},make('tr',{},...['movement','what','rest','each_set','left'].map((key)=>make('th',{scope:'col',text:say(`today.paper_${key}`)})))),make('tbody',{},...aim.inOrder(session.lines).map(row)));
};
const drawNone=({found},of,pattern,left)=>{
const skill=tables.skills.find(({id})=>of.goal&&id===of.goal.id),place=byId('none-for-goal');
const[lowest]=skill&&left?skill.members.filter((m)=>tables.pattern[m]===pattern&&found.states[m]!==readiness.OWNED).sort((a,b)=>tables.stage[a]- tables.stage[b]):[];
const steps=lowest===undefined||found.states[lowest]===readiness.OPEN?[]:found.first(lowest).steps;
const asked=[...new Set(steps.map(({movement})=>movement))].slice(0,MOST_FIRST);
const waits=asked.flatMap((m)=>{const because=training.whyNotToday(of.trainee,m);return because?[{movement:m,why:because}]:[];});
const[why]=left&&left.length?aim.leftOut(of,left):waits.length?aim.leftOut(of,waits):[],says=why?[...why.childNodes]:asked.length?nodes(sayNodes('today.first_shown',{list:namedList(tables,asked)})):[];
place.hidden=!says.length;
place.replaceChildren(...(says.length?nodes(sayNodes('today.none_for_goal',{pattern:say(`pattern.${tables.patterns[pattern].replace(/ /g,'_')}`),why:says})):[]));
};
const doneBefore=(trained)=>{
const known=trained.map((one)=>({m:model.numbers.get(one.movement),did:one.did})).filter(({m})=>m!==undefined);
return known.length?[make('section',{class:'block'},make('h2',{text:say('today.head_done')}),make('ul',{class:'plain'},...known.map(({m,did})=>make('li',{},named(tables,Number(m)),' ',say('today.done',{sets:did.join(say('list.separator'))})))))]:[];
};
const drawSession=(stand,of)=>{
const[session]=of.sessions,on=results.dayText(stand.day),tells=(line)=>about(line,of);
byId('when').replaceChildren(...(!session?[]:session.on===stand.day?aim.head(session):nodes(sayNodes('today.next',{session:aim.head(session)}))));
const lines=session?aim.inOrder(session.lines):[];
byId('warm').hidden=lines.length===0;
byId('warm-up').replaceChildren(...(session?aim.warmUp(of,session):[]));
const care=session?aim.care(of,session):[];
byId('care').hidden=care.length===0;
byId('care').replaceChildren(...care);
const isBeside=lines.filter(({block})=>block==='kept up').some(({movement})=>!training.got(of.trainee,movement));
const trained=store.entries('trained').filter(({entry:one})=>one.on===on&&!lines.some(({movement})=>movement===model.numbers.get(one.movement)));
const order=JSON.stringify([on,isBeside,trained,lines.map(({block,movement})=>[block,movement])]);
if(order===shown.order)lines.forEach((line)=>redraw(line,tells,on));
else{
shown.order=order;
shown.cards.clear();
byId('sets').replaceChildren(...(lines.length?aim.BLOCKS.flatMap((block)=>{
const all=lines.filter((line)=>line.block===block),key=block==='kept up'&&isBeside?'beside':block.replace(' ','_');
return all.length?[make('section',{class:'block'},make('h2',{text:say(`today.head_${key}`)}),make('p',{class:'hint',text:say(`today.block_${key}`)}),make('div',{class:'lines'},...all.map((line)=>cardOf(line,tells,on))))]:[];
}):[make('p',{text:say('today.nothing_open')})]),...doneBefore(trained.map(({entry:one})=>one)));
}
const pattern=of.goal?tables.pattern[model.of(of.goal.leaf)]:-1,isOwn=({movement})=>tables.pattern[movement]===pattern;
const left=session?[...session.leftOut].sort((a,b)=>Number(isOwn(b))- Number(isOwn(a))):[],lost=aim.leftOut(of,left);
drawNone(stand,of,pattern,lines.some((line)=>isOwn(line)&&line.block!=='range')||!lines.length?null:left.filter(isOwn));
byId('left-out').hidden=lost.length===0;
byId('left-out-list').replaceChildren(...lost);
byId('paper').replaceChildren(...(session&&lines.length?[paper(of,session)]:[]));
const borne=new Set(lines.flatMap(({movement})=>tables.cautions[movement].map((i)=>tables.classes[i])));
signs([...borne]);
const waits=session&&session.leftOut.some(({why})=>why.key==='left.apart'),whole=of.sessions.find((one)=>one.lines.some(({block})=>block==='strength')&&!one.leftOut.some(({why})=>why.key==='left.apart'));
byId('between').replaceChildren(...(waits&&whole&&session&&whole.on>session.on?nodes(sayNodes('today.between',{day:states.dayOf(whole.on)})):[]));
return{on,lines:lines.map(ofLine),borne:[...borne]};
};
const signs=(borne)=>(document.querySelectorAll('.stop-signs [data-class]')).forEach((sign)=>{sign.hidden=!borne.includes(sign.dataset.class||'');});
const WHOLE=['clinician','aim','how-long','goal','conditions','allowed','rests-today-list','when','between','none-for-goal','warm-up','care','sets','left-out-list','paper'];
const FRAMES=['nothing-yet','first','ask','adult','card','rests-today','warm','left-out','below'];
const LATE=['sets','left-out-list','paper','left-out','below'];
const ofLine=({movement,block,rule,unit,amount,sets,weaker,load,rest:long,insteadOf})=>({movement,block,rule,unit,amount,sets,weaker,load,rest:long,insteadOf});
let isAnswered=false;
const answer=(stand)=>{
drawAllowed();
drawRests(stand);
const{on,lines,borne}=told.more();
drawAfter(on);
if(isAnswered)return;
isAnswered=true;
signs(borne);
const goal=document.getElementById('today-goal');
if(goal instanceof HTMLSelectElement){
goal.removeAttribute('inert');
states.keepsGoal(goal);
}
for(const line of lines){
const was=document.querySelector(`#sets article[data-movement="${tables.ids[line.movement]}"]`);
if(!was)continue;
const says=[...was.querySelectorAll(':scope > :is(.dose, .line-facts, .says, .because)')];
was.replaceWith(cardOf(line,()=>says.map((one)=>one.cloneNode(true)),on));
}
};
const wasTold=told.holds();
const bringPlan=()=>{
page.bring('plan-here').then(()=>{
({training,aim}=globalThis.rungbook);
page.hold(draw,'when');
},()=>{
byId('card').hidden=true;
byId('first').hidden=false;
byId('first').textContent=say('number.not_loaded');
});
};
const draw=()=>{
const stand=mine(),barred=states.barred();
byId('nothing-yet').hidden=stand!==null||barred==='ask';
byId('first').hidden=barred!=='first'||stand===null;
byId('ask').hidden=barred!=='ask';
const isDue=barred===''&&adult.isDue();
byId('adult').hidden=!isDue;
if(isDue)byId('adult').replaceChildren(make('h2',{text:say('adult.head')}),make('p',{text:say('screening.young')}),adult.ask(()=>make('button',{type:'button',text:say('adult.on'),on:{click:()=>{draw();if(stand)byId('when').focus();}}})));
byId('card').hidden=stand===null||barred!==''||isDue||!(aim||wasTold);
if(!stand||barred||isDue)return;
if(!aim){
if(told.holds())answer(stand);
else bringPlan();
return;
}
const key=told.keyNow();
drawHead(stand,aim.aimOf(stand));
let done=null;
const rest=()=>{const now=mine();if(now&&!states.barred()&&!adult.isDue())done=drawRest(now);},keep=()=>{if(done)told.keep(key,WHOLE,FRAMES,LATE,done);};
if(aim.isPlanned(stand))rest();
page.later(done?[keep]:[plan,rest,keep],'when');
};
const drawHead=(stand,of)=>{
byId('aim').replaceChildren(...aim.sentence(of));
byId('how-long').replaceChildren(...aim.howLong(of));
byId('goal').replaceChildren(aim.goalChoice('today'));
byId('conditions').replaceChildren(...training.conditions(of).map((text)=>make('li',{text:dated(text)})));
const first=training.clinician(of.trainee);
byId('clinician').hidden=first.length===0;
byId('clinician').replaceChildren(...first.map((text)=>make('p',{text:dated(text)})),make('p',{},make('a',{href:'if-it-hurts.html',text:say('entry.if_it_hurts')})));
drawAllowed();
drawRests(stand);
};
const drawRest=(stand)=>{
const held=document.activeElement&&document.activeElement.closest('#sets article'),from=held instanceof HTMLElement?held.dataset.movement:undefined;
const done=drawSession(stand,aim.planOf(stand));
byId('below').hidden=false;
drawAfter(results.dayText(stand.day));
if(from===undefined||document.activeElement!==document.body)return done;
const head=(document.querySelector(`#sets article[data-movement="${from}"] h3`))||byId('when');
head.focus();
return done;
};
const drawAfter=(on)=>byId('after-list').replaceChildren(...store.entries('sessions').filter(({entry:of})=>of.on===on).map(({key,entry:{effort:said,minutes:long}})=>make('li',{},say('today.session',{effort:said,minutes:long}),' ',
make('button',{type:'button',class:'quiet',text:say('today.take_back'),'aria-label':say('today.take_back_session',{effort:said,minutes:long}),on:{click:()=>store.remove(key)}}))));
const effort=(byId('session-effort')),minutes=(byId('session-minutes'));
byId('session').addEventListener('submit',(event)=>{
event.preventDefault();
const whole=({value},most)=>(/^\s*[0-9]{1,4}\s*$/.test(value)&&Number(value)<=most?Number(value):null);
const said=whole(effort,LIMITS.effort),long=whole(minutes,LIMITS.minutes);
page.blame(said===null?effort:minutes,byId('session-fault'),said===null?say('today.no_effort',{most:LIMITS.effort}):!long?say('today.no_minutes',{most:LIMITS.minutes}):'');
if(said===null||!long)return;
effort.value='';
minutes.value='';
const on=results.dayText(results.today());
store.add('sessions',{effort:said,minutes:long,on});
drawAfter(on);
});
const morning=()=>{
const today=results.today(),place=byId('morning');
const newest=new Map();
for(const of of store.entries('pain'))newest.set(of.entry.part,of);
const open=[...newest.values()].filter(({entry:of})=>of.next_morning===undefined&&of.score>0&&today - Number(results.readDay(of.on))>=1&&today - Number(results.readDay(of.on))<=2);
place.hidden=open.length===0;
const{scale}=globalThis.rungbook;
if(open.length&&!scale){
page.bring('scale-here').then(morning,()=>{place.textContent=say('number.not_loaded');});
return;
}
place.replaceChildren(...open.map(({key,entry:of})=>{
const select=(make('select',{id:`morning-${of.part}`},make('option',{value:'',text:''}),...scale.NUMBERS.map((n)=>make('option',{value:n,text:globalThis.rungbook.words.number(n)}))));
select.addEventListener('change',()=>{if(select.value!=='')tell(say('today.taken',{says:scale.morning(key,of,Number(select.value))}));});
return make('p',{},make('label',{for:select.id,text:say('today.morning',{part:states.partWord(of.part),score:of.score,day:results.dayWords(Number(results.readDay(of.on))),next:results.dayWords(Number(results.readDay(of.on))+ 1)})}),' ',select);
}));
};
let offer=null;
const install=()=>{
const place=byId('install');
place.hidden=!offer||!store.entries('trained').length||Boolean(store.get('install-said'));
if(place.hidden||place.firstChild)return;
const done=()=>{
store.note('install-said',true);
place.hidden=true;
byId('when').focus();
};
place.replaceChildren(make('p',{text:say('today.install_says')}),make('p',{class:'acts'},make('button',{type:'button',text:say('today.install'),on:{click:()=>{offer.prompt();done();}}}),' ',
make('button',{type:'button',class:'quiet',text:say('today.not_now'),on:{click:done}})));
};
globalThis.addEventListener('beforeinstallprompt',(event)=>{
event.preventDefault();
offer=event;
install();
});
const log=()=>{
if(store.entries('trained').length)page.load('log').catch(()=>{byId('log').hidden=false;byId('log-list').textContent=say('number.not_loaded');});
};
const plan=()=>{const stand=mine();if(stand&&aim&&!states.barred())aim.planOf(stand);};
store.onChange(()=>{page.later([plan,draw,log],'when');morning();install();});
page.units.onChange(draw);
draw();
log();
morning();
})();
