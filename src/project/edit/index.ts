export { applyEdits } from './apply.ts'
export { changeOf, type Splice, spliced } from './splice.ts'
export type { Edit, EditValue, InsertEdit, MoveEdit, RenameEdit, ValueEdit } from './types.ts'
