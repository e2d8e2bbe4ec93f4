import type { Units } from '../../length/index.ts'
import type { DefinitionPath } from '../types.ts'

/** A value as a definition writes it: lengths as text with their unit, or in the project's. */
export type EditValue = string | number | boolean | readonly EditValue[] | { readonly [key: string]: EditValue }

/** A value set at a path, or what stands there taken out. */
export interface ValueEdit {
  readonly path: DefinitionPath
  readonly value: EditValue | undefined
}

/** An item put into a list, before the one that has the index at the path's end; at the list's length: behind all. */
export interface InsertEdit {
  readonly path: DefinitionPath
  readonly insert: EditValue
}

/** An item of a list, or a key of a group, moved within it, so that it has this index afterwards. */
export interface MoveEdit {
  readonly path: DefinitionPath
  readonly move: number
}

/** A key renamed; of a stock, a module or a piece of hardware also wherever the definition names it. */
export interface RenameEdit {
  readonly path: DefinitionPath
  readonly rename: string
}

/**
 * An item of a list in the place of the key that holds the list: what it says, apart from the keys in `lift`, comes into
 * the group that has the list, with its comments, and the list goes with all else in it.
 */
export interface LiftEdit {
  readonly path: DefinitionPath
  readonly lift: readonly string[]
}

/** The keys in `lower` of a group, as far as it has them, put with their comments into the first of so many items of a new list. */
export interface LowerEdit {
  readonly path: DefinitionPath
  readonly lower: readonly string[]
  /** The key of the list, which the group does not have yet. */
  readonly into: string
  readonly items: number
}

/**
 * Other units of the project, and no other sizes: each number that means a length by the project's units gets the unit that
 * it had, and what holds where nothing is said stays that of the same work, metric or inch (`usual sizes`). DXF files alone
 * follow the new units, unless the definition says theirs.
 */
export interface UnitsEdit {
  readonly path: readonly ['units']
  readonly units: Units
}

/** One change of a definition. */
export type Edit = ValueEdit | InsertEdit | MoveEdit | RenameEdit | LiftEdit | LowerEdit | UnitsEdit
