import { useSignal } from '@preact/signals'
import type { JSX } from 'preact'
import { formatLength } from '../../../length/index.ts'
import { type DefinitionPath, dataAt, type Edit, idleFrontKeys } from '../../../project/index.ts'
import { isGroup } from '../copied.ts'
import { type Form, useForm } from '../form-state.ts'
import { gistOf } from '../gist.ts'
import { OrderButtons } from '../order-buttons.tsx'
import { faultWords, Keys, Place, TakeOut } from '../place.tsx'
import { Section } from '../section.tsx'
import { shownValue } from '../written.ts'
import { addBay, fillWithDrawers, frontBay, joinBays, placeBay, removeBay, shelve, splitBay } from './actions.ts'
import type { BayView, Direction, FrontKind } from './bays.ts'
import { Stepper, type StepperFault } from './stepper.tsx'
import { rounded } from './words.ts'

interface DeedsProps {
  readonly bay: BayView
  readonly parent: BayView | undefined
  readonly choose: (path: DefinitionPath) => void
}

/** What can be done with the chosen opening, and the fields of what is in it. */
export function BayDeeds(props: DeedsProps): JSX.Element {
  const { bay } = props
  return (
    <div class="deeds">
      {props.parent !== undefined && <BaySize {...props} parent={props.parent} />}
      {bay.split === undefined ? <Leaf {...props} /> : <SplitDeeds {...props} />}
      <FrontChoice {...props} />
      <FrontKeys bay={bay} />
    </div>
  )
}

/** Its size or share among the bays of its split, its place, and one more beside it. */
function BaySize({ bay, parent, choose }: DeedsProps & { readonly parent: BayView }): JSX.Element {
  const form = useForm()
  const { path } = bay
  const place = Number(path.at(-1))
  const beside = parent.split === 'side by side'
  const clear = beside ? bay.rectangle.x1 - bay.rectangle.x0 : bay.rectangle.z1 - bay.rectangle.z0
  const list = path.slice(0, -1)
  const ways = beside ? (['Left', 'Right'] as const) : (['Up', 'Down'] as const)
  const direction: Direction = parent.split ?? 'side by side'
  return (
    <>
      <Place
        path={[...path, 'size']}
        label={beside ? 'size (width)' : 'size (height)'}
        placeholder={`now ${formatLength(rounded(clear), form.units.value)}`}
        write={(value, visit) => form.change(placeBay(form.now(), path, 'size', value), visit)}
      />
      <Place
        path={[...path, 'share']}
        write={(value, visit) => form.change(placeBay(form.now(), path, 'share', value), visit)}
      />
      <OrderButtons
        what={`bay ${place + 1}`}
        ways={ways}
        place={place}
        count={parent.bays.length}
        move={(to) => {
          form.change([{ path, move: to }])
          choose([...list, to])
        }}
        remove={() => {
          form.change(removeBay(form.now(), path))
          choose(parent.path)
        }}
      />
      <div class="presses">
        <button
          type="button"
          onClick={() => {
            form.change(addBay(parent.path, direction, place + 1))
            choose([...list, place + 1])
          }}
        >
          {beside ? 'One more bay to the right' : 'One more bay below'}
        </button>
        <button type="button" onClick={() => choose(parent.path)}>
          Choose the opening around it
        </button>
      </div>
    </>
  )
}

/** An opening that is not split: how to split it, and what it is filled with. */
function Leaf({ bay, choose }: DeedsProps): JSX.Element {
  const form = useForm()
  const parts = useSignal(2)
  const { path } = bay
  const act = (edits: readonly Edit[]): void => form.change(edits)
  const split = (direction: Direction): void => {
    act(splitBay(form.now(), path, direction, parts.value))
    choose([...path, direction, 0])
  }
  return (
    <>
      <fieldset class="deed">
        <legend>Split into</legend>
        <Stepper label="parts" value={parts.value} least={2} most={12} change={(count) => (parts.value = count)} />
        <div class="presses">
          <button type="button" onClick={() => split('side by side')}>
            side by side
          </button>
          <button type="button" onClick={() => split('stacked')}>
            stacked
          </button>
        </div>
      </fieldset>
      <fieldset class="deed">
        <legend>Fill</legend>
        <Stepper
          label="loose shelves"
          value={bay.looseShelves}
          least={0}
          most={100}
          path={[...path, 'loose shelves']}
          fault={faultAt(form, [...path, 'loose shelves'], 'count')}
          change={(count) => act(shelve(form.now(), path, count))}
        />
        {bay.looseShelves > 0 && (
          <Section path={[...path, 'loose shelves']} title="loose shelves: more" gist="" inner>
            {() => <Keys path={[...path, 'loose shelves']} except={['count']} />}
          </Section>
        )}
        <Stepper
          label="drawers"
          value={bay.drawers.length}
          least={0}
          most={20}
          path={[...path, 'drawers']}
          fault={faultAt(form, [...path, 'drawers'], 'stack')}
          change={(count) =>
            act(fillWithDrawers(form.now(), path, { count, behind: bay.behind || bay.front !== undefined }))
          }
        />
        {bay.drawers.length > 0 && (
          <Section path={[...path, 'drawers']} title="drawers: more" gist="" inner>
            {() => <DrawerKeys bay={bay} />}
          </Section>
        )}
      </fieldset>
    </>
  )
}

/** What is wrong with a number that is written alone or as a key of a group; not with what its own fields show below. */
function faultAt(form: Form, path: DefinitionPath, inGroup: string): StepperFault | undefined {
  const value = dataAt(form.data.value, path)
  const own = isGroup(value) ? [...path, inGroup] : path
  const said = dataAt(form.data.value, own)
  const words = faultWords([
    ...form.problemsAt(path, !isGroup(value)),
    ...(own === path ? [] : form.problemsAt(own, typeof said !== 'object')),
  ])
  if (words === undefined) return undefined
  const written = typeof said === 'object' ? undefined : shownValue(said)
  return {
    words,
    written: written === '' ? undefined : written,
    remedy: <TakeOut path={said === undefined ? path : own} />,
  }
}

/** Heights of single drawers are a list in the place of their number. */
function DrawerKeys({ bay }: { readonly bay: BayView }): JSX.Element {
  const form = useForm()
  const stack = [...bay.path, 'drawers', 'stack']
  const isList = Array.isArray(dataAt(form.data.value, stack))
  const list = bay.drawers.map(() => ({ share: 1 }))
  return (
    <>
      {isList ? (
        <Place path={stack} label="stack: from the top" />
      ) : (
        <button type="button" onClick={() => form.change([{ path: stack, value: list }])}>
          Heights of single drawers
        </button>
      )}
      <Keys path={[...bay.path, 'drawers']} except={['stack']} />
    </>
  )
}

function SplitDeeds({ bay, choose }: DeedsProps): JSX.Element {
  const form = useForm()
  const { path, split } = bay
  return (
    <>
      <div class="presses">
        <button type="button" onClick={() => form.change(addBay(path, split ?? 'side by side', bay.bays.length))}>
          {split === 'stacked' ? 'One more bay at the bottom' : 'One more bay at the right'}
        </button>
        <button
          type="button"
          onClick={() => {
            form.change(joinBays(form.now(), path))
            choose(path)
          }}
        >
          Take the split away, with what is in it
        </button>
      </div>
      <Section
        path={[...path, 'dividers']}
        title="dividers"
        gist={gistOf(dataAt(form.data.value, [...path, 'dividers']))}
        inner
      >
        {() => <Keys path={[...path, 'dividers']} />}
      </Section>
    </>
  )
}

const FRONTS: readonly { readonly kind: FrontKind | undefined; readonly words: string }[] = [
  { kind: undefined, words: 'none' },
  { kind: 'door', words: 'door' },
  { kind: 'pair', words: 'pair' },
  { kind: 'flap', words: 'flap' },
  { kind: 'fixed', words: 'fixed' },
]

function FrontChoice({ bay }: DeedsProps): JSX.Element {
  const form = useForm()
  if (bay.behind && bay.front === undefined) {
    return <p class="quiet">A front lies before this opening: that of the opening around it.</p>
  }
  return (
    <fieldset class="switch fronts">
      <legend>front</legend>
      {FRONTS.map(({ kind, words }) => (
        <label key={words}>
          <input
            type="radio"
            name="front of the opening"
            checked={bay.front?.kind === kind}
            onChange={() => form.change(frontBay(form.now(), bay.path, kind))}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  )
}

/** What can be said of a front of that kind. */
function FrontKeys({ bay }: { readonly bay: BayView }): JSX.Element | null {
  const form = useForm()
  const path = [...bay.path, 'front']
  const { front } = bay
  if (front === undefined) return null
  const data = form.data.value
  const idle = idleFrontKeys(front.kind, dataAt(data, [...path, 'lay']) === 'inset' ? 'inset' : 'overlay')
  const keys = (form.fieldAt(path)?.keys ?? []).filter(
    (key) => key !== 'kind' && (!idle.includes(key) || dataAt(data, [...path, key]) !== undefined),
  )
  return (
    <Section path={path} title="front: more" gist={gistOf(dataAt(data, path))} inner>
      {() => <Keys path={path} only={keys} />}
    </Section>
  )
}
