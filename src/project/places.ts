import type { DefinitionPath } from './types.ts'

/** From and to, as offsets in the text. */
export type Span = readonly [from: number, to: number]

/** Where the key and the value of one place in the definition stand. */
export interface Place {
  readonly key: Span | undefined
  readonly value: Span
  /** The value as it was written, for plain words and numbers; `undefined` for groups and lists. */
  readonly written: string | undefined
  /** A comment that follows a value on the same line. */
  readonly comment: string | undefined
  /** A group or list in block style begins below its key, so its key is the place to show. */
  readonly below: boolean
}

/** The places of a definition, step by step along its paths. */
export class Places {
  place: Place | undefined
  /** None of most: they are words and figures. */
  private steps: Map<string | number, Places> | undefined

  /** What lies one step further, made where there is nothing yet. */
  further(step: string | number): Places {
    this.steps ??= new Map()
    const known = this.steps.get(step)
    if (known !== undefined) return known
    const made = new Places()
    this.steps.set(step, made)
    return made
  }

  /** The place at the end of a path, if there is one. */
  at(path: DefinitionPath): Place | undefined {
    let here: Places | undefined = this
    for (const step of path) here = here?.steps?.get(step)
    return here?.place
  }
}

/** The same place in a text before which so many characters stand. */
export function moved(place: Place, by: number): Place {
  const { key, value } = place
  return { ...place, key: key && [key[0] + by, key[1] + by], value: [value[0] + by, value[1] + by] }
}
