import type { DefinitionPath } from '../../project/index.ts'
import { type Form, pathKey } from './form-state.ts'

/** Chooses the module and the opening that a path lies in, and opens all that is folded about it. */
export function unfold(form: Form, path: DefinitionPath): void {
  const [group, name] = path
  if (group === 'modules' && name !== undefined) {
    form.page.moduleShown.value = String(name)
    const bay = bayIn(path)
    if (bay !== undefined) form.bay.value = bay
  }
  const folds = new Map(form.folds.value)
  const open = (at: DefinitionPath): void => {
    folds.set(pathKey(at), true)
  }
  if (group === 'kerf' || group === 'fit' || group === 'bits') open(['saw'])
  for (let depth = 1; depth <= path.length; depth += 1) {
    open(path.slice(0, depth))
    // Keys of a group that may also be a plain value fold under it.
    if (depth < path.length) open([...path.slice(0, depth), 'more'])
  }
  form.folds.value = folds
}

/** The innermost bay that a path lies in. */
export function bayIn(path: DefinitionPath): DefinitionPath | undefined {
  if (path[2] !== 'inside') return undefined
  let end = 3
  while ((path[end] === 'side by side' || path[end] === 'stacked') && typeof path[end + 1] === 'number') end += 2
  return path.slice(0, end)
}

/** Moves to the field of a path or, where it has none, to what holds it. */
export function showPlace(root: HTMLElement, path: DefinitionPath): void {
  for (let depth = path.length; depth > 0; depth -= 1) {
    const found = root.querySelector<HTMLElement>(`[data-path="${CSS.escape(pathKey(path.slice(0, depth)))}"]`)
    if (found === null) continue
    found.focus({ preventScroll: true })
    found.scrollIntoView({ block: 'center' })
    return
  }
}
