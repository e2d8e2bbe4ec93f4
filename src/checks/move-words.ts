import type { Bore } from '../panel/index.ts'
import type { Designs } from './by-design.ts'

/** What to change in the definition so that a bore moves, by what it is for; where no shift is worked out. */
export function moveWords(bore: Bore, { itemOf }: Designs): string {
  const [use] = bore.uses
  const kind = use === undefined ? undefined : itemOf(use.hardware)?.kind
  switch (kind) {
    case 'shelf pin':
      return 'move the rows of pins (`datum`, `front setback` or `rear setback`)'
    case 'cup hinge':
    case 'hinge plate':
      return 'give the door hinges at other heights (`hinges: [ … ]`)'
    case 'drawer slide':
      return 'give the drawers other heights'
    case 'pull':
      return 'move the pull (`edge distance`)'
    case 'joining bolt':
      return 'change the inset of the bolts'
    case 'caster':
    case 'levelling foot':
      return 'change the inset of what the module stands on'
    default:
      return 'change the end distance of the joint'
  }
}
