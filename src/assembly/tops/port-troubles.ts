import { NOISE_MM } from '../../geometry/index.ts'
import { mm } from '../../length/index.ts'
import type { ModuleSpec, PortSpec } from '../../project/index.ts'
import { boardBox } from '../boards.ts'
import { atMost, inWords } from '../mend.ts'
import type { PlacedPanel, PlacingTrouble } from '../types.ts'

export interface PlacedPort {
  readonly spec: ModuleSpec
  readonly port: PortSpec
  readonly panels: readonly PlacedPanel[]
  readonly back: PlacedPanel
  /** Of the chamber. */
  readonly floor: PlacedPanel
  /** In the plane of the back, module frame, mm. */
  readonly centre: readonly [x: number, z: number]
}

/** Wood between a port that is moved and the upper edge of the back, mm; as the checks ask. */
const EDGE_MM = 10

/** What a port can meet, seen from in front, and how far it may reach up, module frame, mm. */
interface Around {
  readonly standing: readonly {
    readonly panel: PlacedPanel
    readonly x: readonly [number, number]
    readonly z: readonly [number, number]
  }[]
  readonly top: number
}

function around({ panels, back }: PlacedPort): Around {
  const sheet = boardBox(back)
  const sides = panels.filter(({ key }) => key === 'left-side').map((side) => boardBox(side).max[2])
  const standing = panels.flatMap((panel) => {
    const { min, max } = boardBox(panel)
    if (panel === back || max[1] < sheet.min[1] - NOISE_MM || min[1] > sheet.max[1]) return []
    return [{ panel, x: [min[0], max[0]] as const, z: [min[2], max[2]] as const }]
  })
  return { standing, top: Math.min(sheet.max[2], ...sides) }
}

/** The port must open into the chamber alone: no panel that reaches the back may stand before it, and it stays on the back. */
export function portTroubles(placed: PlacedPort): PlacingTrouble[] {
  const { spec, port, back, centre } = placed
  const radius = port.diameter / 2
  const there = around(placed)
  const cut = there.standing.flatMap((one) => {
    const off = offFrom(one, centre)
    const by = radius - off
    return by > NOISE_MM ? [{ panels: [back.id, one.panel.id], by, what: inWords(one.panel) }] : []
  })
  const beyond = centre[1] + radius - there.top
  if (beyond > NOISE_MM) cut.push({ panels: [back.id], by: beyond, what: 'the upper edge of the back' })
  if (cut.length === 0) return []
  const mending = moved(placed, there) ?? smaller(placed, there)
  return cut.map(({ panels: ids, by, what }) => ({
    rule: 'port-fit',
    severity: 'stop',
    panels: ids,
    message: `${spec.name}: the port, ${mm(port.diameter)} mm across, meets ${what} by ${mm(by)} mm`,
    ...mending,
    at: port.at,
  }))
}

/** From a point to a panel in the plane of the back, mm. */
const offFrom = ({ x, z }: Around['standing'][number], [px, pz]: readonly [number, number]): number =>
  Math.hypot(Math.max(x[0] - px, 0, px - x[1]), Math.max(z[0] - pz, 0, pz - z[1]))

/** The nearest place between the chamber's floor and the upper edge of the back where it meets nothing. */
function moved(placed: PlacedPort, { standing, top }: Around): Pick<PlacingTrouble, 'fix' | 'change'> | undefined {
  const { port, floor, centre } = placed
  const { min, max } = boardBox(floor)
  const radius = port.diameter / 2
  const up = (value: number): number => Math.ceil((value - NOISE_MM) * 10) / 10
  const down = (value: number): number => Math.floor((value + NOISE_MM) * 10) / 10
  const own: readonly [number, number] = [centre[0] - min[0], centre[1] - max[2]]
  const xs = [own[0], ...standing.flatMap(({ x }) => [up(x[1] - min[0] + radius), down(x[0] - min[0] - radius)])]
  const zs = [
    own[1],
    down(top - EDGE_MM - max[2] - radius),
    ...standing.flatMap(({ z }) => [up(z[1] - max[2] + radius), down(z[0] - max[2] - radius)]),
  ]
  const far = ([x, z]: readonly [number, number]): number => Math.hypot(x - own[0], z - own[1])
  const clear = ([x, z]: readonly [number, number]): boolean =>
    x > 0 &&
    x < max[0] - min[0] &&
    z >= radius - NOISE_MM &&
    z + radius <= top - EDGE_MM - max[2] + NOISE_MM &&
    standing.every((one) => offFrom(one, [x + min[0], z + max[2]]) >= radius - NOISE_MM)
  const places = xs.flatMap((x) => zs.map((z) => [x, z] as const)).filter(clear)
  const nearest = places.sort((a, b) => far(a) - far(b))[0]
  if (nearest === undefined) return undefined
  const moves = [
    ...(nearest[0] === own[0] ? [] : [['from left', nearest[0]] as const]),
    ...(nearest[1] === own[1] ? [] : [['from bottom', nearest[1]] as const]),
  ].map(([key, value]) => ({ key, value: `${value} mm` }))
  return {
    fix: `set its ${moves.map(({ key, value }) => `\`${key}: ${value}\``).join(' and ')}`,
    change: moves.map(({ key, value }) => ({ path: [...port.at, key], value })),
  }
}

/** A hose smaller than this is none for a machine, mm; common practice. */
const LEAST_PORT_MM = 20

/** As large as it can be where it is. */
function smaller({ port, centre }: PlacedPort, { standing, top }: Around): Pick<PlacingTrouble, 'fix' | 'change'> {
  const most = 2 * Math.min(top - EDGE_MM - centre[1], ...standing.map((one) => offFrom(one, centre)))
  if (most < LEAST_PORT_MM) return { fix: 'move it, make it smaller, or make the chamber higher' }
  return {
    fix: `make it ${atMost(most)} across, or the chamber higher`,
    change: [{ path: [...port.at, 'diameter'], value: atMost(most) }],
  }
}
