import { boardBox, type PlacedPanel } from '../../assembly/index.ts'
import type { Box } from '../../geometry/index.ts'
import type { Bay, DefinitionPath, ModuleSpec } from '../../project/index.ts'

/** A clear opening of a module, from the front; module frame, mm. */
export interface ClearOpening {
  readonly x: readonly [from: number, to: number]
  readonly z: readonly [from: number, to: number]
  readonly bay: Bay
  readonly at: DefinitionPath
}

/** The openings of a module that are not split, from the left and from the top as the definition lists them. */
export function openingsIn({ inside }: ModuleSpec, panels: readonly PlacedPanel[]): ClearOpening[] {
  const boxes = new Map(panels.map((panel) => [panel.name, panel]))
  const ofRole = (role: PlacedPanel['role']): Box | undefined => {
    const panel = panels.find((one) => one.role === role)
    return panel && boardBox(panel)
  }
  const [left, right] = [ofRole('left side'), ofRole('right side')]
  if (left === undefined || right === undefined) return []
  const over = ofRole('chamber floor') ?? ofRole('top') ?? ofRole('top rail')
  const whole: Omit<ClearOpening, 'bay' | 'at'> = {
    x: [left.max[0], right.min[0]],
    z: [ofRole('bottom')?.max[2] ?? left.min[2], over?.min[2] ?? left.max[2]],
  }
  const next = { partition: 1, 'fixed shelf': 1 }
  // Dividers are numbered as they are put in: each before what stands in the bay before it.
  const walk = (bay: Bay, room: typeof whole): ClearOpening[] => {
    if (bay.split === undefined) return [{ ...room, bay, at: bay.at }]
    const beside = bay.split.direction === 'side by side'
    const word = beside ? 'partition' : 'fixed shelf'
    let rest = room
    return bay.split.bays.flatMap((child, k, all) => {
      if (k === all.length - 1) return walk(child, rest)
      const divider = boxes.get(`${word} ${next[word]++}`)
      const box = divider && boardBox(divider)
      if (box === undefined) return []
      const own: typeof whole = beside
        ? { ...rest, x: [rest.x[0], box.min[0]] }
        : { ...rest, z: [box.max[2], rest.z[1]] }
      rest = beside ? { ...rest, x: [box.max[0], rest.x[1]] } : { ...rest, z: [rest.z[0], box.min[2]] }
      return walk(child, own)
    })
  }
  return walk(inside, whole)
}
