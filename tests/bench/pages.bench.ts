import { bench, describe } from 'vitest'
import { facesDrawn, panelDrawing, panelPages } from '../../src/drawing/index.ts'
import { planFace } from '../../src/drawing/pages/face-pages.ts'
import { setupOf } from '../../src/drawing/pages/setup.ts'
import { faceView } from '../../src/drawing/pages/view.ts'
import { svgOf } from '../../src/writers/index.ts'
import { builtSample } from '../support/samples.ts'

// Question: how long does it take to choose the full-size pages of a whole project on A4, and to draw them, measured
// against the drawings of the same panels as SVG? Ratios of figures from one run; no time is asserted.
const { panels, project } = builtSample('pottery-studio')
const setup = setupOf('A4', 'mm', undefined)

/** As many sheets as there are, so that nothing can be left undone. */
function planned(): number {
  return panels
    .flatMap((panel) => facesDrawn(panel).map((face) => planFace(faceView(panel, face), setup).sheets))
    .reduce((all, sheets) => all + sheets, 0)
}

function drawn(pageBudget?: number): number {
  const print = { paper: 'A4', margin: 10, ...(pageBudget !== undefined && { pageBudget }) } as const
  return panels
    .map((panel) => panelPages(panel, facesDrawn(panel), { print, units: 'mm', others: panels }).drawings.length)
    .reduce((all, sheets) => all + sheets, 0)
}

function asSvg(): number {
  return panels
    .flatMap((panel) =>
      facesDrawn(panel).map(
        (face) => svgOf(panelDrawing(panel, face, { patterns: project.outputs.dxf.layers, units: 'mm' })).length,
      ),
    )
    .reduce((all, letters) => all + letters, 0)
}

describe(`${panels.length} panels, ${planned()} sheets of A4`, () => {
  const options = { time: 1, iterations: 3, warmupIterations: 1, warmupTime: 1 }
  bench('drawn as SVG, a face each (the peer)', () => void asSvg(), options)
  bench('full-size pages chosen', () => void planned(), options)
  bench('full-size pages chosen and drawn', () => void drawn(), options)
  bench('within four sheets a panel: chosen and drawn', () => void drawn(4), options)
})
