'use strict';self.rungbookIs+="stand.js=b19acc74 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"entry.if_it_hurts":"If it hurts","history.day":"day","history.result":"result","shared.and_more":{"one":"and {n} more","other":"and {n} more"},"stand.add_person":"Begin for them","stand.allowed":"{pause} (allowed by a clinician)","stand.aside_line":"{movement}, {got}, {day}: {reason}","stand.change_nothing":"Change nothing","stand.copy_choice":"Put together only what is one person’s. Replacing erases all that is kept here, the outcome of the health questions too.","stand.copy_named":"The copy is of {file}; the numbers here bear no name.","stand.copy_only":"Entries that stand only in the copy: {there}; only here: {here}.","stand.copy_other_name":"The copy is of {file}; the numbers here are of {here}.","stand.copy_unlike":{"one":"{n} test in the copy has another result here on the same day.","other":"{n} tests in the copy have another result here on the same day."},"stand.earlier":{"one":"{n} earlier result","other":"{n} earlier results"},"stand.ended":"{pause} (ended)","stand.erase_ask":"Erase everything?","stand.erase_everything":"Erase everything","stand.erase_others":"What belongs to {others} stays.","stand.erase_what":"All your numbers, pauses and the outcome of the health questions are taken from this browser. There is no way back but a copy that you saved.","stand.erased":"Everything is erased from this browser.","stand.erased_one":"This person’s numbers are erased.","stand.here":"{name}, here now","stand.in_brackets":"({text})","stand.in_clipboard":"The text is in your clipboard. Paste it into a message to your coach.","stand.keep_them":"Erase nothing","stand.keep_weight":"{weight}, as here","stand.lift":"Lift this pause","stand.load":"Seven days, effort × minutes: {total}; monotony {monotony}, strain {strain}.","stand.moved":"{movement} {before} now {now}","stand.new_person":"Name of somebody new","stand.no_name":"without a name","stand.no_room":"The copy does not fit into this browser’s storage. Nothing was changed.","stand.no_weight":"That is not a body weight. Write it like {example}.","stand.not_shared":"This browser did not share it. Save a copy instead.","stand.nothing_changed":"Nothing was changed.","stand.nothing_moved":"Nothing.","stand.odd":"Cannot be read: {reason}. {text}","stand.past":"{day}: {got}","stand.put_together":"Put together","stand.refused":"Refused, nothing was changed. {why}.","stand.replace_mine":"Replace what is here","stand.saved":"Saved as {file}. Send it to your coach.","stand.several_in_copy":{"one":"one person is in the file","other":"{n} people are in the file: write your name above as it stands there, once"},"stand.share_end":"Not medical advice. Signal words in brackets: read the cautions first.","stand.shared":"Shared.","stand.shared_file":"The copy is on its way.","stand.since":"Since {day}:","stand.storage_forbidden":"This browser does not let the page keep anything: save a copy before you close it.","stand.storage_full":"This browser’s storage is full: what you enter now is lost when you close the page. Save a copy.","stand.take_away":"Take away","stand.take_back_of":"Take back {day}","stand.take_weight":"{weight}, as in the file","stand.taken_in":{"one":"{n} entry taken in.","other":"{n} entries taken in."},"stand.taken_in_some":{"one":"{n} entry taken in. Here already: {same}.","other":"{n} entries taken in. Here already: {same}."},"stand.to_come":"{pause} (still to come)","stand.to_the_questions":"To the questions","stand.two_weights":"Two body weights","stand.undated":"{movement}, {got}: nobody knows the day. It stays on this device and is not in your copy.","stand.weight_kept":"Body weight saved.","stand.which_weight":"Here stands {here}, in the file {file}. Which one counts from now on?","stand.whose_copy":"Whose numbers are these?","stand.write_name":"Write a name.","test.before_you_start":"Before you start"});
'use strict';
'after page.js results.js states.js';
(()=>{
const{targets,results,readiness,store,page,states,told}=globalThis.rungbook;
let{training,aim,number}=globalThis.rungbook;
const{make,named,byId,units}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model,mine,mark}=states;
if(!model){
told.drop();
return;
}
const{tables}=model;
const MOST_SHARED=6;
const MOVED=6;
const notice=byId('notice');
const tell=(text)=>{notice.textContent=text;};
const back=(tested,key)=>make('button',{type:'button',class:'quiet',text:say('stand.take_back'),'aria-label':say('stand.take_back_of',{day:String(states.when(tested).textContent)}),on:{click:()=>store.remove(key)}});
const dayOf=(tested)=>states.when(tested),gotOf=(tested)=>states.got(readiness.sidesText(tested,model.target(tested.movement).atMost));
const past=(tested,key)=>make('li',{},...sayNodes('stand.past',{day:dayOf(tested),got:gotOf(tested)}),' ',back(tested,key));
const tellNews=(m,{key,news})=>{
const stand=mine(),newest=stand&&stand.person.tested.filter(({movement})=>movement===m).sort((a,b)=>a.on - b.on||a.entry - b.entry).pop();
const row=document.querySelector(`#history article[data-movement="${tables.ids[m]}"] > ul`),known=newest&&store.entries('tested')[newest.entry];
if(row&&newest&&known&&known.key===key)row.replaceChildren(past(newest,key));
notice.replaceChildren(...news,' ',make('button',{type:'button',class:'quiet',text:say('stand.take_back'),on:{click:()=>{store.remove(key);tell(say('number.taken_back'));notice.focus();}}}));
notice.focus();
notice.scrollIntoView({block:'center'});
};
const field=(m)=>number.line(m,(told)=>tellNews(m,told));
const changes=(stand)=>{
const saidOn=({on,until})=>(until===null?on:until),days=[...new Set(stand.person.tested.map(saidOn))].sort((a,b)=>b - a);
const place=byId('changed');
place.hidden=days.length<2;
if(days.length<2)return;
const before=readiness.assess(model,{...stand.person,tested:stand.person.tested.filter((tested)=>saidOn(tested)<days[0])},days[1]);
const moved=model.order.filter((m)=>before.states[m]!==stand.found.states[m]&&!(stand.found.states[m]===readiness.OPEN&&states.isHeld(stand,m)));
const lines=moved.map((m)=>make('li',{},...sayNodes('stand.moved',{movement:named(tables,m),before:mark(before.states[m]),now:mark(stand.found.states[m])})));
const more=lines.splice(lines.length>MOVED + 1?MOVED:lines.length);
byId('changed-list').replaceChildren(...(lines.length?lines:[make('li',{text:say('stand.nothing_moved')})]),
...(more.length?[make('li',{},make('details',{class:'unroll'},make('summary',{text:say('shared.and_more',{n:more.length})}),make('ul',{class:'plain moved'},...more)))]:[]));
byId('changed-since').replaceChildren(...sayNodes('stand.since',{day:states.day(results.dayText(days[1]))}).map((part)=>(part)));
};
const looksBack=(stand)=>{
const{trainee,limiter}=aim.aimOf(stand),{history:drawings}=globalThis.rungbook;
const all=!drawings?[]:drawings.histories(trainee,limiter&&limiter.movement).map((one)=>(states.barred()?{...one,still:null}:one));
return new Map(all.map((look)=>[look.movement,{from:look,says:()=>(look.points.length>1?[drawings.says(trainee,look),drawings.picture(trainee,look)]:[]),beside:()=>drawings.beside(trainee,look)}]));
};
const toldBack=()=>new Map(([...document.querySelectorAll('#history-list > article')]).map((row)=>[Number(model.numbers.get(String(row.dataset.movement))),
{from:'told',says:()=>[...row.children].filter((one)=>!one.matches('h3, ul, form, details')),beside:()=>[...row.querySelectorAll(':scope > details > :not(summary, table)')]}]));
const shownOf=new Map();
let isWhole=false;
const history=(stand)=>{
const kept=store.entries('tested'),isBarred=states.barred()!=='',seen=aim?looksBack(stand):toldBack();
const of=new Map();
for(const tested of[...stand.person.tested].sort((a,b)=>a.on - b.on)){
const list=of.get(tested.movement);
if(list)list.push(tested);
else of.set(tested.movement,[tested]);
}
const keyOf=({entry})=>kept[entry].key;
const table=(list)=>make('table',{class:'history-table'},make('thead',{},make('tr',{},...[say('history.day'),say('history.result'),''].map((text)=>make(text?'th':'td',text?{scope:'col',text}:{})))),
make('tbody',{},...list.map((tested)=>make('tr',{},make('th',{scope:'row'},dayOf(tested)),make('td',{},...gotOf(tested)),make('td',{},back(tested,keyOf(tested)))))));
const drawn=(m,list)=>{
const back=seen.get(m);
return[...(back?back.says():[]),make('details',{},make('summary',{text:say('stand.earlier',{n:list.length - 1})}),table(list.slice(0,-1).reverse()),...(back?back.beside():[]))];
};
const lines=[...of].sort(([a],[b])=>tables.stage[b]- tables.stage[a]||a - b).map(([m,list])=>{
const from=JSON.stringify([list.map((tested)=>[kept[tested.entry],tested.sides]),(seen.get(m)||{from:null}).from,isBarred,states.asks(m),units.current(),stand.day]),known=shownOf.get(m);
if(known&&known.from===from)return known.line;
const line=make('article',{class:'past','data-movement':tables.ids[m]},
make('h3',{},states.figure(m),named(tables,m)),make('ul',{class:'plain'},past(list[list.length - 1],keyOf(list[list.length - 1]))),field(m),...(list.length>1?drawn(m,list):[]));
shownOf.set(m,{from,line});
return line;
});
byId('history-list').replaceChildren(...lines);
byId('history').hidden=lines.length===0;
isWhole=!aim||Boolean(globalThis.rungbook.history)||![...of.values()].some((list)=>list.length>1);
if(!isWhole)page.load('history').then(()=>{const now=mine();if(now)page.hold(()=>history(now),'notice');page.later([remember],'told');},()=>{});
};
const ahead=(stand)=>{
const barred=states.barred()!=='';
byId('aim').hidden=barred;
byId('plan').hidden=barred;
if(barred)return;
const of=aim.aimOf(stand);
const may=(m)=>stand.found.states[m]===readiness.OWNED||stand.found.states[m]===readiness.OPEN||(of.limiter!==null&&of.limiter.movement===m);
const way=aim.way(of,(m)=>(may(m)?field(m):null));
byId('goal').replaceChildren(aim.goalChoice('stand'));
byId('aim-says').replaceChildren(...aim.sentence(of));
const acts=store.adults.isDue()?[]:aim.acts(of);
byId('acts').hidden=acts.length===0;
byId('acts').replaceChildren(...acts);
byId('how-long').replaceChildren(...aim.howLong(of));
byId('way').replaceChildren(...(store.adults.isDue()?[states.adultsFirst()]:[]),...(way?[way]:[]));
const skill=of.goal&&tables.skills.find(({id})=>of.goal&&id===of.goal.id);
byId('to-questions').replaceChildren(...(skill?[make('a',{class:'act quiet',href:`self-test-${skill.id}.html`,text:say('stand.to_the_questions')})]:[]));
drawWeeks(stand);
};
const WHOLE=['rests-list','goal','aim-says','acts','how-long','way','to-questions','changed-since','changed-list','history-list','aside-list','load-says'];
const FRAMES=['nothing-yet','rests','aim','changed','history','aside','all','plan','load'];
const LATE=['changed-since','changed-list','history-list','aside-list','load-says','changed','history','aside','all','plan','load'];
let key='';
const remember=()=>{if(aim&&isWhole&&mine()&&!states.barred())told.keep(key,WHOLE,FRAMES,LATE,null);};
let isAnswered=false;
const answer=async()=>{
if(isAnswered)return;
isAnswered=true;
const goal=document.getElementById('stand-goal');
if(goal instanceof HTMLSelectElement){
goal.removeAttribute('inert');
states.keepsGoal(goal);
}
await page.load('fields-here');
({number}=globalThis.rungbook);
const stand=mine();
if(aim||!stand)return;
for(const step of(document.querySelectorAll('#way li[data-movement]'))){
const was=step.querySelector('.number-line'),m=model.numbers.get(String(step.dataset.movement)),made=was&&m!==undefined?field(m):null;
if(was)was.replaceWith(...(made?[made]:[]));
}
history(stand);
asides(stand);
};
const folded=(byId('plan'));
const drawWeeks=(stand)=>{
byId('plan-list').replaceChildren(...(folded.open?aim.weeks(aim.planOf(stand)):[]));
byId('plan-end').replaceChildren(...(folded.open?aim.weeksEnd(aim.planOf(stand)):[]));
};
folded.addEventListener('toggle',()=>{
const stand=mine();
if(stand&&!aim&&folded.open)bringPlan();
else if(stand&&aim&&!states.barred())drawWeeks(stand);
});
const load=({person,day})=>{
const of=training.lastWeek(person.sessions,day);
byId('load').hidden=of===null;
byId('load-says').textContent=of?say('stand.load',{total:Math.round(of.total),monotony:Math.round(of.monotony*100)/ 100,strain:Math.round(of.strain)}):'';
};
const rests=(stand)=>{
const{found,person,day}=stand;
const kept={paused:store.entries('paused'),restrict:store.entries('restrict')};
const others=person.pauses.filter((pause)=>!found.causes.includes(pause));
const lift=async(key,cause)=>{
await page.load('scale-here');
const says=await globalThis.rungbook.scale.lift(key,states.plain(states.whatRests([cause])));
if(!says)return;
tell(says);
notice.focus();
};
const button=(cause,holds=true)=>{
const{kind,entry}=cause;
if((kind!=='paused'&&kind!=='restrict')||(holds&&cause.until===day))return null;
const{key}=kept[kind][entry];
return make('button',{type:'button',class:'quiet',text:holds?say('stand.lift'):say('stand.take_away'),on:{click:()=>{if(holds)lift(key,cause).catch(()=>tell(say('number.not_loaded')));else store.remove(key);}}});
};
const line=(cause)=>{
const by=states.liftedBy(cause);
return make('li',{},...states.causeWords(cause),' ',by===null?button(cause):make('span',{class:'hint'},...sayNodes('stand.in_brackets',{text:by}),' ',
make('a',{href:cause.kind==='pain'?'if-it-hurts.html#pain':'before-you-start.html#health',text:cause.kind==='pain'?say('entry.if_it_hurts'):say('test.before_you_start')})));
};
const allowed=person.cleared.filter(({on,until})=>on<=day&&(until===null||day<=until));
const said=(pause)=>{
const words={pause:states.causeWords(pause)};
return pause.on>day?sayNodes('stand.to_come',words):pause.until!==null&&pause.until<day?sayNodes('stand.ended',words):sayNodes('stand.allowed',words);
};
const over=!aim?[...document.querySelectorAll('#rests-list > [data-over]')]:states.barred()===''?training.latelyWords(aim.aimOf(stand).trainee).map((text)=>make('li',{'data-over':true,text:aim.dated(text)})):[];
const lines=[...found.causes.map(line),...states.soreLines(stand),...over,...others.map((pause)=>make('li',{class:'hint'},...said(pause),' ',states.liftedBy(pause)===null?button(pause,false):null))];
byId('rests').hidden=lines.length===0&&allowed.length===0;
byId('rests-list').replaceChildren(...lines);
};
const asides=(stand)=>{
const undated=store.entries('undated'),odd=store.odd();
const away=(key)=>make('button',{type:'button',class:'quiet',text:say('stand.take_away'),on:{click:()=>store.remove(key)}});
byId('aside').hidden=stand.aside.length + undated.length + odd.length===0;
byId('aside-list').replaceChildren(...undated.map(({key,entry:of})=>make('li',{},...sayNodes('stand.undated',{movement:make('bdi',{text:of.movement}),got:states.got(of.got||{left:of.left,right:of.right})}),' ',away(key))),
...odd.map(({key,why:reason,text})=>make('li',{},...sayNodes('stand.odd',{reason,text:make('bdi',{},make('code',{text:text.slice(0,200)}))}),' ',key.startsWith('about:')?make('button',{type:'button',class:'quiet',text:say('stand.take_away'),on:{click:()=>store.put(key.slice(6),null)}}):away(key))),
...stand.aside.map(({movement,got,on,why:reason})=>make('li',{},...sayNodes('stand.aside_line',{movement:make('bdi',{text:movement}),got:states.asideGot(got),day:states.day(on),reason}))));
};
const all=(byId('all'));
const drawAll=(stand)=>{
if(all.open)page.load('all').then(()=>globalThis.rungbook.standing.draw(stand),()=>{byId('skills-mine').textContent=say('number.not_loaded');});
};
all.addEventListener('toggle',()=>{
const stand=mine();
if(stand)drawAll(stand);
});
const drawFirst=()=>{
const stand=mine();
key=told.keyNow();
byId('nothing-yet').hidden=stand!==null;
for(const id of['all','changed','rests'])byId(id).hidden=stand===null;
if(aim||!wasTold)for(const id of PLANNED)byId(id).hidden=stand===null||!aim;
const trouble=store.trouble();
if(trouble)byId('storage').textContent=say(trouble==='full'?'stand.storage_full':'stand.storage_forbidden');
if(!stand)return;
changes(stand);
drawAll(stand);
rests(stand);
if(!aim&&told.holds())answer().catch(()=>tell(say('number.not_loaded')));
else if(!aim)bringPlan();
};
const PLANNED=['aim','plan','load','history','aside'],wasTold=told.holds();
const bringPlan=()=>{
page.bring('plan-here').then(()=>{
({training,aim,number}=globalThis.rungbook);
page.hold(drawSoon,'notice');
},()=>{
for(const id of PLANNED)byId(id).hidden=true;
tell(say('number.not_loaded'));
});
};
const withStand=(act)=>()=>{const stand=mine();if(stand&&aim)act(stand);};
const DRAWN=[drawFirst,withStand((stand)=>{if(!states.barred())aim.aimOf(stand);}),withStand((stand)=>{ahead(stand);load(stand);}),withStand((stand)=>{history(stand);asides(stand);}),
withStand((stand)=>{if(!states.barred())aim.planOf(stand);remember();})];
const drawSoon=()=>{
DRAWN.slice(0,-1).forEach((step)=>step());
page.later(DRAWN.slice(-1),'notice');
};
const name=(byId('name-mine'));
name.value=String(store.facts().name||'');
const copyName=()=>{
const who=(store.facts().name||'').normalize('NFD').replace(/[^A-Za-z0-9]+/g,'-').replace(/^-|-$/g,'').toLowerCase();
return `results-${who?`${who}-`:''}${results.dayText(results.today())}.json`;
};
const copyText=()=>`${JSON.stringify(store.all(),null,2)}\n`;
const tellCopy=(text)=>{byId('copy-says').textContent=text;};
byId('save').addEventListener('click',()=>{
page.download(copyName(),copyText(),'application/json');
tellCopy(say('stand.saved',{file:copyName()}));
});
const howToTake=async(exported)=>{
const about=store.facts();
const{there,here,unlike}=store.beside(exported);
const otherName=exported.name!==undefined&&exported.name!==about.name&&(about.name!==undefined||!store.isEmpty());
if(otherName||(there&&here)){
const names={file:exported.name||'',here:about.name||''};
const whose=about.name===undefined?say('stand.copy_named',names):say('stand.copy_other_name',names);
const reasons=[otherName?whose:'',unlike?say('stand.copy_unlike',{n:unlike}):'',there||here?say('stand.copy_only',{there,here}):'']
.filter((text)=>text!=='');
const answer=await page.ask(say('stand.whose_copy'),[make('ul',{},...reasons.map((text)=>make('li',{text}))),make('p',{text:say('stand.copy_choice')})],
[['',say('stand.change_nothing')],['merge',say('stand.put_together')],['replace',say('stand.replace_mine')]]);
if(answer!=='merge')return answer;
}
if(exported.bodyweight===undefined||about.bodyweight===undefined||exported.bodyweight===about.bodyweight)return 'mine';
return page.ask(say('stand.two_weights'),[make('p',{text:say('stand.which_weight',{here:about.bodyweight,file:exported.bodyweight})})],
[['mine',say('stand.keep_weight',{weight:about.bodyweight})],['theirs',say('stand.take_weight',{weight:exported.bodyweight})],['',say('stand.change_nothing')]]);
};
const copyIn=async(file)=>{
const text=await file.text(),day=results.today();
if(!/\.(ya?ml|csv)$/i.test(file.name))return{exported:results.readFile(text,day),notes:[]};
await page.load('take');
const{copies,notes}=globalThis.rungbook.class.read(file.name,text,day,model),own=copies.filter((of)=>of.name===store.facts().name);
const[exported,other]=copies.length>1?own:copies;
if(!copies.length)throw new results.Refused(notes.join('; ')||say('results.unreadable'));
if(!exported||other)throw new results.Refused(say('stand.several_in_copy',{n:copies.length}));
return{exported,notes};
};
const tellTaken=(text)=>{byId('take-says').textContent=text;};
const open=(byId('open'));
open.addEventListener('change',async()=>{
const file=open.files&&open.files[0];
if(!file)return;
try{
if(file.size>results.LARGEST_FILE)throw new results.Refused(say('results.too_large'));
const{exported,notes}=await copyIn(file),answer=await howToTake(exported);
if(answer===null)tellTaken(say('stand.nothing_changed'));
else{
const{added,same,fits}=answer==='replace'?store.replace(exported):store.merge(exported,answer==='theirs');
tellTaken([!fits?say('stand.no_room'):same?say('stand.taken_in_some',{n:added,same}):say('stand.taken_in',{n:added}),...notes].join(' '));
}
}catch(error){
tellTaken(error instanceof results.Refused?say('stand.refused',{why:error.message}):say('stand.refused',{why:say('results.unreadable')}));
}
open.value='';
});
byId('erase').addEventListener('click',async()=>{
const others=store.people().filter(({isHere})=>!isHere).map(({name})=>name||say('stand.no_name')).join(say('list.separator'));
const theirs=others?` ${say('stand.erase_others',{others})}`:'';
const answer=await page.ask(say('stand.erase_ask'),[make('p',{text:`${say('stand.erase_what')}${theirs}`})],[['keep',say('stand.keep_them')],['erase',say('stand.erase_everything')]]);
if(answer==='erase'){
store.erase();
name.value='';
weightInput.value='';
byId('have-list').querySelectorAll('input').forEach((box)=>{box.checked=false;});
people();
tell(`${say(others?'stand.erased_one':'stand.erased')}${theirs}`);
}
});
byId('share').addEventListener('click',async()=>{
if(!aim)await page.load('plan-here').then(()=>{({training,aim,number}=globalThis.rungbook);},()=>{});
const stand=mine();
if(!stand||!aim)return;
const of=aim.aimOf(stand),about=store.facts(),barred=states.barred()!=='';
const newest=[...stand.person.tested].sort((a,b)=>b.on - a.on||b.entry - a.entry).slice(0,MOST_SHARED)
.map((tested)=>`${page.marked(tables,tested.movement)}: ${states.plain(states.got(readiness.sidesText(tested,model.target(tested.movement).atMost)))}, ${states.when(tested).textContent}`);
const pains=[...states.sore(stand).map((pain)=>training.painWords(tables,pain,null)),...training.latelyWords(of.trainee)].map(aim.dated);
const text=[[about.name,tables.school,results.dayWords(stand.day)].filter(Boolean).join(say('list.separator')),...pains,...(barred?[]:[aim.sentenceText(of)]),...newest,say('stand.share_end')].join('\n');
const file='File' in globalThis?new File([copyText()],copyName(),{type:'application/json'}):null;
try{
const canFile=file&&'canShare' in navigator&&navigator.canShare({files:[file]});
if(canFile)await navigator.share({files:[file],text});
else if('share' in navigator)await navigator.share({text});
else await(navigator).clipboard.writeText(text);
tellCopy(canFile?say('stand.shared_file'):'share' in navigator?say('stand.shared'):say('stand.in_clipboard'));
}catch{
tellCopy(say('stand.not_shared'));
}
});
const weight=(byId('weight'));
const weightInput=(byId('weight-input'));
weightInput.value=String(store.facts().bodyweight||'');
const tellWeight=(text)=>{byId('weight-says').textContent=text;};
weight.addEventListener('submit',(event)=>{
event.preventDefault();
const unit=units.current()==='imperial'?'lb':'kg';
const bare=weightInput.value.trim().replace(',','.');
const written=/[a-z]/i.test(bare)?bare:`${bare} ${unit}`;
const mass=targets.readMass(written);
if(mass===null||mass<10*targets.KILOGRAM||mass>500*targets.KILOGRAM){
page.blame(weightInput,byId('weight-says'),say('stand.no_weight',{example:`72 ${unit}`}));
return;
}
store.put('bodyweight',written);
weightInput.value=written;
page.blame(weightInput,byId('weight-says'),'');
tellWeight(say('stand.weight_kept'));
});
const equipment=[...new Set(tables.equipment.flat(2))].sort();
byId('have-list').replaceChildren(...equipment.map((word)=>{
const box=(make('input',{type:'checkbox',id:`have-${word}`,value:word}));
box.checked=(store.facts().have||[]).includes(word);
box.addEventListener('change',()=>{
const have=new Set(store.facts().have||[]);
if(box.checked)have.add(word);
else have.delete(word);
store.put('have',have.size?[...have].sort():null);
});
return make('li',{},box,' ',make('label',{for:`have-${word}`,text:tables.gear[word]||word.replace(/-/g,' ')}));
}));
byId('name-mine').addEventListener('change',()=>store.put('name',(byId('name-mine')).value.trim()||null));
const people=()=>{
const all=store.people(),field=(make('input',{id:'new-person',maxlength:60,autocomplete:'off',dir:'auto'}));
const fault=make('p',{class:'fault',role:'alert',id:'new-person-fault'});
byId('people-list').replaceChildren(...(all.length>1?all.map(({who,name,isHere})=>make('li',{},isHere?make('strong',{text:say('stand.here',{name:name||say('stand.no_name')})})
:make('button',{type:'button',class:'quiet',text:name||say('stand.no_name'),on:{click:()=>store.become(who)}}))):[]),
make('li',{},make('form',{class:'fields',on:{submit:(event)=>{
event.preventDefault();
page.blame(field,fault,field.value.trim()?'':say('stand.write_name'));
if(field.value.trim())store.welcome(field.value.trim());
}}},make('p',{class:'field'},make('label',{for:'new-person',text:say('stand.new_person')}),field),make('button',{type:'submit',class:'quiet',text:say('stand.add_person')}),fault)));
};
people();
if(location.hash==='#plan')folded.open=true;
if(location.hash==='#people')(byId('people')).open=true;
store.onChange(()=>page.later(DRAWN,'notice'));
drawSoon();
})();
