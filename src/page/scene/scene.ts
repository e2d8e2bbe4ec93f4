import type { Units } from '../../length/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import { faceScene } from './face.ts'
import { floorScene } from './floor.ts'
import { frontScene } from './front.ts'
import { isometricScene } from './isometric.ts'
import { indexOf } from './laid-index.ts'
import { pairScene } from './pair.ts'
import type { Look, Scene } from './types.ts'

/** The look itself where there is what it looks at; else the nearest one. Nothing where there is no module at all. */
export function nearestLook({ panels }: LaidOut, look: Look | undefined): Look | undefined {
  if (look?.kind === 'face' && panels.some(({ id }) => id === look.panel)) return look
  const [first] = panels
  return first && { kind: 'face', panel: first.id, face: 'A' }
}

/** What is seen. Throws where the look asks for a panel or module that there is not. */
export function sceneOf(laid: LaidOut, look: Look, units: Units = laid.project.units): Scene {
  if (look.kind === 'face') {
    const panel = laid.panels.find(({ id }) => id === look.panel)
    if (panel !== undefined) return faceScene(indexOf(laid), panel, look, units)
  }
  if (look.kind === 'front') {
    const module = indexOf(laid).modules.get(look.module)
    const spec = laid.project.modules.find(({ key }) => key === look.module)
    if (module !== undefined && spec !== undefined) return frontScene(indexOf(laid), module, spec, look, units)
  }
  if (look.kind === 'floor') return floorScene(laid, look, units)
  if (look.kind === 'pair') {
    const { panels, modules } = indexOf(laid)
    const [a, b] = [panels.get(look.panels[0]), panels.get(look.panels[1])]
    const [m, n] = [a && modules.get(a.module), b && modules.get(b.module)]
    if (a !== undefined && b !== undefined && m !== undefined && n !== undefined) {
      return pairScene(indexOf(laid), [m, n], [a, b], look, units)
    }
  }
  if (look.kind === 'isometric') {
    const modules = laid.assembly.modules.filter(({ key }) => look.module === undefined || key === look.module)
    return isometricScene(indexOf(laid), modules, look, units, 'isometric')
  }
  throw new Error(`nothing to see for ${JSON.stringify(look)}`)
}
