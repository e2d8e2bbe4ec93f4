import { MINUS_X, poseOf, Z } from '../geometry/index.ts'
import type { PullSpec } from '../project/index.ts'
import type { PlacedDoor } from './fronts.ts'
import type { PlacedHardware } from './types.ts'

/** The pull of a door: upright, `edgeDistance` from the edge away from the hinges, at the end that was asked for. */
export function placePull(pull: PullSpec, door: PlacedDoor, module: string): PlacedHardware {
  const x = door.hang === 'left' ? door.x1 - pull.edgeDistance : door.x0 + pull.edgeDistance
  const half = pull.item.centres / 2
  const z = {
    top: door.z1 - pull.endDistance - half,
    bottom: door.z0 + pull.endDistance + half,
    middle: (door.z0 + door.z1) / 2,
  }[pull.end]
  const series = `${module}/${door.panel.key}-pull`
  return {
    id: `${series}/1`,
    item: pull.item,
    frame: module,
    stations: [
      {
        part: 'front',
        panel: door.panel.id,
        // On the show face, into the wood.
        pose: poseOf(MINUS_X, Z, [x, door.hidden - door.panel.thickness, z]),
        wood: 'ahead',
      },
    ],
    settings: {},
    series,
    at: door.panel.at,
  }
}
