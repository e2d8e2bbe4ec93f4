import fc from 'fast-check'

const tenths = (min: number, max: number): fc.Arbitrary<string> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => `${value / 10} mm`)

const anyFront = fc.record({
  kind: fc.constantFrom('door', 'pair', 'flap', 'fixed'),
  side: fc.boolean(),
  lay: fc.constantFrom('overlay', 'overlay', 'inset'),
  stock: fc.constantFrom('board', 'thick'),
  reveal: tenths(0, 3),
  gap: tenths(1, 6),
  'inset gap': tenths(1.5, 3),
  stay: fc.constantFrom('auto', 'none'),
  stays: fc.constantFrom('auto', 'one', 'both'),
  fix: fc.constantFrom('dowel', 'through screw', { fasten: 'dowel', spacing: '128 mm' }),
  pull: fc.constantFrom('none', { item: 'knob', 'edge distance': '15 mm', end: 'middle' }),
})

/** The keys of a front that mean something for its kind and lay; its cover is left to the rule. */
export const rawFront: fc.Arbitrary<Record<string, unknown>> = anyFront.map((one) => {
  const { kind, lay, side, stock, pull, fix, stay, stays, gap, reveal } = one
  const inset = lay === 'inset'
  const hung = kind === 'fixed' ? { fix } : { pull }
  return {
    kind,
    lay,
    stock,
    ...hung,
    ...(kind === 'door' && { hang: side ? 'left' : 'right' }),
    ...(kind === 'flap' && { hang: side ? 'top' : 'bottom', stay, ...(stay === 'auto' && { stays }) }),
    ...(inset ? kind !== 'fixed' && { 'inset gap': one['inset gap'], gap } : { reveal, gap }),
  }
})

const DIRECTIONS = ['side by side', 'stacked'] as const

/**
 * Raw bays in trees of at most so many levels, two or three to a split, by shares; a front over any opening, split or
 * not, but none behind another.
 */
export function bayTree(levels: number, fronted = true): fc.Arbitrary<Record<string, unknown>> {
  const share = fc.constantFrom(1, 1.5, 2)
  // Most openings that are split have no front of their own, so that those in them may have some.
  const front = (behind: boolean, leaf: boolean): fc.Arbitrary<Record<string, unknown>> =>
    behind
      ? fc.constant({})
      : fc.oneof(
          { weight: leaf ? 1 : 6, arbitrary: fc.constant({}) },
          { weight: leaf ? 4 : 1, arbitrary: rawFront.map((one) => ({ front: one })) },
        )
  const tree = (level: number, behind: boolean): fc.Arbitrary<Record<string, unknown>> =>
    front(behind, level === 0).chain((own) => {
      if (level === 0) return fc.constant(own)
      const child = fc.tuple(share, tree(level - 1, behind || 'front' in own)).map(([n, bay]) => ({ share: n, ...bay }))
      return fc.oneof(
        { weight: 1, arbitrary: fc.constant(own) },
        {
          weight: 8,
          arbitrary: fc
            .tuple(fc.constantFrom(...DIRECTIONS), fc.array(child, { minLength: 2, maxLength: level > 1 ? 2 : 3 }))
            .map(([direction, bays]) => ({ ...own, [direction]: bays })),
        },
      )
    })
  return tree(levels, !fronted)
}

/** Definitions of one large module with a tree of bays and fronts in it. */
export const frontsDefinition = (levels: number): fc.Arbitrary<string> =>
  fc
    .record({
      inside: bayTree(levels),
      width: tenths(1400, 1800),
      height: tenths(1400, 1800),
      top: fc.constantFrom('over', 'between'),
    })
    .map(({ inside, width, height, top }) =>
      JSON.stringify({
        storyrod: 1,
        stock: {
          board: { thickness: 18.2, sheet: [2500, 1250] },
          thick: { thickness: 22, sheet: [2500, 1250] },
          thin: { thickness: 6, sheet: [2500, 1250] },
        },
        modules: {
          box: {
            width,
            depth: '500 mm',
            'carcase height': height,
            stock: 'board',
            carcase: { top, bottom: 'between', joint: 'dowel', back: { sits: 'applied', stock: 'thin' } },
            inside,
          },
        },
      }),
    )
