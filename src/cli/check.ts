import type { Context } from './context.ts'
import { countOf } from './counts.ts'
import { readDefinitionFile, readNamedFile } from './definition-file.ts'
import { EXIT } from './exit-codes.ts'

export interface CheckOptions {
  /** Print what findings.json would hold. */
  readonly json?: boolean
}

/** `storyrod check`: prints the findings. The exit code. */
export async function check(
  { io, engine, progress }: Context,
  definition: string,
  options: CheckOptions = {},
): Promise<number> {
  const text = await readDefinitionFile(io, definition)
  progress.show(`checking ${definition}`)
  const opened = await engine.open(text, definition, (name) => readNamedFile(io, definition, name))
  progress.clear()
  if (!opened.ok) {
    io.stderr.write(withLineEnd(opened.problems))
    return EXIT.badInput
  }
  const { findings, findingsJson, severities } = opened.design
  io.stdout.write(withLineEnd(options.json === true ? findingsJson : findings))
  return countOf('stop', severities) > 0 ? EXIT.stopStands : EXIT.done
}

/** The text with one line end at its end; nothing stays nothing. */
export function withLineEnd(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`
}
