import type { ComponentChildren } from 'preact'
import type { DefinitionPath, EditValue } from '../../../project/index.ts'

/** What every field of one plain value is given. */
export interface PlainFieldProps {
  readonly path: DefinitionPath
  /** The key in the definition, unless several fields of one key need words of their own. */
  readonly label: string
  /** The sentence of the schema. */
  readonly about: string
  /** As it stands in the definition; empty where it says nothing. */
  readonly written: string
  /** What holds while it is empty, in words of any length. */
  readonly placeholder: string
  /** What is wrong with it in the definition. */
  readonly problem: string | undefined
  readonly remedy?: ComponentChildren
  /** Writes a value, or takes the key out; changes of one visit are one step to undo. */
  readonly write: (value: EditValue | undefined, visit: object) => void
}
