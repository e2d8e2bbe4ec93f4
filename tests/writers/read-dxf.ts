import { spawnSync } from 'node:child_process'
import DxfParser, { type IDxf, type IEntity } from 'dxf-parser'

/** The module is the class itself, which its types do not say. */
const Parser = DxfParser as unknown as new () => { parseSync(text: string): IDxf | null }

/** A file as dxf-parser reads it. Only for files that are known to be sound: a broken one can keep it busy for ever. */
export function readDxf(text: string): IDxf {
  const dxf = new Parser().parseSync(text)
  if (dxf === null) throw new Error('dxf-parser read nothing')
  return dxf
}

/** Kinds, layers and texts of all entities, read in a child process that may take ten seconds. */
export function readGuarded(text: string): { type: string; layer: string; text?: string }[] {
  const script = `
    const Parser = require('dxf-parser')
    const read = new Parser().parseSync(require('fs').readFileSync(0, 'latin1'))
    process.stdout.write(JSON.stringify(read.entities.map(({ type, layer, text }) => ({ type, layer, text }))))`
  const done = spawnSync(process.execPath, ['-e', script], { input: text, timeout: 10_000, encoding: 'utf8' })
  if (done.status !== 0) throw new Error(`dxf-parser ended with ${done.status}: ${done.stderr}`)
  return JSON.parse(done.stdout)
}

/** Entities of one type and layer. */
export function entitiesOf<T extends IEntity>(dxf: IDxf, type: T['type'], layer?: string): T[] {
  return dxf.entities.filter((e): e is T => e.type === type && (layer === undefined || e.layer === layer))
}
