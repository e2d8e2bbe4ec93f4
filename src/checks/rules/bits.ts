import { NOISE_MM } from '../../geometry/index.ts'
import { fineMm } from '../../length/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { BitSpec, Edit, EditValue, Project } from '../../project/index.ts'
import { isKindFor, makes, type Need, needsOf, usualKind } from '../bits.ts'
import { count, emptyTally, type Tally, tallyWords, waitWord } from '../counted.ts'
import type { Finding, Rule } from '../types.ts'
import { mm } from '../words.ts'

/** Holes for which there is no bit in the shop, or none that is long enough; looked at only where `bits` says what there is. */
export const bits: Rule = {
  ids: ['bit-missing', 'bit-depth'],
  check: ({ project, panels }) => {
    if (project.bits.length === 0) return []
    const groups = groupsOf(project, panels)
    return [
      ...groups.flatMap((group) => (group.bits.length === 0 ? [missing(project, group)] : [])),
      ...groups.flatMap((group) => tooDeep(project, group)),
    ]
  },
}

/** All holes that one bit would make. */
interface Group {
  readonly need: Need
  /** The bits that make them, however deep. */
  readonly bits: readonly BitSpec[]
  readonly all: Tally
  /** Those deeper than the longest of the bits reaches, and the deepest of them, mm. */
  readonly deep: Tally
  deepest: number
}

function groupsOf(project: Project, panels: readonly Panel[]): Group[] {
  const groups = new Map<string, Group>()
  for (const panel of panels) {
    for (const bore of panel.bores) {
      for (const need of needsOf(project, bore)) {
        const key = `${need.make} ${need.diameter.toFixed(2)} ${need.angleDeg ?? ''} ${need.inFace}`
        let group = groups.get(key)
        if (group === undefined) {
          const able = project.bits.filter((bit) => makes(project, bit, need))
          group = { need, bits: able, all: emptyTally(), deep: emptyTally(), deepest: 0 }
          groups.set(key, group)
        }
        const purpose = need.make === 'counterbore' || need.make === 'sink' ? `sunk ${bore.purpose}` : bore.purpose
        count(group.all, purpose, panel)
        if (need.depth <= reachOf(group.bits) + NOISE_MM) continue
        count(group.deep, purpose, panel)
        group.deepest = Math.max(group.deepest, need.depth)
      }
    }
  }
  return merged([...groups.values()])
}

/** Holes in faces and in edges that wait for the same bit are one group: the machine alone makes a difference. */
function merged(groups: readonly Group[]): Group[] {
  const out: Group[] = []
  for (const group of groups) {
    const same = out.find(
      ({ need, bits: able }) =>
        need.make === group.need.make &&
        Math.abs(need.diameter - group.need.diameter) <= NOISE_MM &&
        need.angleDeg === group.need.angleDeg &&
        able.length === group.bits.length,
    )
    if (same === undefined) {
      out.push(group)
      continue
    }
    for (const key of ['all', 'deep'] as const) {
      for (const [purpose, n] of group[key].byPurpose)
        same[key].byPurpose.set(purpose, (same[key].byPurpose.get(purpose) ?? 0) + n)
      for (const panel of group[key].panels) same[key].panels.add(panel)
    }
    same.deepest = Math.max(same.deepest, group.deepest)
  }
  return out
}

/** How deep the longest of some bits reaches, mm. */
const reachOf = (able: readonly BitSpec[]): number =>
  Math.max(0, ...able.map(({ depth }) => depth ?? Number.POSITIVE_INFINITY))

const WHAT: Readonly<Record<Need['make'], string>> = {
  hole: 'bit',
  'flat hole': 'bit for flat holes',
  counterbore: 'bit for counterbores',
  'pocket hole': 'step bit',
  sink: 'countersink',
}

const sizeWords = ({ diameter, angleDeg }: Need): string =>
  `${fineMm(diameter)} mm${angleDeg === undefined ? '' : ` and ${mm(angleDeg)}°`}`

function missing(project: Project, { need, all }: Group): Finding {
  const others = project.bits
    .filter((bit) => isKindFor(bit, need))
    .sort((a, b) => Math.abs(a.diameter - need.diameter) - Math.abs(b.diameter - need.diameter))
  const [nearest] = others
  const angle = nearest?.angleDeg === undefined ? '' : ` and ${mm(nearest.angleDeg)}°`
  const there =
    nearest === undefined ? 'there is none of its kind' : `the nearest is ${fineMm(nearest.diameter)} mm${angle}`
  return {
    rule: 'bit-missing',
    severity: 'warn',
    panels: [],
    places: [],
    message: `no ${WHAT[need.make]} of ${sizeWords(need)}: ${tallyWords(all)} ${waitWord(all)} for it; ${there}`,
    fix: `get a ${usualKind(need)}${usualKind(need) === 'countersink' ? '' : ' bit'} of ${sizeWords(need)}, and put it under \`bits\``,
    change: [added(project, bitValue(need))],
    at: ['bits'],
  }
}

function tooDeep(project: Project, { need, bits: able, deep, deepest }: Group): Finding[] {
  const longest = [...able].sort((a, b) => (b.depth ?? 0) - (a.depth ?? 0))[0]
  if (longest?.depth === undefined || deep.panels.size === 0) return []
  const depth = Math.ceil(deepest * 10 - NOISE_MM) / 10
  const both = need.make === 'hole' ? ', or bore what goes through from both faces' : ''
  return [
    {
      rule: 'bit-depth',
      severity: 'warn',
      panels: [],
      places: [],
      message: `the longest ${WHAT[need.make]} of ${sizeWords(need)} bores ${mm(longest.depth)} mm deep, too short for ${tallyWords(deep)}, up to ${mm(deepest)} mm deep`,
      fix: `get one that bores ${mm(depth)} mm deep, and put it under \`bits\`${both}`,
      change: [added(project, { ...bitValue(need, longest.kind), depth: `${mm(depth)} mm` })],
      at: longest.at,
    },
  ]
}

function bitValue(need: Need, kind = usualKind(need)): Readonly<Record<string, EditValue>> {
  return {
    kind,
    diameter: `${fineMm(need.diameter)} mm`,
    ...(need.angleDeg !== undefined && { angle: need.angleDeg }),
  }
}

/** The list of bits with one more at its end. */
export const added = ({ bits: list }: Project, value: Readonly<Record<string, EditValue>>): Edit => ({
  path: ['bits', list.length],
  value,
})
