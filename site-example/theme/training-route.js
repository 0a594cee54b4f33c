'use strict';self.rungbookIs+="training-route.js=204400fc ";
'use strict';
(()=>{
const{readiness,training}=globalThis.rungbook;
const{TRUE,WHOLE}=readiness;
const ALL=-1,ANY=-2;
const NOTHING={k:0,leaf:-1,all:true,parts:[]};
const nested=(flat,isTrue)=>{
let at=0;
const node=()=>{
const kind=flat[at++];
if(kind>=0)return isTrue(kind)?NOTHING:{k:1,leaf:kind,all:false,parts:[]};
const first=flat[at++],count=kind<ANY?flat[at++]:first;
return{k:kind===ALL?count:kind===ANY?1:first,leaf:-1,all:kind===ALL,parts:Array.from({length:count},()=>node())};
};
return flat.length?node():NOTHING;
};
const holds=(tree,of)=>{
if(tree.leaf>=0)return of(tree.leaf);
let met=0;
for(const part of tree.parts)if(met<tree.k&&holds(part,of))met +=1;
return met>=tree.k;
};
const leaves=(tree)=>(tree.leaf>=0?[tree.leaf]:tree.parts.flatMap(leaves));
const searcher=(c,goal)=>{
const{model,tables}=c;
const trees=new Map();
const todo=[goal];
for(let m=todo.pop();m!==undefined;m=todo.pop()){
if(trees.has(m))continue;
const of=c.found.judge(m),tree=nested(tables.needs[m],(leaf)=>of(leaf)===TRUE);
trees.set(m,tree);
todo.push(...leaves(tree).map(model.of));
}
const chain=[...trees.keys()].sort((a,b)=>a - b),place=new Map(chain.map((m,i)=>[m,i]));
const needs=chain.map((m)=>(trees.get(m)));
const at=(leaf)=>Number(place.get(model.of(leaf)));
const above=chain.map(()=>[]);
needs.forEach((tree,i)=>leaves(tree).forEach((leaf)=>above[at(leaf)].push(i)));
const reached=(stands)=>{
const out=new Uint8Array(chain.length);
const isReached=(leaf)=>out[at(leaf)]===1;
let front=chain.map((_,i)=>i).filter((i)=>stands(i)&&holds(needs[i],isReached));
while(front.length){
front.forEach((i)=>{out[i]=1;});
front=[...new Set(front.flatMap((i)=>above[i]))].filter((i)=>!out[i]&&stands(i)&&holds(needs[i],isReached));
}
return out;
};
const fromGround=chain.map((_,i)=>i).sort((a,b)=>tables.stage[chain[a]]- tables.stage[chain[b]]);
return{chain,place,needs,at,reached,fromGround,cost:chain.map((m)=>tables.weeks[2*m]+ tables.weeks[2*m + 1])};
};
const essentials=(of,isReached,first,count)=>{
const words=Math.ceil(count / 32),whole=()=>new Uint32Array(words).fill(0xffffffff);
const sets=of.chain.map(whole);
const without=(tree)=>{
if(tree.leaf>=0)return isReached[of.at(tree.leaf)]?sets[of.at(tree.leaf)]:whole();
const enough=Array.from({length:tree.k + 1},(_,i)=>new Uint32Array(words).fill(i?0:0xffffffff));
for(const part of tree.parts){
const lacks=without(part);
for(let k=tree.k;k>0;k -=1)for(let w=0;w<words;w +=1)enough[k][w]|=enough[k - 1][w]&~lacks[w];
}
return enough[tree.k].map((word)=>~word);
};
const order=of.fromGround.filter((i)=>isReached[i]);
for(let changed=true;changed;){
changed=false;
for(const i of order){
const set=Uint32Array.from(without(of.needs[i]));
if(i>=first&&i<first + count)set[(i - first)>>5]|=1<<((i - first)&31);
if(set.some((word,w)=>word!==sets[i][w])){
sets[i]=set;
changed=true;
}
}
}
return(i)=>{
const out=[];
for(let bit=0;bit<count;bit +=1)if((sets[i][bit>>5]>>>(bit&31))&1&&isReached[first + bit])out.push(first + bit);
return out;
};
};
const drawn=(i)=>{
const mix=(n)=>{
const a=Math.imul(n ^(n>>>16),0x45d9f3b),b=Math.imul(a ^(a>>>16),0x45d9f3b);
return(b ^(b>>>16))>>>0;
};
return mix(2*i + 1)*0x100000 +(mix(2*i + 0x5eed)>>>12);
};
const MODULUS=2**52;
const shorter=(a,b)=>{
const by=a.cost - b.cost||a.set.length - b.set.length;
if(by)return by;
for(let i=0;i<a.set.length;i +=1)if(a.set[i]!==b.set[i])return a.set[i]- b.set[i];
return 0;
};
const heap=(compare)=>{
const all=[];
const swap=(a,b)=>{[all[a],all[b]]=[all[b],all[a]];};
return{
push:(one)=>{
all.push(one);
for(let i=all.length - 1;i>0&&compare(all[i],all[(i - 1)>>1])<0;i=(i - 1)>>1)swap(i,(i - 1)>>1);
},
pop:()=>{
if(all.length)swap(0,all.length - 1);
const top=all.pop();
for(let i=0;;){
const[left,right]=[2*i + 1,2*i + 2];
let least=left<all.length&&compare(all[left],all[i])<0?left:i;
if(right<all.length&&compare(all[right],all[least])<0)least=right;
if(least===i)return top;
swap(i,least);
i=least;
}
},
};
};
const route=(c,leaf)=>{
const goal=c.model.of(leaf);
if(c.found.judge(goal)(leaf)===TRUE)return{movements:[],cost:0};
const of=searcher(c,goal),{chain,needs,at}=of,n=chain.length,top=Number(of.place.get(goal));
const isReached=of.reached(()=>true);
if(!isReached[top])return null;
const{looked_at:most,large:block}=c.tables.route,large=n>block;
const blocks=Array.from({length:Math.ceil(n / block)},(_,i)=>i*block);
const essential=(first)=>essentials(of,isReached,first,Math.min(block,n - first));
const kept=[];
const all=large?null:essential(0);
kept[top]=all?all(top):blocks.flatMap((first)=>essential(first)(top));
const without=(i)=>(kept[i]||(kept[i]=all?all(i):[i]));
const has=(set,i)=>{
let low=0,high=set.length;
while(low<high){
const middle=(low + high)>>1;
if(set[middle]<i)low=middle + 1;
else high=middle;
}
return set[low]===i;
};
const grown=({cost,set,from,key},option)=>{
const more=[...new Set(option.flatMap(without))].filter((i)=>!has(set,i)).sort((a,b)=>a - b);
const all=new Uint32Array(set.length + more.length);
let at=0,taken=0,weeks=cost,sum=key;
for(const i of more){
let end=taken;
while(end<set.length&&set[end]<i)end +=1;
all.set(set.subarray(taken,end),at);
at +=end - taken;
taken=end;
all[at]=i;
at +=1;
weeks +=of.cost[i];
sum=(sum + drawn(i))% MODULUS;
}
all.set(set.subarray(taken),at);
return{cost:weeks,set:all,from:Math.min(from,more.length?more[0]:Infinity),key:sum};
};
const ways=(tree,has)=>{
if(tree.leaf>=0)return isReached[at(tree.leaf)]?[[at(tree.leaf)]]:[];
const open=tree.parts.filter((part)=>!holds(part,has));
return(tree.all?open.slice(0,1):open).flatMap((part)=>ways(part,has));
};
const inside=new Uint8Array(n);
const options=(node)=>{
const{set}=node,isIn=(l)=>inside[at(l)]===1;
inside.fill(0);
set.forEach((i)=>{inside[i]=1;});
const lacking=set.find((i)=>i>=node.from&&!holds(needs[i],isIn));
node.from=lacking===undefined?Infinity:lacking;
if(lacking!==undefined)return ways(needs[lacking],isIn);
const derived=of.reached((i)=>inside[i]===1);
if(derived[top])return null;
const outside=[...set].filter((i)=>!derived[i]).flatMap((i)=>leaves(needs[i]).map(at)).filter((i)=>!inside[i]&&isReached[i]);
return[...new Set(outside)].sort((a,b)=>a - b).map((i)=>[i]);
};
const found=search(grown({cost:0,set:new Uint32Array(),from:Infinity,key:0},[top]),options,grown,most);
return found&&{movements:[...found.set].map((i)=>chain[i]),cost:found.cost};
};
const search=(start,options,grown,most)=>{
const open=heap(shorter),seen=new Set();
open.push(start);
let looked=0;
for(let node=open.pop();node;node=open.pop()){
let ways=options(node);
if(!ways)return node;
if(looked>=most){
for(let best=node;;ways=options(best)){
if(!ways)return best;
const set=best,larger=ways.map((way)=>grown(set,way)).sort(shorter);
if(!larger.length)return null;
best=larger[0];
}
}
looked +=1;
for(const way of ways){
const larger=grown(node,way);
if(seen.has(larger.key))continue;
seen.add(larger.key);
open.push(larger);
}
}
return null;
};
const chainOf=(model,from)=>{
const seen=new Set(from),todo=[...from];
for(let m=todo.pop();m!==undefined;m=todo.pop()){
for(const leaf of readiness.leavesOf(model.tables.needs[m])){
const below=model.of(leaf);
if(seen.has(below))continue;
seen.add(below);
todo.push(below);
}
}
return[...seen];
};
const ofSkill=(c,skill,chosen)=>({id:skill.id,leaf:skill.goal,chain:skill.members,chosen,route:route(c,skill.goal)});
const goalOf=(c)=>{
const{tables,model,person:{goal}}=c;
const skill=tables.skills.find(({id})=>id===goal);
if(skill)return ofSkill(c,skill,true);
const movement=goal?model.numbers.get(goal):undefined;
if(goal&&movement!==undefined)return{id:tables.ids[movement],leaf:movement,chain:chainOf(model,[movement]),chosen:true,route:route(c,movement)};
const owned=({members})=>members.filter((m)=>training.isOwned(c,m)).length;
const open=tables.skills.filter((one)=>c.found.judge(model.of(one.goal))(one.goal)!==TRUE)
.map((one)=>({one,part:owned(one),of:one.members.length})).sort((a,b)=>b.part*a.of - a.part*b.of);
while(open.length){
const[first]=open,alike=open.filter(({part,of})=>part*first.of===first.part*of);
const reached=alike.map(({one})=>ofSkill(c,one,false)).filter((one)=>one.route);
if(reached.length)return reached.reduce((a,b)=>(Number(b.route&&b.route.cost)<Number(a.route&&a.route.cost)?b:a));
open.splice(0,alike.length);
}
return null;
};
const untrue=(tree,isTrue)=>{
if(holds(tree,isTrue))return[];
return tree.leaf>=0?[tree.leaf]:tree.parts.flatMap((part)=>untrue(part,isTrue));
};
const hardness=(c,{sets,amount,seconds,unit,load,hits,atMost})=>[readiness.mass(unit,load,c.person.bodyWeight)||0,sets,atMost?-amount:amount,seconds,hits];
const easiest=(c,asked)=>asked.map((leaf)=>({leaf,hard:hardness(c,c.model.target(leaf))}))
.reduce((a,b)=>(b.hard[b.hard.findIndex((n,i)=>n!==a.hard[i])]<a.hard[b.hard.findIndex((n,i)=>n!==a.hard[i])]?b:a)).leaf;
const heavier=(a,b)=>b.weight - a.weight||b.opens.length - a.opens.length||a.movement - b.movement;
const gaps=(c,goal)=>{
const{model,tables}=c,top=model.of(goal.leaf);
const onRoute=new Set(goal.route?goal.route.movements:[]);
const all=new Map();
if(!onRoute.has(top))return new Map();
all.set(top,{asked:[],over:new Set()});
const todo=[top];
for(let m=todo.pop();m!==undefined;m=todo.pop()){
if(training.isOwned(c,m))continue;
const of=c.found.judge(m);
for(const leaf of untrue(nested(tables.needs[m],()=>false),(l)=>of(l)===TRUE)){
const below=model.of(leaf);
if(!onRoute.has(below))continue;
const known=all.get(below)||{asked:[],over:new Set()};
if(!all.has(below))todo.push(below);
all.set(below,known);
known.asked.push(leaf);
known.over.add(m);
}
}
const out=new Map();
for(const[m,{asked,over}]of all){
const leaf=m===top?goal.leaf:easiest(c,asked),now=training.now(c,m);
out.set(m,{movement:m,leaf,now,share:training.share(c,now,model.target(leaf)),opens:[...over].sort((a,b)=>a - b),weight:0,low:0,high:0});
}
weigh(c,out);
return out;
};
const weigh=({tables:{weeks}},all)=>{
const paths=new Map();
const more=(a,b)=>a[0]- b[0]||a[1]- b[1]||a[2]- b[2];
const longest=(m,seen)=>{
const kept=paths.get(m);
if(kept)return kept;
const{opens,share}=(all.get(m)),left=WHOLE - share,[low,high]=[weeks[2*m],weeks[2*m + 1]];
seen.add(m);
let best=[0,0,0];
for(const up of opens){
if(seen.has(up))continue;
const path=longest(up,seen);
if(more(path,best)>0)best=path;
}
seen.delete(m);
const path=[(low + high)*left + best[0],low*left + best[1],high*left + best[2]];
paths.set(m,path);
return path;
};
for(const gap of all.values())[gap.weight,gap.low,gap.high]=longest(gap.movement,new Set());
};
const limiter=(c,candidates)=>{
const worked=candidates.flatMap(({gap,insteadOf,rule})=>(gap&&insteadOf===null&&rule!=='care first'?[gap]:[]));
const last=({now,share,movement})=>(now===null||share===WHOLE?2:0)+(training.isOpen(c,movement)?0:1);
return worked.sort((a,b)=>last(a)- last(b)||heavier(a,b))[0]||null;
};
Object.assign(training,{goalOf,gaps,heavier,limiter,chainOf});
})();
