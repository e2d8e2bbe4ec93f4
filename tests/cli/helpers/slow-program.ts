/**
 * The program as a process of its own, over an engine that never hurries: it says `halfway` on stdout once three
 * files are handed out, and then hands out one every 5 ms.
 */
import { setTimeout } from 'node:timers/promises'
import { runCli } from '../../../src/cli/index.ts'
import { processIo } from '../../../src/cli/process-io.ts'
import { fakeEngine } from './fake-engine.ts'

const names = Array.from({ length: 4000 }, (_, at) => `svg/module/panel-${at}-a.svg`)
let handedOut = 0

const engine = fakeEngine({
  files: Object.fromEntries([...names, 'panels.json'].map((path) => [path, `new ${path}`])),
  async before() {
    handedOut += 1
    if (handedOut === 4) process.stdout.write('halfway\n')
    if (handedOut >= 4) await setTimeout(5)
  },
})

process.exitCode = await runCli(process.argv.slice(2), processIo(), engine)
