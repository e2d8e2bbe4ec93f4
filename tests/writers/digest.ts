import { createHash } from 'node:crypto'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { dxfOf, pdfOf, svgOf } from '../../src/writers/index.ts'
import { DOOR } from '../drawing/page-panels.ts'
import { EVERYTHING } from './drawings.ts'
import { FONTS } from './pdf-fonts.ts'

/** A digest of what is written for one drawing, and of the pages of a panel. */
export async function digest(): Promise<string> {
  const hash = createHash('sha256')
  hash.update(svgOf(EVERYTHING))
  hash.update(dxfOf(EVERYTHING, { units: 'mm', version: '2007', contours: 'bulges', notes: true, name: 'a.dxf' }))
  hash.update(
    dxfOf(EVERYTHING, { units: 'in', version: '2000', contours: 'lines and arcs', notes: true, name: 'a.dxf' }),
  )
  const info = { title: 'door', subject: 'test', fingerprint: 'abc' }
  return hash.update(await pdfOf(pageDrawings(DOOR, 'A', 'A4', 'mm'), info, FONTS)).digest('hex')
}
