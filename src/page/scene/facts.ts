import type { PlacedModule } from '../../assembly/index.ts'
import { boreTitle, edgeOf, placeWords, toolWords } from '../../drawing/index.ts'
import { compose, cross, NOISE_MM, norm, place, sub, turn, type Vec3 } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import { type Bore, fromDatum, type Panel, purposesOf } from '../../panel/index.ts'
import { type BoreOf, boresOfHardware, holeId, indexOf } from './laid-index.ts'
import type { BothUnits, HoleFacts, HolePartner } from './types.ts'

/** Everything about one hole, by its id; nothing where there is no such hole. */
export function factsOf(laid: LaidOut, id: string): HoleFacts | undefined {
  const index = indexOf(laid)
  const mark = id.lastIndexOf('#')
  const panel = index.panels.get(id.slice(0, mark))
  const bore = panel?.bores.find((one) => one.id === id.slice(mark + 1))
  if (panel === undefined || bore === undefined) return undefined
  const pieces = [...new Set(bore.uses.map(({ hardware }) => hardware))].flatMap((one) => index.hardware.get(one) ?? [])
  return {
    id,
    panel: panel.id,
    panelName: nameOf(panel),
    surface: surfaceOf(panel, bore),
    purposes: purposesOf(bore),
    tool: both((units) => toolWords(bore, units)),
    from: placesOf(panel, bore),
    hardware: [...new Set(pieces.map(({ item }) => item.title))],
    partners: partnersOf(laid, panel, bore),
    at: pieces[0]?.at ?? panel.at,
  }
}

const nameOf = (panel: Panel): string => `${panel.moduleName}: ${panel.name}`

const both = (words: (units: Units) => string): BothUnits => ({ mm: words('mm'), inch: words('in') })

/** A length with its unit in either. */
const length = (mm: number): BothUnits => ({ mm: `${placeWords(mm, 'mm')} mm`, inch: placeWords(mm, 'in') })

/** `face A, inside`, `front edge`, `back rebate once it is cut`. */
function surfaceOf(panel: Panel, bore: Bore): string {
  const { surface } = bore
  if (surface === 'A' || surface === 'B') return `face ${surface}, ${panel.faces[surface]}`
  const edge = edgeOf(panel, bore)
  return edge !== undefined && edge.inFrom > 0 ? `${edge.name} rebate once it is cut` : `${panel.edges[surface]} edge`
}

/** From both datum edges; of a bore in an edge from face A and along the edge. */
function placesOf(panel: Panel, bore: Bore): HoleFacts['from'] {
  const { x, y } = fromDatum(panel, bore.at)
  const [atX, atY, atZ] = bore.at
  const words = ({ edge, mm }: typeof x) => ({
    edge,
    ...length(mm),
    foot:
      edge === x.edge
        ? ([panel.datum.x === 'x0' ? 0 : panel.length, atY, atZ] as const)
        : ([atX, panel.datum.y === 'y0' ? 0 : panel.width, atZ] as const),
  })
  const inEdge = edgeOf(panel, bore)
  if (inEdge === undefined) return [words(y), words(x)]
  const along = inEdge.side === 'x0' || inEdge.side === 'x1' ? y : x
  return [{ edge: 'face A', ...length(-bore.at[2]) }, words(along)]
}

/** The holes of the same hardware in other panels, each once: mates first, else in the order of the hardware. */
function partnersOf(laid: LaidOut, panel: Panel, bore: Bore): HolePartner[] {
  const known = boresOfHardware(laid)
  const found = new Map<string, BoreOf>()
  for (const { hardware } of bore.uses) {
    for (const other of known.get(hardware) ?? []) {
      if (other.panel.id !== panel.id) found.set(holeId(other.panel, other.bore), other)
    }
  }
  const { modules } = indexOf(laid)
  const own = axisOf(modules, { panel, bore })
  const partners = [...found].map(
    ([id, other]): HolePartner => ({
      id,
      relation: isSameAxis(own, axisOf(modules, other)) ? 'mate' : 'same hardware',
      panel: other.panel.id,
      panelName: nameOf(other.panel),
      words: both((units) => withoutPurpose(other, units)),
      look: { kind: 'pair', panels: [panel.id, other.panel.id] },
    }),
  )
  return [
    ...partners.filter(({ relation }) => relation === 'mate'),
    ...partners.filter(({ relation }) => relation !== 'mate'),
  ]
}

/** The middle and the way of a bore on the floor. */
interface Axis {
  readonly at: Vec3
  readonly way: Vec3
}

/** Panels of two modules may share hardware, so axes are compared on the floor. */
function axisOf(modules: ReadonlyMap<string, PlacedModule>, { panel, bore }: BoreOf): Axis | undefined {
  const module = modules.get(panel.module)
  if (module === undefined) return undefined
  const floorFromPanel = compose(module.floorFromModule, panel.moduleFromPanel)
  return { at: place(floorFromPanel, bore.at), way: turn(floorFromPanel, bore.axis) }
}

const isSameAxis = (a: Axis | undefined, b: Axis | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  norm(cross(a.way, b.way)) <= NOISE_MM &&
  norm(cross(sub(b.at, a.at), a.way)) <= NOISE_MM

/** What a hole reads less what it is for: `5 deep 13, 37 from front, 96 from bottom`. */
function withoutPurpose({ panel, bore }: BoreOf, units: Units): string {
  return boreTitle(panel, bore, units).slice(purposesOf(bore).join(' and ').length + 1)
}
