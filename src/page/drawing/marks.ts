import type { OperationWork, SceneHole } from '../scene/types.ts'

/** One stroke of a mark: a dot or a square of this width, px, in the colour of the work, in ink, or blank as paper. */
export interface MarkLayer {
  readonly width: number
  readonly form: 'round' | 'square'
  readonly of: 'ink' | 'colour' | 'paper'
}

/** How a kind of work is told from others: a colour, and a mark that is another one without any colour. */
export interface WorkMark {
  /** The custom property of look/tokens.css that has its colour. */
  readonly colour: string
  /** From below. Every mark stands on ink, so that it is seen on paper, in the dark and beside its own colour. */
  readonly layers: readonly MarkLayer[]
}

const round = (width: number, of: MarkLayer['of']): MarkLayer => ({ width, form: 'round', of })
const square = (width: number, of: MarkLayer['of']): MarkLayer => ({ width, form: 'square', of })

/**
 * Marks are of constant size on the screen, and each layer of all holes of an operation is one path: its points are lines
 * without length, drawn as wide as the mark. So zooming writes nothing anew.
 */
export const WORK_MARKS: Readonly<Record<OperationWork, WorkMark>> = {
  // A dot.
  'shelf pins': { colour: '--blue', layers: [round(8, 'ink'), round(5.5, 'colour')] },
  // A ring about a dot.
  hinges: {
    colour: '--vermillion',
    layers: [round(13, 'ink'), round(11, 'colour'), round(6.5, 'paper'), round(4, 'ink')],
  },
  // A square.
  joints: { colour: '--orange', layers: [square(8, 'ink'), square(5.5, 'colour')] },
  // A frame.
  'bolts between modules': {
    colour: '--purple',
    layers: [square(11, 'ink'), square(9, 'colour'), square(4.5, 'ink'), square(3, 'paper')],
  },
  // A ring.
  drawers: { colour: '--green', layers: [round(12, 'ink'), round(10, 'colour'), round(5.5, 'ink'), round(4, 'paper')] },
  // A square with an eye.
  base: { colour: '--yellow', layers: [square(11, 'ink'), square(9, 'colour'), round(5, 'ink')] },
  // A dot with a pupil.
  'pulls and fittings': { colour: '--sky', layers: [round(12, 'ink'), round(10, 'colour'), square(4, 'ink')] },
  // A bar, since they are areas: hatched one way in the drawing.
  grooves: { colour: '--quiet', layers: [] },
  // Hatched both ways.
  cutouts: { colour: '--quiet', layers: [] },
}

/** Of a hole on the far side or behind wood, whatever it is for: a blank dot. */
export const BEHIND: readonly MarkLayer[] = [round(7, 'ink'), round(4.5, 'paper')]

/** The class of a kind of work, by which the style sheet gives its colour. */
export const workClass = (work: OperationWork): string => `work-${work.replaceAll(' ', '-')}`

/** Below these scales, px a mm, marks are drawn small, and not at all: there they would lie on each other. */
const FULL_MARKS = 0.45
const ANY_MARKS = 0.22
/** How large small marks are; sheet.css has the same. */
const SMALL = 0.55

/** How large marks are drawn at a scale, px a mm. */
export const markSize = (scale: number): 'full' | 'small' | 'none' =>
  scale >= FULL_MARKS ? 'full' : scale >= ANY_MARKS ? 'small' : 'none'

/** How far a mark reaches from its middle, px; corners of squares, too. Nothing is known of the work: the largest. */
export function markRadius(work: OperationWork | undefined, hidden: boolean, scale: number): number {
  const layers = hidden ? BEHIND : work === undefined ? WORK_MARKS.hinges.layers : WORK_MARKS[work].layers
  const reach = layers.map(({ width, form }) => (width / 2) * (form === 'square' ? Math.SQRT2 : 1))
  return Math.max(0, ...reach) * { full: 1, small: SMALL, none: 0 }[markSize(scale)]
}

/** Radius of the ring about a hole that is small on the screen, and how far it stands off a large one, px. */
const RING_PX = 13
const RING_OFF_PX = 6

/** The radius of the ring about a hole, px. */
export const ringRadius = ({ radius }: SceneHole, scale: number): number =>
  Math.max(RING_PX, radius * scale + RING_OFF_PX)
