import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type OpenPage, openPage } from '../support/open-page.ts'

let desk: OpenPage
let server: Server
let address: string
/**
 * All that anyone ever sent to the listener. A browser may open a connection ahead of a form or a frame that its policy then
 * forbids; nothing goes through it.
 */
const heard: string[] = []

beforeAll(async () => {
  server = createServer((request, response) => {
    heard.push(`${request.method} ${request.url}`)
    response.end()
  })
  server.on('connection', (socket) => socket.on('data', (bytes: Buffer) => heard.push(`${bytes.length} bytes`)))
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  address = `127.0.0.1:${(server.address() as AddressInfo).port}`
  desk = await openPage()
})
afterAll(async () => {
  await desk.close()
  server.close()
})

test('the policy stands in the page, before anything that it is about', async () => {
  const policy = await desk.page.evaluate(() => {
    const meta = document.querySelector('meta[http-equiv="Content-Security-Policy"]')
    const first = document.querySelector('script, style, link, img')
    const isBefore =
      meta !== null && first !== null && (meta.compareDocumentPosition(first) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0
    return { isBefore, words: meta?.getAttribute('content') ?? '' }
  })
  expect(policy.isBefore).toBe(true)
  expect(policy.words).toContain("default-src 'none'")
  expect(policy.words).not.toContain('connect-src')
  expect(policy.words).not.toMatch(/https?:|\*/)
})

/** Ways in which a page can send something, each by a text that a script of the page's own could hold. */
const WAYS = [
  ['fetch', 'fetch("http://HERE/fetch", { mode: "no-cors" }).catch(() => undefined)'],
  [
    'a request of the old kind',
    'new Promise((end) => { const r = new XMLHttpRequest(); r.onloadend = end; r.onerror = end; r.open("POST", "http://HERE/old"); r.send("x") })',
  ],
  ['a beacon', 'Promise.resolve(navigator.sendBeacon("http://HERE/beacon", "x"))'],
  ['a web socket', 'new Promise((end) => { try { new WebSocket("ws://HERE/socket").onerror = end } catch { end() } })'],
  ['a stream of events', 'new Promise((end) => { new EventSource("http://HERE/events").onerror = end })'],
  [
    'an image',
    'new Promise((end) => { const i = new Image(); i.onload = i.onerror = end; i.src = "http://HERE/image" })',
  ],
  [
    'a script',
    'new Promise((end) => { const s = document.createElement("script"); s.onload = s.onerror = end; s.src = "http://HERE/script"; document.head.append(s) })',
  ],
  [
    'a style sheet',
    'new Promise((end) => { const l = document.createElement("link"); l.rel = "stylesheet"; l.onload = l.onerror = end; l.href = "http://HERE/style"; document.head.append(l) })',
  ],
  ['letters', 'new FontFace("X", "url(http://HERE/letters)").load().catch(() => undefined)'],
  [
    'a frame',
    'new Promise((end) => { const f = document.createElement("iframe"); f.onload = f.onerror = end; f.src = "http://HERE/frame"; document.body.append(f) })',
  ],
  [
    'a worker of its own',
    'new Promise((end) => { const w = new Worker(URL.createObjectURL(new Blob([`fetch("http://HERE/worker", { mode: "no-cors" }).then(() => postMessage(1), () => postMessage(0))`]))); w.onmessage = w.onerror = end })',
  ],
  // Last: the tool that drives the browser goes on waiting for where it would lead.
  [
    'a form',
    'new Promise((end) => { const f = document.createElement("form"); f.method = "post"; f.action = "http://HERE/form"; f.target = "_self"; document.body.append(f); f.submit(); setTimeout(end, 200) })',
  ],
] as const

test.each(WAYS)('the browser sends nothing by way of %s', async (_, way) => {
  // The listener hears what does come, so that its silence says something.
  if (!heard.includes('GET /sound')) {
    await fetch(`http://${address}/sound`)
    expect(heard).toContain('GET /sound')
  }
  const before = heard.length
  await desk.page.evaluate(way.replaceAll('HERE', address))
  await new Promise((resolve) => setTimeout(resolve, 50))
  expect(heard.slice(before)).toEqual([])
  expect(await desk.page.evaluate(() => document.querySelector('[data-drawn]') !== null)).toBe(true)
})
