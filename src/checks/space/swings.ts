import type { Box, Vec3 } from '../../geometry/index.ts'
import { type DefinitionPath, limitOf } from '../../project/index.ts'
import type { Finding } from '../types.ts'
import { mm, panelWords } from '../words.ts'
import type { Floor, Front, Hung, Still } from './floor.ts'
import { type Axis, eachAxis } from './parts-of.ts'
import type { Scene } from './scene.ts'
import { firstStop, type Stop, stillWords } from './turning-front.ts'

/** Doors and flaps that meet something still before they are open as far as they should be. */
export function swings(scene: Scene, floor: Floor): Finding[] {
  return floor.fronts.flatMap((front) => {
    const { hung } = front
    if (hung === undefined) return []
    const stop = firstStop(floor, front, hung)
    return stop === undefined ? [] : (findingOf(scene, floor, front, hung, stop) ?? [])
  })
}

function findingOf(scene: Scene, floor: Floor, front: Front, hung: Hung, stop: Stop): Finding[] | undefined {
  const { project } = scene.subject
  const { panel } = front
  const { still } = stop
  const corner = still !== undefined && turned(front, still)
  const rule = hung.flap ? 'flap-arc' : corner ? 'corner-swing' : 'door-swing'
  const enough = limitOf(project, rule, 'warn')
  const short = stop.degrees < enough
  // A flap that stops beyond that still holds what lies behind it open.
  if (!short && hung.flap) return undefined
  const met = still === undefined ? 'the floor' : stillWords(front, still)
  const offered = short ? otherHand(scene, floor, front, hung, enough) : undefined
  return [
    {
      rule,
      severity: short ? 'warn' : 'note',
      panels: [panel.id, ...(still === undefined ? [] : [still.panel.id])],
      places: [],
      message: `${panelWords(panel)} ${opensWords(stop)} meets ${met}${short ? '' : `; its hinges open ${mm(hung.hinge.openingDeg)}°`}`,
      ...(offered ?? (short ? { fix: fixWords(hung) } : {})),
      at: panel.at,
    },
  ]
}

const opensWords = ({ degrees, what }: Stop): string =>
  degrees < 1 ? `cannot open, since ${what}` : `opens only to ${Math.floor(degrees)}° before ${what}`

/** Whether what stands still belongs to a module that looks another way. */
const turned = ({ out }: Front, { module: { floorFromModule } }: Still): boolean =>
  out[0] * floorFromModule.y[0] + out[1] * floorFromModule.y[1] > -0.5

const fixWords = ({ flap }: Hung): string =>
  flap ? 'hang it at another edge, or leave more room there' : 'hang it at its other edge, or leave more room beside it'

/** The same door hung at its other edge, where it opens far enough. */
function otherHand(
  scene: Scene,
  floor: Floor,
  front: Front,
  hung: Hung,
  enough: number,
): Pick<Finding, 'fix' | 'change'> | undefined {
  const { panel } = front
  const at: DefinitionPath = panel.at
  const [only, pull] = front.boxes
  const single = !panel.name.endsWith(' left') && !panel.name.endsWith(' right')
  if (hung.flap || !single || only === undefined) return undefined
  const flipped: Hung = {
    ...hung,
    pivot: eachAxis((k) => hung.pivot[k] + hung.across[k] * hung.width),
    across: [-hung.across[0], -hung.across[1], -hung.across[2]],
  }
  // Its pull goes to the other edge with it: mirrored about the middle of the door.
  const mirrored = pull === undefined ? [] : [{ ...pull, box: mirroredBox(pull.box, only.box, hung.across) }]
  const stop = firstStop(floor, { ...front, boxes: [only, ...mirrored] }, flipped)
  if (stop !== undefined && stop.degrees < enough) return undefined
  const leftNow = scene.subject.assembly.hardware.some(
    ({ stations, item }) =>
      item.kind === 'cup hinge' && stations.some((one) => one.panel === panel.id && one.pose.x[0] > 0),
  )
  const hang = leftNow ? 'right' : 'left'
  return { fix: `hang it at its ${hang} edge (\`hang: ${hang}\`)`, change: [{ path: [...at, 'hang'], value: hang }] }
}

function mirroredBox(box: Box, about: Box, across: Vec3): Box {
  const flip = (k: Axis, value: number): number => (across[k] === 0 ? value : about.min[k] + about.max[k] - value)
  return {
    min: eachAxis((k) => Math.min(flip(k, box.min[k]), flip(k, box.max[k]))),
    max: eachAxis((k) => Math.max(flip(k, box.min[k]), flip(k, box.max[k]))),
  }
}
