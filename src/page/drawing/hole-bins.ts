import { rimsAt } from '../scene/standing-scene.ts'
import type { HoleShape, Scene, ScenePoint } from '../scene/types.ts'

/** Holes that are drawn as one path: of one operation, all on this side or all behind. */
export interface HoleBin {
  readonly operation: string
  readonly hidden: boolean
  /** Their rims, an SVG path, and a line without length at the middle of each. */
  readonly rims: string
  readonly dots: string
  /** From where both are counted, mm; from the drawing's own origin where it does not say. */
  readonly at?: ScenePoint
}

interface Binnable {
  readonly operation: string
  readonly hidden: boolean
  readonly rims: string
  readonly at: ScenePoint
}

/**
 * The holes of a scene without the operations that are off, in the order in which they are painted. Those of standing panels are
 * a bin or more for each panel, which stays the same wherever that stands, so that nothing is written anew where it is moved.
 */
export function holeBins(scene: Scene, off: ReadonlySet<string>): readonly HoleBin[] {
  const { standing } = scene
  const all =
    standing === undefined
      ? binned(scene.holes.map(({ operation, hidden, d, at }) => ({ operation, hidden, rims: d, at })))
      : standing.groups.toReversed().flatMap(({ shape, at }) => binsOf(shape).map((bin) => ({ ...bin, at })))
  return off.size === 0 ? all : all.filter(({ operation }) => !off.has(operation))
}

/** Of shapes that were drawn before. */
const known = new WeakMap<HoleShape, readonly HoleBin[]>()

function binsOf(shape: HoleShape): readonly HoleBin[] {
  const found = known.get(shape)
  if (found !== undefined) return found
  const bins = binned(
    shape.holes.map(({ operation, hidden, rims, drawn }) => ({
      operation,
      hidden,
      rims: rimsAt(rims, drawn),
      at: drawn,
    })),
  )
  known.set(shape, bins)
  return bins
}

function binned(holes: readonly Binnable[]): readonly HoleBin[] {
  const bins = new Map<string, Binnable[]>()
  for (const hole of holes) {
    const key = hole.hidden ? `${hole.operation} hidden` : hole.operation
    const bin = bins.get(key)
    if (bin === undefined) bins.set(key, [hole])
    else bin.push(hole)
  }
  return [...bins.values()].flatMap((bin): HoleBin[] => {
    const [first] = bin
    if (first === undefined) return []
    return [
      {
        operation: first.operation,
        hidden: first.hidden,
        rims: bin.map(({ rims }) => rims).join(''),
        dots: bin.map(({ at: [x, y] }) => `M${round(x)} ${round(y)}h0`).join(''),
      },
    ]
  })
}

/** For the screen a thousandth of a mm is more than enough, and shorter to read. */
const round = (mm: number): number => Math.round(mm * 1000) / 1000
