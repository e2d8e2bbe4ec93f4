import type { Outline } from '../protocol.ts'
import type { Look } from '../scene/types.ts'
import { definitionName, lookAtModule, subjectOf } from './looks.ts'

/** The module that the form shows, by its name in the definition, and what is looked at. */
export interface Shown {
  readonly name: string | undefined
  readonly look: Look | undefined
}

/** What form and drawing held together last. */
export interface Held {
  readonly name: string | undefined
  /** Name of the module that was looked at; nothing while it was all of them, or a top over several. */
  readonly looked: string | undefined
}

/** What must change so that both show one module, and what they hold then. */
export interface Agreed {
  readonly held: Held
  readonly look?: Look
  readonly name?: string
}

/**
 * Where another module was chosen in the form, the drawing goes to it, unless it shows it already or shows all of them; where
 * another one is looked at, the form goes to that. A module that was chosen before it is laid out is waited for,
 * unless another one is looked at meanwhile.
 */
export function agreed(outline: Outline, { name, look }: Shown, held: Held): Agreed {
  const looked = look && namesIn(outline, look)[0]
  if (name !== undefined && name !== held.name) {
    const module = outline.modules.find((one) => definitionName(one) === name)
    if (module === undefined) return looked === undefined || looked === held.looked ? { held } : toLook(looked, name)
    if (look === undefined || isOfAll(look, looked) || namesIn(outline, look).includes(name))
      return { held: { name, looked } }
    return { held: { name, looked: name }, look: lookAtModule(outline, module.key, look) }
  }
  if (looked === undefined || looked === held.looked) return { held: { name, looked } }
  return toLook(looked, name)
}

const toLook = (looked: string, name: string | undefined): Agreed => ({
  held: { name: looked, looked },
  ...(looked !== name && { name: looked }),
})

/** All of it, or a top over several modules as a whole. */
const isOfAll = ({ kind }: Look, looked: string | undefined): boolean =>
  kind === 'floor' || (kind === 'isometric' && looked === undefined)

/** Names of the modules that a look is at, as the form has them: of a pair of two modules, both. */
function namesIn(outline: Outline, look: Look): string[] {
  const looks: readonly Look[] =
    look.kind === 'pair' ? look.panels.map((panel) => ({ kind: 'face', panel, face: 'A' })) : [look]
  return looks.flatMap((one) => {
    const { module } = subjectOf(outline, one)
    return (module && definitionName(module)) ?? []
  })
}
