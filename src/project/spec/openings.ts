import type { ClosedPath } from '../../geometry/index.ts'
import type { DefinitionPath } from './stock.ts'

/** An edge of a panel by the way it looks in the module. */
export type EdgeWord = 'left' | 'right' | 'front' | 'back' | 'top' | 'bottom'

/** Words for the faces of panels, as drawings name them. */
export type FaceWord =
  | 'inside'
  | 'outside'
  | 'upper face'
  | 'underside'
  | 'hidden face'
  | 'show face'
  | 'left face'
  | 'right face'

/** A distance from one edge to the middle of the shape, mm, or the middle between that edge and the one across. */
export interface FromEdgeSpec {
  readonly edge: EdgeWord
  readonly mm: number | 'centred'
}

/** An opening or a recess cut into one panel of a module. */
export interface OpeningSpec {
  /** The panel by its name on the drawings; whether there is one is known when the module is put together. */
  readonly panel: string
  /**
   * As one looks at the face, upright in the module: x right, y up (on level panels to the back), mm; the middle of its box at
   * (0, 0), counter-clockwise.
   */
  readonly path: ClosedPath
  /** Two edges that meet; none where it is in the middle of the panel. */
  readonly from: readonly FromEdgeSpec[]
  readonly depth: number | 'through'
  readonly shape: 'round' | 'slot' | 'rectangle' | 'path'
  /** The face that it is cut from and looked at; left out, the one that is seen. */
  readonly face: FaceWord | undefined
  readonly purpose: string
  readonly at: DefinitionPath
}
