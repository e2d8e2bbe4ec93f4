import type { MachineTopSpec, ModuleSpec } from '../../project/index.ts'
import { merge, type Parts } from '../parts.ts'
import type { PlacedPanel } from '../types.ts'
import { placeInsert } from './insert.ts'
import type { Area } from './plan.ts'
import { placeSlots } from './slots.ts'

/** The work in the upper face of a machine top, and what it takes of it, seen from above. */
export interface TopWork {
  readonly parts: Parts
  readonly areas: readonly Area[]
}

/** Insert and slots of a machine top that lies on those panels. */
export function machineWork(
  spec: ModuleSpec,
  top: MachineTopSpec,
  panel: PlacedPanel,
  below: Pick<Parts, 'panels' | 'hardware'>,
): TopWork {
  const insert = top.insert === undefined ? undefined : placeInsert(spec, top.insert, panel, below)
  const slots = placeSlots(spec, top.slots, panel, insert?.areas ?? [])
  return {
    parts: merge([insert?.parts ?? {}, slots.parts]),
    areas: [...(insert?.areas ?? []), ...slots.areas],
  }
}
