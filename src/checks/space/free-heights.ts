import { boardBox } from '../../assembly/index.ts'
import { type Box, commonBox, NOISE_MM } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'
import { mm } from '../words.ts'
import { pathKey, SHAVING_MM, woodIn } from './parts-of.ts'
import type { ModuleScene, PlacedBody, Scene } from './scene.ts'

/** What lies on the walls of an opening at some heights only, and keeps a loose shelf from resting there. */
export const keepsShelvesOff = ({ name, piece }: PlacedBody): boolean =>
  (piece.item.kind === 'cup hinge' && (name === 'arm' || name === 'plate')) || piece.item.kind === 'joining bolt'

/** `keep it on pins 160 to 288 and 416 mm above the lower end of the left side`; or that there are none. */
export function freeHeightWords(scene: Scene, own: ModuleScene, shelf: Panel): string {
  const free = freeHeights(scene, own, shelf)
  if (free.heights.length === 0) return 'no pin height is clear of it'
  const runs = runsOf(free.heights)
  const words = runs.map(([low, high]) => (low === high ? mm(low) : `${mm(low)} to ${mm(high)}`))
  const list = words.length === 1 ? words[0] : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
  return `set it on pins ${list} mm above the lower end of ${free.wall}`
}

/** Heights of the pins on which a loose shelf clears all that lies on the walls and stands between them. */
function freeHeights(scene: Scene, own: ModuleScene, shelf: Panel): { wall: string; heights: readonly number[] } {
  const place = pathKey(shelf.at)
  const pins = own.pins.filter(({ at }) => pathKey(at) === place)
  const station = pins[0]?.stations.find(({ part }) => part === 'left')
  if (station === undefined) return { wall: '', heights: [] }
  const wall = scene.subject.panelOf(station.panel)
  const foot = boardBox(wall).min[2]
  const lift = (pins[0]?.item.parts.left?.[0]?.diameter ?? 0) / 2
  const levels = [...new Set(pins.map(({ stations }) => stations[0]?.pose.origin[2] ?? 0))].sort((a, b) => a - b)
  const box = boardBox(shelf)
  const at = (z: number): Box => ({
    min: [box.min[0], box.min[1], z + lift],
    max: [box.max[0], box.max[1], z + lift + shelf.thickness],
  })
  return { wall: wall.name, heights: levels.filter((z) => isFree(own, shelf, at(z))).map((z) => z - foot) }
}

function isFree(own: ModuleScene, shelf: Panel, box: Box): boolean {
  const onBody = own.bodiesNear(box, 0).some((k) => {
    const body = own.bodies[k]
    return body !== undefined && keepsShelvesOff(body) && commonBox(body.box, box, SHAVING_MM) !== undefined
  })
  if (onBody) return false
  return own.panelsNear(box, 0).every((k) => {
    const other = own.panels[k]
    if (other === undefined || other.panel.id === shelf.id || other.panel.role === 'loose shelf') return true
    return woodIn(other.panel, other.box, box).length === 0
  })
}

/** Rising heights as runs of one step. */
function runsOf(heights: readonly number[]): (readonly [number, number])[] {
  const steps = heights.slice(1).map((z, k) => z - (heights[k] ?? z))
  const step = Math.min(...steps)
  const runs: [number, number][] = []
  for (const z of heights) {
    const last = runs.at(-1)
    if (last !== undefined && Math.abs(z - last[1] - step) <= NOISE_MM) last[1] = z
    else runs.push([z, z])
  }
  return runs
}
