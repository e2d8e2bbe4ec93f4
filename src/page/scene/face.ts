import { faceView, isDrawnOn, mouthRadius, placeWords } from '../../drawing/index.ts'
import type { Units } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { Face, Look, Scene, SceneHole } from './types.ts'

/** One face of a panel; y runs down from its upper edge. */
export function faceScene(panel: Panel, face: Face, look: Look, units: Units): Scene {
  const view = faceView(panel, face)
  const mirror = face === 'B' ? -1 : 1
  const holes = panel.bores
    .filter((bore) => isDrawnOn(bore, face))
    .map((bore): SceneHole => {
      const [x, up] = view.toView(bore.at)
      const y = panel.width - up
      const radius = mouthRadius(bore)
      const d = `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`
      return { id: `${panel.id}#${bore.id}`, panel: panel.id, operation: 'bore', at: [x, y], d, radius, hidden: false }
    })
  return {
    look,
    title: `${panel.moduleName}: ${panel.name}, face ${face}`,
    facts: [['size', `${placeWords(panel.length, units)} × ${placeWords(panel.width, units)}`]],
    bounds: { min: [0, 0], max: [panel.length, panel.width] },
    parts: [
      { key: panel.id, kind: 'panel', d: `M0 0H${panel.length}V${panel.width}H0z`, filled: true, panel: panel.id },
    ],
    holes,
    words: [],
    operations: [],
    snaps: [],
    edges: [],
    frames: { [panel.id]: [mirror, 0, 0, face === 'B' ? panel.length : 0, 0, -1, 0, panel.width] },
    flat: true,
  }
}
