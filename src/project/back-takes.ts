import type { BackSpec } from './types.ts'

/** Width of the groove for a back: its thickest reading and the play, mm. */
export function grooveWidth(back: Exclude<BackSpec, { sits: 'none' }>): number {
  return back.stock.thickest + back.groovePlay
}

/** What a back takes of the depth, from the module's rear to the plane where the inside ends, mm. */
export function backTakes(back: BackSpec): number {
  switch (back.sits) {
    case 'none':
      return 0
    case 'applied':
    case 'between sides':
      return back.stock.thickness
    case 'inset':
      return back.recess + back.stock.thickness
    case 'grooved':
      return back.grooveSetback + grooveWidth(back)
    case 'rebated':
      return back.stock.thickest
    default:
      return back satisfies never
  }
}
