import type { JSX } from 'preact'
import { type DefinitionPath, dataAt, type Problem, SHORT_FORMS } from '../../project/index.ts'
import { BasePart } from './base-part.tsx'
import type { Field } from './control.ts'
import { isGroup, keysOf } from './copied.ts'
import { defaultWords } from './default-words.ts'
import { ChoiceField } from './fields/choice-field.tsx'
import type { PlainFieldProps } from './fields/props.ts'
import { TypedField } from './fields/typed-field.tsx'
import { type Form, useForm } from './form-state.ts'
import { gistOf } from './gist.ts'
import { inheritedAt } from './inherited.ts'
import { Items } from './items.tsx'
import { Section } from './section.tsx'
import { AlsoSays, ToText } from './to-text.tsx'
import { shownValue } from './written.ts'

export interface PlaceProps {
  readonly path: DefinitionPath
  /** Where another word than the key is clearer. */
  readonly label?: string
  /** Written in place of the value alone, where one key goes with another. */
  readonly write?: PlainFieldProps['write']
  readonly placeholder?: string
}

/** One place of the definition, whatever may stand there: a field, a group of them, or a list. */
export function Place(props: PlaceProps): JSX.Element {
  const form = useForm()
  const { path } = props
  const field = form.fieldAt(path)
  const label = props.label ?? String(path.at(-1))
  if (field === undefined) return <ToText path={path} label={label} />
  const data = dataAt(form.data.value, path)
  const { control, keys, items } = field
  if (control === undefined || items) {
    const gist = gistOf(data ?? inheritedAt(form.data.value, path))
    return (
      <Section path={path} title={label} gist={gist} inner>
        {() => (
          <>
            {control !== undefined && !Array.isArray(data) && <Plain {...props} label={label} field={field} />}
            {items && (control === undefined || Array.isArray(data)) && <Items path={path} />}
            {!items && <Keys path={path} />}
          </>
        )}
      </Section>
    )
  }
  if (path.at(-1) === 'base') return <BasePart path={path} about={field.about} />
  if (keys.length === 0) return <Plain {...props} label={label} field={field} />
  return <Mixed {...props} label={label} field={field} />
}

type FieldPlaceProps = PlaceProps & { readonly label: string; readonly field: Field }

/** A plain value, or a group of keys in its place: the value first, and what more can be said below. */
function Mixed(props: FieldPlaceProps): JSX.Element {
  const form = useForm()
  const { path, label, field } = props
  const data = form.data.value
  const value = dataAt(data, path)
  const inherited = inheritedAt(data, path)
  const meant = SHORT_FORMS[String(path.at(-1))]
  const short = meant !== undefined && field.keys.includes(meant) ? meant : undefined
  const plain = value !== undefined && !isGroup(value)
  // A word such as none has no keys; a short form has them as soon as it says something, here or under common.
  const hasKeys = short === undefined ? !plain : (value ?? inherited) !== undefined && (value ?? inherited) !== 'none'
  const own = short !== undefined && isGroup(value) ? [...path, short] : path
  return (
    <>
      <Plain {...props} path={own} label={label} />
      {hasKeys && (
        <Section
          path={[...path, MORE]}
          title={`${label}: more`}
          gist={gistOf(isGroup(value) ? value : undefined)}
          inner
        >
          {() => <Keys path={path} except={short === undefined ? [] : [short]} />}
        </Section>
      )}
    </>
  )
}

/** Ends the path of a fold that has the path of a field otherwise. */
const MORE = 'more'

function Plain({ path, label, field, write, placeholder }: FieldPlaceProps): JSX.Element {
  const form = useForm()
  const { control, about } = field
  const value = dataAt(form.data.value, path)
  const written = shownValue(value)
  const group = isGroup(value)
  if (control === undefined || (written === undefined && !group)) return <ToText path={path} label={label} />
  const problems = form.problemsAt(path, !group)
  // What is typed belongs to one place: where another opening is chosen, its field begins anew.
  const own = form.placeKey(path)
  const props: PlainFieldProps = {
    path,
    label,
    about,
    written: written ?? '',
    placeholder: group ? 'as below' : (placeholder ?? emptyWords(form, path, about)),
    problem: faultWords(problems),
    remedy: value !== undefined && <TakeOut path={path} />,
    write: write ?? ((next, visit) => form.change([{ path, value: next }], visit)),
  }
  return control.kind === 'choice' ? (
    <ChoiceField key={own} {...props} control={control} {...(group && { also: 'as below' })} />
  ) : (
    <TypedField key={own} {...props} control={control} />
  )
}

/** What is wrong at a place, in the words that every field has for it; nothing where all is right. */
export function faultWords(problems: readonly Problem[]): string | undefined {
  return problems.length === 0 ? undefined : problems.map(sentence).join('; ')
}

/** What is wrong, without the place, which is seen, and what would be right. */
function sentence({ message, expected, nearest }: Problem): string {
  const what = message.includes(': ') ? message.slice(message.lastIndexOf(': ') + 2) : message
  const hint = nearest === undefined ? '' : `, or did you mean ${nearest}?`
  return `${what}; expected: ${expected}${hint}`
}

/** The way out of a mistake that is always there. */
export function TakeOut({ path }: { readonly path: DefinitionPath }): JSX.Element {
  const form = useForm()
  return (
    <button type="button" class="plain" onClick={() => form.change([{ path, value: undefined }])}>
      Take it out
    </button>
  )
}

/** What holds while the place says nothing: what common says, else the default. */
export function emptyWords(form: Form, path: DefinitionPath, about: string): string {
  const inherited = inheritedAt(form.data.value, path)
  if (inherited === undefined) return defaultWords(about, form.usual.value)
  return `from common: ${shownValue(inherited) ?? gistOf(inherited)}`
}

/** The keys of a group, each with what may stand there, and at the end what the form has no field for. */
export function Keys(props: {
  readonly path: DefinitionPath
  readonly only?: readonly string[]
  readonly except?: readonly string[]
}): JSX.Element {
  const form = useForm()
  const { path, only, except = [] } = props
  const keys = form.fieldAt(path)?.keys ?? []
  const shown = (only ?? keys).filter((key) => !except.includes(key))
  const unknown = keysOf(dataAt(form.data.value, path)).filter((key) => !keys.includes(key))
  return (
    <>
      {shown.map((key) => (
        <Place key={key} path={[...path, key]} />
      ))}
      {only === undefined && <AlsoSays path={path} keys={unknown} />}
    </>
  )
}
