import { makes, type Need, needsOf, usualKind } from '../../checks/index.ts'
import { roundMm } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import { type Bore, type Panel, purposesOf } from '../../panel/index.ts'
import type { Project } from '../../project/index.ts'
import { bitWords, grooveWidth, placeWords, pocketWords } from '../words.ts'

/** A bit with all that it is set to. */
export interface Tool {
  readonly name: string
  readonly settings: readonly Setting[]
}

export interface Setting {
  /** `deep 13`, `through`, `6.2 wide, 8 deep`. */
  readonly words: string
  readonly count: number
  /** What it is for, each once, in the order of the panels. */
  readonly purposes: readonly string[]
}

/** One use of a bit. Groups and settings are put in the order of their ranks, then of their figures. */
interface Use {
  readonly tool: string
  readonly toolRank: readonly [group: number, size: number]
  readonly setting: string
  readonly settingRank: number
  readonly purposes: readonly string[]
}

/**
 * Every bit that the work of these panels takes, the smallest drill first: drills, step bits, countersinks, counterbores,
 * then what grooves and openings are cut with. Bits of the shop where the definition lists them, else the usual ones.
 */
export function toolsOf(project: Project, panels: readonly Panel[]): Tool[] {
  const uses = panels.flatMap((panel) => [
    ...panel.bores.flatMap((bore) => usesOf(project, bore)),
    ...cutsOf(panel, project.units),
  ])
  const tools = new Map<string, { rank: Use['toolRank']; settings: Map<string, SettingSoFar> }>()
  for (const use of uses) {
    const tool = tools.get(use.tool) ?? { rank: use.toolRank, settings: new Map<string, SettingSoFar>() }
    tools.set(use.tool, tool)
    const setting = tool.settings.get(use.setting) ?? { rank: use.settingRank, count: 0, purposes: new Set<string>() }
    tool.settings.set(use.setting, setting)
    setting.count += 1
    for (const purpose of use.purposes) setting.purposes.add(purpose)
  }
  return [...tools]
    .sort(([, a], [, b]) => a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1])
    .map(([name, { settings }]) => ({
      name,
      settings: [...settings]
        .sort(([, a], [, b]) => a.rank - b.rank)
        .map(([words, { count, purposes }]) => ({ words, count, purposes: [...purposes] })),
    }))
}

interface SettingSoFar {
  readonly rank: number
  count: number
  readonly purposes: Set<string>
}

/** Deeper than any hole: `through` stands last. */
const THROUGH = 1e6

const GROUPS: Readonly<Record<Need['make'], number>> = {
  hole: 0,
  'flat hole': 0,
  'pocket hole': 1,
  sink: 2,
  counterbore: 3,
}

function usesOf(project: Project, bore: Bore): Use[] {
  const { units } = project
  const purposes = purposesOf(bore)
  return needsOf(project, bore).map((need): Use => {
    const shared = { toolRank: [GROUPS[need.make], need.diameter] as const, purposes }
    const size = sizeWords(need.diameter, units)
    if (need.make === 'sink')
      return {
        ...shared,
        tool: `countersink ${placeWords(need.angleDeg ?? 0, 'mm')}°`,
        toolRank: [GROUPS.sink, need.angleDeg ?? 0],
        setting: `to ${size} across`,
        settingRank: need.diameter,
      }
    if (need.make === 'pocket hole')
      return { ...shared, tool: `step bit ${size}`, setting: pocketSetting(bore, units), settingRank: bore.depth }
    const inEdge = need.inFace ? '' : ', in edges'
    const through = bore.through && need.make !== 'counterbore'
    return {
      ...shared,
      tool: `${kindOf(project, need)} bit ${size}`,
      setting: `${through ? 'through' : `deep ${bitWords(need.depth, units)}`}${inEdge}`,
      settingRank: (through ? THROUGH : need.depth) + (need.inFace ? 0 : 2 * THROUGH),
    }
  })
}

/** `15°, collar at 18.1`, of all that is said of a pocket. */
function pocketSetting(bore: Bore, units: Units): string {
  const [angle = '', , collar = ''] = pocketWords(bore, units).split(', ')
  return `${angle.replace('pocket ', '')}, ${collar}`
}

/** The kind of a bit that is in the shop, the one without need of a machine first; else the usual one. */
function kindOf(project: Project, need: Need): string {
  const able = project.bits.filter((bit) => makes(project, bit, need) && bit.kind !== 'end mill')
  return able[0]?.kind ?? usualKind(need)
}

/** Grooves, rebates, openings and recesses. */
function cutsOf({ grooves, cutouts }: Panel, units: Units): Use[] {
  return [
    ...grooves.map(
      (groove): Use => ({
        tool: 'straight router bit, or saw',
        toolRank: [4, 0],
        setting: `${groove.kind} ${bitWords(grooveWidth(groove), units)} wide, ${bitWords(groove.depth, units)} deep`,
        settingRank: roundMm(grooveWidth(groove)) * THROUGH + groove.depth,
        purposes: [groove.purpose],
      }),
    ),
    ...cutouts.map(
      (cutout): Use => ({
        tool: 'router or jigsaw',
        toolRank: [5, 0],
        setting: cutout.through ? 'right through' : `recess ${bitWords(cutout.depth, units)} deep`,
        settingRank: cutout.through ? THROUGH : cutout.depth,
        purposes: [cutout.purpose],
      }),
    ),
  ]
}

/** A size with its unit, whatever the project's. */
const sizeWords = (mm: number, units: Units): string =>
  units === 'mm' ? `${placeWords(mm, units)} mm` : bitWords(mm, units)
