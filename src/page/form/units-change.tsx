import type { JSX } from 'preact'
import type { Units } from '../../length/index.ts'
import { dataAt } from '../../project/index.ts'
import { useForm } from './form-state.ts'
import { Section } from './section.tsx'

const WORDS: Readonly<Record<Units, string>> = { mm: 'millimetres', in: 'inches' }
const EXAMPLE: Readonly<Record<Units, string>> = { mm: '20 is 20 mm', in: '3/4 is 3/4 in' }

/** What the units of a definition change and what they do not, and a way to other units that changes no size. */
export function UnitsChange(): JSX.Element {
  const form = useForm()
  const units = form.units.value
  const other = units === 'mm' ? 'in' : 'mm'
  const change = (): void => {
    form.change([{ path: ['units'], units: other }])
    if (form.refusal.peek() === undefined) form.page.say(`${WORDS[other]} from now on; no size has changed`)
  }
  const follow = dataAt(form.data.value, ['outputs', 'dxf', 'units']) === undefined
  return (
    <>
      <p class="quiet units-words">
        A number alone is in {WORDS[units]}: {EXAMPLE[units]}. Other units make it another size.
      </p>
      <Section path={['units', 'more']} title="other units, same sizes" inner>
        {() => (
          <>
            <p class="quiet" id="units-change">
              Numbers that are there get “{units}”, and no panel changes.
              {follow && ` DXF files are in ${WORDS[other]} then.`} How lengths are shown is chosen in Settings alone.
            </p>
            <div class="presses">
              <button type="button" aria-describedby="units-change" onClick={change}>
                Go on in {WORDS[other]}
              </button>
            </div>
          </>
        )}
      </Section>
    </>
  )
}
