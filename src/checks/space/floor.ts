import type { PanelRole, PlacedHardware, PlacedModule } from '../../assembly/index.ts'
import { type Box, type BoxSearch, dot, placedBox, turn, type Vec3 } from '../../geometry/index.ts'
import type { CupHinge } from '../../hardware/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { Project } from '../../project/index.ts'
import { eachAxis } from './parts-of.ts'
import { grouped, type PlacedBody, type Scene } from './scene.ts'

/** Something that stands still while a front moves; floor frame, mm. */
export interface Still {
  readonly module: PlacedModule
  readonly panel: Panel
  /** Nothing for the panel itself. */
  readonly pull?: PlacedBody
  readonly box: Box
  readonly words: string
}

/** A front that opens: what moves together with it; floor frame, mm. */
export interface Front {
  readonly module: PlacedModule
  /** The front as it is called; of an inner drawer the front of its box. */
  readonly panel: Panel
  readonly boxes: readonly { readonly box: Box; readonly words: string }[]
  /** Unit, away from the module. */
  readonly out: Vec3
  readonly hung?: Hung
  /** Of a drawer, how far its slides come out, mm. */
  readonly travel?: number
  readonly ids: ReadonlySet<string>
}

/** How a door or flap turns: about the outer corner of its hinge edge. */
export interface Hung {
  readonly pivot: Vec3
  /** Unit, from the hinge edge over the shut front. */
  readonly across: Vec3
  readonly width: number
  readonly hinge: CupHinge
  readonly flap: boolean
}

/** All that stands on the floor, by the modules that stand against each other. */
export interface Floor {
  readonly stills: readonly Still[]
  readonly stillsNear: BoxSearch
  readonly fronts: readonly Front[]
  /** Whether two modules stand in one island: only there is it known where they stand. */
  readonly together: (a: PlacedModule, b: PlacedModule) => boolean
}

export const OPENING: readonly PanelRole[] = ['door', 'flap']
export const FRONTS: readonly PanelRole[] = [...OPENING, 'fixed front', 'drawer front']

export function floorOf(scene: Scene): Floor {
  const stills: Still[] = []
  const fronts: Front[] = []
  const slides = grouped(
    scene.subject.assembly.hardware.filter(({ item }) => item.kind === 'drawer slide'),
    ({ frame }) => frame,
  )
  const cups = cupsOf(scene)
  for (const { module, panels, bodies } of scene.modules) {
    const grips = bodies.filter(({ name }) => name === 'grip')
    const still = [
      ...panels.map(({ panel, box }): Still => ({ module, panel, box: floorBox(module, box), words: panel.name })),
      ...grips.map(
        (pull): Still => ({
          module,
          panel: pull.panel,
          pull,
          box: floorBox(module, pull.box),
          words: `the pull of ${pull.panel.name}`,
        }),
      ),
    ]
    stills.push(...still)
    fronts.push(...hungFronts(module, still, cups), ...drawersOf(module, still, slides.get(module.key) ?? []))
  }
  const islandOf = islandsOf(scene.subject.project)
  const island = ({ key, liesOver }: PlacedModule): number | undefined => islandOf.get(liesOver?.[0] ?? key)
  return {
    stills,
    stillsNear: scene.finder.index(stills.map(({ box }) => box)),
    fronts,
    together: (a, b) => island(a) === island(b),
  }
}

const floorBox = (module: PlacedModule, box: Box): Box => placedBox(module.floorFromModule, box)

const outOf = (module: PlacedModule): Vec3 => turn(module.floorFromModule, [0, -1, 0])

/** The first hinge of every front that has some. */
function cupsOf(scene: Scene): Map<string, { hinge: CupHinge; across: Vec3 }> {
  const cups = new Map<string, { hinge: CupHinge; across: Vec3 }>()
  for (const { item, stations } of scene.subject.assembly.hardware) {
    const cup = item.kind === 'cup hinge' ? stations.find(({ part }) => part === 'cup') : undefined
    if (item.kind === 'cup hinge' && cup !== undefined && !cups.has(cup.panel)) {
      cups.set(cup.panel, { hinge: item, across: cup.pose.x })
    }
  }
  return cups
}

function hungFronts(module: PlacedModule, stills: readonly Still[], cups: ReturnType<typeof cupsOf>): Front[] {
  return stills.flatMap((still): Front[] => {
    const { panel, box, pull } = still
    const cup = cups.get(panel.id)
    if (pull !== undefined || cup === undefined || !OPENING.includes(panel.role)) return []
    const out = outOf(module)
    const across = turn(module.floorFromModule, cup.across)
    // The corner of its box that lies furthest out and nearest to the hinge edge.
    const pivot = eachAxis((k) => (out[k] - across[k] > 0 ? box.max[k] : box.min[k]))
    const [, width] = spanAlong(box, across, pivot)
    const moving = stills.filter((one) => one.panel.id === panel.id)
    return [
      {
        module,
        panel,
        boxes: moving.map((one) => ({ box: one.box, words: one.pull === undefined ? 'it' : 'its pull' })),
        out,
        hung: { pivot, across, width, hinge: cup.hinge, flap: panel.role === 'flap' },
        ids: new Set([panel.id]),
      },
    ]
  })
}

/** The name that the boards of one drawer have in common: `drawer 2`. */
const drawerOf = ({ role, name }: Panel): string | undefined =>
  role.startsWith('drawer ') ? name.match(/^drawer \d+/)?.[0] : undefined

function drawersOf(module: PlacedModule, stills: readonly Still[], slides: readonly PlacedHardware[]): Front[] {
  const boards = grouped(
    stills.filter(({ panel }) => drawerOf(panel) !== undefined),
    ({ panel }) => drawerOf(panel) ?? '',
  )
  return [...boards.values()].flatMap((own): Front[] => {
    const ids = new Set(own.map(({ panel }) => panel.id))
    const slide = slides.find(({ stations }) => stations.some(({ part, panel }) => part === 'box' && ids.has(panel)))
    const front =
      own.find(({ panel }) => panel.role === 'drawer front') ??
      own.find(({ panel }) => panel.role === 'drawer box front')
    if (slide?.item.kind !== 'drawer slide' || front === undefined) return []
    return [
      {
        module,
        panel: front.panel,
        boxes: own.map((one) => ({ box: one.box, words: one.pull === undefined ? 'it' : 'its pull' })),
        out: outOf(module),
        travel: slide.item.length,
        ids,
      },
    ]
  })
}

/** Least and greatest distance of a box from a point along a direction of the axes, mm. */
export function spanAlong({ min, max }: Box, way: Vec3, from: Vec3): readonly [number, number] {
  const a = dot(way, [min[0] - from[0], min[1] - from[1], min[2] - from[2]])
  const b = dot(way, [max[0] - from[0], max[1] - from[1], max[2] - from[2]])
  return [Math.min(a, b), Math.max(a, b)]
}

/** The number of the island of each module: rows that stand against each other are one. */
function islandsOf({ rows }: Project): Map<string, number> {
  const islandOf = new Map<string, number>()
  for (const [k, row] of rows.entries()) {
    const island = row.stands === undefined ? k : (islandOf.get(row.stands.against) ?? k)
    for (const key of row.modules) islandOf.set(key, island)
  }
  return islandOf
}
