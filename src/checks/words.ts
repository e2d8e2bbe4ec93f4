import { mm } from '../length/index.ts'
import type { Bore, Panel } from '../panel/index.ts'
import { fromDatum, surfaceWords } from '../panel/index.ts'

/** `glaze store, left side`. */
export const panelWords = (panel: Panel): string => `${panel.moduleName}, ${panel.name}`

/** `the shelf pin 5 × 13, 37 from front and 96 from bottom on face A (inside)`. */
export function boreWords(panel: Panel, bore: Bore): string {
  const { x, y } = fromDatum(panel, bore.at)
  const size = bore.through ? `${mm(bore.diameter)} through` : `${mm(bore.diameter)} × ${mm(bore.depth)}`
  const onEdgeAcrossX = bore.surface === 'x0' || bore.surface === 'x1'
  const onEdgeAcrossY = bore.surface === 'y0' || bore.surface === 'y1'
  const distances = [
    ...(onEdgeAcrossY ? [] : [`${mm(y.mm)} from ${y.edge}`]),
    ...(onEdgeAcrossX ? [] : [`${mm(x.mm)} from ${x.edge}`]),
  ]
  return `${bore.purpose} ${size}, ${distances.join(' and ')} in ${surfaceWords(panel, bore.surface)}`
}

export { mm }

/** Behind every sentence that comes of loads. */
export const GUIDE = '(a guide, not a proof; the data sheet of the hardware and local codes come first)'

/** A mass as findings say it, to a tenth of a kg. */
export const kg = (value: number): string => `${mm(value)} kg`
