export { applyEdits, SHORT_FORMS } from './apply.ts'
export { type Extent, placeOf } from './extent.ts'
export { changeOf, type Splice, spliced } from './splice.ts'
export type {
  Edit,
  EditValue,
  InsertEdit,
  LiftEdit,
  LowerEdit,
  MoveEdit,
  RenameEdit,
  UnitsEdit,
  ValueEdit,
} from './types.ts'
