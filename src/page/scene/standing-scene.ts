import { add, placedBox } from '../../geometry/index.ts'
import { throughPose } from './plane.ts'
import { rimAt } from './rims.ts'
import { cornersOf, ISOMETRIC } from './standing-board.ts'
import type { BoardPlace, HoleGroup, Rim, Scene, SceneHole, ScenePoint, SceneStanding } from './types.ts'

/**
 * A scene of standing panels. Its holes, and what measuring snaps to, follow from how it is made up, and are worked out when they
 * are first asked for: while somebody types, nobody asks.
 */
export function standingScene(
  head: Omit<Scene, 'holes' | 'snaps' | 'edges' | 'standing'>,
  standing: SceneStanding,
): Scene {
  const holes = once(() => standing.groups.flatMap(holesOfGroup))
  const corners = once(() => standing.boards.map((board) => cornersOf(placed(board))))
  const snaps = once(() => corners().flatMap((one) => one.snaps))
  const edges = once(() => corners().flatMap((one) => one.edges))
  return {
    ...head,
    standing,
    get holes() {
      return holes()
    },
    get snaps() {
      return snaps()
    },
    get edges() {
      return edges()
    },
  }
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

function placed(board: BoardPlace): Parameters<typeof cornersOf>[0] {
  const [length, width, thickness] = board.size
  return {
    ...board,
    box: placedBox(board.eyeFromPanel, { min: [0, 0, -thickness], max: [length, width, 0] }),
    frame: throughPose(ISOMETRIC, board.eyeFromPanel),
  }
}

/** The holes of a group where it stands. */
export function holesOfGroup({ shape, at: [x, y], place }: HoleGroup): SceneHole[] {
  return shape.holes.map((hole): SceneHole => {
    const at: ScenePoint = [hole.drawn[0] + x, hole.drawn[1] + y]
    return {
      id: hole.id,
      panel: shape.panel,
      operation: hole.operation,
      at,
      place: add(hole.onFloor, place),
      d: rimsAt(hole.rims, at),
      radius: hole.radius,
      hidden: hole.hidden,
    }
  })
}

/** The rim of a hole, and of its sink, as one path. */
export const rimsAt = ([rim, mouth]: readonly [Rim, ...Rim[]], at: ScenePoint): string =>
  mouth === undefined ? rimAt(rim, at) : rimAt(rim, at) + rimAt(mouth, at)
