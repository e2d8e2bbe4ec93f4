import { NOISE_MM, type Pose } from '../../geometry/index.ts'
import type { JointScrew } from '../../hardware/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import type { PlacedHardware } from '../types.ts'

/** Wood left beyond the pilot of a screw from face to face, mm; common practice. */
const SKIN_MM = 3
/** Pilots go so much deeper than the screw [S28], mm. */
const BEYOND_TIP_MM = 1
/** Screw that must be in the second board, mm; common practice. */
const BITE_MM = 8

/** The first of the screws (the longest) that holds one board on the face of another and does not come out of it. */
export function faceScrew(screws: readonly JointScrew[], head: number, tip: number): JointScrew | undefined {
  return screws.find(
    ({ length }) => length + BEYOND_TIP_MM + SKIN_MM <= head + tip + NOISE_MM && length - head >= BITE_MM - NOISE_MM,
  )
}

/** Screws from the face of `head` into the face of `tip`; z of the poses goes from the head into the tip. */
export function placeFaceScrews(request: {
  readonly module: string
  readonly series: string
  readonly item: JointScrew
  readonly head: string
  readonly tip: string
  readonly poses: readonly Pose[]
  readonly at: DefinitionPath
}): PlacedHardware[] {
  return request.poses.map((pose, k) => ({
    id: `${request.series}/${k + 1}`,
    item: request.item,
    frame: request.module,
    stations: [
      { part: 'head', panel: request.head, pose, wood: 'behind' },
      { part: 'tip', panel: request.tip, pose, wood: 'ahead' },
    ],
    settings: {},
    series: request.series,
    at: request.at,
  }))
}
