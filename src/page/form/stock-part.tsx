import type { JSX } from 'preact'
import { dataAt, dataNames, pathInWords } from '../../project/index.ts'
import { NameField } from './fields/name-field.tsx'
import { pathKey, useForm } from './form-state.ts'
import { Keys } from './place.tsx'
import { addStock, freeName, usesOfStock } from './project-actions.ts'
import { Section } from './section.tsx'
import { shownValue } from './written.ts'

/** The sheet goods by name. */
export function StockPart(): JSX.Element {
  const form = useForm()
  const data = form.data.value
  const names = dataNames(data, 'stock')
  const unfold = (name: string): void => {
    form.folds.value = new Map([...form.folds.value, [pathKey(['stock', name]), true]])
  }
  return (
    <Section path={['stock']} title="stock" gist={names.join(', ')}>
      {() => (
        <>
          {names.map((name) => (
            <Section
              key={form.placeKey(['stock', name])}
              path={['stock', name]}
              title={name}
              gist={shownValue(dataAt(data, ['stock', name, 'thickness'])) ?? ''}
              inner
            >
              {() => (
                <>
                  <NameField path={['stock', name]} taken={names} />
                  <Keys path={['stock', name]} />
                  {names.length > 1 && <RemoveStock name={name} />}
                </>
              )}
            </Section>
          ))}
          <button
            type="button"
            onClick={() => {
              const name = freeName('board', dataNames(form.now(), 'stock'))
              form.change(addStock(name, form.units.value))
              unfold(name)
            }}
          >
            Add a stock
          </button>
        </>
      )}
    </Section>
  )
}

/** Takes a stock out that nothing uses; of one in use it says where. */
function RemoveStock({ name }: { readonly name: string }): JSX.Element {
  const form = useForm()
  const uses = usesOfStock(form.data.value, name)
  if (uses.length === 0) {
    const remove = (): void => {
      if (usesOfStock(form.now(), name).length === 0) form.change([{ path: ['stock', name], value: undefined }])
    }
    return (
      <button type="button" aria-label={`Remove ${name}`} onClick={remove}>
        Remove
      </button>
    )
  }
  const more = uses.length > MOST_USES ? ` and ${uses.length - MOST_USES} more` : ''
  return (
    <p class="quiet">
      In use, so it stays: {uses.slice(0, MOST_USES).map(pathInWords).join('; ')}
      {more}.
    </p>
  )
}

/** Places that are named. */
const MOST_USES = 4
