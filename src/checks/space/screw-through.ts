import { cylinder, gapToPrism, NOISE_MM, type Vec3 } from '../../geometry/index.ts'
import { fromDatum, type Panel, type Surface, surfaceWords } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'
import { groovePrism, prismOf } from '../works.ts'
import { grouped } from './scene.ts'
import { along, exitOf, floorPoses, type ScrewLine, screwLine } from './screw-line.ts'
import { shorterScrew } from './shorter-screw.ts'

/** What is wrong with the end of a screw: by how much, and in words. */
interface Fault {
  readonly line: ScrewLine
  /** Wood that is left, mm; below 0 where it comes out. */
  readonly wood: number
  /** Wood that there should be, mm. */
  readonly enough: number
  readonly words: string
  /** Whether a shorter screw helps. */
  readonly tooLong: boolean
}

/** Wood that there should be before the end of a screw and beside its thread, mm. */
interface Enough {
  readonly ahead: number
  readonly beside: number
}

/** Screws whose end comes out of the board that holds them, or nearly: at its far side, beside it, or into a cut. */
export function screwThrough(subject: Subject): Finding[] {
  const floorOf = floorPoses(subject)
  const good: Enough = {
    ahead: limitOf(subject.project, 'screw-through', 'warn'),
    beside: limitOf(subject.project, 'screw-through', 'beside'),
  }
  const faults = subject.assembly.hardware.flatMap((piece): Fault[] => {
    const line = screwLine(subject, floorOf, piece, 'tip')
    return line === undefined ? [] : (faultOf(line, good) ?? [])
  })
  const runs = grouped(faults, ({ line }) => JSON.stringify([line.piece.series, line.panel.id]))
  return [...runs.values()].flatMap((run) => findingOf(subject, run))
}

const shortOf = ({ wood, enough }: Fault): number => enough - wood

/** The worst that there is about the end of one screw. */
function faultOf(line: ScrewLine, good: Enough): Fault[] | undefined {
  if (!Number.isFinite(line.reach)) return undefined
  const exit = exitOf(line)
  const ahead: Fault[] = [
    {
      line,
      wood: exit - line.reach,
      enough: good.ahead,
      words: surfaceWords(line.panel, surfaceAt(line.panel, along(line, exit))),
      tooLong: true,
    },
  ]
  const all = line.undrilled ? [...ahead, ...besideOf(line, good.beside), ...cutsNear(line, good.ahead)] : ahead
  const worst = all.reduce((a, b) => (shortOf(b) > shortOf(a) ? b : a))
  return shortOf(worst) > NOISE_MM ? [worst] : undefined
}

/** The surface of a blank that a point lies on, or is nearest to. */
function surfaceAt({ length, width, thickness }: Panel, [x, y, z]: Vec3): Surface {
  const off: readonly (readonly [Surface, number])[] = [
    ['A', Math.abs(z)],
    ['B', Math.abs(z + thickness)],
    ['x0', Math.abs(x)],
    ['x1', Math.abs(x - length)],
    ['y0', Math.abs(y)],
    ['y1', Math.abs(y - width)],
  ]
  return off.reduce((a, b) => (b[1] < a[1] ? b : a))[0]
}

/** Wood beside the thread of a screw without a pilot, from there on where its last board begins. */
function besideOf(line: ScrewLine, enough: number): Fault[] {
  const { panel, radius, axis } = line
  const ends = [along(line, line.entry), along(line, line.length)]
  const size: Vec3 = [panel.length, panel.width, panel.thickness]
  return ([0, 1, 2] as const).flatMap((k): Fault[] => {
    // Along the axis that it mostly runs, the far side counts.
    if (Math.abs(axis[k]) > Math.SQRT1_2) return []
    const low = k === 2 ? -size[k] : 0
    return ends.flatMap((end): Fault[] =>
      ([low, low + size[k]] as const).map((bound): Fault => {
        const at: Vec3 = [k === 0 ? bound : end[0], k === 1 ? bound : end[1], k === 2 ? bound : end[2]]
        const inside = bound === low ? end[k] - low : bound - end[k]
        return { line, wood: inside - radius, enough, words: surfaceWords(panel, surfaceAt(panel, at)), tooLong: false }
      }),
    )
  })
}

/** Grooves, rebates, openings and recesses that the thread of a screw without a pilot comes near. */
function cutsNear(line: ScrewLine, enough: number): Fault[] {
  const { panel, axis, radius } = line
  const thread = cylinder(along(line, line.entry), axis, line.length - line.entry, radius)
  const cuts = [
    ...panel.grooves.map((groove) => ({ prism: groovePrism(panel, groove), words: `the ${groove.purpose}` })),
    ...panel.cutouts.map((cutout) => ({ prism: prismOf(panel, cutout), words: `the cutout for ${cutout.purpose}` })),
  ]
  return cuts.map(
    ({ prism, words }): Fault => ({ line, wood: gapToPrism(thread, prism, enough), enough, words, tooLong: false }),
  )
}

function findingOf(subject: Subject, run: readonly Fault[]): Finding[] {
  const { project } = subject
  const worst = run.reduce((a, b) => (shortOf(b) > shortOf(a) + NOISE_MM ? b : a))
  const { line, wood, words } = worst
  const { panel, item, piece } = line
  const out = wood <= NOISE_MM
  const others = run.length === 1 ? '' : `, and ${run.length - 1} more of its kind,`
  const [comes, leaves] = run.length === 1 ? ['comes', 'leaves'] : ['come', 'leave']
  const what = out ? `${comes} out of ${words}${outBy(wood)}` : `${leaves} only ${mm(wood)} mm of wood before ${words}`
  const mend = worst.tooLong
    ? shorterScrew(subject, line, shortOf(worst), limitOf(project, 'screw-through', 'bite'))
    : { fix: `move it ${mm(shortOf(worst))} mm or more away from there, or take another joint` }
  return [
    {
      rule: 'screw-through',
      severity: (worst.tooLong && wood < limitOf(project, 'screw-through', 'stop') - NOISE_MM) || out ? 'stop' : 'warn',
      panels: [panel.id],
      places: run.map(({ line: one }) => ({
        panel: panel.id,
        surface: surfaceAt(panel, along(one, exitOf(one))),
        at: along(one, Math.min(one.length, exitOf(one))),
      })),
      message: `${panelWords(panel)}: the ${item.id} ${placeWords(line)}${others} ${what}`,
      ...mend,
      at: piece.at,
    },
  ]
}

const outBy = (wood: number): string => (wood < -NOISE_MM ? ` by ${mm(-wood)} mm` : '')

/** In which pilot it is, or where its tip comes to lie. */
function placeWords(line: ScrewLine): string {
  const { panel, piece } = line
  const bore = panel.bores.find(({ uses }) => uses.some((use) => use.hardware === piece.id && use.part === 'tip'))
  if (bore !== undefined) return `in the ${boreWords(panel, bore)}`
  const { x, y } = fromDatum(panel, along(line, line.length))
  return `with its tip ${mm(y.mm)} from ${y.edge} and ${mm(x.mm)} from ${x.edge}`
}
