import { type Assembly, boardBox, FLOOR, type PlacedHardware, type PlacedModule } from '../../assembly/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { Bay, DefinitionPath, ModuleSpec, Project } from '../../project/index.ts'
import { onShelves, topLoad } from './carried.ts'
import { type Drawer, drawersOf } from './drawers.ts'
import { machineBodies } from './machines.ts'
import { type Body, panelBody, together } from './mass.ts'

/** A module with its own masses and with what it is to carry; all places in its own frame, mm and kg. */
export interface LoadedModule {
  readonly module: PlacedModule
  readonly spec: ModuleSpec
  readonly panels: readonly Panel[]
  readonly hardware: readonly PlacedHardware[]
  /** All its panels, and its share of a worktop that lies over it. */
  readonly own: Body
  /** Of the worktop that lies over its row, kg. */
  readonly worktopShare: number
  readonly drawers: readonly Drawer[]
  /** What stands on shelves, bottom and top, and in drawers; the machines of a flip-over top. */
  readonly load: Body
  /** The same as it is rolled: what is set down on a top is taken off first, unless the definition says that it stands there. */
  readonly rolling: Body
  /** Upper side of what it carries things on, above the floor, mm. */
  readonly topHeight: number
}

/** Loads that groups of shelves and drawers say themselves, by where they stand in the definition. */
type OwnLoads = ReadonlyMap<string, number>

const placeKey = (at: DefinitionPath): string => JSON.stringify(at)

function ownLoads(bay: Bay, into: Map<string, number>): OwnLoads {
  for (const group of [bay.looseShelves, bay.drawers]) {
    if (group?.load !== undefined) into.set(placeKey(group.at), group.load)
  }
  for (const inner of bay.split?.bays ?? []) ownLoads(inner, into)
  return into
}

/** What one loose shelf of a module is said to carry, kg, where its group says it. */
export const saidLoad = ({ inside }: ModuleSpec, at: DefinitionPath): number | undefined =>
  ownLoads(inside, new Map()).get(placeKey(at))

/** Whether the definition says anything of what a module carries. */
export const loadsAreSaid = ({ inside, loads }: ModuleSpec): boolean =>
  loads.said || ownLoads(inside, new Map()).size > 0

interface Built {
  readonly project: Project
  readonly assembly: Assembly
  readonly panels: readonly Panel[]
}

/** Every module that stands on the floor, loaded. */
export function loadedModules({ project, assembly, panels }: Built): LoadedModule[] {
  const panelsOf = grouped(panels, ({ module }) => module)
  const hardwareOf = grouped(assembly.hardware, ({ frame }) => (frame === FLOOR ? undefined : frame))
  const shares = worktopShares(project, panelsOf)
  const specs = new Map(project.modules.map((spec) => [spec.key, spec]))
  return assembly.modules.flatMap((module): LoadedModule[] => {
    const spec = specs.get(module.key)
    if (spec === undefined) return []
    const own = panelsOf.get(module.key) ?? []
    return [loadedModule(module, spec, own, hardwareOf.get(module.key) ?? [], shares.get(module.key) ?? 0)]
  })
}

function loadedModule(
  module: PlacedModule,
  spec: ModuleSpec,
  panels: readonly Panel[],
  hardware: readonly PlacedHardware[],
  worktopShare: number,
): LoadedModule {
  const said = ownLoads(spec.inside, new Map())
  const slides = new Map(
    hardware.flatMap((piece) =>
      piece.item.kind === 'drawer slide'
        ? piece.stations.filter(({ part }) => part === 'box').map(({ panel }) => [panel, piece] as const)
        : [],
    ),
  )
  const drawers = drawersOf(panels, slides, (at, area) => said.get(placeKey(at)) ?? (spec.loads.drawer * area) / 1e6)
  const { width, depth, height } = module.size
  const underside = module.baseHeight + module.packing
  const top = height + spec.worktopThickness
  const share: Body = { mass: worktopShare, at: [width / 2, depth / 2, height + spec.worktopThickness / 2] }
  const onTop: Body = carriesOnTop(spec, panels)
    ? { mass: topLoad(spec.loads, underside + top), at: [width / 2, depth / 2, top] }
    : { mass: 0, at: [0, 0, 0] }
  const fixed = [
    ...onShelves(panels, drawers, spec.loads, (shelf) => said.get(placeKey(shelf.at))),
    ...drawers.map((drawer) => drawer.load),
    ...machineBodies(spec, height),
  ]
  return {
    module,
    spec,
    panels,
    hardware,
    own: together([...panels.map(panelBody), share]),
    worktopShare,
    drawers,
    load: together([...fixed, onTop]),
    rolling: together(spec.loads.top === undefined ? fixed : [...fixed, onTop]),
    topHeight: underside + top,
  }
}

/** A flip-over top carries its machines and nothing else; without a board on top there is nothing to stand things on. */
const carriesOnTop = (spec: ModuleSpec, panels: readonly Panel[]): boolean =>
  spec.flipOver === undefined && (spec.worktopThickness > NOISE_MM || panels.some(({ role }) => role === 'top'))

/** What each module of a row bears of the worktop that lies over them, kg, by their widths. */
function worktopShares(project: Project, panelsOf: ReadonlyMap<string, readonly Panel[]>): Map<string, number> {
  const widths = new Map(project.modules.map(({ key, width }) => [key, width]))
  return new Map(
    project.rows.flatMap(({ worktop, modules }) => {
      if (worktop === undefined) return []
      const mass = together((panelsOf.get(worktop.key) ?? []).map(panelBody)).mass
      const whole = modules.reduce((sum, key) => sum + (widths.get(key) ?? 0), 0)
      return modules.map((key) => [key, (mass * (widths.get(key) ?? 0)) / whole] as const)
    }),
  )
}

function grouped<T>(list: readonly T[], keyOf: (one: T) => string | undefined): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const one of list) {
    const key = keyOf(one)
    if (key === undefined) continue
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else group.push(one)
  }
  return groups
}

/** The lowest side of a module's boards, module frame, mm: what it stands on where it has no base. */
export function lowest(panels: readonly Panel[]): number {
  return Math.min(...panels.map((panel) => boardBox(panel).min[2]))
}
