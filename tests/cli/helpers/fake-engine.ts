import type { Design, Engine, FilesOptions, OutputFile, Severity } from '../../../src/cli/index.ts'

export interface FakeOptions {
  readonly files?: Readonly<Record<string, string>>
  readonly severities?: readonly Severity[]
  readonly findings?: string
  /** Makes the definition a bad one. */
  readonly problems?: string
  /** Called before each file. */
  readonly before?: (path: string) => void | Promise<void>
  /** Paths to announce, where they are not those of the files. */
  readonly announce?: readonly string[]
}

export interface FakeEngine extends Engine {
  /** What `open` was called with. */
  readonly opened: { readonly text: string; readonly file: string }[]
  /** What `files` was called with. */
  readonly drawn: FilesOptions[]
}

/** An engine that hands out the given files, whatever the definition says. */
export function fakeEngine(options: FakeOptions = {}): FakeEngine {
  const opened: { text: string; file: string }[] = []
  const drawn: FilesOptions[] = []
  const files = options.files ?? SOME_FILES
  const design: Design = {
    severities: options.severities ?? [],
    findings: options.findings ?? '',
    findingsJson: '{}\n',
    paths: options.announce ?? Object.keys(files),
    files(given) {
      drawn.push(given)
      return handOut(files, options.before)
    },
  }
  return {
    opened,
    drawn,
    async open(text, file) {
      opened.push({ text, file })
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
  'templates/glaze-store/left-side-a.pdf': 'pdf of the left side',
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
