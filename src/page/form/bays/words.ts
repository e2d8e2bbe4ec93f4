import { formatLength, type Units } from '../../../length/index.ts'
import type { DefinitionPath } from '../../../project/index.ts'
import type { BayView } from './bays.ts'

/** `1 drawer`, `2 drawers`. */
const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

const FRONTS: Readonly<Record<'door' | 'pair' | 'flap' | 'fixed', string>> = {
  door: 'door',
  pair: 'pair of doors',
  flap: 'flap',
  fixed: 'fixed front',
}

/** What is in an opening and before it, in words: `2 loose shelves, door`. */
export function contentsWords(bay: BayView): string {
  const { front } = bay
  const parts = [
    bay.split === undefined ? '' : `${bay.bays.length} bays ${bay.split}`,
    bay.looseShelves > 0 ? counted(bay.looseShelves, 'loose shelf', 'loose shelves') : '',
    bay.drawers.length > 0 ? counted(bay.drawers.length, 'drawer', 'drawers') : '',
    front === undefined ? '' : FRONTS[front.kind],
  ].filter((part) => part !== '')
  return parts.length === 0 ? 'empty' : parts.join(', ')
}

/** Which opening it is: `bay 2, bay 1`, each counted within the one before; `the whole inside`. */
export function bayName(path: DefinitionPath): string {
  const places = path.slice(3).filter((step) => typeof step === 'number')
  return places.length === 0 ? 'the whole inside' : places.map((place) => `bay ${Number(place) + 1}`).join(' › ')
}

/** Its clear size: `360 mm wide, 800 mm high`. */
export function clearWords({ rectangle: { x0, x1, z0, z1 } }: BayView, units: Units): string {
  return `${formatLength(rounded(x1 - x0), units)} wide, ${formatLength(rounded(z1 - z0), units)} high`
}

/** To a tenth of a mm, as one reads a tape. */
export const rounded = (mm: number): number => Math.round(mm * 10) / 10
