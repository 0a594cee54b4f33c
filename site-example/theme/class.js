'use strict';self.rungbookIs+="class.js=e2cebf52 ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"class.column":"The table has a column “{column}” that is not read; the columns are {list}.","class.column_like":"The table has a column “{column}” that is not read; did you mean “{like}”?","class.crowded":"a class has at most {n} people","class.no_column":"the column “{column}” is missing; begin with the row name,movement,got,on,in_reserve","class.not_plain":"line {line} is YAML that this page does not read: write keys, lists with dashes, and records in braces, without anchors, tags or texts of several lines; or save it as JSON","class.row":"line {line}: {why}","class.row_needs":"a row needs a name, a movement and what was got","class.two_births":"{name} is born in {one} and in {other}; two people need two names","results.too_large":"The file is larger than 1 MB"});
'use strict';
(()=>{
const{results}=globalThis.rungbook;
const{Refused}=results;
const{say}=globalThis.rungbook.words;
const COLUMNS=['name','movement','got','left','right','on','in_reserve','bodyweight','with','paused','until','born','goal'];
const MOST_PEOPLE=globalThis.rungbook.health.LIMITS.class;
const partedBy=(text)=>{
const outside=text.split(/\r?\n/,1)[0].split('"').filter((_,i)=>i % 2===0).join('');
const count=(mark)=>outside.split(mark).length;
return[',',';','\t'].reduce((best,mark)=>(count(mark)>count(best)?mark:best));
};
const rowsOf=(text)=>{
const mark=partedBy(text);
const rows=[];
let cells=([]),cell='',isQuoted=false,line=1,begins=1;
const endRow=()=>{
cells.push(cell.trim());
if(cells.some((of)=>of!==''))rows.push({cells,line:begins});
[cells,cell]=[[],''];
};
for(let i=0;i<text.length;i +=1){
const letter=text[i];
if(isQuoted){
if(letter==='"'&&text[i + 1]==='"'){cell +='"';i +=1;}
else if(letter==='"')isQuoted=false;
else cell +=letter;
}else if(letter==='"'&&cell.trim()==='')[cell,isQuoted]=['',true];
else if(letter===mark){cells.push(cell.trim());cell='';}
else if(letter==='\n'||letter==='\r'){endRow();begins=line +(letter==='\n'?1:0);}
else cell +=letter;
if(letter==='\n')line +=1;
}
endRow();
return rows;
};
const distance=(a,b)=>{
let row=[...Array(b.length + 1).keys()];
for(let i=1;i<=a.length;i +=1)row=row.reduce((next,above,j)=>[...next,j===0?i:Math.min(above + 1,next[j - 1]+ 1,row[j - 1]+(a[i - 1]===b[j - 1]?0:1))],[]);
return row[b.length];
};
const nearest=(word)=>COLUMNS.map((of)=>({of,far:distance(word,of)})).sort((a,b)=>a.far - b.far)[0];
const readTable=(text,day,model)=>{
const[head,...rows]=rowsOf(text);
const notes=[];
const columns=(head?head.cells:[]).map((word)=>word.toLowerCase());
for(const word of columns.filter((of)=>!COLUMNS.includes(of))){
const{of,far}=nearest(word);
notes.push(far<=2?say('class.column_like',{column:word,like:of}):say('class.column',{column:word,list:COLUMNS.join(', ')}));
}
for(const name of['name','movement',...(columns.includes('left')&&columns.includes('right')?[]:['got'])]){
if(!columns.includes(name))throw new Refused(say('class.no_column',{column:name}));
}
const people=new Map();
for(const{cells,line}of rows){
const cell=(name)=>{const at=columns.indexOf(name);return at<0||!cells[at]?undefined:cells[at];};
const note=(why)=>notes.push(say('class.row',{line,why}));
const name=cell('name'),movement=cell('movement'),isResult=['got','left','right'].some((of)=>cell(of)!==undefined);
const isOfPerson=['bodyweight','paused','born','goal'].some((of)=>cell(of)!==undefined);
if(name===undefined||isResult!==(movement!==undefined)||!(isResult||isOfPerson)){
note(say('class.row_needs'));
continue;
}
if(!people.has(name)&&people.size>=MOST_PEOPLE)throw new Refused(say('class.crowded',{n:MOST_PEOPLE}));
const known=people.get(name)||{copy:{results:1,name,tested:[],trained:[],paused:[]},weighed:''};
const copy={...known.copy,tested:[...known.copy.tested],paused:[...known.copy.paused]};
const on=cell('on'),load=cell('with'),given=(key,value)=>(value===undefined?{}:{[key]:value});
const loaded=(got)=>(got===undefined||load===undefined?got:`${got} with ${load}`);
if(isResult)copy.tested.push({movement,...given('got',loaded(cell('got'))),...given('left',loaded(cell('left'))),...given('right',loaded(cell('right'))),...given('on',on),...given('in_reserve',cell('in_reserve')),...given('bodyweight',cell('bodyweight'))});
const what=cell('paused');
if(what!==undefined){
const{tables}=model,key=tables.parts.includes(what)?'part':tables.classes.includes(what)?'class':tables.patterns.includes(what)?'pattern':'movement';
copy.paused.push({[key]:what,...given('on',on),...given('until',cell('until'))});
}
if(cell('born')!==undefined){
if(copy.born!==undefined&&copy.born!==cell('born'))note(say('class.two_births',{name,one:copy.born,other:String(cell('born'))}));
copy.born=cell('born');
}
if(cell('goal')!==undefined)copy.goal=cell('goal');
const when=results.readDay(on)===null?results.dayText(day):String(on);
const isNewer=cell('bodyweight')!==undefined&&known.weighed<=when;
if(isNewer)copy.bodyweight=cell('bodyweight');
try{
results.check(copy,day);
people.set(name,{copy,weighed:isNewer?when:known.weighed});
}catch(error){
if(!(error instanceof Refused))throw error;
note(error.message);
}
}
return{copies:[...people.values()].map(({copy})=>results.check(copy,day)),notes};
};
const bare=(line)=>{
let quote='';
for(let i=0;i<line.length;i +=1){
const letter=line[i];
if(quote)quote=letter===quote?'':quote;
else if((letter==='"'||letter==="'")&&/[\s[{,:-]$/.test(line.slice(0,i)||' '))quote=letter;
else if(letter==='#'&&(i===0||/\s/.test(line[i - 1])))return line.slice(0,i).trimEnd();
}
return line.trimEnd();
};
const unlike=(line)=>{throw new Refused(say('class.not_plain',{line}));};
const valueOf=(text,line)=>{
let at=0;
const skip=()=>{while(/\s/.test(text[at]||''))at +=1;};
const one=(isInside)=>{
skip();
const first=text[at];
if(first==='['||first==='{'){
at +=1;
const items=[];
for(skip();text[at]!==(first==='['?']':'}');skip()){
if(at>=text.length)unlike(line);
if(first==='[')items.push(one(true));
else{
const key=/^([A-Za-z_]+)\s*:(?=\s)/.exec(text.slice(at));
if(!key||items.some(([known])=>known===key[1]))return unlike(line);
at +=key[0].length;
items.push([key[1],one(true)]);
}
skip();
if(text[at]===',')at +=1;
else if(text[at]!==(first==='['?']':'}'))unlike(line);
}
at +=1;
return first==='['?items:Object.fromEntries(items);
}
const quoted=first==='"'?/^"([^"\\]*)"/.exec(text.slice(at)):first==="'"?/^'((?:[^']|'')*)'/.exec(text.slice(at)):null;
if(quoted){
at +=quoted[0].length;
return first==="'"?quoted[1].replace(/''/g,"'"):quoted[1];
}
const plain=(isInside?/^[^,[\]{}]*/:/^.*/).exec(text.slice(at));
const said=(plain?plain[0]:'').trim();
if(/^[&*!|>%@\x60"'?]/.test(said)||/:(\s|$)/.test(said))unlike(line);
at +=plain?plain[0].length:0;
return said===''||said==='~'||said==='null'?null:said;
};
const out=one(false);
skip();
return at<text.length?unlike(line):out;
};
const readPlain=(text)=>{
const lines=text.split(/\r?\n/).map((line,i)=>({text:bare(line),line:i + 1})).filter(({text:of})=>of.trim()!==''&&of!=='---');
for(const{text:of,line}of lines)if(/^\s*\t/.test(of))unlike(line);
const depth=(i)=>(i<lines.length?lines[i].text.length - lines[i].text.trimStart().length:-1);
let at=0;
const keyOf=(of)=>/^([A-Za-z_]+)\s*:(?:\s+(.*))?$/.exec(of.trim());
const block=(column)=>(lines[at].text.trimStart().startsWith('-')?list(column):record(column));
const list=(column)=>{
const out=[];
while(depth(at)===column&&/^-(\s|$)/.test(lines[at].text.trimStart())){
const{text:of,line}=lines[at],inner=of.trimStart().slice(1),item=inner.trimStart();
if(!item){
at +=1;
if(depth(at)<=column)unlike(line);
out.push(block(depth(at)));
}else if(!/^[[{"']/.test(item)&&keyOf(item)){
lines[at]={text:' '.repeat(column + 1 + inner.length - item.length)+ item,line};
out.push(record(depth(at)));
}else{
at +=1;
out.push(valueOf(item,line));
}
}
return out;
};
const record=(column)=>{
const out={};
while(depth(at)===column&&!lines[at].text.trimStart().startsWith('- ')){
const{text:of,line}=lines[at],read=keyOf(of);
if(!read||Object.hasOwn(out,read[1]))return unlike(line);
at +=1;
const isList=at<lines.length&&/^-(\s|$)/.test(lines[at].text.trimStart());
out[read[1]]=read[2]?valueOf(read[2],line):depth(at)>column||(depth(at)===column&&isList)?block(depth(at)):null;
}
return out;
};
const out=lines.length?record(depth(0)):{};
return at<lines.length?unlike(lines[at].line):out;
};
const read=(name,written,day,model)=>{
if(written.length>results.LARGEST_FILE)throw new Refused(say('results.too_large'));
const text=written.replace(/^\ufeff/,'');
if(/\.csv$/i.test(name))return readTable(text,day,model);
if(/\.ya?ml$/i.test(name)&&!/^\s*\{/.test(text))return{copies:[results.check(readPlain(text),day)],notes:[]};
return{copies:[results.readFile(text,day)],notes:[]};
};
globalThis.rungbook.class={read,readPlain};
})();
