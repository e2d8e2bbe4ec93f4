import { mouthRadius } from '../../drawing/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Surface } from '../../panel/index.ts'
import { mouthOf } from './bores.ts'
import { type Ellipse, pair, ringOf } from './lines.ts'
import type { PanelToScene, Rim, ScenePoint } from './types.ts'

/** The rims of the bores of a panel that is seen at a slant, each kind of hole worked out once. */
export class Rims {
  readonly #frame: PanelToScene
  readonly #mouths = new Map<Surface, Ellipse>()
  readonly #known = new Map<Surface, Map<number, Rim>>()

  constructor(frame: PanelToScene) {
    this.#frame = frame
  }

  /** The rim of a bore, and that of its sink where it enters. */
  of(bore: Bore, end: 'in' | 'out'): readonly [Rim, ...Rim[]] {
    const rim = this.#ring(bore, bore.diameter / 2)
    const wide = mouthRadius(bore)
    if (end === 'out' || wide <= bore.diameter / 2 + NOISE_MM) return [rim]
    return [rim, this.#ring(bore, wide)]
  }

  #ring(bore: Bore, radius: number): Rim {
    if (bore.leanDeg !== undefined) return rimOf(mouthOf(this.#frame, bore), radius)
    const known = this.#known.get(bore.surface) ?? new Map<number, Rim>()
    this.#known.set(bore.surface, known)
    const found = known.get(radius)
    if (found !== undefined) return found
    const mouth = this.#mouths.get(bore.surface) ?? mouthOf(this.#frame, bore)
    this.#mouths.set(bore.surface, mouth)
    const rim = rimOf(mouth, radius)
    known.set(radius, rim)
    return rim
  }
}

function rimOf(mouth: Ellipse, radius: number): Rim {
  const long = mouth.long * radius
  const way: ScenePoint = [Math.cos(mouth.turn), Math.sin(mouth.turn)]
  const rest = ringOf({ long, short: mouth.short * radius, turn: mouth.turn }, way)
  return { start: [-long * way[0], -long * way[1]], rest, reach: long }
}

/** The line of a rim about a point. */
export const rimAt = ({ start, rest }: Rim, at: ScenePoint): string =>
  `M${pair([at[0] + start[0], at[1] + start[1]])}${rest}`
