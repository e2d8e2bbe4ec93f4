import { type HoleColumns, holeColumns, holesOfColumns } from './parcel-holes.ts'
import type { PanelToScene, Scene, SceneEdge, SceneSnap } from './types.ts'

/**
 * A scene on its way from the worker: of its lists, only what was not in the last one, which is known by being the very same
 * thing. What there are thousands of goes as columns of numbers, since copying thousands of small things takes longer than drawing.
 */
export interface SceneParcel {
  readonly head: Omit<Scene, 'parts' | 'holes' | 'words' | 'snaps' | 'edges' | 'frames'>
  readonly parts: ListParcel<Scene['parts'][number][]>
  readonly words: ListParcel<Scene['words'][number][]>
  readonly holes: ListParcel<HoleColumns>
  readonly snaps: ListParcel<readonly SceneSnap[]>
  /** Ends of each edge, by their places among the snaps and then among `ends`. */
  readonly edges: Uint32Array
  readonly ends: readonly SceneSnap[]
  /** Left out where the last scene was of the same panels. */
  readonly framed?: readonly string[]
  readonly frames: Float64Array
}

/** `runs`: three numbers a run: from where and how many of the last list, then how many of the fresh ones. */
interface ListParcel<F> {
  readonly runs: Uint32Array
  readonly fresh: F
}

type Lists = Pick<Scene, 'parts' | 'words' | 'holes' | 'snaps'>
const NOTHING: Lists = { parts: [], words: [], holes: [], snaps: [] }

/** Packs scenes one after another, each against the last one. */
export class ScenePacker {
  #last: Lists = NOTHING
  #framed: readonly string[] = []

  pack(scene: Scene): SceneParcel {
    const { parts, holes, words, snaps, edges, frames, ...head } = scene
    const last = this.#last
    this.#last = { parts, holes, words, snaps }
    const framed = Object.keys(frames)
    const isSameFramed = sameWords(framed, this.#framed)
    this.#framed = framed
    const holeList = differing(last.holes, holes)
    return {
      head,
      parts: differing(last.parts, parts),
      words: differing(last.words, words),
      holes: { runs: holeList.runs, fresh: holeColumns(holeList.fresh) },
      snaps: differing(last.snaps, snaps),
      ...endsOf(snaps, edges),
      ...(!isSameFramed && { framed }),
      frames: Float64Array.from(framed.flatMap((id) => frames[id] ?? [])),
    }
  }
}

/** Unpacks them again, in the same order. */
export class SceneUnpacker {
  #last: Lists = NOTHING
  #framed: readonly string[] = []

  unpack(parcel: SceneParcel): Scene {
    const last = this.#last
    const lists: Lists = {
      parts: joined(last.parts, parcel.parts.runs, parcel.parts.fresh),
      words: joined(last.words, parcel.words.runs, parcel.words.fresh),
      holes: joined(last.holes, parcel.holes.runs, holesOfColumns(parcel.holes.fresh)),
      snaps: joined(last.snaps, parcel.snaps.runs, parcel.snaps.fresh),
    }
    this.#last = lists
    this.#framed = parcel.framed ?? this.#framed
    return {
      ...parcel.head,
      ...lists,
      edges: edgesOf(lists.snaps, parcel),
      frames: framesOf(this.#framed, parcel.frames),
    }
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

function endsOf(snaps: readonly SceneSnap[], edges: readonly SceneEdge[]): Pick<SceneParcel, 'edges' | 'ends'> {
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

function edgesOf(snaps: readonly SceneSnap[], { edges, ends }: SceneParcel): SceneEdge[] {
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
