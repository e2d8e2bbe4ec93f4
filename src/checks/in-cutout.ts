import { distanceToContour, holdsPoint, type PathVertex, type Vec2 } from '../geometry/index.ts'

/** Whether a disc lies whole within a closed path; all in one frame, mm. */
export function discLiesIn(path: readonly PathVertex[], middle: Vec2, radius: number): boolean {
  return holdsPoint(path, middle) && distanceToContour(path, middle) >= radius
}
