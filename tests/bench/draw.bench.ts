import makerjs from 'makerjs'
import { bench, describe } from 'vitest'
import { build, faceFiles } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { readDefinition } from '../../src/project/index.ts'

// Question: how much longer than a general exporter that only writes the shapes does it take to work a whole workshop
// out, from the text of the definition to labelled SVG and DXF of every panel? The peer is makerjs' own toSVG and toDXF,
// fed with the same outlines, holes and grooves, ready made. A ratio of two figures from one run; no time is asserted.
const MODULES = 300

const text = [
  'storyrod: 1',
  'stock: { board: { thickness: 18 }, thin: { thickness: 6 } }',
  'common:',
  '  depth: 560',
  '  working height: 900',
  '  stock: board',
  '  base: { casters: caster 75, inset: 85 }',
  '  carcase: { top: over, back: { sits: applied, stock: thin } }',
  'modules:',
  ...Array.from({ length: MODULES }, (_, k) => {
    const inside = [
      'loose shelves: 3, front: { kind: pair }',
      'side by side: [{ loose shelves: 2 }, { loose shelves: 2 }]',
      'loose shelves: 3, front: { kind: door }',
    ]
    return `  module ${k}: { width: ${500 + (k % 5) * 100}, inside: { ${inside[k % 3]} } }`
  }),
  'floor plan:',
  `  - { row: [${Array.from({ length: MODULES }, (_, k) => `module ${k}`).join(', ')}], join: bolted }`,
].join('\n')

/** All bytes, so that nothing can be left undone. */
function drawAll(): { panels: readonly Panel[]; bytes: number } {
  const read = readDefinition(text, 'bench.yaml')
  if (!read.ok) throw new Error(JSON.stringify(read.problems[0]))
  const built = build(read.project)
  let bytes = 0
  for (const file of faceFiles(built)) bytes += file.bytes.length
  return { panels: built.panels, bytes }
}

const { panels, bytes } = drawAll()
const bores = panels.reduce((sum, panel) => sum + panel.bores.length, 0)

function modelOf(panel: Panel): makerjs.IModel {
  const circles = panel.bores
    .filter((bore) => bore.surface === 'A' || bore.surface === 'B')
    .map((bore, k) => [
      `c${k}`,
      { ...new makerjs.paths.Circle([bore.at[0], bore.at[1]], bore.diameter / 2), layer: `D${bore.diameter}` },
    ])
  return {
    units: makerjs.unitType.Millimeter,
    models: { outline: new makerjs.models.Rectangle(panel.length, panel.width) },
    paths: Object.fromEntries(circles),
  }
}

const models = panels.map(modelOf)

/** The peer: the same shapes, no labels, no layers by depth. */
function exportAll(): number {
  return models.reduce(
    (sum, model) => sum + makerjs.exporter.toSVG(model).length + makerjs.exporter.toDXF(model).length,
    0,
  )
}

const times = { ours: [] as number[], peer: [] as number[] }
const timed = (list: number[], work: () => void) => (): void => {
  const start = performance.now()
  work()
  list.push(performance.now() - start)
}
const median = (list: readonly number[]): number =>
  [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN

/** The figures that people ask for, once both have run. */
function sayFigures(_task: unknown, mode?: 'run' | 'warmup'): void {
  if (mode !== 'run') return
  const seconds = median(times.ours) / 1000
  process.stdout.write(
    `\n${Math.round(panels.length / seconds)} panels a second, ${Math.round(bores / seconds)} bores a second; ` +
      `${(median(times.ours) / median(times.peer)).toFixed(2)} times the exporters alone\n`,
  )
}

describe(`${MODULES} modules, ${panels.length} panels, ${bores} bores, ${(bytes / 1e6).toFixed(1)} MB of SVG and DXF`, () => {
  const options = { time: 1, iterations: 5, warmupIterations: 1, warmupTime: 1 }
  bench(
    'definition to SVG and DXF, with labels, layers and checks',
    timed(times.ours, () => {
      if (drawAll().bytes !== bytes) throw new Error('the same definition gave other files')
    }),
    options,
  )
  bench(
    'makerjs exporters: the same outlines and holes, nothing else',
    timed(times.peer, () => {
      if (exportAll() < 1000) throw new Error('the peer wrote nothing')
    }),
    { ...options, teardown: sayFigures },
  )
})
