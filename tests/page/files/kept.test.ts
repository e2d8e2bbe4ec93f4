import fc from 'fast-check'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { forget, type KeptStorage, keepWork, keptWorks } from '../../../src/page/files/kept.ts'
import { workOn } from '../../../src/page/files/work.ts'
import { pageDocument } from '../../../src/page/state/document.ts'

/** A browser's memory of so many letters. */
function memory(room = Number.POSITIVE_INFINITY): KeptStorage & { readonly all: Map<string, string> } {
  const all = new Map<string, string>()
  return {
    all,
    get length() {
      return all.size
    },
    key: (k) => [...all.keys()][k] ?? null,
    getItem: (key) => all.get(key) ?? null,
    setItem: (key, value) => {
      const others = [...all].reduce((sum, [name, text]) => sum + (name === key ? 0 : text.length), 0)
      if (others + value.length > room) throw new Error('full')
      all.set(key, value)
    },
    removeItem: (key) => void all.delete(key),
  }
}

const SAMPLE = { text: 'a sample', file: 'sample.yaml', files: new Map<string, string>() }

let time = 0
beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

function tabOn(storage: KeptStorage | undefined, tab = 'one') {
  const document = pageDocument(SAMPLE)
  const work = workOn(document)
  const kept: boolean[] = []
  let ids = 0
  const write = keepWork({
    document,
    work,
    storage,
    tab,
    now: () => {
      time += 1
      return time
    },
    newId: () => {
      ids += 1
      return `${tab}-${ids}`
    },
    onKept: (one) => kept.push(one),
  })
  return { document, work, kept, write }
}

test('a sample as it comes is not kept; a change is, within 300 ms, with file, files and whether it is saved', () => {
  const storage = memory()
  const { document, work } = tabOn(storage)
  vi.advanceTimersByTime(1000)
  expect(keptWorks(storage)).toEqual([])
  document.setText('changed')
  document.addFile('mark.svg', '<svg/>')
  vi.advanceTimersByTime(300)
  const [first] = keptWorks(storage)
  expect(first).toMatchObject({ text: 'changed', file: 'sample.yaml', tab: 'one', origin: 'sample', isSaved: false })
  expect(first?.files).toEqual(new Map([['mark.svg', '<svg/>']]))
  work.saved('changed', 'mine.yaml')
  vi.advanceTimersByTime(300)
  expect(keptWorks(storage)).toMatchObject([{ text: 'changed', file: 'mine.yaml', origin: 'file', isSaved: true }])
  // Undone to the text of the sample, it is still work.
  document.setText('a sample')
  vi.advanceTimersByTime(300)
  expect(keptWorks(storage)).toMatchObject([{ text: 'a sample', isSaved: false }])
})

test('typing without a rest is written all the same, and what waits when the page goes is written at once', () => {
  const storage = memory()
  const { document, write } = tabOn(storage)
  for (let k = 0; k < 10; k += 1) {
    document.setText(`text ${k}`)
    vi.advanceTimersByTime(50)
  }
  expect(keptWorks(storage).length).toBe(1)
  document.setText('the last letter')
  write()
  expect(keptWorks(storage)[0]?.text).toBe('the last letter')
})

test('what was open before another was opened stays kept under its own name', () => {
  const storage = memory()
  const { document, work, write } = tabOn(storage)
  document.setText('mine')
  write()
  work.open({ ...SAMPLE, text: 'theirs', file: 'theirs.yaml' }, { origin: 'file', isSaved: true })
  vi.advanceTimersByTime(300)
  expect(keptWorks(storage).map(({ text, isSaved }) => [text, isSaved])).toEqual([
    ['theirs', true],
    ['mine', false],
  ])
})

test('two tabs never write over each other, whatever is done in which order', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.boolean(), fc.string())), (steps) => {
      const storage = memory()
      const tabs = [tabOn(storage, 'one'), tabOn(storage, 'two')] as const
      const last: (string | undefined)[] = [undefined, undefined]
      for (const [isFirst, text] of steps) {
        const k = isFirst ? 0 : 1
        tabs[k].document.setText(text)
        tabs[k].write()
        if (text !== 'a sample') last[k] = text
        else if (last[k] !== undefined) last[k] = text
      }
      const texts = keptWorks(storage).map(({ tab, text }) => `${tab}: ${text}`)
      expect(texts.sort()).toEqual(
        ['one', 'two'].flatMap((tab, k) => (last[k] === undefined ? [] : [`${tab}: ${last[k]}`])),
      )
    }),
    { numRuns: 50 },
  )
})

test('at most 12 works are kept: of those, first the oldest go that a file has', () => {
  const storage = memory()
  for (let k = 1; k <= 14; k += 1) {
    const { document, work, write } = tabOn(storage, `tab ${k}`)
    document.setText(`work ${k}`)
    if (k === 2 || k === 4) work.saved(`work ${k}`, 'saved.yaml')
    write()
  }
  const kept = keptWorks(storage).map(({ text }) => text)
  expect(kept.length).toBe(12)
  expect(kept).not.toContain('work 2')
  expect(kept).not.toContain('work 4')
})

test('a full memory lets only saved work go, and where that is not enough, says that nothing is kept', () => {
  const storage = memory(400)
  const saved = tabOn(storage, 's')
  saved.document.setText('x'.repeat(100))
  saved.work.saved('x'.repeat(100), 's.yaml')
  saved.write()
  expect(saved.kept).toEqual([true])
  const other = tabOn(storage, 'u')
  other.document.setText('y'.repeat(220))
  other.write()
  expect(other.kept).toEqual([true])
  expect(keptWorks(storage).map(({ tab }) => tab)).toEqual(['u'])
  const third = tabOn(storage, 't')
  third.document.setText('z'.repeat(220))
  third.write()
  expect(third.kept).toEqual([false])
  expect(keptWorks(storage).map(({ tab }) => tab)).toEqual(['u'])
})

test('without a memory nothing breaks, and what others wrote there is left alone', () => {
  const none = tabOn(undefined)
  none.document.setText('changed')
  none.write()
  expect(none.kept).toEqual([false])
  expect(keptWorks(undefined)).toEqual([])
  const storage = memory()
  for (const odd of ['', 'null', '7', '{}', '{"text":1}', '[1', '{"text":"a","file":"b","at":1,"files":7}'])
    storage.setItem(`storyrod work odd ${odd}`, odd)
  storage.setItem('settings', 'theirs')
  expect(keptWorks(storage)).toEqual([])
  expect(storage.length).toBe(8)
  forget(storage, 'odd null')
  expect(storage.length).toBe(7)
})
