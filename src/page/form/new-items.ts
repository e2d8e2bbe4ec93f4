import type { Units } from '../../length/index.ts'
import type { DefinitionPath, EditValue } from '../../project/index.ts'

type Sizes = (mm: number, inches: number) => EditValue

/** What a new item of a list begins as, by the key of the list: something usual that one then changes. */
const NEW_ITEMS: Readonly<Record<string, (size: Sizes) => EditValue>> = {
  lipping: (size) => ({ thickness: size(2, 0.125), edges: ['front'], on: ['shelves'] }),
  stretchers: () => ({ at: 'back' }),
  slots: (size) => ({
    kind: 'fence',
    along: 'width',
    width: size(19, 0.75),
    depth: size(9.5, 0.375),
    'from front': size(110, 4.5),
  }),
  openings: (size) => ({ panel: 'back', shape: 'round', diameter: size(60, 2.5), from: 'centred' }),
  stack: () => ({ share: 1 }),
  bits: (size) => ({ kind: 'brad point', diameter: size(5, 0.25) }),
}

/** What a list at a path is given when an item is added to it. */
export function newItem(path: DefinitionPath, units: Units): EditValue {
  const make = NEW_ITEMS[String(path.at(-1))]
  return make === undefined ? {} : make((mm, inches) => (units === 'mm' ? mm : inches))
}
