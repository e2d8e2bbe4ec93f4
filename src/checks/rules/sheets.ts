import type { Stock } from '../../project/index.ts'
import { fewestSheets, layOut, type Part, partsByStock, usableSize } from '../../sheets/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { mm } from '../words.ts'

/** Whether the parts come out of the sheets that there are, and what a size that is as large as fits came to. */
export const sheets: Rule = {
  ids: ['sheets-short', 'fitted-size'],
  check: (subject) => {
    const parts = partsByStock(subject.panels)
    return [...shortOf(subject, parts), ...fittedSize(subject, parts)]
  },
}

type PartsByStock = ReadonlyMap<Stock, readonly Part[]>

function shortOf({ project }: Subject, parts: PartsByStock): Finding[] {
  return [...parts].flatMap(([stock, list]): Finding[] => {
    const { onHand, name } = stock
    if (onHand === undefined || layOut(list, stock, project.kerf, onHand) !== undefined) return []
    const needed = layOut(list, stock, project.kerf, list.length)?.sheets.length
    if (needed === undefined) return []
    const sure = fewestSheets(list, stock) > onHand
    return [
      {
        rule: 'sheets-short',
        severity: 'warn',
        panels: [],
        places: [],
        message: `${name}: its ${list.length} parts need ${needed} sheets with a kerf of ${mm(project.kerf)} mm, and there ${onHand === 1 ? 'is' : 'are'} ${onHand}${sure ? '' : '; a better layout may be found by hand'}`,
        fix: `get ${needed - onHand} more, or make the modules smaller`,
        change: [{ path: [...stock.at, 'sheets'], value: needed }],
        at: stock.at,
      },
    ]
  })
}

function fittedSize({ project }: Subject, parts: PartsByStock): Finding[] {
  const { fit } = project
  if (fit?.size === undefined) return []
  const used = [...parts].flatMap(([stock, list]) => {
    const layout = layOut(list, stock, project.kerf, stock.onHand ?? list.length)
    if (layout === undefined) return []
    const usable = usableSize(stock)
    const area = list.reduce((sum, part) => sum + part.length * part.width, 0)
    const share = Math.round((100 * area) / (usable.length * usable.width * layout.sheets.length))
    const count = layout.sheets.length
    return [`${count} ${count === 1 ? 'sheet' : 'sheets'} of ${stock.name}, ${share} % used`]
  })
  const most = fit.size + fit.step > fit.atMost ? ', the most that is allowed' : ''
  const [at = []] = fit.at
  return [
    {
      rule: 'fitted-size',
      severity: 'note',
      panels: [],
      places: [],
      message: `as large as fits is ${mm(fit.size)} mm${most}: ${used.join('; ')}`,
      at,
    },
  ]
}
