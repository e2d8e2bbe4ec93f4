import { NOISE_MM } from '../../geometry/index.ts'
import { itemsOfKind, type LevellingScrew } from '../../hardware/index.ts'
import { fineMm } from '../../length/index.ts'
import { type InsertSpec, limitOf, type ModuleSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { inWords } from '../mend.ts'
import type { Parts } from '../parts.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'
import { edgeBores } from './edge-bores.ts'
import { boreOf, inside, type Places, placesOf } from './insert.ts'
import { type Area, areaOf, overlap } from './plan.ts'
import { slotArea } from './slots.ts'

type Mending = Pick<PlacingTrouble, 'fix' | 'change'>

/** A ledge that is too narrow for the bores in it, or too thin for what is screwed into them. */
export function ledgeTroubles(
  spec: ModuleSpec,
  insert: InsertSpec,
  item: LevellingScrew,
  top: PlacedPanel,
): PlacingTrouble[] {
  const bore = boreOf(item)
  const wood = top.thickness - insert.ledge.depth
  const least = bore + 2 * limitOf(spec, 'ledge-narrow', 'stop')
  const common = { panels: [top.id], at: insert.at }
  const troubles: PlacingTrouble[] = []
  if (insert.ledge.width < least - NOISE_MM) {
    troubles.push({
      ...common,
      rule: 'ledge-narrow',
      severity: 'stop',
      message: `${spec.name}: the ledge is ${fineMm(insert.ledge.width)} mm wide; a bore of ${fineMm(bore)} mm for a ${item.id} needs ${fineMm(least)} mm`,
      ...wider(insert, least),
    })
  }
  if (wood < item.length - NOISE_MM) {
    troubles.push({
      ...common,
      rule: 'ledge-thin',
      severity: 'warn',
      message: `${spec.name}: ${fineMm(wood)} mm of wood under the ledge is less than the threaded insert of a ${item.id} is long, ${fineMm(item.length)} mm`,
      ...shorter(spec, insert, item, wood),
    })
  }
  return troubles
}

function wider(insert: InsertSpec, least: number): Mending {
  const none = { path: [...insert.at, 'levelling screws'], value: 'none' }
  const words = `set \`levelling screws: none\``
  if (2 * least >= Math.min(insert.width, insert.depth)) return { fix: words, change: [none] }
  const value = `${fineMm(Math.ceil((least - NOISE_MM) * 100) / 100)} mm`
  return {
    fix: `make the ledge ${value} wide, or ${words}`,
    change: [{ path: [...insert.at, 'ledge', 'width'], value }],
  }
}

/** A levelling screw of the catalogue whose threaded insert goes into so much wood, and its bore into the ledge. */
function shorter(spec: ModuleSpec, insert: InsertSpec, item: LevellingScrew, wood: number): Mending {
  const thick = `make the top ${fineMm(insert.ledge.depth + item.length)} mm thick or more, or glue a block under the ledge`
  const wall = limitOf(spec, 'ledge-narrow', 'stop')
  const found = itemsOfKind('levelling screw').find(
    (one) =>
      one.length <= wood + NOISE_MM &&
      boreOf(one) + 2 * wall <= insert.ledge.width + NOISE_MM &&
      one.id.includes('#') === item.id.includes('#'),
  )
  if (found === undefined) return { fix: thick }
  return {
    fix: `${thick}, or take a ${found.id}: ${fineMm(found.length)} mm`,
    change: [{ path: [...insert.at, 'levelling screws'], value: found.id }],
  }
}

/** What of the carcase an insert must keep clear of, seen from above. */
interface Below {
  /** Panels that stand up to the top. */
  readonly reaching: readonly PlacedPanel[]
  readonly fullTop: PlacedPanel | undefined
  /** Around the bores in the edges of the full top. */
  readonly bores: readonly Area[]
}

/** Panels that stand in the way of what hangs in the opening. */
export function carcaseTroubles(
  spec: ModuleSpec,
  insert: InsertSpec,
  top: PlacedPanel,
  places: Places,
  { panels: below, hardware }: Pick<Parts, 'panels' | 'hardware'>,
): PlacingTrouble[] {
  const underside = boardBox(top).min[2]
  const fullTop = below.find((panel) => panel.role === 'top')
  const reach = underside - (fullTop?.thickness ?? 0)
  const reaching = below.filter((panel) => boardBox(panel).max[2] > reach - NOISE_MM && panel.role !== 'top')
  const over = reaching.flatMap((panel) => {
    const by = overlap(places.opening, areaOf(panel))
    return by > NOISE_MM
      ? [{ panel, what: `the opening under the insert lies ${fineMm(by)} mm over ${inWords(panel)}` }]
      : []
  })
  // A full top that the way through does not fit into cannot be cut.
  const uncut =
    fullTop !== undefined && !inside(places.recess, areaOf(fullTop))
      ? [{ panel: fullTop, what: 'the way through for the insert does not lie whole on the top of the carcase' }]
      : []
  const troubles = [...over, ...uncut]
  if (troubles.length === 0) return []
  const bores = fullTop === undefined ? [] : edgeBores(fullTop, below, hardware)
  const mending = elsewhere(spec, insert, top, { reaching, fullTop, bores })
  return troubles.map(({ panel, what }) => ({
    rule: 'insert-carcase',
    severity: 'stop',
    panels: [top.id, panel.id],
    message: `${spec.name}: ${what}`,
    ...mending,
    at: insert.at,
  }))
}

/** Wood that is kept between a recess and the edge of its board, and beside a slot, mm; as the checks ask. */
const EDGE_MM = 10
const SLOT_WALL_MM = 5

/** The nearest place of the plate at which nothing is in its way: moved across, or else both ways. */
function elsewhere(spec: ModuleSpec, insert: InsertSpec, top: PlacedPanel, below: Below): Mending {
  const board = areaOf(top)
  const slots = (spec.machineTop?.slots ?? []).map((slot) => slotArea(slot, board))
  const stands = (x: number, y: number): boolean => {
    const places = placesOf({ ...insert, fromLeft: x, fromFront: y }, top)
    const edge = Math.min(x, y, board.x1 - board.x0 - x - insert.width, board.y1 - board.y0 - y - insert.depth)
    return (
      edge >= EDGE_MM + insert.play - NOISE_MM &&
      (below.fullTop === undefined || inside(places.recess, areaOf(below.fullTop))) &&
      // Levelling screws come out under the ledge.
      below.reaching.every((panel) => overlap(places.plate, areaOf(panel)) <= NOISE_MM) &&
      below.bores.every((bore) => overlap(places.recess, bore) <= NOISE_MM) &&
      slots.every((slot) => overlap(places.recess, slot) <= NOISE_MM - SLOT_WALL_MM)
    )
  }
  const now = placesOf(insert, top).plate
  const [x0, y0] = [now.x0 - board.x0, now.y0 - board.y0]
  const bounds = [
    ...below.bores,
    ...below.reaching.map(areaOf),
    ...(below.fullTop ? [areaOf(below.fullTop)] : []),
    board,
  ]
  const xs = starts(
    bounds.map(({ x0: from, x1: to }) => [from - board.x0, to - board.x0]),
    insert,
    insert.width,
  )
  const ys = starts(
    bounds.map(({ y0: from, y1: to }) => [from - board.y0, to - board.y0]),
    insert,
    insert.depth,
  )
  const all = [x0, ...xs].flatMap((x) => [y0, ...ys].map((y) => ({ x, y }))).filter(({ x, y }) => stands(x, y))
  const far = ({ x, y }: { x: number; y: number }): number => Math.hypot(x - x0, y - y0)
  const nearest = all.sort((a, b) => far(a) - far(b))[0]
  if (nearest === undefined) return { fix: 'make the insert smaller, or change the carcase under it' }
  const moves = [
    ...(nearest.x === x0 ? [] : [['from left', `${fineMm(nearest.x)} mm`] as const]),
    ...(nearest.y === y0 ? [] : [['from front', `${fineMm(nearest.y)} mm`] as const]),
  ]
  return {
    fix: `the plate can lie ${moves.map(([key, value]) => `\`${key}: ${value}\``).join(', ')}`,
    change: moves.map(([key, value]) => ({ path: [...insert.at, key], value })),
  }
}

/** Where a plate so long can begin beside what takes stretches of a line: beside them or within them; tenths of a mm. */
function starts(stretches: readonly (readonly [number, number])[], insert: InsertSpec, size: number): number[] {
  const { play } = insert
  const up = (value: number): number => Math.ceil((value - NOISE_MM) * 10) / 10
  const down = (value: number): number => Math.floor((value + NOISE_MM) * 10) / 10
  return stretches.flatMap(([from, to]) => [
    up(to + play),
    down(from - play - size),
    up(from + play + EDGE_MM),
    down(to - play - EDGE_MM - size),
  ])
}
