import { type Box, NOISE_MM } from '../../geometry/index.ts'
import type { Bore, Groove, Panel } from '../../panel/index.ts'
import { cylindersOf, gapToBox } from '../solids.ts'
import type { Finding, Rule } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Wood under a groove or rebate, and between it and a bore, mm; common practice. */
const SKIN_STOP_MM = 2
const SKIN_WARN_MM = 3
/** Wood between a groove and the edge along which it runs, mm; common practice. */
const LIP_STOP_MM = 3
const LIP_WARN_MM = 5

/** Grooves and rebates that leave too little wood, by themselves or beside a bore. */
export const grooves: Rule = {
  ids: ['groove-wood', 'bore-in-groove'],
  check: ({ panels }) =>
    panels.flatMap((panel) =>
      panel.grooves.flatMap((groove) => [
        ...woodOf(panel, groove),
        ...woodBetween(panel, groove),
        ...panel.bores.flatMap((bore) => boreBeside(panel, groove, bore)),
      ]),
    ),
}

function woodOf(panel: Panel, groove: Groove): Finding[] {
  const across = groove.max[0] - groove.min[0] < groove.max[1] - groove.min[1] ? 0 : 1
  const size = across === 0 ? panel.length : panel.width
  const lip = Math.min(groove.min[across], size - groove.max[across])
  const skin = panel.thickness - groove.depth
  const finding = (severity: Finding['severity'], what: string, fix: string): Finding => ({
    rule: 'groove-wood',
    severity,
    panels: [panel.id],
    places: [{ panel: panel.id, surface: groove.face, at: [groove.min[0], groove.min[1], 0] }],
    message: `${panelWords(panel)}: the ${groove.purpose}, ${mm(groove.depth)} deep, leaves only ${what}`,
    fix,
    at: panel.at,
  })
  const found: Finding[] = []
  if (skin < SKIN_WARN_MM - NOISE_MM) {
    found.push(
      finding(
        skin < SKIN_STOP_MM - NOISE_MM ? 'stop' : 'warn',
        `${mm(skin)} mm of wood under it`,
        `cut it no deeper than ${mm(panel.thickness - SKIN_WARN_MM)} mm`,
      ),
    )
  }
  if (groove.kind === 'groove' && lip < LIP_WARN_MM - NOISE_MM) {
    found.push(
      finding(
        lip < LIP_STOP_MM - NOISE_MM ? 'stop' : 'warn',
        `${mm(lip)} mm of wood beside it`,
        `move it ${mm(LIP_WARN_MM - lip)} mm in from the edge`,
      ),
    )
  }
  return found
}

/** Two grooves that lie over each other on the two faces of a panel: fixed shelves housed in both sides of a partition. */
function woodBetween(panel: Panel, groove: Groove): Finding[] {
  if (groove.face !== 'A') return []
  const over = panel.grooves.filter(
    (other) =>
      other.face === 'B' &&
      ([0, 1] as const).every(
        (axis) => Math.min(groove.max[axis], other.max[axis]) - Math.max(groove.min[axis], other.min[axis]) > NOISE_MM,
      ),
  )
  return over.flatMap((other): Finding[] => {
    const skin = panel.thickness - groove.depth - other.depth
    if (skin >= SKIN_WARN_MM - NOISE_MM) return []
    return [
      {
        rule: 'groove-wood',
        severity: skin < SKIN_STOP_MM - NOISE_MM ? 'stop' : 'warn',
        panels: [panel.id],
        places: [{ panel: panel.id, surface: 'A', at: [groove.min[0], groove.min[1], 0] }],
        message: `${panelWords(panel)}: the ${groove.purpose} and the ${other.purpose} on the other face leave only ${mm(Math.max(0, skin))} mm of wood between them`,
        fix: `cut each of them no deeper than ${mm((panel.thickness - SKIN_WARN_MM) / 2)} mm`,
        at: panel.at,
      },
    ]
  })
}

function boreBeside(panel: Panel, groove: Groove, bore: Bore): Finding[] {
  if (startsInside(panel, bore)) return []
  const box = boxOf(panel, groove)
  const wall = Math.min(...cylindersOf(bore).map((cylinder) => gapToBox(cylinder, box)))
  if (wall >= SKIN_WARN_MM - NOISE_MM) return []
  return [
    {
      rule: 'bore-in-groove',
      severity: wall < SKIN_STOP_MM - NOISE_MM ? 'stop' : 'warn',
      panels: [panel.id],
      places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
      message: `${panelWords(panel)}: the ${boreWords(panel, bore)} ${wall <= NOISE_MM ? `runs into the ${groove.purpose}` : `is only ${mm(wall)} mm from the ${groove.purpose}`}`,
      fix: 'change the end distance of the joint, or move the groove',
      at: panel.at,
    },
  ]
}

function boxOf(panel: Panel, groove: Groove): Box {
  const [top, floor] = groove.face === 'A' ? [0, -groove.depth] : [groove.depth - panel.thickness, -panel.thickness]
  return { min: [groove.min[0], groove.min[1], floor], max: [groove.max[0], groove.max[1], top] }
}

/** A bore in an edge that starts within the panel: at the shoulder of a rebate, where it belongs. */
function startsInside(panel: Panel, bore: Bore): boolean {
  const into = {
    x0: bore.at[0],
    x1: panel.length - bore.at[0],
    y0: bore.at[1],
    y1: panel.width - bore.at[1],
    A: 0,
    B: 0,
  }
  return into[bore.surface] > NOISE_MM
}
