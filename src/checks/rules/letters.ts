import { type DefinitionPath, isOutOfOrder, lettersLacking } from '../../project/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'

/** Names whose letters the font of the full-size pages lacks, or that would stand there in the wrong order; one finding a name. */
export const letters: Rule = {
  ids: ['page-letters'],
  check: (subject) => namesOn(subject).flatMap(findingOf),
}

/** Something that a definition names and pages print. */
interface Named {
  readonly what: string
  readonly words: string
  readonly at: DefinitionPath
}

function namesOn({ project, assembly }: Subject): Named[] {
  const { title, modules, stocks } = project
  const items = new Map(assembly.hardware.map(({ item }) => [item.id, item]))
  return [
    { what: 'the title', words: title, at: ['title'] },
    ...stocks.map(({ name, at }) => ({ what: 'the stock', words: name, at })),
    ...[...items.values()].map(({ id, title: words }) => ({
      what: 'the hardware',
      words,
      at: ['hardware', id, 'title'],
    })),
    ...modules.flatMap((module) => [
      { what: 'the module', words: module.name, at: module.at },
      ...module.openings.map(({ purpose, at }) => ({ what: 'the opening', words: purpose, at: [...at, 'for'] })),
    ]),
  ]
}

/** So many letters are shown; the rest is counted. */
const SHOWN = 8

function findingOf({ what, words, at }: Named): Finding[] {
  const lacking = lettersLacking(words)
  const finding = (message: string, fix: string): Finding[] => [
    { rule: 'page-letters', severity: 'warn', panels: [], places: [], message, fix, at },
  ]
  if (lacking.length > 0) {
    const rest = lacking.length - SHOWN
    const some = lacking.slice(0, SHOWN).join(' ') + (rest > 0 ? ` and ${rest} more` : '')
    return finding(
      `${what} "${words}": the font of the full-size pages lacks ${some}; a ? stands there for each`,
      'give it a name in letters that the font has: Latin, Greek, Cyrillic, Armenian, Georgian, figures and common signs',
    )
  }
  if (!isOutOfOrder(words)) return []
  return finding(
    `${what} "${words}": full-size pages set words from the left, so that these stand there in the wrong order`,
    'give it a name of a single word without figures, or one in letters that are written from the left',
  )
}
