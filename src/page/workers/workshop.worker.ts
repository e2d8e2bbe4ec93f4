import { type CheckerAnswer, type CheckerAsk, type DrawerAnswer, type DrawerAsk, SAMPLE_AT_ONCE } from '../protocol.ts'
import { firstAsk } from '../sample.ts'
import { checker } from './checker.ts'
import { drawer } from './drawer.ts'

// The page starts this twice: one draws, so that nothing keeps it from the next key press, and one checks.
const draw = drawer()
const check = checker()

addEventListener('message', ({ data }: MessageEvent<DrawerAsk | CheckerAsk>) => {
  const answer: DrawerAnswer | CheckerAnswer = data.kind === 'check' ? check(data) : draw(data)
  postMessage(answer)
})

// What the page asks first is known. To wait until it does would take as long as the drawing itself.
if (self.name === SAMPLE_AT_ONCE) postMessage(draw(firstAsk()))
