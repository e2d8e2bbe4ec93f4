import { MINUS_Z, NOISE_MM, poseOf, Y, Z } from '../../geometry/index.ts'
import type { DrawerSlide } from '../../hardware/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import type { Span } from '../fronts/index.ts'
import type { PanelId, PlacedHardware } from '../types.ts'

/** The longest slide that fits a depth, with what stays free behind it; `undefined` when none does. All mm. */
export function longestSlide(slides: readonly DrawerSlide[], depth: number, behind: number): DrawerSlide | undefined {
  return slides
    .filter((slide) => slide.setback + slide.length + behind <= depth + NOISE_MM)
    .reduce<DrawerSlide | undefined>(
      (best, one) => (best === undefined || one.length > best.length ? one : best),
      undefined,
    )
}

/** Slides in every other opening of a row stand so much lower, so that screws in the two faces of a partition pass, mm. */
const PARITY_STEP_MM = 16

/**
 * Height of a slide's middle line: half-way up the side of the box, lower by a step in openings of the other parity,
 * within what is free for it, and moved to the nearest height that clears what the wall has on it. `undefined` where
 * nothing is clear. Module frame, mm.
 */
export function slideHeight(side: Span, free: Span, parity: 0 | 1, taken: readonly Span[]): number | undefined {
  const wish = Math.min(Math.max((side.from + side.to) / 2 - parity * PARITY_STEP_MM, free.from), free.to)
  const fouls = (z: number): boolean => taken.some(({ from, to }) => z > from + NOISE_MM && z < to - NOISE_MM)
  const places = [wish, ...taken.flatMap(({ from, to }) => [from, to])]
  return places
    .filter((z) => z >= free.from - NOISE_MM && z <= free.to + NOISE_MM && !fouls(z))
    .reduce<number | undefined>(
      (best, z) => (best === undefined || Math.abs(z - wish) < Math.abs(best - wish) - NOISE_MM ? z : best),
      undefined,
    )
}

/** Both slides of a drawer: each placed once, on the axis of its holes, shut. */
export function placeSlides(request: {
  readonly module: string
  /** `drawer-1`. */
  readonly key: string
  readonly slide: DrawerSlide
  /** Front end and middle line, module frame, mm. */
  readonly front: number
  readonly z: number
  /** What each is screwed to, the plane of that face and of the box's side. */
  readonly left: { readonly panel: PanelId; readonly x: number; readonly box: PanelId; readonly boxX: number }
  readonly right: { readonly panel: PanelId; readonly x: number; readonly box: PanelId; readonly boxX: number }
  readonly note: string
  readonly at: DefinitionPath
}): PlacedHardware[] {
  const { module, slide, front, z } = request
  return (['left', 'right'] as const).map((side): PlacedHardware => {
    const { panel, x, box, boxX } = request[side]
    // Toward the left the wood of the carcase lies at −x and that of the box at +x; on the right the other way round.
    const toLeft = (at: number) => poseOf(Y, MINUS_Z, [at, front, z])
    const toRight = (at: number) => poseOf(Y, Z, [at, front, z])
    const series = `${module}/${request.key}-${side}-slide`
    return {
      id: `${series}/1`,
      item: slide,
      frame: module,
      stations: [
        { part: 'cabinet', panel, pose: side === 'left' ? toLeft(x) : toRight(x), wood: 'ahead' },
        { part: 'box', panel: box, pose: side === 'left' ? toRight(boxX) : toLeft(boxX), wood: 'ahead' },
      ],
      settings: {},
      series,
      note: request.note,
      at: request.at,
    }
  })
}
