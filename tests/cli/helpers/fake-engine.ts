import type { Design, Engine, FilesOptions, OutputFile, PrintOptions, Severity } from '../../../src/cli/index.ts'

export interface FakeOptions {
  readonly files?: Readonly<Record<string, string>>
  readonly severities?: readonly Severity[]
  readonly findings?: string
  /** Makes the definition a bad one. */
  readonly problems?: string
  /** Makes the options of the command wrong. */
  readonly wrongOptions?: string
  /** What there is to print. */
  readonly pages?: string
  /** Called before each file. */
  readonly before?: (path: string) => void | Promise<void>
  /** Paths to announce, where they are not those of the files. */
  readonly announce?: readonly string[]
}

export interface FakeEngine extends Engine {
  /** What `open` was called with. */
  readonly opened: { readonly text: string; readonly file: string }[]
  /** What was asked for in place of the definition, each time. */
  readonly print: (PrintOptions | undefined)[]
  /** What `files` was called with. */
  readonly drawn: FilesOptions[]
}

/** An engine that hands out the given files, whatever the definition says. */
export function fakeEngine(options: FakeOptions = {}): FakeEngine {
  const opened: { text: string; file: string }[] = []
  const drawn: FilesOptions[] = []
  const print: (PrintOptions | undefined)[] = []
  const files = options.files ?? SOME_FILES
  const design: Design = {
    severities: options.severities ?? [],
    findings: options.findings ?? '',
    findingsJson: '{}\n',
    paths: options.announce ?? Object.keys(files),
    files(given) {
      drawn.push(given)
      if (options.pages !== undefined) given.onPages?.(options.pages)
      return handOut(files, options.before)
    },
  }
  return {
    opened,
    drawn,
    print,
    async open(text, file, _read, asked) {
      opened.push({ text, file })
      print.push(asked)
      if (options.wrongOptions !== undefined) return { ok: false, problems: options.wrongOptions, of: 'options' }
      return options.problems === undefined ? { ok: true, design } : { ok: false, problems: options.problems }
    },
    schema: async () => ({ title: 'a schema' }),
    starter: async () => '# a starter\n',
  }
}

/** Files as a run yields them: in folders, the index last. */
export const SOME_FILES: Readonly<Record<string, string>> = {
  'svg/glaze-store/left-side-a.svg': 'svg of the left side',
  'svg/glaze-store/door-a.svg': 'svg of the door',
  'dxf/glaze-store/left-side-a.dxf': 'dxf of the left side',
  'templates/glaze-store/left-side.pdf': 'pdf of the left side',
  'panels.json': '{"files":["svg/glaze-store/left-side-a.svg","svg/glaze-store/door-a.svg"]}',
}

export async function* handOut(
  files: Readonly<Record<string, string>>,
  before: FakeOptions['before'] = () => undefined,
): AsyncGenerator<OutputFile> {
  for (const [path, text] of Object.entries(files)) {
    await before(path)
    yield { path, bytes: new TextEncoder().encode(text) }
  }
}
