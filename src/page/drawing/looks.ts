import type { PanelId } from '../../assembly/index.ts'
import type { Outline, OutlineModule, OutlinePanel } from '../protocol.ts'
import type { Look } from '../scene/types.ts'

/** How the thing that is looked at can be seen: the choices of the title block, in its order. */
export type Seen = 'Isometric' | 'Floor plan' | 'Front' | 'Face A' | 'Face B' | 'Facing pair'

/** What the look is at: all modules, one of them, or a panel. */
export interface Subject {
  readonly module?: OutlineModule
  readonly panel?: OutlinePanel
}

const panelOf = (outline: Outline, id: PanelId): Subject => {
  for (const module of outline.modules) {
    const panel = module.panels.find((one) => one.id === id)
    if (panel !== undefined) return { module, panel }
  }
  return {}
}

/** What a look is at; nothing of it where the outline does not have it. */
export function subjectOf(outline: Outline, look: Look): Subject {
  const moduleOf = (key: string | undefined): Subject => {
    const module = outline.modules.find((one) => one.key === key)
    return module === undefined ? {} : { module }
  }
  switch (look.kind) {
    case 'face':
      return panelOf(outline, look.panel)
    case 'pair':
      return panelOf(outline, look.panels[0])
    case 'front':
      return moduleOf(look.module)
    case 'isometric':
      return moduleOf(look.module)
    case 'floor':
      return {}
    default:
      return look satisfies never
  }
}

export function seenOf(look: Look): Seen {
  switch (look.kind) {
    case 'face':
      return look.face === 'A' ? 'Face A' : 'Face B'
    case 'pair':
      return 'Facing pair'
    case 'front':
      return 'Front'
    case 'isometric':
      return 'Isometric'
    case 'floor':
      return 'Floor plan'
    default:
      return look satisfies never
  }
}

/** How a subject can be seen. A worktop over several modules is no cabinet and has no front. */
export function waysToSee({ module, panel }: Subject): readonly Seen[] {
  if (panel !== undefined) {
    const pair: readonly Seen[] = panel.mates.length > 0 ? ['Facing pair'] : []
    return panel.faces.includes('B') ? ['Face A', 'Face B', ...pair] : ['Face A', ...pair]
  }
  if (module === undefined) return ['Isometric', 'Floor plan']
  return module.isTop ? ['Isometric'] : ['Front', 'Isometric']
}

/** The look at a subject; doors, distance apart and turn stay as they are in `now` where it has them. */
export function lookAtSubject(subject: Subject, seen: Seen, now: Look | undefined): Look {
  const { module, panel } = subject
  const [mate] = panel?.mates ?? []
  const spread = now?.kind === 'isometric' ? { apart: now.apart, turn: now.turn } : ({ apart: 0, turn: 0 } as const)
  if (panel !== undefined) {
    if (seen === 'Facing pair' && mate !== undefined) return { kind: 'pair', panels: [panel.id, mate] }
    return { kind: 'face', panel: panel.id, face: seen === 'Face B' && panel.faces.includes('B') ? 'B' : 'A' }
  }
  if (module !== undefined && seen === 'Front' && !module.isTop)
    return { kind: 'front', module: module.key, doors: now?.kind === 'front' ? now.doors : 'on' }
  if (module === undefined && seen === 'Floor plan') return { kind: 'floor' }
  return { kind: 'isometric', ...(module && { module: module.key }), ...spread }
}

/** The look when another module is chosen: the panel of the same name in it and the same face, else the same way to see it. */
export function lookAtModule(outline: Outline, key: string | undefined, now: Look): Look {
  const module = outline.modules.find((one) => one.key === key)
  const { panel: shown } = subjectOf(outline, now)
  const panel = shown && module?.panels.find(({ name }) => name === shown.name)
  const subject: Subject = { ...(module && { module }), ...(panel && { panel }) }
  const seen = seenOf(now)
  const ways = waysToSee(subject)
  return lookAtSubject(subject, ways.includes(seen) ? seen : (ways[0] ?? 'Isometric'), now)
}

/** The same thing is looked at: its picture stays where it is on the sheet, and going back does not count it as a step. */
export function sameThing(a: Look | undefined, b: Look | undefined): boolean {
  return a !== undefined && b !== undefined && thingOf(a) === thingOf(b)
}

function thingOf(look: Look): string {
  switch (look.kind) {
    case 'face':
      return `face ${look.face} ${look.panel}`
    case 'pair':
      return `pair ${look.panels.join(' ')}`
    case 'front':
      return `front ${look.module}`
    case 'isometric':
      return `isometric ${look.module ?? ''}`
    case 'floor':
      return 'floor'
    default:
      return look satisfies never
  }
}

/** Name of a module in the definition, under which the form has its fields; nothing for what is named elsewhere. */
export function definitionName({ at }: OutlineModule): string | undefined {
  const [list, name] = at
  return list === 'modules' && name !== undefined ? String(name) : undefined
}
