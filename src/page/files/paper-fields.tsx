import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { formatMm } from '../../length/index.ts'
import { BAR_MM, correctionOf, type OutputSpec, PAPER_NAMES, paperWords } from '../../project/index.ts'
import { usePage } from '../state/page.ts'
import { barsTyped, setOutput, typedLength } from './paper-edits.ts'

/** Paper and printer, as `outputs` of the definition says them. */
export function PaperFields(): JSX.Element | null {
  const { workshop } = usePage()
  const outputs = workshop.files.value?.outputs
  if (outputs === undefined) return null
  return (
    <div class="take-part">
      <div class="fields">
        <PaperField outputs={outputs} />
        <LengthField name="margin" words="Left blank at each side" mm={outputs.margin} />
        <LengthField name="overlap" words="Pages overlap by" mm={outputs.overlap} />
        <BudgetField outputs={outputs} />
      </div>
      <Bars key={JSON.stringify(outputs.bars)} outputs={outputs} />
    </div>
  )
}

function PaperField({ outputs }: { readonly outputs: OutputSpec }): JSX.Element {
  const page = usePage()
  return (
    <div class="field">
      <label for="paper-name">Paper</label>
      <select
        id="paper-name"
        value={outputs.paper}
        onChange={({ currentTarget }) => setOutput(page, 'paper', currentTarget.value)}
      >
        {PAPER_NAMES.map((name) => (
          <option key={name} value={name}>
            {paperWords(name)}
          </option>
        ))}
      </select>
    </div>
  )
}

function LengthField({
  name,
  words,
  mm,
}: {
  readonly name: 'margin' | 'overlap'
  readonly words: string
  readonly mm: number
}): JSX.Element {
  const page = usePage()
  const fault = useSignal<string | undefined>(undefined)
  const id = `paper-${name}`
  return (
    <div class="field">
      <label for={id}>{words}</label>
      <input
        key={mm}
        id={id}
        class="figures"
        data-own-undo
        defaultValue={`${formatMm(mm)} mm`}
        aria-invalid={fault.value !== undefined}
        aria-describedby={`${id}-fault`}
        onChange={({ currentTarget }) => {
          fault.value = setOutput(page, name, typedLength(currentTarget.value))
        }}
      />
      {fault.value !== undefined && (
        <p class="fault" id={`${id}-fault`}>
          {fault.value}
        </p>
      )}
    </div>
  )
}

function BudgetField({ outputs }: { readonly outputs: OutputSpec }): JSX.Element {
  const page = usePage()
  const fault = useSignal<string | undefined>(undefined)
  return (
    <div class="field">
      <label for="paper-budget">Sheets that a panel may take at most</label>
      <input
        key={outputs.pageBudget}
        id="paper-budget"
        class="figures"
        data-own-undo
        inputMode="numeric"
        defaultValue={outputs.pageBudget ?? ''}
        placeholder="as many as its faces need"
        aria-invalid={fault.value !== undefined}
        aria-describedby="paper-budget-help"
        onChange={({ currentTarget }) => {
          fault.value = setOutput(page, 'page budget', typedLength(currentTarget.value))
        }}
      />
      <p class={fault.value === undefined ? 'help' : 'fault'} id="paper-budget-help">
        {fault.value ?? 'With fewer sheets than its faces need, a panel gets strips and small pieces to lay on.'}
      </p>
    </div>
  )
}

/** What the two bars of the page to measure came out as. */
function Bars({ outputs }: { readonly outputs: OutputSpec }): JSX.Element {
  const page = usePage()
  const fault = useSignal<string | undefined>(undefined)
  const across = useSignal(outputs.bars === undefined ? '' : formatMm(outputs.bars.across))
  const down = useSignal(outputs.bars === undefined ? '' : formatMm(outputs.bars.down))
  const correction = correctionOf(outputs)
  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault()
        fault.value = barsTyped(page, across.peek(), down.peek())
      }}
    >
      <p id="bars-words">
        The two bars of {BAR_MM} mm on the page to measure, printed without correction, came out as so many mm:
      </p>
      <div class="two">
        <BarField id="bar-across" words="across (short side)" value={across} isWrong={fault.value !== undefined} />
        <BarField id="bar-down" words="down (long side)" value={down} isWrong={fault.value !== undefined} />
      </div>
      {fault.value !== undefined && (
        <p class="fault" id="bars-fault" role="alert">
          {fault.value}
        </p>
      )}
      <div class="presses">
        <button type="submit">Correct the pages</button>
        {outputs.bars !== undefined && (
          <button type="button" onClick={() => (fault.value = setOutput(page, 'check bars', undefined))}>
            Take the correction out
          </button>
        )}
      </div>
      <p role="status">
        {correction === undefined
          ? 'Pages are drawn as they are.'
          : `Pages are drawn ${stretchWords(correction.across)} across and ${stretchWords(correction.down)} down.`}
      </p>
    </form>
  )
}

function BarField({
  id,
  words,
  value,
  isWrong,
}: {
  readonly id: string
  readonly words: string
  readonly value: { value: string }
  readonly isWrong: boolean
}): JSX.Element {
  return (
    <div class="field">
      <label for={id}>{words}</label>
      <input
        id={id}
        class="figures"
        data-own-undo
        inputMode="decimal"
        placeholder={String(BAR_MM)}
        value={value.value}
        aria-invalid={isWrong}
        aria-describedby="bars-words bars-fault"
        onInput={({ currentTarget }) => {
          value.value = currentTarget.value
        }}
      />
    </div>
  )
}

/** `0.503 % larger`, `0.2 % smaller`, `as they are`. */
export function stretchWords(factor: number): string {
  const percent = (factor - 1) * 100
  if (formatMm(percent) === '0') return 'as they are'
  return `${formatMm(Math.abs(percent))} % ${percent > 0 ? 'larger' : 'smaller'}`
}
