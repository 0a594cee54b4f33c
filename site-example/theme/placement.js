'use strict';self.rungbookIs+="placement.js=4253a8fa ";
'use strict';
(()=>{
const{value,leavesOf,presume,TRUE,UNKNOWN,FALSE,UNTESTED,GUARDED}=globalThis.rungbook.readiness;
const worked=new WeakMap();
const next=(model,assessment,chain,asked,today)=>{
const{tables}=model,{state}=tables.placement;
const members=[...chain].sort((a,b)=>tables.stage[a]- tables.stage[b]||a - b);
const paused=(m)=>!assessment.reached[m];
const now={
shown:assessment.known.shown,presumed:assessment.known.presumed,
isTested:(m)=>assessment.known.latest.has(m),
};
const judge=(board,leaf,guarded)=>{
if(board.shown[leaf]!==UNTESTED)return board.shown[leaf];
return board.presumed[leaf]&&!guarded?TRUE:UNKNOWN;
};
const needs=(board,m)=>value(tables.needs[m],(leaf)=>judge(board,leaf,model.is(m,GUARDED)));
const beyond=(board)=>{
const out=new Uint8Array(model.count);
for(let changed=true;changed;){
changed=false;
for(const m of members){
if(out[m])continue;
const guarded=model.is(m,GUARDED);
const worth=value(tables.needs[m],(leaf)=>{
const judged=judge(board,leaf,guarded),of=model.of(leaf);
return judged===UNKNOWN&&out[of]&&!board.isTested(of)&&!board.presumed[leaf]?FALSE:judged;
});
if(worth===FALSE){
out[m]=1;
changed=true;
}
}
}
return out;
};
const isOwned=(board,m)=>board.shown[m]===TRUE||(board.shown[m]===UNTESTED&&board.presumed[m]===1);
const undecided=(board,past)=>
members.filter((m)=>!paused(m)&&!past[m]&&!isOwned(board,m)&&needs(board,m)===UNKNOWN);
const after=(m,met)=>{
const shown=now.shown.slice(),presumed=now.presumed.slice();
const isTested=(other)=>other===m||now.isTested(other);
for(const leaf of model.demands[m]){
presumed[leaf]=0;
shown[leaf]=met?TRUE:FALSE;
}
if(met&&tables.presume)presume(model,[m],isTested,presumed);
return{shown,presumed,isTested};
};
const useful=(board,open,past)=>{
const out=new Set();
for(const m of open){
const guarded=model.is(m,GUARDED);
for(const leaf of leavesOf(tables.needs[m])){
const of=model.of(leaf);
if(judge(board,leaf,guarded)===UNKNOWN&&!past[of]&&!paused(of))out.add(of);
}
}
return out;
};
const left=(m,met)=>{
const board=after(m,met),above=beyond(board),doubt=undecided(board,above);
return(state*doubt.length + useful(board,doubt,above).size)**2;
};
const chains=worked.get(assessment)||new Map(),known=chains.get(chain)||new Map();
worked.set(assessment,chains.set(chain,known));
const lefts=(m)=>{
const both=known.get(m)||[left(m,true),left(m,false)];
known.set(m,both);
return both;
};
const past=beyond(now);
const open=undecided(now,past);
const unasked=[...useful(now,open,past)].filter((m)=>!asked.includes(m));
const forToday=unasked.filter((m)=>mayBeTested(model,assessment,m,today));
const earliest=Math.min(...forToday.map((m)=>tables.day_order[m]));
const candidates=unasked.filter((m)=>!forToday.includes(m)||tables.day_order[m]===earliest);
const stages=(list)=>list.map((m)=>tables.stage[m]);
const owned=Math.max(-1,...stages(members.filter((m)=>isOwned(now,m))));
const missing=Math.min(Infinity,...stages(members.filter((m)=>now.shown[m]===FALSE)));
const likely=(m)=>5 +(tables.stage[m]<=owned?4:0)-(tables.stage[m]>=missing?3:0);
let best=null;
for(const m of candidates){
const[met,missed]=lefts(m),rank=[likely(m)*met +(10 - likely(m))*missed,tables.day_order[m],m];
if(!best||rank[0]- best[0]<0||(rank[0]===best[0]&&(rank[1]- best[1]||rank[2]- best[2])<0))best=rank;
}
return best&&{movement:best[2],today:mayBeTested(model,assessment,best[2],today),left:unasked.length};
};
const isDone=({sides})=>sides.some(({amount})=>amount!==0);
const mayBeTested=(model,assessment,m,today)=>{
const{tables}=model,{strength,all_out_sets:most}=tables.placement;
const done=[...assessment.known.latest].filter(([,results])=>results[0].on===today&&results.some(isDone));
const inOrder=done.every(([of])=>tables.day_order[of]<=tables.day_order[m]);
const sets=({sides})=>Math.max(...sides.map((got)=>got.sets*Math.max(got.of,1)));
const same=done.filter(([of])=>tables.pattern[of]===tables.pattern[m]).flatMap(([,results])=>results).filter(isDone).reduce((all,tested)=>all + sets(tested),0);
const fresh=tables.day_order[m]<strength||same<most;
return Boolean(assessment.reached[m])&&inOrder&&fresh&&assessment.needs[m]===TRUE;
};
globalThis.rungbook.placement={next,mayBeTested};
})();
