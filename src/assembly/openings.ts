import {
  type ClosedPath,
  canonical,
  MINUS_X,
  MINUS_Y,
  MINUS_Z,
  type PathVertex,
  turnBack,
  type Vec2,
  type Vec3,
  X,
  Y,
  Z,
} from '../geometry/index.ts'
import { type EdgeWord, type FromEdgeSpec, nearestName, type OpeningSpec } from '../project/index.ts'
import { type Parts, partsOf } from './parts.ts'
import type { PlacedCutout, PlacedPanel, PlacingTrouble } from './types.ts'

/** The way each edge looks, module frame. */
const WAYS: Readonly<Record<EdgeWord, Vec3>> = {
  left: MINUS_X,
  right: X,
  front: MINUS_Y,
  back: Y,
  top: Z,
  bottom: MINUS_Z,
}

/** Faces that one sees first, where a definition names none: of a door its show face, of a shelf its upper face. */
const SEEN = ['outside', 'show face', 'upper face', 'right face']

/** What an opening cannot be placed by, with the words for it. */
interface Fault {
  readonly key: string
  readonly what: string
  readonly fix: string
  /** What the key is to say, where that is plain. */
  readonly value?: string
}

/**
 * The openings of a module, each in its panel; one whose panel, face or edge is not there is a trouble at its place in the
 * definition. `panels` are those of the module.
 */
export function placeOpenings(openings: readonly OpeningSpec[], panels: readonly PlacedPanel[]): Parts {
  const cutouts: PlacedCutout[] = []
  const troubles: PlacingTrouble[] = []
  openings.forEach((opening, k) => {
    const panel = panels.find((one) => one.name === opening.panel)
    const placed = panel === undefined ? noPanel(opening, panels) : placeIn(panel, opening, `opening-${k + 1}`)
    if ('key' in placed && 'fix' in placed) troubles.push(troubleOf(opening, panel, placed))
    else cutouts.push(placed)
  })
  return partsOf({ cutouts, troubles })
}

function troubleOf(
  opening: OpeningSpec,
  panel: PlacedPanel | undefined,
  { key, what, fix, value }: Fault,
): PlacingTrouble {
  return {
    rule: 'opening-place',
    severity: 'stop',
    panels: panel === undefined ? [] : [panel.id],
    message: `${opening.purpose}: ${what}`,
    fix,
    ...(value !== undefined && { change: [{ path: [...opening.at, key], value }] }),
    at: [...opening.at, key],
  }
}

function noPanel({ panel }: OpeningSpec, panels: readonly PlacedPanel[]): Fault {
  const names = panels.map(({ name }) => name)
  const nearest = nearestName(panel, names)
  const hint = nearest === undefined ? '' : `; did you mean "${nearest}"?`
  return {
    key: 'panel',
    what: `the module has no panel "${panel}"`,
    fix: `name one of: ${names.join(', ')}${hint}`,
    ...(nearest !== undefined && { value: nearest }),
  }
}

function placeIn(panel: PlacedPanel, opening: OpeningSpec, key: string): PlacedCutout | Fault {
  const face = faceOf(panel, opening)
  if (typeof face !== 'string') return face
  const centre: [number, number] = [panel.length / 2, panel.width / 2]
  for (const from of opening.from) {
    const found = along(panel, from)
    if ('fix' in found) return found
    centre[found.axis] = found.at
  }
  return {
    panel: panel.id,
    key,
    path: onPanel(panel, face, opening.path, centre),
    face,
    depth: opening.depth,
    purpose: opening.purpose,
    at: opening.at,
  }
}

/** The face that is named, or for an opening right through without one, the face that is seen. */
function faceOf({ faces, name }: PlacedPanel, { face }: OpeningSpec): 'A' | 'B' | Fault {
  if (face === undefined) return SEEN.includes(faces.A) ? 'A' : 'B'
  if (face === faces.A) return 'A'
  if (face === faces.B) return 'B'
  return { key: 'face', what: `the ${name} has no ${face}`, fix: `say ${faces.A} or ${faces.B}` }
}

/** Where a distance from an edge lies along the panel's x (axis 0) or y, mm. */
function along(panel: PlacedPanel, { edge, mm }: FromEdgeSpec): { readonly axis: 0 | 1; readonly at: number } | Fault {
  const [x, y] = turnBack(panel.moduleFromPanel, WAYS[edge])
  const axis = Math.abs(x) > 0.5 ? 0 : 1
  const way = axis === 0 ? x : y
  const size = axis === 0 ? panel.length : panel.width
  if (Math.abs(way) > 0.5) return { axis, at: mm === 'centred' ? size / 2 : way > 0 ? size - mm : mm }
  const has = (Object.keys(WAYS) as EdgeWord[]).filter((one) => {
    const [a, b] = turnBack(panel.moduleFromPanel, WAYS[one])
    return Math.abs(a) > 0.5 || Math.abs(b) > 0.5
  })
  return { key: 'from', what: `the ${panel.name} has no ${edge} edge`, fix: `measure from ${has.join(', ')}` }
}

/**
 * A shape drawn as one looks at a face, on the panel. One stands in front of the face with the module upright; level
 * panels have their front edge toward one, so that up is to the back. To the right is up × the way that the face looks,
 * whichever face it is, so nothing is mirrored but by looking from the other side.
 */
function onPanel(panel: PlacedPanel, face: 'A' | 'B', shape: ClosedPath, [cx, cy]: Vec2): ClosedPath {
  const pose = panel.moduleFromPanel
  const level = Math.abs(pose.z[2]) > 0.5
  const up = turnBack(pose, level ? Y : Z)
  const out = face === 'A' ? 1 : -1
  // In the panel frame the face looks along ±z: up × (0, 0, ±1).
  const right: Vec2 = [up[1] * out, -up[0] * out]
  const path = shape.map(({ at: [x, y], bulge }): PathVertex => {
    const turned = bulge === 0 ? 0 : bulge * out
    return { at: [cx + right[0] * x + up[0] * y, cy + right[1] * x + up[1] * y], bulge: turned }
  })
  return canonical(path)
}
