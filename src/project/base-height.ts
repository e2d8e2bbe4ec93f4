import type { BaseSpec } from './types.ts'

/** Height of the carcase's underside above the floor, mm; levelling feet in the middle of their travel, casters rolling. */
export function baseHeight(base: BaseSpec): number {
  switch (base.kind) {
    case 'none':
      return 0
    case 'casters':
      return Math.max(base.item.overallHeight, base.fixed?.item.overallHeight ?? 0)
    case 'plinth':
      return base.height
    case 'feet':
      return base.item.height
    default:
      return base satisfies never
  }
}
