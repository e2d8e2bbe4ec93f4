import type { Built } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { type Solid, sharedSpace, solidsOf } from './solids.ts'

const TIGHT = 1e-6
export const FRONTS = ['door', 'flap', 'fixed front', 'drawer front']

const stops = (of: Built): Built['findings'] => of.findings.filter(({ severity }) => severity === 'stop')

/** A stop names both panels, or (of different modules) says that their modules stand in each other. */
function said(of: Built, a: Panel, b: Panel): boolean {
  return stops(of).some(({ rule, panels, message }) => {
    if (a.module === b.module) return panels.includes(a.id) && panels.includes(b.id)
    const modules = [a, b].every((one) => message.includes(one.moduleName) || panels.includes(one.id))
    return modules && (rule === 'footprints-overlap' || rule === 'worktop-neighbour' || rule === 'panels-overlap')
  })
}

/** Panels that share space, of one module or of two, and no stop says so. Doors, drawers and platforms at rest. */
export function sharedSpaces(of: Built): string[] {
  const solids = solidsOf(of)
  return solids.flatMap((a, k) => solids.slice(k + 1).flatMap((b) => faultOf(of, a, b)))
}

function faultOf(of: Built, a: Solid, b: Solid): string[] {
  const shared = sharedSpace(a, b)
  return shared === 0 || said(of, a.panel, b.panel) ? [] : [`${a.panel.id} and ${b.panel.id} share ${shared} mm`]
}

type Raw = Readonly<Record<string, unknown>>

/** What the definition asks of a front: the group that its panel's path leads into. */
function askedOf(text: string, panel: Panel): Raw {
  let at = JSON.parse(text)
  let found: Raw = {}
  for (const key of panel.at) {
    at = at?.[key]
    if (key === 'front') found = at
    if (key === 'drawers') found = at?.fronts ?? {}
  }
  return found
}

const mm = (length: unknown): number => Number.parseFloat(`${length}`)

const half = ({ lay, cover }: Raw): boolean => (lay ?? 'overlay') === 'overlay' && !`${cover}`.includes('full')

/** How far apart two fronts of one module are as one sees them from in front, mm; negative where they overlap. */
function apart(a: Solid, b: Solid, across: 0 | 1): number {
  const along = (axis: 0 | 1 | 2): number =>
    Math.max(a.box.min[axis] - b.box.max[axis], b.box.min[axis] - a.box.max[axis])
  return Math.max(along(across), along(2))
}

/** Fronts that overlap, or are nearer than the larger of the gaps that they ask for, and no stop says so. */
export function frontFaults(of: Built, text: string): { readonly faults: string[]; readonly pairs: number } {
  const turned = new Map(
    of.assembly.modules.map(({ key, floorFromModule: { x } }) => [key, Math.abs(x[0]) > 0.5 ? 0 : 1] as const),
  )
  const fronts = solidsOf(of).filter(({ panel }) => FRONTS.includes(panel.role))
  const faults: string[] = []
  let pairs = 0
  fronts.forEach((a, k) => {
    for (const b of fronts.slice(k + 1)) {
      if (a.panel.module !== b.panel.module || said(of, a.panel, b.panel)) continue
      const [one, other] = [askedOf(text, a.panel), askedOf(text, b.panel)]
      const gap = half(one) && half(other) ? Math.max(mm(one.gap ?? 3), mm(other.gap ?? 3)) : 0
      const found = apart(a, b, turned.get(a.panel.module) ?? 0)
      if (found < gap - TIGHT) faults.push(`${a.panel.id} and ${b.panel.id} are ${found} mm apart, not ${gap}`)
      pairs += 1
    }
  })
  return { faults, pairs }
}
