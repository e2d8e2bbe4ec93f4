import { expect, test } from 'vitest'
import type { FilesAnswer, FilesAsk } from '../../../src/page/files/asks.ts'
import { filesCrew } from '../../../src/page/files/crew.ts'

/** Workers that answer when they are told to. */
function workers() {
  const started: { readonly asked: FilesAsk[]; readonly answer: (answer: FilesAnswer) => void; ended: boolean }[] = []
  const crew = filesCrew(() => {
    const asked: FilesAsk[] = []
    let hear: (answer: FilesAnswer) => void = () => undefined
    const one = { asked, answer: (answer: FilesAnswer) => hear(answer), ended: false }
    started.push(one)
    return {
      post: (ask) => asked.push(ask),
      listen: (to) => {
        hear = to
      },
      end: () => {
        one.ended = true
      },
    }
  })
  return { crew, started }
}

const rest = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))

test('no worker is started before there is a job; jobs go one after another to the same one', async () => {
  const { crew, started } = workers()
  expect(started).toEqual([])
  const heard: string[] = []
  const first = crew.run({ kind: 'fonts' }, ({ kind }) => heard.push(`first ${kind}`))
  const second = crew.run({ kind: 'fonts' }, ({ kind }) => heard.push(`second ${kind}`))
  await rest()
  const [worker, ...more] = started
  expect(more).toEqual([])
  expect(worker?.asked.map(({ number }) => number)).toEqual([1])
  worker?.answer({ number: 1, kind: 'progress', done: 1, of: 2, what: 'x' })
  worker?.answer({ number: 1, kind: 'done', words: 'all of it' })
  expect(await first).toEqual({ number: 1, kind: 'done', words: 'all of it' })
  await rest()
  expect(worker?.asked.map(({ number }) => number)).toEqual([1, 2])
  worker?.answer({ number: 2, kind: 'refused', words: 'a stop stands' })
  expect(await second).toEqual({ number: 2, kind: 'refused', words: 'a stop stands' })
  expect(heard).toEqual(['first progress', 'first done', 'second refused'])
})

test('stopped: the job and those that wait end with nothing, news of it are not heard, and the next job has a new worker', async () => {
  const { crew, started } = workers()
  const heard: string[] = []
  const first = crew.run({ kind: 'fonts' }, ({ kind }) => heard.push(kind))
  const second = crew.run({ kind: 'fonts' }, ({ kind }) => heard.push(kind))
  await rest()
  crew.stop()
  started[0]?.answer({ number: 1, kind: 'done' })
  expect(await first).toBeUndefined()
  expect(await second).toBeUndefined()
  expect(heard).toEqual([])
  expect(started.map(({ ended, asked }) => [ended, asked.length])).toEqual([[true, 1]])
  const third = crew.run({ kind: 'fonts' }, ({ kind }) => heard.push(kind))
  await rest()
  expect(started.length).toBe(2)
  started[1]?.answer({ number: started[1].asked[0]?.number ?? 0, kind: 'done' })
  expect((await third)?.kind).toBe('done')
})

test('to stop when nothing runs changes nothing', async () => {
  const { crew, started } = workers()
  crew.stop()
  expect(started).toEqual([])
  const run = crew.run({ kind: 'fonts' }, () => undefined)
  await rest()
  started[0]?.answer({ number: 1, kind: 'done' })
  expect((await run)?.kind).toBe('done')
})
