import { rimsAt } from '../scene/standing-scene.ts'
import type { HoleGroup, HoleShape, Scene, SceneHole, ScenePoint } from '../scene/types.ts'

/** Holes that are drawn as one path: of one operation, all on this side or all behind. */
export interface HoleBin {
  readonly operation: string
  readonly hidden: boolean
  /** Their rims, an SVG path. */
  readonly rims: string
  /** A line without length at the middle of each, an SVG path. */
  readonly dots: () => string
}

/**
 * The holes of a scene without the operations that are off, in the order in which they are painted. Those of standing panels are
 * bins for each module, so that where one is changed or moved the paths of the others stay as they are.
 */
export function holeBins(scene: Scene, off: ReadonlySet<string>): readonly HoleBin[] {
  const { standing } = scene
  const all = standing === undefined ? binned(scene.holes.map(holeDrawn)) : standingBins(standing.groups)
  return off.size === 0 ? all : all.filter(({ operation }) => !off.has(operation))
}

interface Drawn {
  readonly operation: string
  readonly hidden: boolean
  readonly rims: string
  readonly dot: () => string
}

const holeDrawn = ({ operation, hidden, d, at }: SceneHole): Drawn => ({
  operation,
  hidden,
  rims: d,
  dot: () => dotAt(at),
})

function standingBins(groups: readonly HoleGroup[]): readonly HoleBin[] {
  const modules = new Map<string, HoleBin[]>()
  for (const group of groups.toReversed()) {
    const module = group.shape.panel.slice(0, group.shape.panel.indexOf('/'))
    const bins = modules.get(module)
    if (bins === undefined) modules.set(module, [...binsOf(group)])
    else bins.push(...binsOf(group))
  }
  return [...modules.values()].flatMap((bins) =>
    binned(bins.map(({ operation, hidden, rims, dots }) => ({ operation, hidden, rims, dot: dots }))),
  )
}

/** As each was drawn last. */
const known = new WeakMap<HoleShape, { readonly at: ScenePoint; readonly bins: readonly HoleBin[] }>()

function binsOf({ shape, at }: HoleGroup): readonly HoleBin[] {
  const found = known.get(shape)
  if (found !== undefined && found.at[0] === at[0] && found.at[1] === at[1]) return found.bins
  const bins = binned(
    shape.holes.map(({ operation, hidden, rims, drawn }) => {
      const place: ScenePoint = [drawn[0] + at[0], drawn[1] + at[1]]
      return { operation, hidden, rims: rimsAt(rims, place), dot: () => dotAt(place) }
    }),
  )
  known.set(shape, { at, bins })
  return bins
}

function binned(all: readonly Drawn[]): readonly HoleBin[] {
  const bins = new Map<string, Drawn[]>()
  for (const one of all) {
    const key = one.hidden ? `${one.operation} hidden` : one.operation
    const bin = bins.get(key)
    if (bin === undefined) bins.set(key, [one])
    else bin.push(one)
  }
  return [...bins.values()].flatMap((bin): HoleBin[] => {
    const [first] = bin
    if (first === undefined) return []
    return [
      {
        operation: first.operation,
        hidden: first.hidden,
        rims: bin.map(({ rims }) => rims).join(''),
        dots: () => bin.map(({ dot }) => dot()).join(''),
      },
    ]
  })
}

const dotAt = ([x, y]: ScenePoint): string => `M${round(x)} ${round(y)}h0`

/** For the screen a thousandth of a mm is more than enough, and shorter to read. */
const round = (mm: number): number => Math.round(mm * 1000) / 1000
