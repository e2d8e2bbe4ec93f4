import type { CheckerAnswer, CheckerAsk, DrawerAnswer, DrawerAsk } from '../protocol.ts'
import { checker } from './checker.ts'
import { drawer } from './drawer.ts'

// The page starts this twice: one draws, so that nothing keeps it from the next key press, and one checks.
const draw = drawer()
const check = checker()

addEventListener('message', ({ data }: MessageEvent<DrawerAsk | CheckerAsk>) => {
  const answer: DrawerAnswer | CheckerAnswer = data.kind === 'check' ? check(data) : draw(data)
  postMessage(answer)
})
