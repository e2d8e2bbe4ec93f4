import type { Context } from '../context.ts'
import { type Layers, said } from '../layers.ts'
import type { RawFront } from '../schema/definition.ts'
import type { FrontSpec } from '../types.ts'

type Key = keyof RawFront & string
type Idle = readonly [key: Key, reason: string, instead: string]

const NOT_HUNG = 'a fixed front does not open'
const NO_STAYS = 'only a flap is held open'
const NOT_FIXED = 'only a fixed front is fastened'

/** Keys that mean nothing for a kind of front. */
const IDLE_BY_KIND: Record<FrontSpec['kind'], readonly Idle[]> = {
  door: [
    ['stay', NO_STAYS, 'kind: flap'],
    ['stays', NO_STAYS, 'kind: flap'],
    ['fix', NOT_FIXED, 'kind: fixed'],
  ],
  pair: [
    ['hang', 'a pair hangs on both sides', 'kind: door'],
    ['stay', NO_STAYS, 'kind: flap'],
    ['stays', NO_STAYS, 'kind: flap'],
    ['fix', NOT_FIXED, 'kind: fixed'],
  ],
  flap: [['fix', NOT_FIXED, 'kind: fixed']],
  fixed: [
    ['hang', NOT_HUNG, 'kind: door or flap'],
    ['hinge', NOT_HUNG, 'kind: door or flap'],
    ['hinges', NOT_HUNG, 'kind: door or flap'],
    ['hinge end', NOT_HUNG, 'kind: door or flap'],
    ['pull', NOT_HUNG, 'kind: door or flap'],
    ['stay', NOT_HUNG, 'kind: flap'],
    ['stays', NOT_HUNG, 'kind: flap'],
  ],
}

function idleByLay(kind: FrontSpec['kind'] | undefined, lay: FrontSpec['lay']): readonly Idle[] {
  if (lay === 'overlay') return [['inset gap', 'the front is an overlay', 'lay: inset']]
  const instead = kind === 'fixed' ? 'lay: overlay' : 'inset gap'
  return [
    ['cover', 'an inset front covers no panel', 'lay: overlay'],
    ['reveal', kind === 'fixed' ? 'a fixed inset front has no gaps' : 'an inset front has an inset gap', instead],
    ...(kind === 'fixed'
      ? ([
          ['inset gap', 'a fixed inset front stands against the panels around it', 'kind: door or flap'],
          ['gap', 'a fixed inset front has no gaps', 'lay: overlay'],
        ] as const)
      : []),
  ]
}

/** Keys of a front that have no meaning for its kind and lay. */
export function idleFrontKeys(kind: FrontSpec['kind'], lay: FrontSpec['lay']): string[] {
  return idleKeys(kind, lay).map(([key]) => key)
}

const idleKeys = (kind: FrontSpec['kind'] | undefined, lay: FrontSpec['lay']): readonly Idle[] => [
  ...(kind === undefined ? [] : IDLE_BY_KIND[kind]),
  ...idleByLay(kind, lay),
]

/** A key that cannot have an effect is a mistake. */
export function refuseIdleKeys(
  context: Context,
  layers: Layers<RawFront>,
  kind: FrontSpec['kind'] | undefined,
  lay: FrontSpec['lay'],
): void {
  for (const [key, reason, instead] of idleKeys(kind, lay)) {
    const found = said(layers, key)
    if (found === undefined) continue
    const expected = `${instead}, or this key taken out`
    context.report(found.path, `has no meaning, since ${reason}`, { expected, on: 'key' })
  }
  if (said(layers, 'stay')?.value === 'none') {
    const stays = said(layers, 'stays')
    if (stays !== undefined && kind === 'flap') {
      context.report(stays.path, 'has no meaning, since there is no stay', {
        expected: 'another stay, or this key taken out',
        on: 'key',
      })
    }
  }
}
