import { type HoleColumns, holeColumns, holesOfColumns } from './parcel-holes.ts'
import {
  boardNumbers,
  boardsOf,
  groupNumbers,
  groupsOf,
  type ShapeColumns,
  shapeColumns,
  shapesOfColumns,
} from './parcel-standing.ts'
import { standingScene } from './standing-scene.ts'
import type { HoleShape, PanelToScene, Scene, SceneEdge, SceneSnap } from './types.ts'

/**
 * A scene on its way from the worker: of its lists, only what was not in the last one, which is known by being the very same
 * thing. What there are thousands of goes as columns of numbers, since copying thousands of small things takes longer than drawing.
 */
export interface SceneParcel {
  readonly head: Omit<Scene, 'parts' | 'holes' | 'words' | 'snaps' | 'edges' | 'frames' | 'standing'>
  readonly parts: ListParcel<Scene['parts'][number][]>
  readonly words: ListParcel<Scene['words'][number][]>
  readonly rest: FlatRest | StandingRest
  /** Left out where the last scene was of the same panels. */
  readonly framed?: readonly string[]
  readonly frames: Float64Array
}

interface FlatRest {
  readonly kind: 'flat'
  readonly holes: ListParcel<HoleColumns>
  readonly snaps: ListParcel<readonly SceneSnap[]>
  /** Ends of each edge, by their places among the snaps and then among `ends`. */
  readonly edges: Uint32Array
  readonly ends: readonly SceneSnap[]
}

/** Of standing panels: what the lists follow from. */
interface StandingRest {
  readonly kind: 'standing'
  readonly shapes: ListParcel<ShapeColumns>
  readonly groups: Float64Array
  readonly boards: Float64Array
}

/** `runs`: three numbers a run: from where and how many of the last list, then how many of the fresh ones. */
interface ListParcel<F> {
  readonly runs: Uint32Array
  readonly fresh: F
}

interface Lists extends Pick<Scene, 'parts' | 'words' | 'holes' | 'snaps'> {
  readonly shapes: readonly HoleShape[]
}
const NOTHING: Lists = { parts: [], words: [], holes: [], snaps: [], shapes: [] }

/** Packs scenes one after another, each against the last one. */
export class ScenePacker {
  #last = NOTHING
  #framed: readonly string[] = []

  pack(scene: Scene): SceneParcel {
    const { look, title, facts, bounds, textSize, operations, flat, frames, parts, words, standing } = scene
    const last = this.#last
    const framed = Object.keys(frames)
    const isSameFramed = sameWords(framed, this.#framed)
    this.#framed = framed
    const common = {
      head: { look, title, facts, bounds, textSize, operations, flat },
      parts: differing(last.parts, parts),
      words: differing(last.words, words),
      ...(!isSameFramed && { framed }),
      frames: Float64Array.from(framed.flatMap((id) => frames[id] ?? [])),
    }
    if (standing === undefined) {
      const { holes, snaps, edges } = scene
      this.#last = { ...NOTHING, parts, words, holes, snaps }
      const { runs, fresh } = differing(last.holes, holes)
      const listed = { runs, fresh: holeColumns(fresh) }
      const rest = {
        kind: 'flat',
        holes: listed,
        snaps: differing(last.snaps, snaps),
        ...endsOf(snaps, edges),
      } as const
      return { ...common, rest }
    }
    const { groups, boards } = standing
    const shapes = groups.map(({ shape }) => shape)
    this.#last = { ...NOTHING, parts, words, shapes }
    const { runs, fresh } = differing(last.shapes, shapes)
    const listed = { runs, fresh: shapeColumns(fresh) }
    const rest = {
      kind: 'standing',
      shapes: listed,
      groups: groupNumbers(groups),
      boards: boardNumbers(boards),
    } as const
    return { ...common, rest }
  }
}

/** Unpacks them again, in the same order. */
export class SceneUnpacker {
  #last = NOTHING
  #framed: readonly string[] = []

  unpack(parcel: SceneParcel): Scene {
    const last = this.#last
    const parts = joined(last.parts, parcel.parts.runs, parcel.parts.fresh)
    const words = joined(last.words, parcel.words.runs, parcel.words.fresh)
    this.#framed = parcel.framed ?? this.#framed
    const head = { ...parcel.head, parts, words, frames: framesOf(this.#framed, parcel.frames) }
    const { rest } = parcel
    if (rest.kind === 'flat') {
      const holes = joined(last.holes, rest.holes.runs, holesOfColumns(rest.holes.fresh))
      const snaps = joined(last.snaps, rest.snaps.runs, rest.snaps.fresh)
      this.#last = { ...NOTHING, parts, words, holes, snaps }
      return { ...head, holes, snaps, edges: edgesOf(snaps, rest) }
    }
    const shapes = joined(last.shapes, rest.shapes.runs, shapesOfColumns(rest.shapes.fresh))
    this.#last = { ...NOTHING, parts, words, shapes }
    return standingScene(head, { groups: groupsOf(shapes, rest.groups), boards: boardsOf(rest.boards) })
  }
}

function differing<T>(last: readonly T[], now: readonly T[]): ListParcel<T[]> {
  const runs: number[] = []
  const fresh: T[] = []
  let places: Map<T, number> | undefined
  let next = 0
  let k = 0
  while (k < now.length) {
    const item = now[k]
    if (item === undefined) break
    if (last[next] !== item) {
      places ??= new Map(last.map((one, place) => [one, place]))
      next = places.get(item) ?? next
    }
    const from = next
    while (k < now.length && next < last.length && last[next] === now[k]) {
      next += 1
      k += 1
    }
    const kept = next - from
    const before = fresh.length
    for (let one = now[k]; one !== undefined && last[next] !== one && !isKnown(one); one = now[k]) {
      fresh.push(one)
      k += 1
    }
    runs.push(from, kept, fresh.length - before)
  }
  return { runs: Uint32Array.from(runs), fresh }

  function isKnown(item: T): boolean {
    places ??= new Map(last.map((one, place) => [one, place]))
    return places.has(item)
  }
}

function joined<T>(last: readonly T[], runs: Uint32Array, fresh: readonly T[]): readonly T[] {
  const list: T[] = []
  let taken = 0
  for (let k = 0; k < runs.length; k += 3) {
    const [from = 0, kept = 0, added = 0] = [runs[k], runs[k + 1], runs[k + 2]]
    for (let n = from; n < from + kept; n += 1) push(list, last[n])
    for (let n = 0; n < added; n += 1) push(list, fresh[taken + n])
    taken += added
  }
  return list
}

function push<T>(list: T[], item: T | undefined): void {
  if (item === undefined) throw new Error('a scene came that does not follow the last one')
  list.push(item)
}

function endsOf(snaps: readonly SceneSnap[], edges: readonly SceneEdge[]): Pick<FlatRest, 'edges' | 'ends'> {
  const places = new Map(snaps.map((snap, place) => [snap, place]))
  const ends: SceneSnap[] = []
  const placeOf = (snap: SceneSnap): number => {
    const known = places.get(snap)
    if (known !== undefined) return known
    const place = snaps.length + ends.length
    ends.push(snap)
    places.set(snap, place)
    return place
  }
  const numbers = new Uint32Array(edges.length * 2)
  edges.forEach(({ from, to }, k) => {
    numbers[2 * k] = placeOf(from)
    numbers[2 * k + 1] = placeOf(to)
  })
  return { edges: numbers, ends }
}

function edgesOf(snaps: readonly SceneSnap[], { edges, ends }: FlatRest): SceneEdge[] {
  const at = (place: number | undefined): SceneSnap => {
    const snap = place === undefined ? undefined : (snaps[place] ?? ends[place - snaps.length])
    if (snap === undefined) throw new Error('an edge without its end')
    return snap
  }
  return Array.from({ length: edges.length / 2 }, (_, k) => ({ from: at(edges[2 * k]), to: at(edges[2 * k + 1]) }))
}

function framesOf(framed: readonly string[], numbers: Float64Array): Record<string, PanelToScene> {
  const frames: Record<string, PanelToScene> = {}
  framed.forEach((id, k) => {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = numbers.subarray(8 * k, 8 * k + 8)
    frames[id] = [a, b, c, d, e, f, g, h]
  })
  return frames
}

const sameWords = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((word, k) => word === b[k])
