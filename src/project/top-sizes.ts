import type { FromEdge, Overhang } from './types.ts'

/** The board of a worktop over that footprint, left to right and front to back, mm. */
export function topSize(
  footprint: { readonly width: number; readonly depth: number },
  overhang: Overhang,
): { readonly width: number; readonly depth: number } {
  return {
    width: overhang.left + footprint.width + overhang.right,
    depth: overhang.front + footprint.depth + overhang.back,
  }
}

/** Where something so large begins, so far from an edge or in the middle of the whole, mm. */
export function startOf(from: FromEdge, size: number, whole: number): number {
  return from === 'centred' ? (whole - size) / 2 : from
}
