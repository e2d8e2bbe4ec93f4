import type { Fonts, OutputFile, PrintChoice } from '../../outputs/index.ts'
import type { DefinitionSource } from '../protocol.ts'

/** What is asked of the worker that makes files. A new job is asked for when the last one is over. */
export type FilesAsk = {
  /** Comes back with each answer. */
  readonly number: number
} & FilesJob

export type FilesJob =
  /** Every file, each as it is made. */
  | ({ readonly kind: 'all' } & Asked)
  /** Every file in one zip. */
  | ({ readonly kind: 'zip' } & Asked)
  | ({ readonly kind: 'one'; readonly path: string } & Asked)
  /** Full-size pages, to be printed from the browser. */
  | ({ readonly kind: 'print'; readonly choice: PrintChoice } & Asked)
  /** The letters of these pages. */
  | { readonly kind: 'fonts' }

interface Asked {
  readonly source: DefinitionSource
  /** Draw although findings forbid it: every sheet says so then. */
  readonly anyway: boolean
}

export type FilesAnswer = { readonly number: number } & FilesNews

export type FilesNews =
  | { readonly kind: 'file'; readonly file: OutputFile }
  /** How far a job is, and with what: `tool-locker`. */
  | { readonly kind: 'progress'; readonly done: number; readonly of: number; readonly what: string }
  | { readonly kind: 'pages'; readonly pages: readonly PrintedPage[]; readonly front: boolean }
  | { readonly kind: 'fonts'; readonly fonts: Fonts }
  /** The job is over. `words`: what there is to print, where pages were drawn. */
  | { readonly kind: 'done'; readonly words?: string }
  /** Nothing was made, and why. */
  | { readonly kind: 'refused'; readonly words: string }

/** One sheet of paper. */
export interface PrintedPage {
  /** As it is printed, mm. */
  readonly width: number
  readonly height: number
  readonly svg: string
}

/** The module, in a path such as `svg/glaze-store/left-side-a.svg`; else the file. */
export function whatIsDrawn(path: string): string {
  const names = path.split('/')
  return (names.length > 2 ? names[1] : names.at(-1)) ?? path
}
