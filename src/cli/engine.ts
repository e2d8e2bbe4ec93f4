/** What the commands need of the rest of Storyrod; `default-engine.ts` fills it in. */
export interface Engine {
  /**
   * Reads and works out a definition. `file` is the name to show in messages; `read` gives the text of a file that the
   * definition names, or nothing where there is none; `print` stands in place of what it says of paper and printer.
   */
  open(text: string, file: string, read: ReadNamed, print?: PrintOptions): Promise<Opened>
  /** The JSON Schema of definitions, for editors. */
  schema(): Promise<object>
  /** A commented definition to start from. */
  starter(): Promise<string>
}

/** The text of a file beside the definition, by the name that stands there. */
export type ReadNamed = (name: string) => Promise<string | undefined>

/** Options of a command that stand in place of keys of the definition, as they were typed. */
export interface PrintOptions {
  readonly paper?: string
  readonly checkBars?: string
  readonly pageBudget?: string
}

/** `problems`: all that is wrong with a definition, ready to print; or with the options of the command alone. */
export type Opened =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly problems: string; readonly of?: 'options' }

export type Severity = 'stop' | 'warn' | 'note'

/** A definition that has been worked out and checked. */
export interface Design {
  /** One for each finding. */
  readonly severities: readonly Severity[]
  /** All findings and a line that counts them, ready to print. */
  readonly findings: string
  /** The same as the text of findings.json. */
  readonly findingsJson: string
  /** The files that drawing yields, relative to the output folder, with `/` between names. */
  readonly paths: readonly string[]
  files(options: FilesOptions): AsyncIterable<OutputFile>
}

export interface FilesOptions {
  readonly fonts: Fonts
  /** Printed on every drawing. */
  readonly stamp?: string
  /** Told, when all is drawn, what there is to print: `212 sheets of A3 to print (a plain grid would take 540)`. */
  readonly onPages?: (words: string) => void
}

/** Two TrueType fonts, as they are on disk. */
export interface Fonts {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

export interface OutputFile {
  readonly path: string
  readonly bytes: Uint8Array
}
