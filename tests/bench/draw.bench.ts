import makerjs from 'makerjs'
import { bench, describe } from 'vitest'
import { type Face, facesDrawn } from '../../src/drawing/index.ts'
import { build, faceFiles } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { readDefinition } from '../../src/project/index.ts'
import { workshopText } from '../support/workshop.ts'

// Question: how much longer than a general exporter that only writes the shapes does it take to work a whole workshop
// out, from the text of the definition to labelled SVG and DXF of every panel? The peer is makerjs' own toSVG and toDXF,
// fed, ready made, with what the files hold of each drawn face: outline, holes with their sinks, grooves as rectangles. It
// writes no labels and no marks for edges and pockets. A ratio of two figures from one run; no time is asserted.
const text = workshopText(300)

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

/** What the files of one face hold, ready made: outline, holes and sinks of that face, its grooves as rectangles. */
function modelOf(panel: Panel, face: Face): makerjs.IModel {
  const seen = (x: number): number => (face === 'A' ? x : panel.length - x)
  const circles = panel.bores
    .filter((bore) => bore.surface === face && bore.leanDeg === undefined)
    .flatMap(({ id, at, diameter, depth, sink }) => {
      const wide = [{ key: id, diameter, layer: `D${diameter} ${depth}` }]
      if (sink) wide.push({ key: `${id} sink`, diameter: sink.diameter, layer: `D${sink.diameter} ${sink.shape}` })
      return wide.map(({ key, diameter: size, layer }): [string, makerjs.IPathCircle] => [
        key,
        { ...new makerjs.paths.Circle([seen(at[0]), at[1]], size / 2), layer },
      ])
    })
  const grooves = panel.grooves
    .filter((groove) => groove.face === face)
    .map(({ id, min, max, kind }): [string, makerjs.IModel] => {
      const box = new makerjs.models.Rectangle(max[0] - min[0], max[1] - min[1])
      return [id, { ...makerjs.model.move(box, [Math.min(seen(min[0]), seen(max[0])), min[1]]), layer: kind }]
    })
  return {
    units: makerjs.unitType.Millimeter,
    models: {
      outline: new makerjs.models.Rectangle(panel.length, panel.width),
      ...Object.fromEntries(grooves),
    },
    paths: Object.fromEntries(circles),
  }
}

const models = panels.flatMap((panel) => facesDrawn(panel).map((face) => modelOf(panel, face)))

/** The peer: the same shapes on as many drawings, with layers; no labels, marks, titles or checks. */
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

describe(`300 modules, ${panels.length} panels, ${bores} bores, ${(bytes / 1e6).toFixed(1)} MB of SVG and DXF`, () => {
  const options = { time: 1, iterations: 5, warmupIterations: 1, warmupTime: 1 }
  bench(
    'definition to SVG and DXF, with labels, layers and checks',
    timed(times.ours, () => {
      if (drawAll().bytes !== bytes) throw new Error('the same definition gave other files')
    }),
    options,
  )
  bench(
    `makerjs exporters: the same ${models.length} faces, outlines, holes, sinks and grooves alone`,
    timed(times.peer, () => {
      if (exportAll() < 1000) throw new Error('the peer wrote nothing')
    }),
    { ...options, teardown: sayFigures },
  )
})
