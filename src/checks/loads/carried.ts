import { boardBox } from '../../assembly/index.ts'
import { type Box, NOISE_MM } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { LoadsSpec } from '../../project/index.ts'
import type { Drawer } from './drawers.ts'
import type { Body } from './mass.ts'

/** What stands on a board has its middle so far above it, mm; own choice: tins, tools and boxes of 200 mm. */
const MIDDLE_ABOVE_MM = 100

/** On a top higher than HAND_HIGH_MM no one sets heavy things down; kg, own choice: what one person lifts there. */
const TOP_KG = 40
const HIGH_TOP_KG = 10
const HAND_HIGH_MM = 1200

/** What a top carries, kg, with its upper face so high above the floor, mm. */
export const topLoad = ({ top }: LoadsSpec, height: number): number =>
  top ?? (height > HAND_HIGH_MM + NOISE_MM ? HIGH_TOP_KG : TOP_KG)

/** The one shelf that is loaded most, kg, by its area in mm². */
export const mostOnShelf = ({ shelf, shelfMost }: LoadsSpec, area: number): number =>
  Math.min((shelf * area) / 1e6, shelfMost)

/** A shelf when all are loaded at once, kg, by its area in mm². */
const usualOnShelf = ({ allShelves, shelfMost }: LoadsSpec, area: number): number =>
  Math.min((allShelves * area) / 1e6, shelfMost)

/** What stands on the shelves and the bottom of a module when all are loaded; `own` by what its shelves say themselves. */
export function onShelves(
  panels: readonly Panel[],
  drawers: readonly Drawer[],
  loads: LoadsSpec,
  own: (shelf: Panel) => number | undefined,
): Body[] {
  const floors = panels
    .filter(({ role }) => role === 'bottom' || role === 'fixed shelf')
    .map((panel) => ({ panel, box: boardBox(panel) }))
  const taken = drawers.map((drawer) => ({ drawer, floor: floorUnder(floors, drawer) }))
  const fixed = floors.map(({ panel, box }) => {
    const above = taken.filter(({ floor }) => floor === panel).map(({ drawer }) => drawer.box)
    return standing(box, (area) => usualOnShelf(loads, area), above)
  })
  const loose = panels
    .filter(({ role }) => role === 'loose shelf')
    .map((panel) => standing(boardBox(panel), (area) => own(panel) ?? usualOnShelf(loads, area), []))
  return [...fixed, ...loose].filter(({ mass }) => mass > 0)
}

/** The board that a drawer runs above, if it is the lowest there. */
function floorUnder(
  floors: readonly { readonly panel: Panel; readonly box: Box }[],
  { box }: Drawer,
): Panel | undefined {
  return floors
    .filter((floor) => floor.box.max[2] <= box.min[2] + NOISE_MM)
    .filter((floor) => floor.box.min[0] < box.max[0] && floor.box.max[0] > box.min[0])
    .reduce<(typeof floors)[number] | undefined>(
      (best, floor) => (best === undefined || floor.box.max[2] > best.box.max[2] ? floor : best),
      undefined,
    )?.panel
}

/** A stretch beside drawers narrower than this is their slides and packings, mm; own choice. */
const LEAST_STRETCH_MM = 100

/** A load spread over a board, without the stretches of its width that lie under drawers. */
function standing({ min, max }: Box, mass: (area: number) => number, above: readonly Box[]): Body {
  // Drawers of one stack take one stretch.
  const stretches = [...above].sort((a, b) => a.min[0] - b.min[0])
  let from = min[0]
  let [free, moment] = [0, 0]
  const add = (to: number): void => {
    const piece = above.length > 0 && to - from < LEAST_STRETCH_MM ? 0 : Math.max(0, to - from)
    free += piece
    moment += piece * (from + piece / 2)
  }
  for (const box of stretches) {
    add(box.min[0])
    from = Math.max(from, box.max[0])
  }
  add(max[0])
  const depth = max[1] - min[1]
  const x = free > 0 ? moment / free : (min[0] + max[0]) / 2
  return { mass: mass(free * depth), at: [x, (min[1] + max[1]) / 2, max[2] + MIDDLE_ABOVE_MM] }
}
