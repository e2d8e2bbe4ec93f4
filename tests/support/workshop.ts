/** A workshop of many modules side by side, bolted: shelves behind doors, partitions with shelves on both sides. */
export function workshop(modules: number): string {
  return [
    'storyrod: 1',
    'stock: { board: { thickness: 18 }, thin: { thickness: 6 } }',
    'common:',
    '  depth: 560',
    '  working height: 900',
    '  stock: board',
    '  base: { casters: caster 75, inset: 85 }',
    '  carcase: { top: over, back: { sits: applied, stock: thin } }',
    'modules:',
    ...Array.from({ length: modules }, (_, k) => {
      const inside = [
        'loose shelves: 3, front: { kind: pair }',
        'side by side: [{ loose shelves: 2 }, { loose shelves: 2 }]',
        'loose shelves: 3, front: { kind: door }',
      ]
      return `  module ${k}: { width: ${500 + (k % 5) * 100}, inside: { ${inside[k % 3]} } }`
    }),
    'floor plan:',
    `  - { row: [${Array.from({ length: modules }, (_, k) => `module ${k}`).join(', ')}], join: bolted }`,
  ].join('\n')
}
