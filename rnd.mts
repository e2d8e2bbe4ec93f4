import fc from 'fast-check'
import { anyDefinition } from './tests/support/random.ts'
import { built } from './tests/support/define.ts'
import { space } from './src/checks/space/index.ts'
import { subjectOf } from './src/checks/subject.ts'
const seen=new Map<string,string[]>()
const defs=fc.sample(anyDefinition,{numRuns:Number(process.argv[2]),seed:Number(process.argv[3])})
let n=0
for(const t of defs){ n++
 const b=built(t)
 for(const f of space.check(subjectOf(b.project,b.assembly,b.panels,()=>undefined))){ const k=f.rule+' '+f.severity+(f.rule==='head-on-panel'?' '+(f.message.match(/the \w+ of the \w+ \w+/)?.[0]??'')+(f.message.includes('in the way')?' way':' lies'):'') ; const l=seen.get(k)??[]; l.push(n+': '+f.message+' || '+f.fix); seen.set(k,l)}
}
for(const [k,l] of [...seen].sort()){ console.log(k,l.length, new Set(l.map(x=>x.split(':')[0])).size); for(const m of l.filter((_,i)=>i%Math.max(1,Math.floor(l.length/4))===0).slice(0,5)) console.log('    ',m)}
