import type { Units } from '../../length/index.ts'
import type { Project } from '../../project/index.ts'
import { readingsExample } from '../pages/setup.ts'
import type { Block } from './flow.ts'

/** How to get from sheets of paper to holes, in the order of the work; `measuring`: how many pages are only to be measured. */
export function stepsOf(measuring: number, units: Units): Block[] {
  const { key, option } = readingsExample(units)
  const first = measuring > 0 ? 'Print page 1 alone' : 'Print one page alone'
  const steps: readonly (readonly [lead: string, text: string])[] = [
    [
      '1  Check the scale',
      `${first}, at actual size (100 %), never “fit” or “shrink”. Lay a steel rule on both of its bars. Where one is further off than the page allows, put both readings into the definition (outputs: ${key}) or draw with ${option}: all pages are then drawn so that this printer makes them true. Print the rest in one run, on the same printer and paper, and measure both bars of every page before you drill by it.`,
    ],
    [
      '2  Tape',
      'The map on each page shows where it lies. Where two pages meet, both say which is taped to which: cut the upper one along its dashes, lay it on the other, mark on mark, a on a, b on b, until the hairlines of the one run on in the other, and tape. On a flat board.',
    ],
    [
      '3  Lay on and fold',
      'Read the name of the panel, the face, and the arrow: “this edge to the front”. The bold line is the edge of the panel: fold the paper back along it, hook the fold over that edge of the wood, and tape it down. A page that joins no other lies by its own two edges.',
    ],
    [
      '4  Punch',
      'With an awl, square to the wood: one firm push in the dot of each cross. Before you drill, take the distances of two marks from their edges with a rule: they are printed beside the holes.',
    ],
    [
      '5  Drill',
      'The printed depth is that of the full hole, without the point of the bit: set the stop collar to it. “5 deep 13” is a 5 bit 13 deep. Clamp a scrap board behind holes that go through. Drill one of each kind in an offcut first, and try the hardware in it.',
    ],
  ]
  return [
    { kind: 'heading', text: 'From paper to holes' },
    ...steps.map(([lead, text]): Block => ({ kind: 'paragraph', lead, text })),
  ]
}

/** What to mind, as far as it concerns this project. */
export const cautionsOf = (project: Project): Block[] => [
  { kind: 'heading', text: 'Cautions' },
  ...cautionWords(project).map((text): Block => ({ kind: 'paragraph', text })),
]

/** The same, each caution a few sentences. */
export function cautionWords({ modules }: Pick<Project, 'modules'>): string[] {
  const has = (of: (module: (typeof modules)[number]) => unknown): boolean => modules.some(of)
  return [
    'Extract at the tool and wear a fitted mask when cutting or boring sheet goods, MDF above all.',
    'Wear ear and eye protection whenever a saw, drill or router runs. Unplug it before you change a bit.',
    'Clamp the work, and plunge wide Forstner bits in a drill press: a bit that wanders spoils a hole that is marked right.',
    'Small pieces are bored and grooved while they are part of a larger board, and cut off last. Never rout a loose small piece by hand.',
    ...(has(({ base }) => base.kind === 'casters')
      ? [
          'Modules on casters can tip: lock at least two casters on the working side, roll them with doors shut, and fix tall or narrow ones to each other or to the wall.',
        ]
      : []),
    ...(has(({ base }) => base.kind === 'plinth' || base.kind === 'feet')
      ? ['Fix tall modules on a plinth or on feet to the wall. Lift them, never drag them on their feet.']
      : []),
    ...(has(({ machineTop }) => machineTop !== undefined)
      ? [
          'Machine tops: the manual of the machine comes first. Measure plate and machine before you cut, and unplug it before you mount, level or reach under it.',
        ]
      : []),
    ...(has(({ flipOver }) => flipOver !== undefined)
      ? [
          'Flip-over tops: unplug both machines, bolt them through the platform, lock the casters before you turn it, and keep hands out of the gaps at its sides. Lock every bolt before you work.',
        ]
      : []),
    'Loads, casters, slides and hinges are reckoned from published tables and common practice: a guide, no proof. The data sheet of the hardware in your hand comes first; local codes and a licensed professional decide where they apply.',
  ]
}
