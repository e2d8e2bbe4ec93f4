import type { Units } from '../length/index.ts'
import type { Panel } from '../panel/index.ts'
import type { LayerPatterns } from '../project/index.ts'
import { type Area, areaOfEntity, grown, union } from './areas.ts'
import { type Callout, calloutsOf, drawCallouts } from './callouts.ts'
import { type Face, type FaceView, faceView } from './face.ts'
import { drawFrame, drawGrain } from './frame.ts'
import { drawCheckBar, drawHeading } from './heading.ts'
import { type Drawn, layersOf } from './layers.ts'
import { drawSchedule, type ScheduleBlock } from './schedule.ts'
import type { Drawing } from './types.ts'
import { drawWork, workObstacles } from './work.ts'

export interface PanelDrawingOptions {
  readonly patterns: LayerPatterns
  /** In which people read lengths; the drawing itself is in mm. */
  readonly units: Units
  /** A warning that stands over everything, where the panel must not be made as it is. */
  readonly stamp?: string
}

/** Text height: this share of the panel's longer side, within limits that read on a screen and at a CAD station. */
const TEXT_SHARE = 1 / 60
const TEXT_LEAST_MM = 4
const TEXT_MOST_MM = 20

/**
 * One face of a panel with everything that is needed to drill it: the cuts for the machine on layers of their own, marks
 * for hand work, and notes that leave no figure to be looked up elsewhere. The panel's lower left corner, as seen on that
 * face, is at (0, 0); face B is seen after turning the panel over about its y axis, so x becomes length − x. mm.
 */
export function panelDrawing(panel: Panel, face: Face, options: PanelDrawingOptions): Drawing {
  const view = faceView(panel, face)
  const size = textSize(panel)
  const work = drawWork(view, options.units, size)
  const inTheWay = workObstacles(view, size)
  const frame = drawFrame(view, options.units, size, inTheWay)
  const callouts = calloutsOf(view, options.units, size)
  const obstacles = [...inTheWay, ...frame.obstacles]
  const labels = drawCallouts(callouts, obstacles, view.area, size)
  const grain = drawGrain(view, size, [...obstacles, ...labels.taken])
  const picture = [...work, ...frame.drawn, ...labels.drawn, ...grain]
  const drawn = [...picture, ...drawSheet(view, callouts, options, { picture: areaOf(picture), size })]
  const seen = grown(areaOf(drawn), MARGIN * size)
  return {
    title: `${panel.moduleName}: ${panel.name}, face ${face}`,
    view: seen,
    flipHeight: panel.width,
    strokeScale: size / TEXT_LEAST_MM,
    layers: layersOf(drawn, options.patterns),
  }
}

/** Space around everything, and between the panel and what stands over and under it, in text heights. */
const MARGIN = 1.5
const ABOVE = 1.1
const BELOW = 1.4
const TABLE_TEXT = 0.95

function textSize(panel: Panel): number {
  const wanted = Math.max(panel.length, panel.width) * TEXT_SHARE
  return Math.min(TEXT_MOST_MM, Math.max(TEXT_LEAST_MM, wanted))
}

function areaOf(drawn: readonly Drawn[]): Area {
  return union(drawn.map(({ entity }) => areaOfEntity(entity)))
}

/** Heading above the picture, table and check bar below it, all from the panel's left edge. */
function drawSheet(
  view: FaceView,
  callouts: readonly Callout[],
  options: PanelDrawingOptions,
  { picture, size }: { readonly picture: Area; readonly size: number },
): Drawn[] {
  const { panel, face } = view
  const left = 0
  const table = drawSchedule(blocksOf(callouts), headsOf(panel), {
    left,
    top: picture.min[1] - BELOW * size,
    height: TABLE_TEXT * size,
  })
  const lowest = table.length > 0 ? areaOf(table).min[1] : picture.min[1]
  const bar = drawCheckBar(options.units, { left, top: lowest - BELOW * size, size })
  const { units, stamp } = options
  const heading = drawHeading(panel, face, stamp === undefined ? { units } : { units, stamp }, {
    left,
    bottom: picture.max[1] + ABOVE * size,
    size,
    width: Math.max(panel.length, areaOf([...table, ...bar]).max[0]),
  })
  return [...heading, ...table, ...bar]
}

function blocksOf(callouts: readonly Callout[]): ScheduleBlock[] {
  const rows = (byHand: boolean) => callouts.filter((one) => one.byHand === byHand).map((one) => one.row)
  return [{ rows: rows(false) }, { heading: 'By hand', rows: rows(true) }]
}

function headsOf(panel: Panel) {
  const from = panel.lipping === undefined ? 'from' : 'from finished'
  return {
    tag: '',
    count: 'holes',
    bit: 'bit',
    depth: 'deep',
    fromY: `${from} ${panel.edges[panel.datum.y]}`,
    fromX: `${from} ${panel.edges[panel.datum.x]}`,
    purpose: 'for',
  }
}
