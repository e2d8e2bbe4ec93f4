import { type LaidOut, layoutKeeper } from '../../outputs/index.ts'
import { formModelOf } from '../form/model.ts'
import type { DrawerAnswer, DrawerAsk, Outline } from '../protocol.ts'
import { factsOf, nearestLook, outlineKeeper, ScenePacker, sceneOf } from '../scene/index.ts'

/** What the drawing worker does, apart from the worker: keeps the last definition that could be laid out, and draws it. */
export function drawer(): (ask: DrawerAsk) => DrawerAnswer {
  const layOut = layoutKeeper()
  let laid: LaidOut | undefined
  const outlineOf = outlineKeeper()
  const packer = new ScenePacker()
  let told: Outline | undefined

  function drawText(ask: Extract<DrawerAsk, { kind: 'text' }>): DrawerAnswer {
    const { text, file, files, print } = ask.source
    const opened = layOut(text, file, new Map(files), print)
    if (opened.ok) laid = opened.laid
    const form = formModelOf(opened.data, laid)
    if (!opened.ok || laid === undefined) {
      return { kind: 'drawn', number: ask.number, ofText: true, problems: opened.ok ? [] : opened.problems, form }
    }
    const outline = outlineOf(laid)
    const isNew = outline !== told
    told = outline
    const look = nearestLook(laid, ask.look)
    return {
      kind: 'drawn',
      number: ask.number,
      ofText: true,
      problems: [],
      form,
      ...(isNew && { outline }),
      ...(look !== undefined && { scene: packer.pack(sceneOf(laid, look, ask.units)) }),
    }
  }

  return (ask) => {
    const { number } = ask
    switch (ask.kind) {
      case 'text':
        return drawText(ask)
      case 'look': {
        const look = laid && nearestLook(laid, ask.look)
        return {
          kind: 'drawn',
          number,
          ofText: false,
          problems: [],
          ...(laid && look && { scene: packer.pack(sceneOf(laid, look, ask.units)) }),
        }
      }
      case 'hole':
        return { kind: 'hole', number, facts: laid && factsOf(laid, ask.hole) }
      default:
        return ask satisfies never
    }
  }
}
