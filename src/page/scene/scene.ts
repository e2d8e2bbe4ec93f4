import type { PlacedModule } from '../../assembly/index.ts'
import type { Units } from '../../length/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Panel } from '../../panel/index.ts'
import { faceScene } from './face.ts'
import { floorScene } from './floor.ts'
import { frontScene } from './front.ts'
import { isometricScene } from './isometric.ts'
import { areMates } from './kin.ts'
import { indexOf } from './laid-index.ts'
import { pairScene } from './pair.ts'
import type { Look, Scene } from './types.ts'

type LookOf<K extends Look['kind']> = Extract<Look, { kind: K }>

/** What one sees first: all of it. */
const FIRST: LookOf<'isometric'> = { kind: 'isometric', apart: 0, turn: 0 }

/**
 * The look itself where there is what it looks at; else the nearest one: another panel of the same module, the panel of that
 * name in another module, the first. Nothing where there is no module at all.
 */
export function nearestLook(laid: LaidOut, look: Look | undefined): Look | undefined {
  const { modules } = indexOf(laid)
  if (laid.panels.length === 0) return undefined
  if (look === undefined) return FIRST
  switch (look.kind) {
    case 'face':
      return nearestFace(laid, look)
    case 'pair':
      return nearestPair(laid, look)
    case 'front':
      return nearestFront(laid, look)
    case 'floor':
      return look
    case 'isometric':
      return look.module === undefined || modules.has(look.module)
        ? look
        : { ...FIRST, apart: look.apart, turn: look.turn }
    default:
      return look satisfies never
  }
}

function nearestFace(laid: LaidOut, look: LookOf<'face'>): Look | undefined {
  const { panels, ofModule } = indexOf(laid)
  if (panels.has(look.panel)) return look
  const cut = look.panel.indexOf('/')
  const [module, key] = [look.panel.slice(0, cut), look.panel.slice(cut + 1)]
  const [beside] = ofModule.get(module) ?? []
  const other = beside ?? laid.panels.find((panel) => panel.key === key) ?? laid.panels[0]
  return other && { ...look, panel: other.id }
}

function nearestPair(laid: LaidOut, look: LookOf<'pair'>): Look | undefined {
  const [a, b] = look.panels
  const { panels } = indexOf(laid)
  const first = panels.get(a)
  if (first !== undefined && areMates(laid, first, b)) return look
  return nearestFace(laid, { kind: 'face', panel: first === undefined && panels.has(b) ? b : a, face: 'A' })
}

function nearestFront(laid: LaidOut, look: LookOf<'front'>): Look | undefined {
  const cabinets = laid.assembly.modules.filter(({ liesOver }) => liesOver === undefined)
  if (cabinets.some(({ key }) => key === look.module)) return look
  const [first] = cabinets
  return first && { ...look, module: first.key }
}

/** What is seen. Throws where the look asks for a panel or module that there is not, or for a pair that shares nothing. */
export function sceneOf(laid: LaidOut, look: Look, units: Units = laid.project.units): Scene {
  switch (look.kind) {
    case 'face':
      return faceScene(indexOf(laid), panelOf(laid, look.panel), look, units)
    case 'pair':
      return pairOf(laid, look, units)
    case 'front':
      return frontOf(laid, look, units)
    case 'floor':
      return floorScene(laid, look, units)
    case 'isometric':
      return isometricOf(laid, look, units)
    default:
      return look satisfies never
  }
}

function panelOf(laid: LaidOut, id: string): Panel {
  const panel = indexOf(laid).panels.get(id)
  if (panel === undefined) throw new Error(`nothing to see: no panel ${id}`)
  return panel
}

function moduleOf(laid: LaidOut, key: string): PlacedModule {
  const module = indexOf(laid).modules.get(key)
  if (module === undefined) throw new Error(`nothing to see: no module ${key}`)
  return module
}

function pairOf(laid: LaidOut, look: LookOf<'pair'>, units: Units): Scene {
  const [a, b] = [panelOf(laid, look.panels[0]), panelOf(laid, look.panels[1])]
  return pairScene(indexOf(laid), [moduleOf(laid, a.module), moduleOf(laid, b.module)], [a, b], look, units)
}

function frontOf(laid: LaidOut, look: LookOf<'front'>, units: Units): Scene {
  const spec = laid.project.modules.find(({ key }) => key === look.module)
  if (spec === undefined) throw new Error(`nothing to see from the front: no cabinet ${look.module}`)
  return frontScene(indexOf(laid), moduleOf(laid, look.module), spec, look, units)
}

function isometricOf(laid: LaidOut, look: LookOf<'isometric'>, units: Units): Scene {
  const { module } = look
  const shown = module === undefined ? laid.assembly.modules : [moduleOf(laid, module)]
  const [only] = shown
  const name = shown.length === 1 && only !== undefined ? only.name : laid.project.title
  return isometricScene(indexOf(laid), shown, look, units, look.apart > 0 ? `${name}, taken apart` : name)
}
