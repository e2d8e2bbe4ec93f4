import type { JSX } from 'preact'
import { useRef } from 'preact/hooks'
import { type DefinitionPath, dataAt } from '../../../project/index.ts'
import { keysOf } from '../copied.ts'
import { pathKey, useForm } from '../form-state.ts'
import { AlsoSays } from '../to-text.tsx'
import { BayDeeds } from './bay-deeds.tsx'
import { allBays, assumedShell, type BayView, baysOf } from './bays.ts'
import { frontLines } from './front-lines.ts'
import { bayName, clearWords, contentsWords } from './words.ts'

/** The inside of a module: its front, in which one presses an opening, and what can be done with that. */
export function BayPart({ module }: { readonly module: string }): JSX.Element {
  const form = useForm()
  const [data, units] = [form.data.value, form.units.value]
  const known = form.page.workshop.form.value?.shells.find(({ name }) => name === module)
  const shell = known ?? assumedShell({ data, module, units })
  const inside = baysOf({ data, module, shell, units })
  const bays = allBays(inside)
  const wanted = form.bay.value && pathKey(form.bay.value)
  const chosen = bays.find(({ path }) => pathKey(path) === wanted) ?? inside
  const choose = (path: DefinitionPath): void => {
    form.bay.value = path
  }
  const lines = frontLines(shell, inside)
  const field = form.fieldAt(inside.path)
  const unknown = keysOf(dataAt(data, inside.path)).filter((key) => field?.keys.includes(key) !== true)
  return (
    <>
      <p class="quiet">Press an opening to split or fill it.</p>
      <div class="front-view" style={proportion(lines)}>
        <svg
          viewBox={`${-MARGIN_MM} ${-MARGIN_MM} ${lines.width + 2 * MARGIN_MM} ${lines.height + 2 * MARGIN_MM}`}
          aria-hidden="true"
        >
          <path class="front-wood" d={lines.wood} />
          <path class="front-shelf" d={lines.shelves} />
          <path class="front-swing" d={lines.swings} />
          <path class="front-edge" d={lines.fronts} />
        </svg>
        {chosen.split !== undefined && <div class="opening-around" style={placeOf(chosen, lines)} />}
        {bays
          .filter(({ split }) => split === undefined)
          .map((bay) => (
            <Opening
              key={pathKey(bay.path)}
              bay={bay}
              total={lines}
              isChosen={bay === chosen}
              choose={() => choose(bay.path)}
            />
          ))}
      </div>
      {inside.strained || bays.some(({ strained }) => strained) ? (
        <p class="fault">The sizes do not add up: these bays are drawn as equal parts.</p>
      ) : null}
      <OpeningChoice bays={bays} chosen={chosen} choose={choose} />
      <BayDeeds bay={chosen} parent={parentOf(bays, chosen)} choose={choose} />
      <AlsoSays path={inside.path} keys={unknown} />
    </>
  )
}

/** Room for the outer line about the carcase, mm. */
const MARGIN_MM = 4

const parentOf = (bays: readonly BayView[], chosen: BayView): BayView | undefined =>
  bays.find(({ bays: inner }) => inner.includes(chosen))

/** Tallest that the drawing gets, rem: what leaves the fields under it in sight. */
const TALLEST_REM = 24

/** In true proportion, as wide as there is room, and not too tall. */
function proportion({ width, height }: { readonly width: number; readonly height: number }): {
  aspectRatio: string
  width: string
} {
  const [wide, high] = [width + 2 * MARGIN_MM, height + 2 * MARGIN_MM]
  return { aspectRatio: `${wide} / ${high}`, width: `min(100%, ${(TALLEST_REM * wide) / high}rem)` }
}

/** Where an opening lies over the drawing, in parts of it. */
function placeOf(
  { rectangle: { x0, x1, z0, z1 } }: BayView,
  { width, height }: { readonly width: number; readonly height: number },
): Record<'left' | 'top' | 'width' | 'height', string> {
  const [wide, high] = [width + 2 * MARGIN_MM, height + 2 * MARGIN_MM]
  const percent = (part: number, whole: number): string => `${(part / whole) * 100}%`
  return {
    left: percent(x0 + MARGIN_MM, wide),
    top: percent(height - z1 + MARGIN_MM, high),
    width: percent(x1 - x0, wide),
    height: percent(z1 - z0, high),
  }
}

function Opening(props: {
  readonly bay: BayView
  readonly total: { readonly width: number; readonly height: number }
  readonly isChosen: boolean
  readonly choose: () => void
}): JSX.Element {
  const form = useForm()
  const { bay, total, isChosen, choose } = props
  const name = `${bayName(bay.path)}: ${contentsWords(bay)}, ${clearWords(bay, form.units.value)}`
  return (
    <button
      type="button"
      class="opening"
      aria-pressed={isChosen}
      aria-label={name}
      title={name}
      data-path={pathKey(bay.path)}
      style={placeOf(bay, total)}
      onClick={choose}
    />
  )
}

/** Every opening by its name, also those that are split again, and those that are too small for a finger. */
function OpeningChoice(props: {
  readonly bays: readonly BayView[]
  readonly chosen: BayView
  readonly choose: (path: DefinitionPath) => void
}): JSX.Element {
  const { bays, chosen, choose } = props
  const select = useRef<HTMLSelectElement>(null)
  return (
    <label class="opening-choice">
      <span>Opening</span>
      <select
        ref={select}
        value={pathKey(chosen.path)}
        onChange={({ currentTarget: { value } }) => {
          const bay = bays.find(({ path }) => pathKey(path) === value)
          if (bay !== undefined) choose(bay.path)
        }}
      >
        {bays.map((bay) => (
          <option key={pathKey(bay.path)} value={pathKey(bay.path)}>
            {`${bayName(bay.path)}: ${contentsWords(bay)}`}
          </option>
        ))}
      </select>
    </label>
  )
}
