import { facesDrawn } from '../../drawing/index.ts'
import { Kept, sameItems } from '../../memory/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Outline, OutlineModule } from '../protocol.ts'
import { matesOf } from './kin.ts'
import { indexOf } from './laid-index.ts'

/** What there is to look at, in the order of the modules. */
export const outlineOf = (laid: LaidOut): Outline => outlineKeeper()(laid)

/** Gives one outline after another; one that says the same as the last one is the very same thing. */
export type OutlineKeeper = (laid: LaidOut) => Outline

/** Keeps what is known of each module as long as its panels stay the very same things: their mates stay theirs then, too. */
export function outlineKeeper(): OutlineKeeper {
  const kept = new Kept<OutlineModule>()
  const told = new Kept<OutlineModule>()
  let last: Outline | undefined
  return (laid) => {
    const { title, units } = laid.project
    const { ofModule } = indexOf(laid)
    for (const one of [kept, told]) one.begin()
    const modules = laid.assembly.modules.map((module): OutlineModule => {
      const { key, name, at, liesOver } = module
      const panels = ofModule.get(key) ?? []
      const made = kept.take(key, [name, ...at, liesOver === undefined, ...panels], () => ({
        key,
        name,
        at,
        isTop: liesOver !== undefined,
        panels: panels.map((panel) => ({
          id: panel.id,
          name: panel.name,
          faces: facesDrawn(panel),
          mates: matesOf(laid, panel),
        })),
      }))
      return told.renew(key, made)
    })
    for (const one of [kept, told]) one.settle()
    const isSame = last?.title === title && last.units === units && sameItems(last.modules, modules)
    last = isSame && last !== undefined ? last : { title, units, modules }
    return last
  }
}
