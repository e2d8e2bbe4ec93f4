import { type Box, NOISE_MM, placeBack, rectanglePath, type Vec3 } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import { type DefinitionPath, type HousingSpec, type Limits, limitOf, type PanelJoint } from '../../project/index.ts'
import { boardBox, thicknessAxis } from '../boards.ts'
import { atMost, inWords } from '../mend.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedCut, PlacedCutout, PlacedPanel, PlacingTrouble } from '../types.ts'
import { placeJoint } from './joints.ts'

/** Whether a joint is a groove into which the other board is let. */
export function isHousing(joint: PanelJoint): joint is HousingSpec {
  return 'kind' in joint
}

/** How much longer a board is at an end that meets a face of a board so thick, mm: 0 unless it is let into it. */
export function letIn(joint: PanelJoint, headThickness: number): number {
  if (!isHousing(joint)) return 0
  return joint.depth === 'auto' ? headThickness / 3 : joint.depth
}

export interface PanelJointRequest {
  readonly module: string
  readonly head: PlacedPanel
  /** Already as long as the joint lets it in. */
  readonly tip: PlacedPanel
  readonly joint: PanelJoint
  readonly at: DefinitionPath
  /** Where the definition says how they are joined, or can say it. */
  readonly asked: DefinitionPath
  readonly limits: Limits
}

/** A joint of two carcase panels: its fasteners, or its groove. */
export function joinPanels(request: PanelJointRequest): Parts {
  const { joint } = request
  return isHousing(joint) ? housing({ ...request, joint }) : partsOf(placeJoint({ ...request, joint }))
}

/** Room in a notch beyond the round end of its groove, mm, so that the corner never holds the board off; common practice. */
const NOTCH_PLAY_MM = 0.5
/** A board that goes on so far beyond another goes on to the next one, mm; common practice. */
const GOES_ON_MM = 30

type HousingRequest = PanelJointRequest & { readonly joint: HousingSpec }

/** Where the groove and the board in it run from front to back, mm in the module. */
interface Run {
  readonly from: number
  readonly to: number
  readonly startsInside: boolean
  readonly endsInside: boolean
}

/** Less wood than this between a groove and the end of its board is none, mm: the groove is a rebate; common practice. */
const LEAST_LIP_MM = 3

/**
 * The groove in the face of the head, as wide as the thickest reading of the tip and its play, and the notches of the
 * tip where the groove stops short of an edge. A groove ends with the round of a cutter of its width; the notch frees
 * the tip's corner of it. At the front it stops where the tip does, so that no open groove shows.
 */
function housing(request: HousingRequest): Parts {
  const { head, tip, joint } = request
  const headBox = boardBox(head)
  const tipBox = boardBox(tip)
  const width = tip.stock.thickest + joint.play
  const run = runOf(joint, headBox, tipBox)
  const least = width + limitOf(request.limits, 'housing-short', 'stop')
  if (run.to - run.from < least - NOISE_MM) return partsOf({ troubles: [tooShort(request, run, least)] })
  return partsOf({
    cuts: [grooveFor(request, headBox, tipBox, width, run)],
    cutouts: notches(request, headBox, tipBox, width, run),
  })
}

/** A groove is not stopped at an end where its board goes on to the next one: between rails. */
function runOf(joint: HousingSpec, head: Box, tip: Box): Run {
  const goesOnInFront = head.min[1] - tip.min[1] > GOES_ON_MM
  const goesOnBehind = tip.max[1] - head.max[1] > GOES_ON_MM
  const startsInside = (joint.stopFront > 0 && !goesOnInFront) || tip.min[1] > head.min[1] + NOISE_MM
  const endsInside = joint.stopRear > 0 && !goesOnBehind
  return {
    from: startsInside ? Math.max(head.min[1] + joint.stopFront, tip.min[1]) : head.min[1],
    to: endsInside ? Math.min(head.max[1] - joint.stopRear, tip.max[1]) : head.max[1],
    startsInside,
    endsInside,
  }
}

function grooveFor({ head, tip, at }: HousingRequest, headBox: Box, tipBox: Box, width: number, run: Run): PlacedCut {
  const into = thicknessAxis(head)
  const across = thicknessAxis(tip)
  const min: [number, number, number] = [0, run.from, 0]
  const max: [number, number, number] = [0, run.to, 0]
  min[into] = Math.max(headBox.min[into], tipBox.min[into])
  max[into] = Math.min(headBox.max[into], tipBox.max[into])
  const middle = (tipBox.min[across] + tipBox.max[across]) / 2
  const atStart = middle - width / 2 < headBox.min[across] + LEAST_LIP_MM
  const atEnd = middle + width / 2 > headBox.max[across] - LEAST_LIP_MM
  min[across] = atStart ? headBox.min[across] : middle - width / 2
  max[across] = atEnd ? headBox.max[across] : middle + width / 2
  const kind = atStart || atEnd ? 'rebate' : 'groove'
  return {
    panel: head.id,
    kind,
    box: { min, max },
    roundEnds: run.startsInside || run.endsInside,
    purpose: `${kind === 'rebate' ? 'rebate' : 'housing'} for the ${tip.name}`,
    at,
  }
}

/** The corners of the tip that stand where the groove has stopped, as openings of its own outline. */
function notches(
  { head, tip, at }: HousingRequest,
  headBox: Box,
  tipBox: Box,
  width: number,
  run: Run,
): PlacedCutout[] {
  const into = thicknessAxis(head)
  const ends: [string, number, number][] = []
  if (run.startsInside) ends.push(['front', tipBox.min[1], run.from + width / 2 + NOTCH_PLAY_MM])
  if (run.endsInside) ends.push(['rear', run.to - width / 2 - NOTCH_PLAY_MM, tipBox.max[1]])
  return ends.map(([end, from, to]) => {
    const min: [number, number, number] = [tipBox.min[0], from, tipBox.min[2]]
    const max: [number, number, number] = [tipBox.max[0], to, tipBox.max[2]]
    min[into] = Math.max(headBox.min[into], tipBox.min[into])
    max[into] = Math.min(headBox.max[into], tipBox.max[into])
    return {
      panel: tip.id,
      key: `notch-${head.key}-${end}`,
      notch: true,
      path: rectangleOn(tip, min, max),
      face: 'A',
      depth: 'through',
      purpose: `notch at the housing in the ${head.name}`,
      at,
    }
  })
}

/** A box of the module frame as a rectangle on a panel's face. */
function rectangleOn(panel: PlacedPanel, min: Vec3, max: Vec3): PlacedCutout['path'] {
  const a = placeBack(panel.moduleFromPanel, min)
  const b = placeBack(panel.moduleFromPanel, max)
  return rectanglePath([Math.min(a[0], b[0]), Math.min(a[1], b[1])], [Math.max(a[0], b[0]), Math.max(a[1], b[1])], 0)
}

function tooShort(request: HousingRequest, run: Run, least: number): PlacingTrouble {
  const { head, tip, at } = request
  const length = Math.max(0, run.to - run.from)
  return {
    rule: 'housing-short',
    severity: 'stop',
    panels: [head.id, tip.id],
    message: `the housing for ${inWords(tip)} in ${inWords(head)} is only ${mm(length)} mm long between its ends; ${mm(least)} mm is the least`,
    ...longer(request, least - (run.to - run.from)),
    at,
  }
}

/** Both stops lessened alike by what is missing, or another joint where that is not enough. */
function longer({ joint, asked }: HousingRequest, missing: number): Pick<PlacingTrouble, 'fix' | 'change'> {
  const { stopFront, stopRear, depth, play } = joint
  const share = missing / (stopFront + stopRear)
  if (!(share <= 1)) {
    return { fix: 'fasten it another way: `one-piece screw`', change: [{ path: asked, value: 'one-piece screw' }] }
  }
  const front = atMost(stopFront * (1 - share))
  const rear = atMost(stopRear * (1 - share))
  return {
    fix: `set \`stop front: ${front}\` and \`stop rear: ${rear}\``,
    // The whole joint, since a part of the module may have it from the carcase.
    change: [
      {
        path: asked,
        value: {
          fasten: 'housing',
          ...(depth !== 'auto' && { depth: `${depth} mm` }),
          play: `${play} mm`,
          'stop front': front,
          'stop rear': rear,
        },
      },
    ],
  }
}
