'use strict';self.rungbookIs+="people.js=602ed934 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"history.as_a_table":"As a table","morning.aside":"aside","morning.ask":"first","morning.held_back":"Held back most","morning.nearest":"no goal chosen; nearest: {goal}","morning.new":"new","morning.next":"next","morning.no_end":"{pause}, until it is lifted","morning.no_goal":"no goal chosen","morning.none":"nothing","morning.to_test":"To test today","morning.together":"Could work together","morning.watch":"watch","people.another":"Another person","people.aside_line":"{name}: {movement}, {got}, {day}: {reason}","people.barred":"{name} (ask first)","people.count":{"one":"{n} person.","other":"{n} people."},"people.how_it_went":"How it went","people.less":"less and easier while it hurts: {what}","people.no_more":"no more than before while it hurts: {what}","people.nobody":"Nobody is open.","people.nothing_for_all":"Nothing that is open to all.","people.numbered":"{name} ({n})","people.refused":"Refused: {list}.","people.same_name":"Two of one name","people.same_name_says":"{name} is open already. Is this the same person, with a newer copy?","people.same_person":"The same: take the newer","people.too_large":"it is larger than 1 MB","people.unreadable":"it cannot be read","shared.movement":"Movement","stand.load":"Seven days, effort × minutes: {total}; monotony {monotony}, strain {strain}."});
'use strict';
'after page.js results.js states.js';
(()=>{
const{results,readiness,page,states}=globalThis.rungbook;
const{make,named,byId}=page;
const{say,sayNodes}=globalThis.rungbook.words;
const{model,mark}=states;
if(!model)return;
const{tables}=model;
let people=[];
const choice=(byId('of-skill'));
choice.append(...tables.skills.map(({name},i)=>make('option',{value:i,text:name})));
const saying={
say:(key,values)=>sayNodes(key,values),name:(m)=>named(tables,m),
join:(parts,between)=>parts.flatMap((part,i)=>(i?[between,...[part].flat()]:[part].flat())),
causes:(causes)=>states.together(causes).map((all)=>(all[0].until===null&&(all[0].kind==='paused'||all[0].kind==='restrict')?sayNodes('morning.no_end',{pause:states.causeWords(all[0],all)}):states.causeWords(all[0],all))),
};
const label=(key)=>(key==='ask'?say('morning.ask'):key==='next'?say('morning.next'):key==='new'?say('morning.new'):key==='watch'?say('morning.watch'):say('morning.aside'));
const verdict=(name,look)=>{
const{training,aim,history,morning}=globalThis.rungbook;
const called=look.goal?[morning.goalOf(look,aim.goalName(look.goal),saying)].flat():[say('morning.no_goal')];
const goal=look.goal&&!look.goal.chosen?sayNodes('morning.nearest',{goal:called}):called;
const drawn=look.histories.filter(({points})=>points.length>1);
const week=training.lastWeek(look.c.person.sessions,look.c.day);
return make('section',{class:'skill-stand'},make('h3',{},make('bdi',{text:name})),make('p',{},...saying.join([goal,...morning.head(look,saying)],' · ')),
make('dl',{},...morning.lines(look,saying).flatMap(([key,parts])=>[make('dt',{text:label(key)}),make('dd',{},...[parts].flat())])),
week?make('p',{text:say('stand.load',{total:Math.round(week.total),monotony:Math.round(week.monotony*100)/ 100,strain:Math.round(week.strain)})}):null,
drawn.length?make('details',{},make('summary',{text:say('people.how_it_went')}),...drawn.map((of)=>make('article',{'data-movement':tables.ids[of.movement]},make('h4',{},named(tables,of.movement)),
history.says(look.c,of),history.picture(look.c,of),make('details',{},make('summary',{text:say('history.as_a_table')}),history.table(look.c,of),...history.beside(look.c,of))))):null);
};
const draw=()=>{
const skill=choice.value===''?null:tables.skills[Number(choice.value)];
const rows=skill?skill.members:model.order;
byId('class').hidden=people.length===0;
const called=(i)=>{
const{name,barred}=people[i],alike=people.filter((of)=>of.name===name),n=alike.indexOf(people[i])+ 1;
const numbered=alike.length>1?say('people.numbered',{name,n}):name;
return barred?say('people.barred',{name:numbered}):numbered;
};
const may=rows.filter((m)=>people.length&&people.every(({look:{c}})=>globalThis.rungbook.training.isForAll(c,m)));
const whileItHurts=({c,trains},m,part)=>{
const{training}=globalThis.rungbook,{worse}=training.ease(c,m,c.day,c.day),what=states.partWord(tables.parts[part]);
if(trains.has(m)&&worse)return say('people.less',{what});
return trains.has(m)||(!worse&&training.now(c,m))?say('people.no_more',{what}):training.whyOf(c,training.leftFor(c,m,part));
};
const cell=({found,barred,look},m)=>{
const{training}=globalThis.rungbook,state=found.states[m],isOwned=state===readiness.OWNED,asks=state===readiness.OPEN||state===readiness.TEST_FIRST;
const part=isOwned||asks?training.sorePart(look.c,m):-1,why=part<0?'':whileItHurts(look,m,part);
if(why&&asks&&!barred)return[make('span',{class:'state state-paused','data-state':readiness.STATES[state],'data-sore':true},make('span',{class:'state-shape','aria-hidden':'true'}),make('span',{text:why}))];
return[mark(state,found.counted[m]===1,barred),why?make('small',{text:` ${why}`}):null];
};
byId('everyone').replaceChildren(...(may.length?may.map((m)=>make('li',{},named(tables,m))):[make('li',{text:say('people.nothing_for_all')})]));
byId('class-table').replaceChildren(
make('thead',{},make('tr',{},make('th',{scope:'col',text:say('shared.movement')}),...people.map((_,i)=>make('th',{scope:'col',text:called(i)})))),
make('tbody',{},...rows.map((m)=>make('tr',{'data-movement':tables.ids[m]},make('th',{scope:'row'},named(tables,m)),
...people.map((of)=>make('td',{},...cell(of,m)))))));
const heads=new Map([['held_back',say('morning.held_back')],['together',say('morning.together')],['to_test',say('morning.to_test')]]);
const tableOf=(lines)=>make('ul',{class:'plain'},...(lines.length?lines:[say('morning.none')]).map((line)=>make('li',{},...[line].flat())));
byId('together').replaceChildren(...(people.length>1?globalThis.rungbook.morning.together(people.map(({look})=>look),(i)=>make('bdi',{text:called(i)}),saying):[])
.flatMap(([key,lines])=>[make('h2',{text:heads.get(key)}),tableOf(lines)]));
byId('each').replaceChildren(...people.map(({look},i)=>verdict(called(i),look)));
byId('class-aside').replaceChildren(...people.flatMap(({aside},i)=>aside.map((of)=>make('li',{},...sayNodes('people.aside_line',{name:called(i),movement:make('bdi',{text:of.movement}),got:states.asideGot(of.got),day:states.day(of.on),reason:of.why})))));
};
const open=(byId('open'));
open.addEventListener('change',async()=>{
const day=results.today();
const refused=[];
const files=[...(open.files||[])];
try{
await page.load('class-here');
}catch{
byId('notice').textContent=say('number.not_loaded');
return;
}
for(const file of files){
try{
if(file.size>results.LARGEST_FILE)throw new results.Refused(say('people.too_large'));
const{copies,notes}=globalThis.rungbook.class.read(file.name,await file.text(),day,model);
refused.push(...notes.map((note)=>`${file.name}: ${note}`));
for(const exported of copies){
const{person,aside}=results.person(exported,model,day),found=readiness.assess(model,person,day);
const of={name:exported.name||file.name.replace(/\.(json|ya?ml|csv)$/i,''),found,aside,barred:globalThis.rungbook.health.saysOn(person.screened,day,person.born)==='ask',look:globalThis.rungbook.morning.look(model,person,found,aside,day)};
const known=people.findIndex(({name})=>name===of.name);
const same=known>=0&&await page.ask(say('people.same_name'),[make('p',{},...sayNodes('people.same_name_says',{name:make('bdi',{text:of.name})}))],[['same',say('people.same_person')],['',say('people.another')]])==='same';
if(same)people[known]=of;
else people.push(of);
}
}catch(error){
refused.push(`${file.name}: ${error instanceof results.Refused?error.message:say('people.unreadable')}`);
}
}
byId('notice').textContent=refused.length?say('people.refused',{list:refused.join('; ')}):say('people.count',{n:people.length});
open.value='';
draw();
});
byId('close-all').addEventListener('click',()=>{
people=[];
byId('notice').textContent=say('people.nobody');
draw();
});
choice.addEventListener('change',draw);
})();
