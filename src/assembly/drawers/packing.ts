import { MINUS_Z, NOISE_MM, poseOf, Y, Z } from '../../geometry/index.ts'
import type { DrawerSlide, JointScrew } from '../../hardware/index.ts'
import { mm } from '../../length/index.ts'
import type { DefinitionPath, Stock } from '../../project/index.ts'
import { board } from '../boards.ts'
import { faceScrew, placeFaceScrews } from '../joints/index.ts'
import { merge, type Parts, partsOf } from '../parts.ts'
import type { PanelId, PlacedPanel, PlacingTrouble } from '../types.ts'

export interface PackingRequest {
  readonly module: string
  /** `drawer 1`. */
  readonly name: string
  readonly side: 'left' | 'right'
  /** The panel that it is fixed to, and the plane of its face. */
  readonly wall: { readonly panel: PanelId; readonly thickness: number; readonly x: number }
  readonly stock: Stock
  readonly layers: number
  readonly slide: DrawerSlide
  /** Front end and middle line of the slide, module frame, mm. */
  readonly front: number
  readonly z: number
  readonly screws: readonly JointScrew[]
  /** What it is made of by rule. */
  readonly usual: Stock
  readonly at: DefinitionPath
}

/** Screws of one layer stand so far from those of the layer below, mm; common practice. */
const STAGGER_MM = 16
/** A packing must have so much wood beyond the holes of the slide, mm; common practice. */
const SKIN_MM = 3

/** Layers of packing to a thickness, mm. */
export function layersFor(needed: number, stock: Stock): number {
  return Math.max(0, Math.ceil((needed - NOISE_MM) / stock.thickness))
}

/**
 * Strips as long and as high as a slide, one on the other, each screwed to the one before it; the slide is screwed to
 * the last, which comes back with the parts.
 */
export function placePacking(request: PackingRequest): {
  readonly parts: Parts
  readonly last: PlacedPanel | undefined
} {
  const { module, name, side, wall, stock, layers, slide, front, z } = request
  const sign = side === 'left' ? 1 : -1
  const troubles = troubleOf(request)
  if (troubles.length > 0) return { parts: partsOf({ troubles }), last: undefined }
  let below: { panel: PanelId; thickness: number } = wall
  let last: PlacedPanel | undefined
  const parts = Array.from({ length: layers }, (_, k): Partial<Parts> => {
    const near = wall.x + sign * k * stock.thickness
    const far = near + sign * stock.thickness
    const panel = board({
      module,
      role: side === 'left' ? 'left packing' : 'right packing',
      name: `${name} ${side} packing${layers === 1 ? '' : ` ${k + 1}`}`,
      stock,
      box: {
        min: [Math.min(near, far), front, z - slide.height / 2],
        max: [Math.max(near, far), front + slide.length, z + slide.height / 2],
      },
      at: request.at,
    })
    const item = faceScrew(request.screws, panel.thickness, below.thickness)
    const hardware =
      item === undefined
        ? []
        : placeFaceScrews({
            module,
            series: `${module}/${panel.key}`,
            item,
            head: panel.id,
            tip: below.panel,
            poses: screwPlaces(slide, k).map((y) =>
              side === 'left' ? poseOf(Y, MINUS_Z, [near, front + y, z]) : poseOf(Y, Z, [near, front + y, z]),
            ),
            at: request.at,
          })
    below = { panel: panel.id, thickness: panel.thickness }
    last = panel
    return { panels: [panel], hardware }
  })
  return { parts: merge(parts), last }
}

function troubleOf({ module, name, wall, stock, slide, layers, screws, usual, at }: PackingRequest): PlacingTrouble[] {
  const trouble = (message: string, fix: string, change?: PlacingTrouble['change']): PlacingTrouble => ({
    rule: 'drawer-packing',
    severity: 'stop',
    panels: [wall.panel],
    message: `${module}, ${name}: ${message}`,
    fix,
    ...(change && { change }),
    at,
  })
  const deepest = Math.max(...(slide.parts.cabinet ?? []).map(({ depth }) => (typeof depth === 'number' ? depth : 0)))
  const least = deepest + SKIN_MM
  if (stock.thickness < least) {
    const change = usual.thickness < least ? undefined : [{ path: [...at, 'packing'], value: 'auto' }]
    return [
      trouble(
        `a packing of ${stock.name}, ${mm(stock.thickness)} mm thick, is too thin for the slide's screws, ${mm(deepest)} mm deep`,
        `name a stock of ${mm(least)} mm or more as \`packing\`${change ? `, or leave it to the rule: ${usual.name}` : ''}`,
        change,
      ),
    ]
  }
  const under = layers > 1 ? Math.min(stock.thickness, wall.thickness) : wall.thickness
  if (faceScrew(screws, stock.thickness, under) !== undefined) return []
  return [
    trouble(
      `no screw holds a packing of ${mm(stock.thickness)} mm on a board of ${mm(under)} mm`,
      'name another stock as `packing`',
    ),
  ]
}

/**
 * Where along the slide the screws of a layer stand, mm from its front end: midway between the slide's holes, in the
 * first and the last space between two, or both in the only one; the next layer's beside them.
 */
function screwPlaces(slide: DrawerSlide, layer: number): number[] {
  const holes = (slide.parts.cabinet ?? []).map((hole) => hole.x)
  const [first, second] = holes
  const [before, last] = holes.slice(-2)
  if (first === undefined || second === undefined || before === undefined || last === undefined) return []
  const shift = [0, STAGGER_MM, -STAGGER_MM][layer % 3] ?? 0
  const pair =
    holes.length === 2
      ? [first + (second - first) / 3, second - (second - first) / 3]
      : [(first + second) / 2, (before + last) / 2]
  return pair.map((y) => y + shift)
}
