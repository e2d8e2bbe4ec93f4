import { boardBox, type PlacedHardware } from '../../assembly/index.ts'
import {
  type Box,
  boxWithout,
  commonBox,
  extent,
  liesIn,
  NOISE_MM,
  placeBack,
  placedBox,
  rectanglePath,
  type Vec3,
} from '../../geometry/index.ts'
import { fromDatum, type Panel, surfaceWords } from '../../panel/index.ts'
import type { Bay, DefinitionPath, FrontLay, LooseShelvesSpec, Project } from '../../project/index.ts'
import { mm } from '../words.ts'
import type { PlacedBody } from './scene.ts'

/** Boxes share space beyond this, mm: more than float noise, less than a shaving. */
export const SHAVING_MM = 0.05

export type Axis = 0 | 1 | 2

/** A value for each of the three axes. */
export const eachAxis = (value: (axis: Axis) => number): Vec3 => [value(0), value(1), value(2)]

/** The box about some boxes. */
export const boundsOf = (boxes: readonly Box[]): Box => ({
  min: eachAxis((k) => Math.min(...boxes.map(({ min }) => min[k]))),
  max: eachAxis((k) => Math.max(...boxes.map(({ max }) => max[k]))),
})

/** The pieces of a box that lie in the wood of a panel, less its grooves, rebates, notches and cutouts; module frame, mm. */
export function woodIn(panel: Panel, panelBox: Box, box: Box): Box[] {
  const both = commonBox(panelBox, box, SHAVING_MM)
  if (both === undefined || inCutout(panel, both)) return []
  return panel.grooves
    .map(({ face, min, max, depth }): Box => {
      const low = face === 'A' ? -depth : -panel.thickness
      return { min: [min[0], min[1], low], max: [max[0], max[1], low + depth] }
    })
    .reduce<Box[]>(
      (left, cut) => left.flatMap((one) => boxWithout(one, placedBox(panel.moduleFromPanel, cut), SHAVING_MM)),
      [both],
    )
}

/** Whether a box within a panel lies whole in one of its openings or notches. */
function inCutout(panel: Panel, box: Box): boolean {
  const [a, b] = [placeBack(panel.moduleFromPanel, box.min), placeBack(panel.moduleFromPanel, box.max)]
  const [low, high] = [
    [Math.min(a[0], b[0]), Math.min(a[1], b[1])] as const,
    [Math.max(a[0], b[0]), Math.max(a[1], b[1])] as const,
  ]
  return panel.cutouts.some(({ through, path }) => through && liesIn(rectanglePath(low, high, 0), path))
}

/** The least that one of two boxes must move along an axis to leave the other, mm. */
export function depthOf(pieces: readonly Box[]): number {
  return Math.max(0, ...pieces.map((box) => Math.min(...([0, 1, 2] as const).map((axis) => extent(box, axis)))))
}

/** `the head of the bolt M6, 100 from bottom and 50 from front on face A (inside)`. */
export function bodyWords({ piece, name, station, panel, box }: PlacedBody): string {
  // A plate is where its holes are. Bolts between modules have their station in the floor frame, so their body says it.
  const at = placeBack(panel.moduleFromPanel, piece.item.kind === 'cup hinge' ? station.pose.origin : middleOf(box))
  const { x, y } = fromDatum(panel, at)
  const face = at[2] > -panel.thickness / 2 ? 'A' : 'B'
  const what = station.part === 'plate' && piece.item.kind === 'caster' ? `a ${name}` : `the ${name}`
  return `${what} of the ${piece.item.id}, ${mm(y.mm)} from ${y.edge} and ${mm(x.mm)} from ${x.edge} on ${surfaceWords(panel, face)}`
}

const middleOf = ({ min, max }: Box): Vec3 => eachAxis((k) => (min[k] + max[k]) / 2)

/** Parts of the definition by where they stand. */
export interface Specs {
  readonly shelves: ReadonlyMap<string, LooseShelvesSpec>
  readonly fronts: ReadonlyMap<string, FrontLay>
}

export const pathKey = (at: DefinitionPath): string => JSON.stringify(at)

/** Loose shelves and fronts of a project, by the path at which they are asked for. */
export function specsOf(project: Project): Specs {
  const shelves = new Map<string, LooseShelvesSpec>()
  const fronts = new Map<string, FrontLay>()
  const visit = ({ looseShelves, front, drawers, split }: Bay): void => {
    if (looseShelves !== undefined) shelves.set(pathKey(looseShelves.at), looseShelves)
    for (const one of [front, drawers?.fronts]) if (one !== undefined) fronts.set(pathKey(one.at), one)
    split?.bays.forEach(visit)
  }
  for (const { inside } of project.modules) visit(inside)
  return { shelves, fronts }
}

/** A finding's place on the board that a body lies on. */
export function placeOf({ panel, box }: PlacedBody) {
  const at = placeBack(panel.moduleFromPanel, middleOf(box))
  const onA = at[2] > -panel.thickness / 2
  return {
    panel: panel.id,
    surface: onA ? ('A' as const) : ('B' as const),
    at: [at[0], at[1], onA ? 0 : -panel.thickness] as const,
  }
}

/** Whether a panel lies flat on the face of another: what it covers there is found by `hole-covered`. */
export function touches(panel: Panel, other: Box): boolean {
  const own = boardBox(panel)
  const axis = ([0, 1, 2] as const).find((k) => panel.moduleFromPanel.z[k] !== 0) ?? 0
  const faces = Math.min(Math.abs(own.max[axis] - other.min[axis]), Math.abs(own.min[axis] - other.max[axis]))
  return faces <= SHAVING_MM
}

export const grips = ({ stations }: PlacedHardware, { id }: Panel): boolean => stations.some((one) => one.panel === id)

export const rounded = (value: number): number => Math.ceil(value * 10 - NOISE_MM) / 10
