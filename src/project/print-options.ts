import type { Units } from '../length/index.ts'
import { readOutputs } from './read-outputs.ts'
import type { OutputSpec } from './spec/outputs.ts'
import type { DefinitionPath } from './types.ts'

/** What a command says of paper and printer in place of the definition, as it was typed. */
export interface PrintOptions {
  readonly paper?: string
  /** Two readings with a comma between. */
  readonly checkBars?: string
  readonly pageBudget?: string
}

export type PrintRead =
  | { readonly ok: true; readonly outputs: Partial<OutputSpec> }
  /** Each with the option that it is about, and what would be right. */
  | { readonly ok: false; readonly problems: readonly string[] }

/** The keys of `outputs` that the options stand for. */
const OPTIONS = { paper: '--paper', 'check bars': '--check-bars', 'page budget': '--page-budget' } as const

/**
 * The options, read as the definition's own keys are, in its units, so that both have the same limits and the same words.
 */
export function readPrintOptions({ paper, checkBars, pageBudget }: PrintOptions, units: Units): PrintRead {
  const said = {
    ...(paper !== undefined && { paper }),
    ...(checkBars !== undefined && { 'check bars': checkBars.split(',').map(numberOrText) }),
    ...(pageBudget !== undefined && { 'page budget': numberOrText(pageBudget) }),
  }
  if (Object.keys(said).length === 0) return { ok: true, outputs: {} }
  const read = readOutputs(JSON.stringify({ units, outputs: said }), 'options')
  if (!read.ok) {
    const problems = read.problems.map(({ message, expected, nearest }) => {
      const hint = nearest === undefined ? '' : `; did you mean "${nearest}"?`
      return `${asOption(message)}\n  expected: ${expected.replace('[179.1, 180]', '179.1,180')}${hint}`
    })
    return { ok: false, problems }
  }
  const { outputs } = read
  return {
    ok: true,
    outputs: {
      ...(paper !== undefined && { paper: outputs.paper }),
      ...(outputs.bars !== undefined && { bars: outputs.bars }),
      ...(outputs.pageBudget !== undefined && { pageBudget: outputs.pageBudget }),
    },
  }
}

/** The option that stands in place of what the definition says there, such as `--check-bars`; undefined where none does. */
export function optionAt([group, key]: DefinitionPath, print: PrintOptions): string | undefined {
  if (group !== 'outputs') return undefined
  if (key === 'paper' && print.paper !== undefined) return OPTIONS.paper
  if (key === 'check bars' && print.checkBars !== undefined) return OPTIONS['check bars']
  return key === 'page budget' && print.pageBudget !== undefined ? OPTIONS['page budget'] : undefined
}

/** What is typed as a number is one, as it would be in a definition. */
function numberOrText(typed: string): number | string {
  const text = typed.trim()
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text
}

/** `outputs › check bars › item 2: …` as `--check-bars: …`. */
function asOption(message: string): string {
  const [, key = '', what = ''] = /^outputs › ([a-z ]+)[^:]*: (.*)$/s.exec(message) ?? []
  const option = Object.entries(OPTIONS).find(([name]) => name === key.trim())?.[1]
  if (option === undefined) throw new Error(`a problem that no option has: ${message}`)
  return `${option}: ${what}`
}
