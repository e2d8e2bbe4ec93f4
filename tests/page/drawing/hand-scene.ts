import type { Scene, SceneHole, ScenePoint } from '../../../src/page/scene/types.ts'

/** A scene of a board, 700 by 500, with what is given in place of nothing. */
export function handScene(with_: Partial<Scene> = {}): Scene {
  return {
    look: { kind: 'face', panel: 'p', face: 'A' },
    title: 'cabinet: side, face A',
    facts: [],
    bounds: { min: [0, 0], max: [700, 500] },
    textSize: 12,
    parts: [],
    holes: [],
    words: [],
    operations: [],
    snaps: [],
    edges: [],
    frames: { p: [1, 0, 0, 0, 0, -1, 0, 500] },
    flat: true,
    ...with_,
  }
}

/** A hole of the board, seen on its face A. */
export const hole = (id: string, at: ScenePoint): SceneHole => ({
  id,
  panel: 'p',
  operation: 'bore 5 13 shelf pins',
  at,
  place: [at[0], 500 - at[1], 0],
  d: '',
  radius: 2.5,
  hidden: false,
})
