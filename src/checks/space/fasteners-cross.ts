import { boundsOfSolid, cylinder, gapBetweenSolids, NOISE_MM, type Solid, type Vec3 } from '../../geometry/index.ts'
import { fromDatum, type Panel, type Surface } from '../../panel/index.ts'
import { limitOf } from '../../project/index.ts'
import type { Finding, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'
import { solidsOf } from '../works.ts'
import { type Finder, grouped, type Scene } from './scene.ts'
import { along, floorPoses, type ScrewLine, screwLine } from './screw-line.ts'

/** Something in the wood of one panel, panel frame: the thread of a screw that has no bore there, or a bore. */
interface InWood {
  readonly solids: readonly Solid[]
  readonly pieces: ReadonlySet<string>
  readonly line?: ScrewLine
  readonly words: string
  readonly surface: Surface
  readonly at: Vec3
}

/**
 * Threads of screws that go into wood without a bore, where they meet other fasteners. What is bored is looked at bore by
 * bore within each panel; a pocket screw has a bore in the first of its boards only, and not even there as far as its tip.
 */
export function fastenersCross({ subject, finder }: Scene): Finding[] {
  const floorOf = floorPoses(subject)
  const lines = subject.assembly.hardware.flatMap((piece): ScrewLine[] =>
    (['tip', 'pocket'] as const).flatMap((part) => {
      const line = screwLine(subject, floorOf, piece, part)
      return line?.undrilled === true ? [line] : []
    }),
  )
  return [...grouped(lines, ({ panel }) => panel.id).values()].flatMap((own) => inPanel(subject, finder, own))
}

function inPanel(subject: Subject, finder: Finder, lines: readonly ScrewLine[]): Finding[] {
  const [first] = lines
  if (first === undefined) return []
  const { panel } = first
  const good = limitOf(subject.project, 'fasteners-cross', 'warn')
  const all = [...lines.map((line) => threadOf(panel, line)), ...boresOf(panel)]
  const boxes = all.map(({ solids: [solid] }) => boundsOfSolid(solid ?? cylinder([0, 0, 0], [0, 0, 1], 0, 0)))
  return finder.pairs(boxes, good).flatMap(([k, n]): Finding[] => {
    const [a, b] = [all[k], all[n]]
    // Threads stand first in the list; two bores are looked at elsewhere.
    if (a?.line === undefined || b === undefined || [...a.pieces].some((piece) => b.pieces.has(piece))) return []
    const gap = Math.min(...a.solids.flatMap((one) => b.solids.map((other) => gapBetweenSolids(one, other))))
    return gap < good - NOISE_MM ? [findingOf(panel, a, b, a.line, gap, good)] : []
  })
}

/** The thread beyond its pilot; in the board that it is driven from, as far as that reaches. */
function threadOf(panel: Panel, line: ScrewLine): InWood {
  const { piece, axis, length, radius, item } = line
  const start = line.panel.id === piece.stations.find(({ part }) => part === 'pocket')?.panel ? 0 : line.entry
  const end = start === 0 ? line.entry : length
  const at = along(line, end)
  const { x, y } = fromDatum(panel, at)
  const where = start === 0 ? 'where it leaves' : 'its tip'
  return {
    solids: [cylinder(along(line, start), axis, end - start, radius)],
    pieces: new Set([piece.id]),
    line,
    words: `${item.id} (${where} ${mm(y.mm)} from ${y.edge} and ${mm(x.mm)} from ${x.edge})`,
    surface: 'A',
    at,
  }
}

const boresOf = (panel: Panel): InWood[] =>
  panel.bores.map((bore) => ({
    solids: solidsOf(bore),
    pieces: new Set(bore.uses.map(({ hardware }) => hardware)),
    words: boreWords(panel, bore),
    surface: bore.surface,
    at: bore.at,
  }))

function findingOf(panel: Panel, a: InWood, b: InWood, line: ScrewLine, gap: number, good: number): Finding {
  const meets = gap <= NOISE_MM
  const what = meets ? 'runs into' : `passes only ${mm(gap)} mm beside`
  return {
    rule: 'fasteners-cross',
    severity: meets ? 'stop' : 'warn',
    panels: [panel.id],
    places: [b, a].map(({ surface, at }) => ({ panel: panel.id, surface, at })),
    message: `${panelWords(panel)}: the ${a.words} ${what} the ${b.words}`,
    fix: `move one of them ${mm(good - gap)} mm or more: the screws by the \`end distance\` or \`spacing\` of their joint`,
    at: line.piece.at,
  }
}
