import { type Box, type Pose, turn } from '../../geometry/index.ts'
import type { Panel, Surface } from '../../panel/index.ts'
import { OUTWARD } from './surfaces.ts'
import type { PanelToScene } from './types.ts'

/** A panel in its place under the eye. */
export interface Standing {
  readonly panel: Panel
  readonly floorFromPanel: Pose
  /** Frame of the eye: turned, and the panels apart. */
  readonly eyeFromPanel: Pose
  readonly box: Box
  readonly frame: PanelToScene
}

/** True where a surface is one of those that one sees. */
export function isTurnedHere(eyeFromPanel: Pose, surface: Surface): boolean {
  const [x, y, z] = turn(eyeFromPanel, OUTWARD[surface])
  return x < -0.5 || y < -0.5 || z > 0.5
}

/** Alike to the last digit: what was drawn for one is right for the other. */
export const samePlace = (a: Standing, b: Standing): boolean =>
  a.panel === b.panel &&
  sameNumbers(a.frame, b.frame) &&
  samePose(a.floorFromPanel, b.floorFromPanel) &&
  samePose(a.eyeFromPanel, b.eyeFromPanel)

export const sameBox = (a: Box, b: Box): boolean => sameNumbers(a.min, b.min) && sameNumbers(a.max, b.max)

const samePose = (a: Pose, b: Pose): boolean =>
  sameNumbers(a.origin, b.origin) && sameNumbers(a.x, b.x) && sameNumbers(a.y, b.y)

function sameNumbers(a: readonly number[], b: readonly number[]): boolean {
  for (let k = 0; k < a.length; k += 1) if (a[k] !== b[k]) return false
  return a.length === b.length
}

/** The axes of a panel under the eye and on the floor, in words: where they are the same, only places differ. */
export const axesKey = ({ eyeFromPanel, floorFromPanel }: Standing): string =>
  [eyeFromPanel.x, eyeFromPanel.y, floorFromPanel.x, floorFromPanel.y].join(' ')
