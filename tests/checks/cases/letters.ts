import { ROUND_STOCK } from '../../support/define.ts'
import type { RuleCase } from './case.ts'

const named = (module: string, stock = 'board'): string => `
storyrod: 1
stock: { ${stock}: { thickness: 18, sheet: [2500, 1250], density: 685 } }
modules: { ${module}: { width: 600, depth: 400, carcase height: 720, stock: ${stock}, carcase: { back: none } } }
`
const opening = (purpose: string): string => `${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 400
    carcase height: 720
    stock: board
    carcase: { back: none }
    openings: [{ panel: left side, shape: round, diameter: 60, from: centred, for: ${purpose} }]
`
const ownHinge = (title: string): string => `${ROUND_STOCK}
hardware: { mine: { like: one-piece screw 7x50, title: ${title} } }
modules:
  box: { width: 600, depth: 400, carcase height: 720, stock: board, carcase: { back: none, joint: mine } }
`
const OTHER_LETTERS =
  'give it a name in letters that the font has: Latin, Greek, Cyrillic, Armenian, Georgian, figures and common signs'

export const letterCases: readonly RuleCase[] = [
  {
    rule: 'page-letters',
    what: 'of a module',
    // 柜 comes twice and is named once; Greek and Cyrillic are in the font.
    trips: named('厨房柜 A 柜'),
    severity: 'warn',
    message: 'the module "厨房柜 A 柜": the font of the full-size pages lacks 厨 房 柜; a ? stands there for each',
    fix: OTHER_LETTERS,
    inside: named('Шкаф Ντουλάπα №2'),
  },
  {
    rule: 'page-letters',
    what: 'of everything that is named',
    trips: `${named('box')}title: 工房\n`,
    severity: 'warn',
    message: 'the title "工房": the font of the full-size pages lacks 工 房; a ? stands there for each',
    fix: OTHER_LETTERS,
    inside: `${named('box')}title: Мастерская\n`,
  },
  {
    rule: 'page-letters',
    what: 'of a stock',
    trips: named('box', '合板'),
    severity: 'warn',
    message: 'the stock "合板": the font of the full-size pages lacks 合 板; a ? stands there for each',
    fix: OTHER_LETTERS,
    inside: named('box', 'фанера'),
  },
  {
    rule: 'page-letters',
    what: 'of an opening',
    trips: opening('一二三四五六七八九十'),
    severity: 'warn',
    // Ten letters, of which eight are shown.
    message:
      'the opening "一二三四五六七八九十": the font of the full-size pages lacks 一 二 三 四 五 六 七 八 and 2 more; a ? stands there for each',
    fix: OTHER_LETTERS,
    inside: opening('кабель'),
  },
  {
    rule: 'page-letters',
    what: 'of hardware that is used',
    trips: ownHinge('蝶番'),
    severity: 'warn',
    message: 'the hardware "蝶番": the font of the full-size pages lacks 蝶 番; a ? stands there for each',
    fix: OTHER_LETTERS,
    inside: ownHinge('петля'),
  },
  {
    rule: 'page-letters',
    what: 'in the wrong order',
    trips: named('ארון מטבח'),
    severity: 'warn',
    message:
      'the module "ארון מטבח": full-size pages set words from the left, so that these stand there in the wrong order',
    fix: 'give it a name of a single word without figures, or one in letters that are written from the left',
    inside: named('ארון'),
  },
]
