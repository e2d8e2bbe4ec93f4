import { bench, describe } from 'vitest'
import { assemble } from '../../src/assembly/index.ts'
import { check } from '../../src/checks/index.ts'
import { build, faceFiles } from '../../src/outputs/index.ts'
import { panelsOf } from '../../src/panel/index.ts'
import { readDefinition } from '../../src/project/index.ts'
import { workshopText } from '../support/workshop.ts'

// Question: what do all the checks of a workshop of 300 modules cost beside drawing it? The aim is at most 1.5 times the
// time of drawing. A ratio of two figures from one run; no time is asserted.
const read = readDefinition(workshopText(300), 'bench.yaml')
if (!read.ok) throw new Error(JSON.stringify(read.problems[0]))
const { project } = read
const assembly = assemble(project)
const panels = panelsOf(assembly)
const built = build(project)

describe('300 modules', () => {
  bench(
    'all checks',
    () => {
      check(project, assembly, panels)
    },
    { iterations: 3, warmupIterations: 1 },
  )

  bench(
    'SVG and DXF of every panel',
    () => {
      let bytes = 0
      for (const file of faceFiles(built)) bytes += file.bytes.length
      if (bytes === 0) throw new Error('nothing was drawn')
    },
    { iterations: 3, warmupIterations: 1 },
  )
})
