import { type Assembly, boardBox, FLOOR } from '../../assembly/index.ts'
import { NOISE_MM, place, turn, type Vec2, type Vec3 } from '../../geometry/index.ts'
import type { Caster } from '../../hardware/index.ts'
import { type LoadedModule, lowest } from './loaded.ts'
import { type Body, panelBody, together } from './mass.ts'
import type { Contact } from './stability.ts'

/** Modules that stand or fall together, since they are bolted to each other; floor frame, mm and kg. */
export interface StandingBody {
  readonly modules: readonly LoadedModule[]
  /** All of it, loaded, drawers and doors shut. */
  readonly shut: Body
  /** As it rolls: shut, and its tops cleared. */
  readonly rolling: Body
  /** As it is loaded, with the heaviest drawer fully out and every door and flap open. */
  readonly open: Body
  /** The drawer that is out. */
  readonly drawer: { readonly module: LoadedModule; readonly name: string; readonly mass: number } | undefined
  readonly doors: boolean
  readonly contacts: readonly Contact[]
  /** All of its modules stand on casters. */
  readonly rolls: boolean
  /** Its highest upper side above the floor. */
  readonly height: number
}

/** What stands on the floor by itself: single modules, and modules joined by bolts or by one worktop. */
export function standingBodies(loaded: readonly LoadedModule[], assembly: Assembly): StandingBody[] {
  const groups = joined(loaded, assembly)
  return [...groups.values()].map(bodyOf)
}

/** Modules by the first of those that they are joined to, through pieces of hardware in the floor frame. */
function joined(loaded: readonly LoadedModule[], assembly: Assembly): Map<string, LoadedModule[]> {
  const parent = new Map<string, string>()
  const root = (key: string): string => {
    let at = key
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up
    if (at !== key) parent.set(key, at)
    return at
  }
  const owner = new Map(assembly.modules.flatMap(({ key, panels }) => panels.map(({ id }) => [id, key] as const)))
  for (const { frame, stations } of assembly.hardware) {
    if (frame !== FLOOR) continue
    const keys = stations.flatMap(({ panel }) => owner.get(panel) ?? [])
    for (const key of keys.slice(1)) {
      const [a, b] = [root(keys[0] ?? key), root(key)]
      if (a !== b) parent.set(b, a)
    }
  }
  const groups = new Map<string, LoadedModule[]>()
  for (const one of loaded) {
    const key = root(one.module.key)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else group.push(one)
  }
  return groups
}

const onFloor = ({ module }: LoadedModule, { mass, at }: Body): Body => ({
  mass,
  at: place(module.floorFromModule, at),
})

/** How far the middles of doors, flaps and a drawer move out as they open, as masses times distances on the floor. */
interface Moved {
  readonly mass: number
  /** Floor frame, mm. */
  readonly by: Vec3
}

function bodyOf(modules: readonly LoadedModule[]): StandingBody {
  const shut = together(modules.flatMap((one) => [onFloor(one, one.own), onFloor(one, one.load)]))
  const doors = modules.flatMap(doorsOut)
  const drawer = modules
    .flatMap(drawersOut)
    .reduce<DrawerOut | undefined>(
      (best, one) => (best === undefined || one.moved.mass * one.travel > best.moved.mass * best.travel ? one : best),
      undefined,
    )
  const moved = [...doors, ...(drawer ? [drawer.moved] : [])]
  const shift = (axis: 0 | 1 | 2): number =>
    shut.mass === 0 ? 0 : moved.reduce((sum, { mass, by }) => sum + mass * by[axis], 0) / shut.mass
  return {
    modules,
    shut,
    rolling: together(modules.flatMap((one) => [onFloor(one, one.own), onFloor(one, one.rolling)])),
    open: { mass: shut.mass, at: [shut.at[0] + shift(0), shut.at[1] + shift(1), shut.at[2] + shift(2)] },
    drawer: drawer && { module: drawer.module, name: drawer.name, mass: drawer.moved.mass },
    doors: doors.length > 0,
    contacts: modules.flatMap(contactsOf),
    rolls: modules.every(({ spec }) => spec.base.kind === 'casters'),
    height: Math.max(...modules.map(({ topHeight }) => topHeight)),
  }
}

/** The way out of a module, toward its front. */
const outward = ({ module }: LoadedModule, by: number): Vec3 => turn(module.floorFromModule, [0, -by, 0])

/** A door swings half its width out before the front, a flap half its height; sideways it balances or matters little. */
function doorsOut(one: LoadedModule): Moved[] {
  return one.panels
    .filter(({ role }) => role === 'door' || role === 'flap')
    .map((panel) => {
      const { min, max } = boardBox(panel)
      const reach = panel.role === 'door' ? max[0] - min[0] : max[2] - min[2]
      return { mass: panelBody(panel).mass, by: outward(one, reach / 2) }
    })
}

interface DrawerOut {
  readonly module: LoadedModule
  readonly name: string
  readonly travel: number
  readonly moved: Moved
}

/** Every drawer, pulled out by the whole length of its slides: they are for full extension. */
function drawersOut(one: LoadedModule): DrawerOut[] {
  return one.drawers.map(({ name, slide, own, load }) => ({
    module: one,
    name,
    travel: slide.length,
    moved: { mass: own.mass + load.mass, by: outward(one, slide.length) },
  }))
}

/** Wheel diameter over overall height, where the wheel's own size is not known: 75/100, 100/128, 125/155; own choice. */
const WHEEL_SHARE = 0.75

/** How far the wheel touches the floor beside the king pin, mm: swivel radius less wheel radius (S44). */
export function casterOffset({ swivelRadius, overallHeight, turning, wheel }: Caster): number {
  if (turning === 'fixed') return 0
  const diameter = wheel?.diameter ?? WHEEL_SHARE * overallHeight
  return Math.max(0, swivelRadius - diameter / 2)
}

/** Where a module touches the floor: under its casters or feet, along its plinth, or under its lowest boards. */
function contactsOf({ module, panels, hardware, spec }: LoadedModule): Contact[] {
  const onto = (x: number, y: number): Vec2 => {
    const at = place(module.floorFromModule, [x, y, 0])
    return [at[0], at[1]]
  }
  const stands = hardware.flatMap(({ item, stations }): Contact[] => {
    if (item.kind !== 'caster' && item.kind !== 'levelling foot') return []
    const inward = item.kind === 'caster' ? casterOffset(item) : 0
    return stations.map(({ pose }) => ({ at: onto(pose.origin[0], pose.origin[1]), inward }))
  })
  if (stands.length > 0) return stands
  const plinth = panels.filter(({ role }) => role.startsWith('plinth'))
  const foot = lowest(panels)
  const boards =
    spec.base.kind === 'plinth' && plinth.length > 0
      ? plinth
      : panels.filter((panel) => boardBox(panel).min[2] <= foot + NOISE_MM)
  return boards.flatMap((panel) => {
    const { min, max } = boardBox(panel)
    return [min[0], max[0]].flatMap((x) => [min[1], max[1]].map((y) => ({ at: onto(x, y), inward: 0 })))
  })
}
