import {
  boundsOfSolid,
  boxSolid,
  type Cylinder,
  cylinder,
  gapBetweenSolids,
  NOISE_MM,
  placedSolid,
  X,
} from '../../geometry/index.ts'
import { flipSizes, limitOf, type ModuleSpec, sidesDepth } from '../../project/index.ts'
import type { Finding } from '../types.ts'
import { mm } from '../words.ts'
import type { Floor, Still } from './floor.ts'
import { rounded } from './parts-of.ts'
import type { ModuleScene, Scene } from './scene.ts'

/** Something that turns about the axle of a flip-over top, in the floor frame. */
interface Turning {
  readonly name: string
  readonly circle: Cylinder
}

/** Modules that stand where a platform or a machine of another turns beyond its footprint. */
export function flipRoom(scene: Scene, floor: Floor): Finding[] {
  const specs = new Map(scene.subject.project.modules.map((spec) => [spec.key, spec]))
  return scene.modules.flatMap((own) => {
    const spec = specs.get(own.module.key)
    return spec?.flipOver === undefined
      ? []
      : turningParts(scene, own, spec).flatMap((part) => met(scene, floor, own, part))
  })
}

function turningParts({ subject }: Scene, { module }: ModuleScene, spec: ModuleSpec): Turning[] {
  const axle = subject.assembly.hardware.find(({ item, frame }) => item.kind === 'axle' && frame === module.key)
  const ends = (axle?.stations ?? []).map(({ pose }) => pose.origin)
  const [a, b] = ends
  if (spec.flipOver === undefined || a === undefined || b === undefined) return []
  const { radius } = flipSizes(spec.flipOver, sidesDepth(spec))
  const part = (name: string, x0: number, x1: number, reach: number): Turning => ({
    name,
    circle: placedSolid(module.floorFromModule, cylinder([x0, a[1], a[2]], X, x1 - x0, reach)) as Cylinder,
  })
  const machines = (['upper', 'lower'] as const).flatMap((face): Turning[] => {
    const machine = spec.flipOver?.machines[face]
    if (machine === undefined) return []
    const middle = (a[0] + b[0]) / 2 + machine.offCentre.right
    return [part(machine.name, middle - machine.width / 2, middle + machine.width / 2, radius[face])]
  })
  return [part('platform', Math.min(a[0], b[0]), Math.max(a[0], b[0]), radius.platform), ...machines]
}

/** The one that it reaches furthest into, of each module that it meets. */
function met(scene: Scene, floor: Floor, own: ModuleScene, { name, circle }: Turning): Finding[] {
  const air = limitOf(scene.subject.project, 'flip-room', 'warn')
  const worst = new Map<string, { still: Still; gap: number; short: number }>()
  for (const k of floor.stillsNear(boundsOfSolid(circle), air)) {
    const still = floor.stills[k]
    if (still === undefined || still.module.key === own.module.key || !floor.together(still.module, own.module))
      continue
    const gap = gapBetweenSolids(circle, boxSolid(still.box))
    const short = shortOf(circle, still, air)
    if (gap < air - NOISE_MM && short > (worst.get(still.module.key)?.short ?? 0)) {
      worst.set(still.module.key, { still, gap, short })
    }
  }
  return [...worst.values()].map(({ still, gap, short }): Finding => {
    const into = `${still.words} of ${still.module.name}`
    const platform = own.panels.filter(({ panel }) => panel.role === 'platform upper skin')
    return {
      rule: 'flip-room',
      severity: 'warn',
      panels: [...platform.map(({ panel }) => panel.id), still.panel.id],
      places: [],
      message: `${own.module.name}: as it turns, the ${name} ${gap <= NOISE_MM ? `strikes ${into}` : `passes ${into} by only ${mm(gap)} mm`}`,
      fix: `leave ${mm(rounded(short))} mm more between the two modules (\`gap\`), or roll one of them away first`,
      at: own.module.at,
    }
  })
}

/** How much further apart they must stand, mm: along the floor, at the height where the circle is widest. */
function shortOf({ from, axis, radius }: Cylinder, { box }: Still, air: number): number {
  const across = axis[0] === 0 ? 0 : 1
  const near = Math.max(box.min[across] - from[across], from[across] - box.max[across])
  const low = Math.max(box.min[2] - from[2], from[2] - box.max[2], 0)
  const reach = radius + air
  return Math.max(0, Math.sqrt(Math.max(0, reach * reach - low * low)) - near)
}
