import type { PlacedHardware } from '../../assembly/index.ts'
import { NOISE_MM } from '../../geometry/index.ts'
import { type Caster, itemsOfKind, type LevellingFoot } from '../../hardware/index.ts'
import type { CastersSpec, Project } from '../../project/index.ts'
import { type LoadedModule, wheelLoad } from '../loads/index.ts'
import type { Finding, Rule } from '../types.ts'
import { GUIDE, kg } from '../words.ts'

/** Modules too heavy for what they stand on: all but one of the casters or feet carry. */
export const wheelLoads: Rule = {
  ids: ['caster-load', 'foot-load'],
  check: ({ project, loaded }) => loaded.flatMap((module) => checkModule(project, module)),
}

type Stand = Caster | LevellingFoot

const isStand = (piece: PlacedHardware): piece is PlacedHardware & { readonly item: Stand } =>
  piece.item.kind === 'caster' || piece.item.kind === 'levelling foot'

function checkModule(project: Project, loaded: LoadedModule): Finding[] {
  const { own, load, module, hardware, spec } = loaded
  const stands = hardware.filter(isStand)
  const [first] = stands
  if (first === undefined || stands.length < 2) return []
  const weakest = stands.reduce((least, { item }) => (item.loadKg < least.loadKg ? item : least), first.item)
  const each = wheelLoad(own.mass, load.mass, stands.length)
  if (each <= weakest.loadKg + NOISE_MM) return []
  const casters = weakest.kind === 'caster'
  const what = casters ? 'casters' : 'levelling feet'
  const better = betterStand(project, loaded, weakest, each)
  const less = `load it with ${kg(Math.ceil((each - weakest.loadKg) * (stands.length - 1) * 10) / 10)} less (\`loads\`)`
  return [
    {
      rule: casters ? 'caster-load' : 'foot-load',
      severity: 'warn',
      panels: loaded.panels.filter(({ role }) => role === 'bottom').map(({ id }) => id),
      places: [],
      message: `${module.name}: its own ${kg(own.mass)} and ${kg(load.mass)} on it make ${kg(each)} on each of ${stands.length - 1} ${what}, since one of ${stands.length} hangs on a floor that is never flat; ${weakest.id} carries ${kg(weakest.loadKg)} ${GUIDE}`,
      fix: better === undefined ? less : `take ${better.id}, which carries ${kg(better.loadKg)}, or ${less}`,
      ...(better && {
        change: [{ path: [...spec.at, 'base', casters ? 'casters' : 'feet'], value: better.id }],
      }),
      at: spec.at,
    },
  ]
}

/** The weakest item of the catalogue that carries it and, as far as its circle tells, has room; in the project's units. */
function betterStand(project: Project, { spec }: LoadedModule, weakest: Stand, each: number): Stand | undefined {
  const { base } = spec
  const inches = (item: Stand): boolean => item.id.endsWith(' in')
  const fits = (item: Stand): boolean => item.loadKg >= each && inches(item) === (project.units === 'in')
  const list: readonly Stand[] =
    weakest.kind === 'levelling foot'
      ? itemsOfKind('levelling foot').filter(fits)
      : base.kind === 'casters' && base.fixed === undefined
        ? itemsOfKind('caster')
            .filter((item) => (item.turning ?? 'swivel') === (base.item.turning ?? 'swivel'))
            .filter((item) => fits(item) && hasRoom(spec, base, item))
        : []
  return list.reduce<Stand | undefined>((best, item) => (best && best.loadKg <= item.loadKg ? best : item), undefined)
}

/** Two circles side by side, kept apart and from the edges of the footprint by the usual distances. */
function hasRoom({ width, depth }: { width: number; depth: number }, base: CastersSpec, item: Caster): boolean {
  const inset = item.swivelRadius + base.footprintGap
  if (base.inset !== 'auto' && inset > base.inset + NOISE_MM) return false
  const taken = base.inset === 'auto' ? inset : base.inset
  return Math.min(width, depth) - 2 * taken >= 2 * item.swivelRadius + APART_MM
}

/** Kept between two swivel circles, mm; as the placing has it. */
const APART_MM = 10
