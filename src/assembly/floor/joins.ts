import { NOISE_MM, poseOf, X, Y } from '../../geometry/index.ts'
import type { Kept } from '../../memory/index.ts'
import type { Edit, JoinSpec, RowSpec } from '../../project/index.ts'
import { onFloor } from '../on-floor.ts'
import { merge, type Parts } from '../parts.ts'
import type { PlacedModule, PlacingTrouble } from '../types.ts'
import type { BoltLimits } from './bolt-places.ts'
import { type Bolts, boltFaces } from './bolts.ts'
import { faceToFace, type Joinable, leastExtent, type OuterFace, outerFaces, sharedRectangle } from './faces.ts'
import { footprintOf, shareOf } from './footprint.ts'
import type { Grips } from './obstacles.ts'

/** What joins modules, and what of it could not be placed as asked. */
export type Joined = Pick<Parts, 'hardware' | 'troubles'>

/** The bolts of each two modules, as they were placed the last time. */
export interface BoltMemory {
  /** As the two stand to each other. */
  readonly near: Kept<Bolts>
  /** On the floor. */
  readonly placed: Kept<Joined>
}

const NOTHING: Joined = { hardware: [], troubles: [] }

/** A row that asks for bolts. */
type JoinedRow = RowSpec & { readonly join: JoinSpec }

const isJoined = (row: RowSpec): row is JoinedRow => row.join !== undefined

/**
 * The bolts that a row asks for: between its modules, and to modules that stand already, wherever two outer faces meet.
 * `earlier` are the modules of the rows before; the bolts keep clear of all hardware in `grips`, and are added to it.
 */
export function joinRow(
  row: RowSpec,
  modules: readonly PlacedModule[],
  earlier: readonly PlacedModule[],
  grips: Grips,
  limits: BoltLimits,
  kept: BoltMemory,
): Joined {
  if (!isJoined(row)) return NOTHING
  // A row that stands against nothing touches none before it, and within a row only neighbours touch.
  const before = row.stands === undefined ? [] : earlier
  const joins = modules.flatMap((module, k) =>
    [...before, ...modules.slice(Math.max(0, k - 1), k)].map((other) => {
      return { other, joined: joinPair(row, other, module, other === modules[k - 1], grips, limits, kept) }
    }),
  )
  const toAnchor = joins.filter(({ other }) => other.key === row.stands?.against)
  return merge([
    ...joins.map(({ joined }) => joined),
    ...anchorTroubles(
      row,
      modules,
      toAnchor,
      joins.some(({ joined }) => joined.hardware.length > 0),
    ),
  ])
}

/** The bolts of two modules; neighbours of a row ought to meet, others are joined when they do. */
function joinPair(
  row: JoinedRow,
  earlier: PlacedModule,
  later: PlacedModule,
  neighbours: boolean,
  grips: Grips,
  limits: BoltLimits,
  kept: BoltMemory,
): Joined {
  const share = shareOf(footprintOf(earlier), footprintOf(later))
  if (Math.min(...share) < -NOISE_MM) return NOTHING
  const here = nearby(earlier, later, neighbours)
  const pair = facesOf(...here)
  if (pair === undefined) return NOTHING
  const [a, b] = pair
  const least = leastExtent(sharedRectangle(a, b))
  if (least < row.join.item.nutDiameter)
    return neighbours ? { hardware: [], troubles: [noOverlap(row, a, b, least)] } : NOTHING
  // What else grips the two panels is the modules' own, or a bolt that was placed before.
  const before = [a, b].map(({ panel }) => grips.addedOn(panel.id).map(({ near }) => near?.bolt))
  const of = [
    row.join,
    row.at,
    limits.wall,
    limits.farthest,
    ...here.flatMap((module) => madeOf(module, grips)),
    ...before.flatMap((some) => [some.length, ...some]),
  ]
  const name = `${earlier.key}+${later.key}`
  const placed = kept.near.take(name, of, () =>
    boltFaces({ join: row.join, earlier: a, later: b, grips, limits, at: row.at }),
  )
  grips.add(placed.bolts)
  const [x, y] = earlier.floorFromModule.origin
  return kept.placed.take(name, [placed, x, y], () => {
    const floorFromNear = poseOf(X, Y, [x, y, 0])
    return { hardware: placed.bolts.map(({ piece }) => onFloor(piece, floorFromNear)), troubles: placed.troubles }
  })
}

/**
 * Two modules as they stand to each other: in the floor frame, but shifted so that the earlier one stands at its origin. What
 * is bolted between them is then the very same wherever they stand.
 */
function nearby(earlier: PlacedModule, later: PlacedModule, neighbours: boolean): readonly [Joinable, Joinable] {
  const { x, origin } = earlier.floorFromModule
  const there = later.floorFromModule.origin
  // Neighbours of a row stand side by side; the difference of their places would have the float noise of where they stand.
  const { width } = earlier.size
  const [dx, dy] = neighbours ? [x[0] * width, x[1] * width] : [there[0] - origin[0], there[1] - origin[1]]
  const at = (module: PlacedModule, mm: readonly [number, number]): Joinable => ({
    ...module,
    floorFromModule: { ...module.floorFromModule, origin: [...mm, module.floorFromModule.origin[2]] },
  })
  return [at(earlier, [0, 0]), at(later, [dx, dy])]
}

/** All that bolts depend on of a module: every key of a `Joinable`, and the hardware in it. */
function madeOf({ key, name, panels, cuts, cutouts, floorFromModule }: Joinable, grips: Grips): unknown[] {
  const { x, y, origin } = floorFromModule
  return [key, name, panels, cuts, cutouts, grips.of(key), ...x, ...y, ...origin]
}

/** The outer faces of two modules that lie in one plane and look at each other; two boxes have one such pair at most. */
function facesOf(earlier: Joinable, later: Joinable): readonly [OuterFace, OuterFace] | undefined {
  const theirs = outerFaces(later)
  for (const a of outerFaces(earlier)) {
    const b = theirs.find((face) => faceToFace(a, face))
    if (b !== undefined) return [a, b]
  }
  return undefined
}

const mm = (value: number): string => String(Math.max(0, Math.round(value * 10) / 10))

const fixShare = ({ join: { item } }: JoinedRow): string =>
  `let their sides share ${mm(item.nutDiameter)} mm or more, by heights or depths that are nearer to each other, or set \`join: none\``

const unjoined = (row: JoinedRow): Edit[] => [{ path: [...row.at, 'join'], value: 'none' }]

function noOverlap(row: JoinedRow, a: OuterFace, b: OuterFace, shared: number): PlacingTrouble {
  return {
    rule: 'join-overlap',
    severity: 'stop',
    panels: [a.panel.id, b.panel.id],
    message: `${a.module.name} and ${b.module.name} are to be bolted together, but their sides share only ${mm(shared)} mm`,
    fix: fixShare(row),
    // A row of two that stands by itself has no other bolts to lose.
    ...(row.modules.length === 2 && row.stands === undefined && { change: unjoined(row) }),
    at: row.at,
  }
}

/**
 * A row that stands against a module without a gap ought to be bolted to it by one of its own at least. It stops when
 * nothing at all is bolted: where fronts stand in a corner, only the modules of the row can be joined.
 */
function anchorTroubles(
  row: JoinedRow,
  modules: readonly PlacedModule[],
  toAnchor: readonly { readonly other: PlacedModule; readonly joined: Joined }[],
  anyBolt: boolean,
): Joined[] {
  const { stands } = row
  const anchor = toAnchor[0]?.other
  if (stands === undefined || anchor === undefined || stands.gap > NOISE_MM) return []
  if (toAnchor.some(({ joined }) => joined.hardware.length > 0)) return []
  const pairs = modules.flatMap((module) => {
    const pair = facesOf(anchor, module)
    return pair === undefined ? [] : [{ pair, least: leastExtent(sharedRectangle(...pair)) }]
  })
  const best = pairs.sort((a, b) => b.least - a.least)[0]
  const about = `${anchor.name} and ${modules.map((module) => module.name).join(', ')} are to be bolted together`
  const trouble: PlacingTrouble = {
    rule: 'join-overlap',
    severity: best === undefined && anyBolt ? 'warn' : 'stop',
    panels: best === undefined ? [] : best.pair.map((face) => face.panel.id),
    message:
      best === undefined
        ? `${about}, but no two outer faces of sides or backs meet at the ${stands.side} of ${anchor.name}`
        : `${about}, but their faces share only ${mm(best.least)} mm`,
    fix:
      best === undefined
        ? 'let a side, or a back that is applied or flush, stand against another, or set `join: none`'
        : fixShare(row),
    ...(!anyBolt && { change: unjoined(row) }),
    at: row.at,
  }
  return [{ hardware: [], troubles: [trouble] }]
}
