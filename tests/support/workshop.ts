/** Modules in one row of the floor plan, at most. */
const IN_A_ROW = 10

/** What stands in the cabinets, each in turn. */
const INSIDES = [
  ['loose shelves: 3', 'front: { kind: pair }'],
  ['side by side:', '  - { loose shelves: 2 }', '  - { loose shelves: 2 }'],
  ['loose shelves: 3', 'front: { kind: door }'],
  ['stacked:', '  - { size: 180, loose shelves: 1 }', '  - { loose shelves: 2, front: { kind: door, hang: right } }'],
] as const

/**
 * The definition of a workshop of many usual cabinets on casters, bolted together in rows of ten: shelves on pins, open and
 * behind doors, partitions with shelves on both sides. The same text for the same number; as people write it, a key a line.
 */
export function workshopText(modules: number): string {
  const names = Array.from({ length: modules }, (_, k) => `cabinet ${k + 1}`)
  const rows = Array.from({ length: Math.ceil(modules / IN_A_ROW) }, (_, k) =>
    names.slice(k * IN_A_ROW, (k + 1) * IN_A_ROW),
  )
  return [
    'storyrod: 1',
    '',
    'stock:',
    '  board: { thickness: 18 }',
    '  thin: { thickness: 6 }',
    '',
    'common:',
    '  depth: 560',
    '  working height: 900',
    '  stock: board',
    '  base: { casters: caster 75, inset: 85 }',
    '  carcase: { top: over, back: { sits: applied, stock: thin } }',
    '',
    'modules:',
    ...names.flatMap((name, k) => [
      `  ${name}:`,
      `    width: ${500 + (k % 5) * 100}`,
      '    inside:',
      ...(INSIDES[k % INSIDES.length] ?? []).map((line) => `      ${line}`),
    ]),
    '',
    'floor plan:',
    ...rows.map((row) => `  - { row: [${row.join(', ')}], join: bolted }`),
    '',
  ].join('\n')
}
