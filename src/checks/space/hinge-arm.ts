import { type Box, norm, place, type Vec3 } from '../../geometry/index.ts'
import { PLATE_BEYOND_MM } from '../../hardware/index.ts'
import type { Panel } from '../../panel/index.ts'
import { typedLength } from '../typed.ts'
import type { Finding } from '../types.ts'
import { mm } from '../words.ts'
import { freeHeightWords } from './free-heights.ts'
import { bodyWords, depthOf, pathKey, placeOf, rounded, SHAVING_MM, type Specs, touches, woodIn } from './parts-of.ts'
import { type BoxedPanel, grouped, type ModuleScene, type PlacedBody, type Scene } from './scene.ts'

interface Hit {
  readonly body: PlacedBody
  readonly other: BoxedPanel
  /** Wood of the other panel within the body, module frame. */
  readonly wood: readonly Box[]
}

/** Panels that stand where the arm or the plate of a hinge is, shut or open. */
export function hingeArm(scene: Scene, specs: Specs): Finding[] {
  return scene.modules.flatMap((own) => {
    const hits = own.bodies.filter(({ piece }) => piece.item.kind === 'cup hinge').flatMap((body) => hitsOf(own, body))
    // The plate and the arm of all hinges of a door that one panel is in the way of are one finding.
    const runs = grouped(hits, ({ body, other }) => JSON.stringify([body.piece.series, other.panel.id]))
    return [...runs.values()].flatMap((run) => findingOf(scene, own, specs, run))
  })
}

function hitsOf(own: ModuleScene, body: PlacedBody): Hit[] {
  return own.panelsNear(body.box, 0).flatMap((k): Hit[] => {
    const other = own.panels[k]
    if (other === undefined || body.piece.stations.some(({ panel }) => panel === other.panel.id)) return []
    if (coversPlate(body, other)) return []
    const wood = woodIn(other.panel, other.box, body.box)
    return wood.length === 0 ? [] : [{ body, other, wood }]
  })
}

/** Where a panel stands on the wall, on the plate or nearly: `hole-covered` says so. */
function coversPlate({ piece, station, panel }: PlacedBody, other: BoxedPanel): boolean {
  if (!touches(panel, other.box)) return false
  return (piece.item.parts[station.part] ?? []).some((hole) => {
    const at = place(station.pose, [hole.x, hole.y, 0])
    return distanceTo(other.box, at) < PLATE_BEYOND_MM - SHAVING_MM
  })
}

function distanceTo({ min, max }: Box, at: Vec3): number {
  const off = (k: 0 | 1 | 2): number => Math.max(min[k] - at[k], 0, at[k] - max[k])
  return norm([off(0), off(1), off(2)])
}

function findingOf(scene: Scene, own: ModuleScene, specs: Specs, run: readonly Hit[]): Finding[] {
  const { subject } = scene
  // The arm stands out furthest, so it is named where it is met.
  const hit = run.find(({ body }) => body.name === 'arm') ?? run[0]
  if (hit === undefined) return []
  const { body, other } = hit
  const cup = body.piece.stations.find(({ part }) => part === 'cup')
  const door = cup === undefined ? 'its door' : subject.panelOf(cup.panel).name
  const pieces = new Set(run.map((one) => one.body.piece.id))
  const more = pieces.size === 1 ? '' : `, and of ${pieces.size - 1} more of its hinges`
  const loose = other.panel.role === 'loose shelf'
  // On other pins it is clear: where it was drawn is but one of its places.
  const movable = loose && !freeHeightWords(scene, own, other.panel).startsWith('no ')
  return [
    {
      rule: 'hinge-arm',
      severity: movable ? 'note' : loose ? 'warn' : 'stop',
      panels: [other.panel.id, body.panel.id],
      places: [placeOf(body)],
      message: `${own.module.name}: ${other.panel.name} is in the way of ${bodyWords(body)} of ${body.panel.name}, for ${door}${more}`,
      ...(loose
        ? shelfMend(scene, own, specs, other, run)
        : {
            fix: `move the hinge or ${other.panel.name} ${mm(rounded(depthOf(hit.wood)))} mm or more (\`hinges: [ … ]\`)`,
          }),
      at: loose ? other.panel.at : body.piece.at,
    },
  ]
}

/** A loose shelf can rest on other pins, or end behind the hinges. */
function shelfMend(
  scene: Scene,
  own: ModuleScene,
  specs: Specs,
  { panel, box }: BoxedPanel,
  run: readonly Hit[],
): Pick<Finding, 'fix' | 'change'> {
  const heights = freeHeightWords(scene, own, panel)
  const spec = specs.shelves.get(pathKey(panel.at))
  const behind = Math.max(...run.map(({ body }) => body.box.max[1])) - box.min[1]
  if (spec === undefined || behind >= depthWithin(panel)) return { fix: heights }
  const setback = typedLength(spec.frontSetback + behind, scene.subject.project.units, 'up')
  return {
    fix: `${heights}${heights.startsWith('no ') ? ';' : ', or'} set \`front setback: ${setback}\` for it to end behind the hinges`,
    change: [{ path: [...panel.at, 'front setback'], value: setback }],
  }
}

/** A shelf that would become less than half as deep is none. */
const depthWithin = ({ width }: Panel): number => width / 2
