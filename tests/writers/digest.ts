import { createHash } from 'node:crypto'
import { dxfOf, svgOf } from '../../src/writers/index.ts'
import { EVERYTHING } from './drawings.ts'

/** Prints a digest of what is written for one drawing; started by repeatable.test.ts in other surroundings. */
const written = [
  svgOf(EVERYTHING),
  dxfOf(EVERYTHING, { units: 'mm', version: '2007', contours: 'bulges', notes: true, name: 'a.dxf' }),
  dxfOf(EVERYTHING, { units: 'in', version: '2000', contours: 'lines and arcs', notes: true, name: 'a.dxf' }),
]
process.stdout.write(createHash('sha256').update(written.join('')).digest('hex'))
