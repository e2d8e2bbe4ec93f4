import { parseLength, type Units } from '../../../length/index.ts'
import { baySizes, type Data, type DefinitionPath, dataAt } from '../../../project/index.ts'
import type { FrontRectangle, ModuleShell } from '../model.ts'

export type Direction = 'side by side' | 'stacked'
export type FrontKind = 'door' | 'pair' | 'flap' | 'fixed'

/** An opening of a module as one sees it from the front, with what is in it. Module frame, mm. */
export interface BayView {
  readonly path: DefinitionPath
  readonly rectangle: FrontRectangle
  readonly split: Direction | undefined
  /** The bays of its split, from the left or from the top. */
  readonly bays: readonly BayView[]
  /** The boards between them. */
  readonly dividers: readonly FrontRectangle[]
  readonly looseShelves: number
  /** Heights of its drawers from the top down, mm; empty without drawers. */
  readonly drawers: readonly number[]
  readonly front: { readonly kind: FrontKind; readonly hang: 'left' | 'right' | 'top' | 'bottom' } | undefined
  /** It lies behind the front of a bay that it belongs to. */
  readonly behind: boolean
  /** The split that it belongs to; nothing for the whole inside. */
  readonly within: Direction | undefined
  /** Its sizes do not add up: its bays are drawn as well as they can be. */
  readonly strained: boolean
}

/** What the bays of a module are drawn from. */
export interface BayGround {
  readonly data: Data | undefined
  readonly module: string
  readonly shell: ModuleShell
  readonly units: Units
}

/**
 * The inside of a module as it is written, in true proportion. Reads what there is and never fails: what cannot be
 * told, or does not fit, is drawn as equal shares.
 */
export function baysOf(ground: BayGround): BayView {
  const path = ['modules', ground.module, 'inside']
  return bayAt(ground, path, ground.shell.opening, { behind: false, within: undefined })
}

/** All bays of a view, each before those in it. */
export function allBays(view: BayView): BayView[] {
  return [view, ...view.bays.flatMap(allBays)]
}

/** The direction in which a bay is split, as written. */
export function splitOf(bay: Data | undefined): Direction | undefined {
  if (Array.isArray(dataAt(bay, ['side by side']))) return 'side by side'
  return Array.isArray(dataAt(bay, ['stacked'])) ? 'stacked' : undefined
}

type Around = Pick<BayView, 'behind' | 'within'>

function bayAt(ground: BayGround, path: DefinitionPath, rectangle: FrontRectangle, around: Around): BayView {
  const bay = dataAt(ground.data, path)
  const split = splitOf(bay)
  const front = frontOf(bay)
  const cells = split && cellsOf(ground, bay, split, rectangle)
  const inner: Around = { behind: around.behind || front !== undefined, within: split }
  return {
    path,
    rectangle,
    split,
    bays: split && cells ? cells.bays.map((cell, k) => bayAt(ground, [...path, split, k], cell, inner)) : [],
    dividers: cells?.dividers ?? [],
    looseShelves: countOf(bay, 'loose shelves', 'count'),
    drawers: drawersOf(ground, bay, rectangle.z1 - rectangle.z0),
    front,
    strained: cells?.strained === true,
    ...around,
  }
}

const FRONT_KINDS: readonly FrontKind[] = ['door', 'pair', 'flap', 'fixed']
const EDGES = ['left', 'right', 'top', 'bottom'] as const

function frontOf(bay: Data | undefined): BayView['front'] {
  const kind = FRONT_KINDS.find((one) => one === dataAt(bay, ['front', 'kind']))
  if (kind === undefined) return undefined
  const hang = EDGES.find((edge) => edge === dataAt(bay, ['front', 'hang']))
  return { kind, hang: hang ?? (kind === 'flap' ? 'top' : 'left') }
}

/** A number, written alone or as a key of a group. */
export function countOf(bay: Data | undefined, key: string, inGroup: string): number {
  const said = dataAt(bay, [key])
  const count = typeof said === 'number' ? said : dataAt(said, [inGroup])
  return typeof count === 'number' && Number.isInteger(count) && count > 0 ? Math.min(count, MOST_DRAWN) : 0
}

/** More than this is not drawn: no definition may have it. */
const MOST_DRAWN = 100

function drawersOf({ units }: BayGround, bay: Data | undefined, height: number): number[] {
  const stack = dataAt(bay, ['drawers', 'stack'])
  if (!Array.isArray(stack)) {
    const count = countOf(bay, 'drawers', 'stack')
    return Array.from({ length: count }, () => height / count)
  }
  const places = stack.map((place: Data) => sized(place, 'height', units))
  return filled(height, places, 0).sizes
}

interface Sized {
  readonly size: number | undefined
  readonly share: number
}

function sized(bay: Data | undefined, key: 'size' | 'height', units: Units): Sized {
  const share = dataAt(bay, ['share'])
  return { size: lengthOf(dataAt(bay, [key]), units), share: typeof share === 'number' && share > 0 ? share : 1 }
}

/** A length above 0 as written, mm; nothing for anything else. */
function lengthOf(said: Data | undefined, units: Units): number | undefined {
  if (typeof said !== 'number' && typeof said !== 'string') return undefined
  const parsed = parseLength(said, units)
  return parsed.ok && parsed.mm > 0 ? parsed.mm : undefined
}

/** Sizes that fill a length, with boards so thick between them; equal ones where those that are asked for do not fit. */
function filled(clear: number, bays: readonly Sized[], thickness: number): { sizes: number[]; strained: boolean } {
  const sizes = baySizes(clear, { bays, stock: { thickness } })
  if (typeof sizes !== 'string') return { sizes, strained: false }
  const rest = Math.max(0, clear - (bays.length - 1) * thickness)
  return { sizes: bays.map(() => rest / bays.length), strained: true }
}

function cellsOf(
  ground: BayGround,
  bay: Data | undefined,
  split: Direction,
  { x0, x1, z0, z1 }: FrontRectangle,
): { bays: FrontRectangle[]; dividers: FrontRectangle[]; strained: boolean } {
  const beside = split === 'side by side'
  const clear = beside ? x1 - x0 : z1 - z0
  const list = dataAt(bay, [split])
  const wanted = (Array.isArray(list) ? list : []).map((one: Data) => sized(one, 'size', ground.units))
  const board = Math.min(thicknessOf(ground, bay), clear / (2 * Math.max(1, wanted.length)))
  const { sizes, strained } = filled(clear, wanted, board)
  let at = beside ? x0 : z1
  const bays: FrontRectangle[] = []
  const dividers: FrontRectangle[] = []
  for (const [k, size] of sizes.entries()) {
    const next = beside ? at + size : at - size
    bays.push(beside ? { x0: at, x1: next, z0, z1 } : { x0, x1, z0: next, z1: at })
    at = beside ? next + board : next - board
    if (k < sizes.length - 1) {
      dividers.push(beside ? { x0: next, x1: at, z0, z1 } : { x0, x1, z0: at, z1: next })
    }
  }
  return { bays, dividers, strained }
}

/** Thickness of the boards between the bays: of their own stock, else of the module's, mm. */
function thicknessOf({ data, module, units }: BayGround, bay: Data | undefined): number {
  const name =
    dataAt(bay, ['dividers', 'stock']) ??
    dataAt(data, ['modules', module, 'stock']) ??
    dataAt(data, ['common', 'stock'])
  const readings = dataAt(data, ['stock', String(name), 'thickness'])
  const list = (Array.isArray(readings) ? readings : [readings]).flatMap((one: Data | undefined) => {
    const mm = lengthOf(one, units)
    return mm === undefined ? [] : [mm]
  })
  return list.length === 0 ? USUAL_THICKNESS_MM : list.reduce((sum, mm) => sum + mm, 0) / list.length
}

/** Of a board whose stock cannot be told: common practice. */
const USUAL_THICKNESS_MM = 18

/** A module that was never laid out yet, about as it is written. */
export function assumedShell({ data, module, units }: Omit<BayGround, 'shell'>): ModuleShell {
  const size = (...keys: readonly string[]): number | undefined =>
    keys
      .flatMap((key) => [dataAt(data, ['modules', module, key]), dataAt(data, ['common', key])])
      .map((said) => lengthOf(said, units))
      .find((mm) => mm !== undefined)
  const width = size('width') ?? USUAL_WIDTH_MM
  const height = size('carcase height', 'working height') ?? USUAL_HEIGHT_MM
  const t = Math.min(USUAL_THICKNESS_MM, width / 4, height / 4)
  return { name: module, width, height, baseHeight: 0, opening: { x0: t, x1: width - t, z0: t, z1: height - t } }
}

/** Of a module that says no size yet: a workshop cabinet. */
const USUAL_WIDTH_MM = 600
const USUAL_HEIGHT_MM = 720
