import type { JSX } from 'preact'
import { type DefinitionPath, dataAt } from '../../project/index.ts'
import { itemsOf } from './copied.ts'
import { useForm } from './form-state.ts'
import { gistOf } from './gist.ts'
import { inheritedAt } from './inherited.ts'
import { newItem } from './new-items.ts'
import { OrderButtons } from './order-buttons.tsx'
import { Keys } from './place.tsx'
import { Section } from './section.tsx'

/** Groups in a list: each folds, can be moved and taken out, and one more can be added. */
export function Items({ path }: { readonly path: DefinitionPath }): JSX.Element {
  const form = useForm()
  const items = itemsOf(dataAt(form.data.value, path))
  const inherited = inheritedAt(form.data.value, path)
  const word = String(path.at(-1))
  return (
    <>
      {inherited !== undefined && <p class="quiet">from common: {gistOf(inherited)}</p>}
      <ol class="items">
        {items.map((item, k) => (
          // Items have no names: the place is what one is known by.
          <li key={String(k)}>
            <Section path={[...path, k]} title={`${k + 1}`} gist={gistOf(item)} inner>
              {() => (
                <>
                  <Keys path={[...path, k]} />
                  <OrderButtons
                    what={`${word} ${k + 1}`}
                    place={k}
                    count={items.length}
                    move={(to) => form.change([{ path: [...path, k], move: to }])}
                    remove={() => form.change([{ path: [...path, k], value: undefined }])}
                  />
                </>
              )}
            </Section>
          </li>
        ))}
      </ol>
      <button
        type="button"
        onClick={() => {
          const at = [...path, itemsOf(dataAt(form.now(), path)).length]
          form.change([{ path: at, insert: newItem(path, form.units.value) }])
          form.folds.value = new Map([...form.folds.value, [JSON.stringify(at), true]])
        }}
      >
        Add to {word}
      </button>
    </>
  )
}
