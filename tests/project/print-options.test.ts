import { describe, expect, test } from 'vitest'
import { optionAt, readPrintOptions } from '../../src/project/index.ts'

describe('options in place of the keys under outputs', () => {
  test('are read in the units of the definition, and only those that are said', () => {
    expect(readPrintOptions({ paper: 'A3', checkBars: '179.1,180', pageBudget: '4' }, 'mm')).toEqual({
      ok: true,
      outputs: { paper: 'A3', bars: { across: 179.1, down: 180 }, pageBudget: 4 },
    })
    // 7 1/16 × 25.4 = 179.3875; the other carries its own unit.
    const inches = readPrintOptions({ checkBars: '7 1/16, 18 cm' }, 'in')
    expect(inches).toMatchObject({ ok: true, outputs: { bars: { down: 180 } } })
    expect(inches.ok && inches.outputs.bars?.across).toBeCloseTo(179.3875, 9)
    expect(readPrintOptions({}, 'in')).toEqual({ ok: true, outputs: {} })
    expect(readPrintOptions({ paper: 'roll 36 in' }, 'mm')).toEqual({ ok: true, outputs: { paper: 'roll 36 in' } })
  })

  test('that are wrong are answered as the keys are, each under its own name, all at once', () => {
    expect(readPrintOptions({ paper: 'a3', checkBars: '179.1', pageBudget: '0' }, 'mm')).toEqual({
      ok: false,
      problems: [
        '--paper: "a3" is not a paper\n  expected: A4, A3, Letter, Legal, Tabloid, roll 610, roll 914, roll 24 in or roll 36 in; did you mean "A3"?',
        '--check-bars: a list of 1 does not do here\n  expected: two lengths, along the short and the long side of the sheet, such as 179.1,180',
        '--page-budget: 0 is not a number of sheets of paper\n  expected: a whole number from 1 to 50',
      ],
    })
    expect(readPrintOptions({ checkBars: '179.1,18O' }, 'mm')).toEqual({
      ok: false,
      problems: ['--check-bars: "18O" is not a length\n  expected: a length such as 600, 600 mm, 23 7/16 in'],
    })
    expect(readPrintOptions({ checkBars: '0,180', pageBudget: 'few' }, 'mm')).toEqual({
      ok: false,
      problems: [
        '--check-bars: 0 is no size\n  expected: a length above 0',
        '--page-budget: "few" is not a number of sheets of paper\n  expected: a whole number from 1 to 50',
      ],
    })
  })

  test.each(['', ' ', '"', "'", '\\', '\n', '{}', '- a', 'null', 'é'.repeat(500), '1e3', '0x10'])(
    'whatever is typed, such as %j, is answered',
    (typed) => {
      const read = readPrintOptions({ paper: typed, checkBars: `${typed},${typed}`, pageBudget: typed }, 'mm')
      expect(read.ok).toBe(false)
      expect(read.ok ? [] : read.problems.map((words) => /^--[a-z-]+: /.test(words))).not.toContain(false)
    },
  )

  test('answer for the keys whose place they take, and for no others', () => {
    const said = { checkBars: '179.1,180', pageBudget: '4' }
    expect(optionAt(['outputs', 'check bars', 1], said)).toBe('--check-bars')
    expect(optionAt(['outputs', 'page budget'], said)).toBe('--page-budget')
    expect(optionAt(['outputs', 'paper'], said)).toBeUndefined()
    expect(optionAt(['outputs', 'paper'], { paper: 'A3' })).toBe('--paper')
    expect(optionAt(['outputs'], said)).toBeUndefined()
    expect(optionAt(['modules', 'check bars'], said)).toBeUndefined()
  })
})
