import type { JSX } from 'preact'
import { type DefinitionPath, dataAt } from '../../project/index.ts'
import { baseKeys, STANDS, type Stand, standOf, standOn } from './base-actions.ts'
import { isGroup, keysOf } from './copied.ts'
import { Frame } from './fields/frame.tsx'
import { useForm } from './form-state.ts'
import { gistOf } from './gist.ts'
import { inheritedAt } from './inherited.ts'
import { emptyWords, Keys } from './place.tsx'
import { Section } from './section.tsx'

/** What a module stands on: nothing, or one of the three ways, each in place of the others, and what can be said of it. */
export function BasePart({ path, about }: { readonly path: DefinitionPath; readonly about: string }): JSX.Element {
  const form = useForm()
  const data = form.data.value
  const own = dataAt(data, path)
  const base = own ?? inheritedAt(data, path)
  const stand = standOf(base)
  const [problem] = form.problemsAt(path)
  const choose = (word: string): void => {
    const wanted = [...STANDS, 'none' as const].find((one) => one === word)
    form.change(standOn(form.now(), path, { wanted, units: form.units.value }))
  }
  return (
    <>
      <Frame
        path={path}
        label="base"
        about={about}
        error={problem && `${problem.message}; expected: ${problem.expected}`}
      >
        {(framed) => (
          <select
            {...framed}
            value={own === undefined ? '' : (standOf(own) ?? '')}
            onFocus={() => {
              form.note.value = { key: 'base', about }
            }}
            onChange={({ currentTarget }) => choose(currentTarget.value)}
          >
            <option value="">{emptyWords(form, path, about) || '—'}</option>
            <option value="none">none</option>
            {STANDS.map((one: Stand) => (
              <option key={one} value={one}>
                {one === 'plinth' ? 'a plinth' : one}
              </option>
            ))}
          </select>
        )}
      </Frame>
      {isGroup(base) && (
        <Section path={[...path, 'more']} title="base: more" gist={gistOf(isGroup(own) ? own : undefined)} inner>
          {() => <Keys path={path} except={baseKeys(stand, keysOf(own)).hidden} />}
        </Section>
      )}
    </>
  )
}
