import type { JSX } from 'preact'
import { dataAt, dataNames } from '../../project/index.ts'
import { NameField } from './fields/name-field.tsx'
import { pathKey, useForm } from './form-state.ts'
import { Keys } from './place.tsx'
import { addStock, freeName } from './project-actions.ts'
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
                  {names.length > 1 && (
                    <button
                      type="button"
                      aria-label={`Remove ${name}`}
                      onClick={() => form.change([{ path: ['stock', name], value: undefined }])}
                    >
                      Remove
                    </button>
                  )}
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
