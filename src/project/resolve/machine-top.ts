import type { LevellingScrew } from '../../hardware/index.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { isGroup, layersOf, said } from '../layers.ts'
import type { RawChamber, RawInsert, RawMachineTop, RawPort, RawSlot } from '../schema/definition.ts'
import type { ChamberSpec, FromEdge, InsertSpec, MachineTopSpec, PortSpec, SlotSpec } from '../types.ts'
import { itemNamed, usualItem } from './hardware.ts'
import { resolveWorktop, type Under } from './tops.ts'

/** A machine top; `undefined` when none is said or its stock cannot be told. Parts with problems are left out. */
export function resolveMachineTop(
  context: Context,
  top: Said<unknown> | undefined,
  under: Under,
): MachineTopSpec | undefined {
  if (top === undefined) return undefined
  const layers = layersOf<RawMachineTop>([top])
  const board = resolveWorktop(context, top, under)
  const insert = resolveInsert(context, said(layers, 'insert'))
  const slotsSaid = said(layers, 'slots')
  const slots = (slotsSaid?.value ?? []).flatMap((value, i) =>
    value === undefined || slotsSaid === undefined
      ? []
      : (resolveSlot(context, { value, path: [...slotsSaid.path, i] }) ?? []),
  )
  const chamber = resolveChamber(context, said(layers, 'chamber'))
  return board && { ...board, insert, slots, chamber }
}

type Length = Said<number | string> | undefined

const size = (context: Context, value: Length): number | undefined => context.length(value, { aboveZero: true })

function fromEdge(context: Context, value: Length): FromEdge {
  if (value === undefined || value.value === 'centred') return 'centred'
  return context.length(value, { kind: 'length or centred' }) ?? 'centred'
}

function resolveInsert(context: Context, insert: Said<unknown> | undefined): InsertSpec | undefined {
  if (insert === undefined) return undefined
  const layers = layersOf<RawInsert>([insert])
  const width = size(context, said(layers, 'width'))
  const depth = size(context, said(layers, 'depth'))
  const cornerRadius = context.length(said(layers, 'corner radius'))
  const ledge = resolveLedge(context, said(layers, 'ledge'))
  const rest = {
    fromFront: fromEdge(context, said(layers, 'from front')),
    fromLeft: fromEdge(context, said(layers, 'from left')),
    play: context.lengthOr(said(layers, 'play'), DEFAULTS.insertPlay),
    levelling: resolveLevelling(context, said(layers, 'levelling screws')),
  }
  if (width === undefined || depth === undefined || cornerRadius === undefined || ledge === undefined) return undefined
  return { width, depth, cornerRadius, ledge, ...rest, at: insert.path }
}

function resolveLedge(context: Context, ledge: Said<unknown> | undefined): InsertSpec['ledge'] | undefined {
  const layers = layersOf<RawInsert['ledge']>([ledge])
  const width = size(context, said(layers, 'width'))
  const depth = size(context, said(layers, 'depth'))
  return width === undefined || depth === undefined ? undefined : { width, depth }
}

function resolveLevelling(context: Context, screw: Said<string> | undefined): LevellingScrew | undefined {
  if (screw?.value === 'none') return undefined
  if (screw !== undefined) return itemNamed(context, screw, ['levelling screw'], ['none'])
  return usualItem(context, 'levelling screw', context.usual === 'in' ? 'levelling screw #10-24' : 'levelling screw M6')
}

function resolveSlot(context: Context, slot: Said<unknown>): SlotSpec | undefined {
  const layers = layersOf<RawSlot>([slot])
  const kind = said(layers, 'kind')?.value
  const along = said(layers, 'along')?.value
  const width = size(context, said(layers, 'width'))
  const depth = size(context, said(layers, 'depth'))
  const [beside, begin] =
    along === 'depth' ? (['from left', 'from front'] as const) : (['from front', 'from left'] as const)
  const offset = context.length(said(layers, beside))
  const start = context.lengthOr(said(layers, begin), 0)
  const length = size(context, said(layers, 'length'))
  if (along !== undefined && said(layers, beside) === undefined) {
    context.reportMissing(slot.path, beside, `where the slot runs: a length from the top's ${beside.slice(5)} edge`)
  }
  if (kind === undefined || along === undefined || width === undefined || depth === undefined || offset === undefined) {
    return undefined
  }
  return { kind, along, width, depth, offset, start, length, at: slot.path }
}

function resolveChamber(context: Context, chamber: Said<unknown> | undefined): ChamberSpec | undefined {
  if (chamber === undefined) return undefined
  const layers = layersOf<RawChamber>([chamber])
  const height = size(context, said(layers, 'height'))
  const portSaid = said(layers, 'port')
  const port = isGroup(portSaid?.value)
    ? resolvePort(context, { value: portSaid.value, path: portSaid.path })
    : undefined
  return height === undefined ? undefined : { height, port, at: chamber.path }
}

function resolvePort(context: Context, port: Said<unknown>): PortSpec | undefined {
  const layers = layersOf<RawPort>([port])
  const diameter = size(context, said(layers, 'diameter'))
  const fromLeft = fromEdge(context, said(layers, 'from left'))
  const fromBottom = fromEdge(context, said(layers, 'from bottom'))
  return diameter === undefined ? undefined : { diameter, fromLeft, fromBottom, at: port.path }
}
