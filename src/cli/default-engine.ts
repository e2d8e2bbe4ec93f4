import type { Engine, FilesOptions, Opened, PrintOptions, ReadNamed } from './engine.ts'

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

async function open(text: string, file: string, readNamed: ReadNamed, print?: PrintOptions): Promise<Opened> {
  const { filesNamed, renderProblems } = await import('../project/index.ts')
  const files = new Map<string, string>()
  for (const name of filesNamed(text)) {
    const named = await readNamed(name)
    if (named !== undefined) files.set(name, named)
  }
  const { renderFindings } = await import('../checks/index.ts')
  const { definitionText, findingsJson, openDefinition, outputFiles, outputPaths, printWords } = await import(
    '../outputs/index.ts'
  )
  const opened = openDefinition(text, file, files, print)
  if (!opened.ok) {
    if (opened.options !== undefined) return { ok: false, problems: opened.options.join('\n'), of: 'options' }
    return { ok: false, problems: renderProblems(opened.problems) }
  }
  const { built, locate } = opened
  const definition = definitionText(file, locate)
  return {
    ok: true,
    design: {
      severities: built.findings.flatMap(({ severity, silenced }) => (silenced === undefined ? [severity] : [])),
      findings: renderFindings({ ...built, locate, file }),
      findingsJson: findingsJson(built, definition),
      paths: outputPaths(built),
      files: ({ fonts, stamp, onPages }: FilesOptions) =>
        outputFiles(built, fonts, definition, {
          ...(stamp !== undefined && { stamp }),
          onCount: (count) => {
            const words = printWords(count, built.project.outputs)
            if (words !== undefined) onPages?.(words)
          },
        }),
    },
  }
}
