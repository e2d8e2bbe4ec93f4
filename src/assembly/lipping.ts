import { NOISE_MM } from '../geometry/index.ts'
import { mm } from '../length/index.ts'
import { type LippingGroup, type LippingSpec, type LippingTarget, nearestName } from '../project/index.ts'
import { edgeNames } from './edges.ts'
import type { EdgeSide, PanelRole, PlacedPanel, PlacingTrouble } from './types.ts'

const SIDES: readonly PanelRole[] = ['left side', 'right side']
const SHELVES: readonly PanelRole[] = ['fixed shelf', 'loose shelf']
const STRETCHERS: readonly PanelRole[] = ['front stretcher', 'rear stretcher']

/** The roles that a word for a group stands for; `all` is every panel. */
const GROUPS: Readonly<Record<Exclude<LippingGroup, 'all'>, readonly PanelRole[]>> = {
  carcase: [...SIDES, ...SHELVES, ...STRETCHERS, 'top', 'bottom', 'partition', 'top rail'],
  sides: SIDES,
  shelves: SHELVES,
  partitions: ['partition'],
  doors: ['door'],
  fronts: ['door', 'flap', 'fixed front', 'drawer front'],
  'drawer boxes': ['drawer left side', 'drawer right side', 'drawer box front', 'drawer box back'],
  rails: ['top rail'],
  stretchers: STRETCHERS,
  plinth: ['plinth front', 'plinth back', 'plinth left side', 'plinth right side'],
}

/** Whether a word names a panel, by its name, its role, or a group of roles. */
function names(word: string, panel: PlacedPanel): boolean {
  const group = GROUPS[word as keyof typeof GROUPS] as readonly PanelRole[] | undefined
  return word === 'all' || word === panel.name || word === panel.role || group?.includes(panel.role) === true
}

const EDGES: readonly EdgeSide[] = ['x0', 'x1', 'y0', 'y1']

/**
 * The panels of a module with their lippings, finished sizes as before, and what could not be lipped as asked: a word
 * that names no panel (only where the module itself says it), panels without such an edge, nothing left of a panel.
 */
export function lipped(
  panels: readonly PlacedPanel[],
  specs: readonly LippingSpec[],
): { readonly panels: readonly PlacedPanel[]; readonly troubles: readonly PlacingTrouble[] } {
  if (specs.length === 0) return { panels, troubles: [] }
  const troubles = specs.flatMap((spec) => (spec.own ? idleTroubles(panels, spec) : []))
  const made = panels.map((panel) => {
    const lipping = lippingOf(panel, specs)
    if (lipping === undefined) return panel
    const left = [
      panel.length - (lipping.x0 ?? 0) - (lipping.x1 ?? 0),
      panel.width - (lipping.y0 ?? 0) - (lipping.y1 ?? 0),
    ]
    if (Math.min(...left) > NOISE_MM) return { ...panel, lipping }
    troubles.push(nothingLeft(panel, specs, lipping))
    return panel
  })
  return { panels: made, troubles }
}

type Lipping = Partial<Record<EdgeSide, number>>

function lippingOf(panel: PlacedPanel, specs: readonly LippingSpec[]): Lipping | undefined {
  const edges = edgeNames(panel)
  const lipping: Lipping = {}
  for (const spec of specs) {
    if (!spec.on.some(({ word }) => names(word, panel))) continue
    for (const side of EDGES) if (spec.edges.includes(edges[side])) lipping[side] = spec.thickness
  }
  return Object.keys(lipping).length === 0 ? undefined : lipping
}

function idleTroubles(panels: readonly PlacedPanel[], spec: LippingSpec): PlacingTrouble[] {
  return spec.on.flatMap((target) => {
    const named = panels.filter((panel) => names(target.word, panel))
    if (named.length === 0) return [noPanel(panels, target)]
    if (target.word === 'all') return []
    const bare = named.filter((panel) => !Object.values(edgeNames(panel)).some((edge) => spec.edges.includes(edge)))
    return bare.length < named.length ? [] : [noEdge(bare, spec, target)]
  })
}

function noPanel(panels: readonly PlacedPanel[], { word, at }: LippingTarget): PlacingTrouble {
  const list = panels.map((panel) => panel.name)
  const nearest = nearestName(word, list)
  const hint = nearest === undefined ? '' : `; did you mean "${nearest}"?`
  return {
    rule: 'lipping-panel',
    severity: 'stop',
    panels: [],
    message: `a lipping is asked for on "${word}", and this module has no such panel`,
    fix: `name one of ${list.slice(0, 12).join(', ')}${list.length > 12 ? ` or ${list.length - 12} more` : ''}${hint}`,
    ...(nearest !== undefined && { change: [{ path: at, value: nearest }] }),
    at,
  }
}

function noEdge(bare: readonly PlacedPanel[], spec: LippingSpec, { word, at }: LippingTarget): PlacingTrouble {
  const [first] = bare
  const edges = first === undefined ? [] : Object.values(edgeNames(first))
  const more = spec.on.length > 1
  return {
    rule: 'lipping-panel',
    severity: 'warn',
    panels: bare.map((panel) => panel.id),
    message: `"${word}" has no ${spec.edges.join(' or ')} edge to be lipped`,
    fix: `name some of its edges: ${edges.join(', ')}${more ? ', or leave it out of `on`' : ''}`,
    ...(more && { change: [{ path: at, value: undefined }] }),
    at,
  }
}

function nothingLeft(panel: PlacedPanel, specs: readonly LippingSpec[], lipping: Lipping): PlacingTrouble {
  const { x0 = 0, x1 = 0, y0 = 0, y1 = 0 } = lipping
  const along = panel.length - x0 - x1 <= panel.width - y0 - y1
  const [one, other, size] = along ? [x0, x1, panel.length] : [y0, y1, panel.width]
  const spec = specs.findLast((one) => one.on.some(({ word }) => names(word, panel)))
  return {
    rule: 'lipping-size',
    severity: 'stop',
    panels: [panel.id],
    message: `the lippings of ${panel.name}, ${mm(one)} and ${mm(other)} mm, leave nothing of its ${mm(size)} mm to be cut`,
    fix: 'take a thinner lipping, or leave this panel out',
    at: spec?.at ?? panel.at,
  }
}
