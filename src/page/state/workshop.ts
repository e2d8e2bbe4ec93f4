import { batch, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Units } from '../../length/index.ts'
import type { FilesOutline } from '../../outputs/index.ts'
import type { Problem } from '../../project/index.ts'
import type { FormModel } from '../form/model.ts'
import type { CheckerAnswer, CheckerAsk, DrawerAnswer, DrawerAsk, Outline, PageFinding } from '../protocol.ts'
import { SceneUnpacker } from '../scene/parcel.ts'
import type { HoleFacts, Look, Scene } from '../scene/types.ts'
import type { PageDocument } from './document.ts'

/** What the page asks of a worker, and how it hears of the answer. */
export interface Hand<Ask, Answer> {
  readonly ask: (ask: Ask) => void
  readonly listen: (hear: (answer: Answer) => void) => void
}

/** What is known of the definition by now. Each is what belongs to the last text that could be laid out. */
export interface Workshop {
  readonly outline: ReadonlySignal<Outline | undefined>
  readonly form: ReadonlySignal<FormModel | undefined>
  /** The number of the text as it stands: each change has a higher one. */
  readonly textNumber: ReadonlySignal<number>
  /** The number of the text that the form's model was made of. */
  readonly formNumber: ReadonlySignal<number>
  readonly scene: ReadonlySignal<Scene | undefined>
  /** What is wrong with the text as it stands; while there is any, the drawing is the last good one. */
  readonly problems: ReadonlySignal<readonly Problem[]>
  readonly findings: ReadonlySignal<readonly PageFinding[]>
  /** What to mind at the work itself. */
  readonly cautions: ReadonlySignal<readonly string[]>
  /** The checks have looked at all, be it at an earlier text. */
  readonly judged: ReadonlySignal<boolean>
  /** The findings are those of an earlier text. */
  readonly checking: ReadonlySignal<boolean>
  /** The files that drawing yields, of the last text that could be laid out. */
  readonly files: ReadonlySignal<FilesOutline | undefined>
  /** The files that the definition names. */
  readonly named: ReadonlySignal<readonly string[]>
  /** What is looked at. */
  readonly look: ReadonlySignal<Look | undefined>
  readonly lookAt: (look: Look) => void
  /** Everything about one hole of the last drawing. */
  readonly factsOf: (hole: string) => Promise<HoleFacts | undefined>
}

/** How long typing rests before the checks look, ms: they share the machine with the drawing. */
const CHECK_AFTER_MS = 250

/** Keeps drawing and findings at what the document says. */
export function workshop(
  document: PageDocument,
  drawer: Hand<DrawerAsk, DrawerAnswer>,
  checker: Hand<CheckerAsk, CheckerAnswer>,
  units: ReadonlySignal<Units | undefined>,
): Workshop {
  const outline = signal<Outline | undefined>(undefined)
  const form = signal<FormModel | undefined>(undefined)
  const textNumber = signal(0)
  const formNumber = signal(0)
  const scene = signal<Scene | undefined>(undefined)
  const problems = signal<readonly Problem[]>([])
  const findings = signal<readonly PageFinding[]>([])
  const cautions = signal<readonly string[]>([])
  const judged = signal(false)
  const checking = signal(true)
  const files = signal<FilesOutline | undefined>(undefined)
  const named = signal<readonly string[]>([])
  const look = signal<Look | undefined>(undefined)
  const waiting = new Map<number, (facts: HoleFacts | undefined) => void>()
  const unpacker = new SceneUnpacker()
  let number = 0
  let busy = false
  let next: DrawerAsk | undefined

  // The worker does one thing at a time: while it draws, only the last thing asked waits, and what lies between is never drawn.
  const send = (ask: DrawerAsk): void => {
    if (busy && ask.kind !== 'hole') {
      next = ask.kind === 'look' && next?.kind === 'text' ? { ...next, look: ask.look } : ask
      return
    }
    busy = ask.kind !== 'hole' || busy
    drawer.ask(ask)
  }
  drawer.listen((answer) => {
    if (answer.kind === 'hole') {
      waiting.get(answer.number)?.(answer.facts)
      waiting.delete(answer.number)
      return
    }
    busy = false
    const then = next
    next = undefined
    if (then !== undefined) send(then)
    // Every parcel follows the last one, so that none may be left out.
    const seen = answer.scene && unpacker.unpack(answer.scene)
    batch(() => {
      if (answer.ofText && !(answer.problems.length === 0 && problems.peek().length === 0))
        problems.value = answer.problems
      if (answer.outline !== undefined) outline.value = answer.outline
      if (answer.form !== undefined) {
        form.value = answer.form
        formNumber.value = answer.number
      }
      if (seen !== undefined) {
        scene.value = seen
        if (then === undefined) look.value = seen.look
      }
    })
    if (then === undefined) drawnAll()
  })

  let pause: ReturnType<typeof setTimeout> | undefined
  let rested: (() => void) | undefined
  let checkAsked = 0
  // The checks also wait for the drawing of that text: two programs that start at once keep each other from it.
  const rest = (check: () => void): void => {
    clearTimeout(pause)
    rested = undefined
    pause = setTimeout(() => {
      if (busy) rested = check
      else check()
    }, CHECK_AFTER_MS)
  }
  const drawnAll = (): void => {
    rested?.()
    rested = undefined
  }
  checker.listen((answer) => {
    if (answer.number !== checkAsked) return
    batch(() => {
      if (answer.findings !== undefined) findings.value = answer.findings
      if (answer.files !== undefined) files.value = answer.files
      if (answer.named !== undefined) named.value = answer.named
      if (answer.cautions !== undefined) cautions.value = answer.cautions
      judged.value ||= answer.findings !== undefined
      checking.value = false
    })
  })

  effect(() => {
    const source = document.source.value
    number += 1
    textNumber.value = number
    send({ kind: 'text', number, source, look: look.peek(), units: units.peek() })
    checking.value = true
    checkAsked = number
    const ask: CheckerAsk = { kind: 'check', number, source }
    rest(() => checker.ask(ask))
  })

  effect(() => {
    const wanted = units.value
    const shown = look.peek()
    if (shown === undefined) return
    number += 1
    send({ kind: 'look', number, look: shown, units: wanted })
  })

  return {
    outline,
    form,
    textNumber,
    formNumber,
    scene,
    problems,
    findings,
    cautions,
    judged,
    checking,
    files,
    named,
    look,
    lookAt: (wanted) => {
      look.value = wanted
      number += 1
      send({ kind: 'look', number, look: wanted, units: units.peek() })
    },
    factsOf: (hole) =>
      new Promise((resolve) => {
        number += 1
        waiting.set(number, resolve)
        send({ kind: 'hole', number, hole })
      }),
  }
}
