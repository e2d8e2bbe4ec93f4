import { boardBox } from '../../assembly/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import { boardFacts, limitOf, type Project, type Stock, UNKNOWN_BOARD } from '../../project/index.ts'
import {
  type Beam,
  compositeInertia,
  kitchenSag,
  type Layer,
  type LoadedModule,
  middleSag,
  mostOnShelf,
  saidLoad,
  shelfSpans,
  uniformSag,
} from '../loads/index.ts'
import type { Finding, Rule } from '../types.ts'
import { GUIDE, kg, mm, panelWords } from '../words.ts'

/** Of the hardwoods that shelves are lipped with, N/mm²: oak, maple and beech have 10 000 to 14 000; from memory. */
const HARDWOOD = 10_000
/** Strips that are offered: thickness, and heights in their order, mm; common practice. */
const STRIP_MM = 18
const STRIP_HEIGHTS_MM = [30, 40, 50, 60, 80]

/** Loose and fixed shelves that sag too far, as beams on two supports. */
export const shelfSag: Rule = {
  ids: ['shelf-sag'],
  check: ({ project, loaded }) =>
    loaded.flatMap((module) =>
      shelfSpans(module).flatMap(({ panel, span }) => {
        const shelf = shelfOf(module, panel, span)
        return checkShelf(project, shelf)
      }),
    ),
}

/** One stretch of a shelf between two supports. */
interface Shelf {
  readonly panel: Panel
  readonly span: number
  readonly mass: number
  /** Thickness of the lipping on its front edge, mm. */
  readonly lipping: number
  readonly front: number
}

function shelfOf({ spec }: LoadedModule, panel: Panel, span: number): Shelf {
  const own = panel.role === 'loose shelf' ? saidLoad(spec, panel.at) : undefined
  const front = boardBox(panel).max[1] - boardBox(panel).min[1]
  const lipping = panel.edges.y0 === 'front' ? (panel.lipping?.y0 ?? 0) : 0
  return { panel, span, mass: own ?? mostOnShelf(spec.loads, span * front), lipping, front }
}

/** The section of a shelf: its board, and on the front edge a strip of hardwood, flush with the upper face. */
function sectionOf({ lipping, front }: Shelf, stock: Stock, strip?: number): Layer[] {
  const { thickness, stiffness } = stock
  const lip = strip === undefined ? { width: lipping, height: thickness } : { width: STRIP_MM, height: strip }
  const board: Layer = { width: front - lip.width, height: thickness, down: 0, stiffness }
  return lip.width === 0 ? [board] : [board, { ...lip, down: 0, stiffness: HARDWOOD }]
}

function beamOf(shelf: Shelf, stock: Stock, strip?: number): Beam {
  const inertia = compositeInertia(sectionOf(shelf, stock, strip), stock.stiffness)
  return { span: shelf.span, stiffness: stock.stiffness, inertia }
}

function checkShelf(project: Project, shelf: Shelf): Finding[] {
  const { panel, span, mass } = shelf
  const beam = beamOf(shelf, panel.stock)
  const sag = uniformSag(beam, mass)
  const ratio = span / sag
  const [warn, note] = [limitOf(project, 'shelf-sag', 'warn'), limitOf(project, 'shelf-sag', 'note')]
  if (ratio >= Math.max(warn, note) - NOISE_MM) return []
  const { board, thickness } = panel.stock
  const creep = (board === undefined ? UNKNOWN_BOARD : boardFacts(board, thickness)).creep
  const figures = `E ${Math.round(beam.stiffness)} N/mm², I ${Math.round(beam.inertia)} mm⁴`
  return [
    {
      rule: 'shelf-sag',
      severity: ratio < warn - NOISE_MM ? 'warn' : 'note',
      panels: [panel.id],
      places: [{ panel: panel.id, surface: 'A', at: [panel.length / 2, panel.width / 2, 0] }],
      message:
        `${panelWords(panel)}: ${kg(mass)} spread over a span of ${mm(span)} mm make it sag ${fineMm(sag)} mm, L/${Math.floor(ratio)} ` +
        `(${figures}); ${fineMm(middleSag(beam, mass))} mm if all of it stands in the middle, ${fineMm(sag * (1 + creep))} mm once it has ` +
        `lain there for long, where kitchen cabinets are allowed ${fineMm(kitchenSag(span))} mm ${GUIDE}`,
      ...mended(project, shelf, span / Math.max(warn, note)),
      at: panel.at,
    },
  ]
}

/** A thicker stock of the project, a strip on the front edge, a partition: what keeps the sag within so many mm. */
function mended(project: Project, shelf: Shelf, most: number): Pick<Finding, 'fix' | 'change'> {
  const { panel, mass } = shelf
  const sagOf = (stock: Stock, strip?: number): number => uniformSag(beamOf(shelf, stock, strip), mass)
  const loose = panel.role === 'loose shelf'
  const thicker = project.stocks
    .filter((stock) => loose && stock.thickness > panel.stock.thickness && sagOf(stock) <= most)
    .reduce<Stock | undefined>((best, one) => (best && best.thickness <= one.thickness ? best : one), undefined)
  const strip = STRIP_HEIGHTS_MM.find((height) => height > panel.thickness && sagOf(panel.stock, height) <= most)
  const ways = [
    ...(thicker ? [`take ${thicker.name} for it and it sags ${fineMm(sagOf(thicker))} mm`] : []),
    ...(strip !== undefined && shelf.front > 2 * STRIP_MM
      ? [
          `lip the shelf with a ${strip} × ${STRIP_MM} mm hardwood strip and it sags ${fineMm(sagOf(panel.stock, strip))} mm`,
        ]
      : []),
    'put a partition under its middle',
  ]
  return {
    fix: ways.join(', or '),
    ...(thicker && { change: [{ path: [...panel.at, 'stock'], value: thicker.name }] }),
  }
}
