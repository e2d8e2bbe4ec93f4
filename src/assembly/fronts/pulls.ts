import { MINUS_X, poseOf, type Vec3, X, Z } from '../../geometry/index.ts'
import type { PullSpec } from '../../project/index.ts'
import type { PlacedHardware } from '../types.ts'
import type { PlacedDoor } from './fronts.ts'

/**
 * The pull of a door (upright) or flap (across): `edgeDistance` from the edge away from the hinges, at the end that was
 * asked for.
 */
export function placePull(pull: PullSpec, door: PlacedDoor, module: string): PlacedHardware {
  const upright = door.hang === 'left' || door.hang === 'right'
  const across = {
    left: door.x1 - pull.edgeDistance,
    right: door.x0 + pull.edgeDistance,
    top: door.z0 + pull.edgeDistance,
    bottom: door.z1 - pull.edgeDistance,
  }[door.hang]
  const half = pull.item.centres / 2
  const [low, high] = upright ? [door.z0, door.z1] : [door.x0, door.x1]
  const along = {
    top: high - pull.endDistance - half,
    right: high - pull.endDistance - half,
    bottom: low + pull.endDistance + half,
    left: low + pull.endDistance + half,
    middle: (low + high) / 2,
  }[pull.end]
  const show = door.hidden - door.panel.thickness
  const at: Vec3 = upright ? [across, show, along] : [along, show, across]
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
        pose: upright ? poseOf(MINUS_X, Z, at) : poseOf(Z, X, at),
        wood: 'ahead',
      },
    ],
    settings: {},
    series,
    at: door.panel.at,
  }
}
