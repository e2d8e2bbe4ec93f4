import { facesDrawn } from '../../../src/drawing/index.ts'
import type { LaidOut } from '../../../src/outputs/index.ts'
import type { Look } from '../../../src/page/scene/index.ts'
import { kinOf } from '../../../src/page/scene/kin.ts'

/** Every pair of panels that share hardware, each once. */
export function pairsOf(laid: LaidOut): [string, string][] {
  return [...kinOf(laid.assembly.hardware)].flatMap(([a, others]) =>
    [...others.keys()].filter((b) => a < b).map((b): [string, string] => [a, b]),
  )
}

/** Every kind of look at everything that there is, taken apart in several ways. */
export function looksOf(laid: LaidOut): Look[] {
  const cabinets = laid.assembly.modules.filter(({ liesOver }) => liesOver === undefined)
  return [
    ...laid.panels.flatMap((panel) => facesDrawn(panel).map((face): Look => ({ kind: 'face', panel: panel.id, face }))),
    ...pairsOf(laid).map((panels): Look => ({ kind: 'pair', panels })),
    ...cabinets.flatMap(({ key }) =>
      (['on', 'off', 'open'] as const).map((doors): Look => ({ kind: 'front', module: key, doors })),
    ),
    { kind: 'floor' },
    { kind: 'isometric', apart: 0, turn: 0 },
    { kind: 'isometric', apart: 1, turn: 3 },
    ...cabinets.map(
      ({ key }, k): Look => ({
        kind: 'isometric',
        module: key,
        apart: 0.5,
        turn: k % 2 === 0 ? 1 : 2,
      }),
    ),
  ]
}
