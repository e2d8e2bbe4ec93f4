import { boardBox, type PanelRole, type PlacedHardware } from '../../assembly/index.ts'
import type { Box } from '../../geometry/index.ts'
import type { DrawerSlide } from '../../hardware/index.ts'
import type { Panel } from '../../panel/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import { type Body, panelBody, together } from './mass.ts'

/** One drawer with its front and all that is in it. */
export interface Drawer {
  /** `drawer 1` */
  readonly name: string
  readonly panels: readonly Panel[]
  readonly slide: DrawerSlide
  /** Box and front. */
  readonly own: Body
  readonly load: Body
  /** All of the box, shut, module frame. */
  readonly box: Box
  readonly at: DefinitionPath
}

const BOX_ROLES: readonly PanelRole[] = [
  'drawer left side',
  'drawer right side',
  'drawer box front',
  'drawer box back',
  'drawer bottom',
]
const NAME = /^drawer \d+/

/** The drawers of a module, from its panels and slides; `load` is what a drawer carries, kg, by the area of its bottom, mm². */
export function drawersOf(
  panels: readonly Panel[],
  slides: ReadonlyMap<string, PlacedHardware>,
  load: (at: DefinitionPath, area: number) => number,
): Drawer[] {
  const groups = new Map<string, Panel[]>()
  for (const panel of panels) {
    const name =
      BOX_ROLES.includes(panel.role) || panel.role === 'drawer front' ? NAME.exec(panel.name)?.[0] : undefined
    if (name !== undefined) groups.set(name, [...(groups.get(name) ?? []), panel])
  }
  return [...groups].flatMap(([name, group]): Drawer[] => {
    const boards = group.filter(({ role }) => role !== 'drawer front')
    const side = boards.find(({ role }) => role === 'drawer left side')
    const bottom = boards.find(({ role }) => role === 'drawer bottom')
    const piece = side && slides.get(side.id)
    if (bottom === undefined || piece?.item.kind !== 'drawer slide') return []
    const box = around(boards.map(boardBox))
    const middle = [
      (box.min[0] + box.max[0]) / 2,
      (box.min[1] + box.max[1]) / 2,
      (box.min[2] + box.max[2]) / 2,
    ] as const
    const mass = load(piece.at, bottom.length * bottom.width)
    return [
      {
        name,
        panels: group,
        slide: piece.item,
        own: together(group.map(panelBody)),
        load: { mass, at: middle },
        box,
        at: piece.at,
      },
    ]
  })
}

/** The box around boxes. */
export function around(boxes: readonly Box[]): Box {
  const least = (axis: 0 | 1 | 2): number => Math.min(...boxes.map(({ min }) => min[axis]))
  const most = (axis: 0 | 1 | 2): number => Math.max(...boxes.map(({ max }) => max[axis]))
  return { min: [least(0), least(1), least(2)], max: [most(0), most(1), most(2)] }
}
