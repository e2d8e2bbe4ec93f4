import type { Engine, Opened, ReadNamed } from './engine.ts'

/** Storyrod itself. Each stage is loaded when it is asked for, so that `--help` need not wait for the writers. */
export const storyrod: Engine = {
  open,
  async schema() {
    const { definitionJsonSchema } = await import('../project/index.ts')
    return definitionJsonSchema()
  },
  async starter() {
    const { starterDefinition } = await import('../project/index.ts')
    return starterDefinition()
  },
}

async function open(text: string, file: string, readNamed: ReadNamed): Promise<Opened> {
  const { filesNamed, renderProblems } = await import('../project/index.ts')
  const files = new Map<string, string>()
  for (const name of filesNamed(text)) {
    const named = await readNamed(name)
    if (named !== undefined) files.set(name, named)
  }
  const { renderFindings } = await import('../checks/index.ts')
  const { findingsJson, openDefinition, outputFiles, outputPaths } = await import('../outputs/index.ts')
  const opened = openDefinition(text, file, files)
  if (!opened.ok) return { ok: false, problems: renderProblems(opened.problems) }
  const { built, locate } = opened
  const definition = { file: file.replace(/^.*[\\/]/, ''), locate }
  return {
    ok: true,
    design: {
      severities: built.findings.flatMap(({ severity, silenced }) => (silenced === undefined ? [severity] : [])),
      findings: renderFindings({ ...built, locate, file }),
      findingsJson: findingsJson(built, definition),
      paths: outputPaths(built),
      files: ({ fonts, stamp }) => outputFiles(built, fonts, definition, stamp === undefined ? {} : { stamp }),
    },
  }
}
