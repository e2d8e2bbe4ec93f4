import { NOISE_MM, type Pose, poseOf, X, Y } from '../../geometry/index.ts'
import { itemsOfKind } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import { limitOf } from '../../project/index.ts'
import { fastenerOffsets } from '../joints/index.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedHardware, PlacedPanel, PlacingTrouble } from '../types.ts'
import type { FlipPlace } from './place.ts'
import type { PlatformBoards } from './platform.ts'

/** All common practice, mm. */
const SPACING_MM = 150
const END_MM = 50
/** From the platform's edge, and from the channel, to the nearest row of screws. */
const EDGE_MM = 25
/** Rows of the two skins stand so far apart, so that their pilots pass each other. */
const STAGGER_MM = 16
/** The first screw stands so far beyond the end of the locking bolts' holes. */
const BEYOND_LOCK_MM = 15
/** Of the core, left below the tip of a screw; as the check of bores asks. */
const BELOW_SCREW_MM = 4

/**
 * The screws of both skins. The rows are the same after half a turn about the axle: the upper skin's in the front board
 * stand where the lower skin's come to in the rear board, so the two skins are one part cut twice.
 */
export function placeSkinScrews(place: FlipPlace, boards: PlatformBoards): Parts {
  const { flip } = place
  const bite = flip.screws.length - flip.skin.thickness
  const least = limitOf(place.spec, 'screw-bite', 'stop')
  if (bite < least - NOISE_MM) return partsOf({ troubles: [biteTrouble(place, boards, bite, least)] })
  const rows = rowsFromAxle(place)
  const hardware = (['upper', 'lower'] as const).flatMap((skin) =>
    (['front', 'rear'] as const).flatMap((end) => {
      const near = (skin === 'upper') === (end === 'front') ? rows.first : rows.second
      return near.flatMap((fromAxle, k) => screwRow(place, boards, { skin, end, fromAxle, number: k + 1 }))
    }),
  )
  return partsOf({ hardware })
}

/** Distances of the rows from the axle in one core board, for the one skin and for the other, mm. */
function rowsFromAxle({ flip, sizes }: FlipPlace): { first: number[]; second: number[] } {
  const inner = flip.axle.channel / 2
  const outer = (sizes.rear - sizes.front) / 2
  const width = outer - inner
  const stagger = Math.min(STAGGER_MM, width / 4)
  if (width < 2 * (EDGE_MM + STAGGER_MM) + STAGGER_MM) {
    const middle = (inner + outer) / 2
    return { first: [middle + stagger / 2], second: [middle - stagger / 2] }
  }
  return {
    first: [outer - EDGE_MM, inner + EDGE_MM],
    second: [outer - EDGE_MM - stagger, inner + EDGE_MM + stagger],
  }
}

interface Row {
  readonly skin: 'upper' | 'lower'
  readonly end: 'front' | 'rear'
  readonly fromAxle: number
  readonly number: number
}

function screwRow(place: FlipPlace, boards: PlatformBoards, row: Row): PlacedHardware[] {
  const { spec, flip, axle, x0, x1 } = place
  const skin = boards[row.skin]
  const core: PlacedPanel = boards[row.end]
  const y = axle.y + (row.end === 'front' ? -row.fromAxle : row.fromAxle)
  const half = flip.core.thickness / 2
  const pose = (x: number): Pose =>
    row.skin === 'upper'
      ? poseOf(X, [0, -1, 0], [x, y, axle.z + half]) // z down into the core
      : poseOf(X, Y, [x, y, axle.z - half])
  const endDistance = Math.max(END_MM, flip.lock.item.coreDepth + BEYOND_LOCK_MM)
  const series = `${spec.key}/${skin.key}+${core.key}-${row.number}`
  return fastenerOffsets(x1 - x0, { endDistance, spacing: SPACING_MM }).map((offset, k) => {
    const at = pose((x0 + x1) / 2 + offset)
    return {
      id: `${series}/${k + 1}`,
      item: flip.screws,
      frame: spec.key,
      stations: [
        { part: 'head', panel: skin.id, pose: at, wood: 'behind' },
        { part: 'tip', panel: core.id, pose: at, wood: 'ahead' },
      ],
      settings: {},
      series,
      at: flip.at,
    }
  })
}

function biteTrouble(place: FlipPlace, boards: PlatformBoards, bite: number, least: number): PlacingTrouble {
  const { spec, flip } = place
  const { skin, core, screws, at } = flip
  const most = skin.thickness + core.thickness - BELOW_SCREW_MM
  const found = itemsOfKind('through screw')
    .filter(({ id }) => id.includes('#') === screws.id.includes('#'))
    .find(({ length }) => length - skin.thickness >= least - NOISE_MM && length <= most + NOISE_MM)
  const mend =
    found === undefined
      ? { fix: 'take thinner skins' }
      : {
          fix: `set \`screws: ${found.id}\`, which reaches ${mm(found.length - skin.thickness)} mm into the core`,
          change: [{ path: [...at, 'screws'], value: found.id }],
        }
  return {
    rule: 'screw-bite',
    severity: 'stop',
    panels: [boards.upper.id, boards.lower.id],
    message: `${spec.name}: platform skins of ${mm(skin.thickness)} mm: a ${screws.id} reaches only ${mm(Math.max(0, bite))} mm into the core`,
    ...mend,
    at,
  }
}
