import type { ScreenPoint } from './camera.ts'

/** What pointers do on the sheet. Points in px from its upper left corner. */
export interface Gestures {
  readonly pan: (by: ScreenPoint) => void
  readonly zoom: (at: ScreenPoint, factor: number) => void
  /** A pointer moves over the sheet without being pressed. */
  readonly hover: (at: ScreenPoint, target: Element | null) => void
  /** Pressed and let go in one spot. */
  readonly press: (at: ScreenPoint, target: Element | null, finger: boolean) => void
  readonly leave: () => void
}

/** Moved by more than this, px, a press is a pull: fingers tremble more than mice. */
const PULL_MOUSE_PX = 4
const PULL_FINGER_PX = 10
/** A turn of the wheel by so many px zooms by a factor of e. */
const WHEEL_PX = 420
/** What a line and a page of the wheel are worth, px, where it counts in these. */
const LINE_PX = 16
const PAGE_PX = 400

interface Held {
  readonly start: ScreenPoint
  readonly at: ScreenPoint
  readonly pulled: boolean
}

/** Listens on the sheet; returns what ends that. One pointer pulls the drawing, two pinch it, the wheel zooms where it is. */
export function listenToGestures(sheet: Element, on: Gestures): () => void {
  const held = new Map<number, Held>()
  /** After a pinch, the finger that is left does not press. */
  let pinched = false

  const pointOf = ({ clientX, clientY }: MouseEvent): ScreenPoint => {
    const { left, top } = sheet.getBoundingClientRect()
    return [clientX - left, clientY - top]
  }
  const targetOf = ({ clientX, clientY }: MouseEvent): Element | null => document.elementFromPoint(clientX, clientY)

  const down = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button > 1) return
    const at = pointOf(event)
    held.set(event.pointerId, { start: at, at, pulled: false })
    if (held.size > 1) pinched = true
    // The wheel, pressed, would scroll the page.
    if (event.button === 1) event.preventDefault()
  }

  const move = (event: PointerEvent): void => {
    const at = pointOf(event)
    const own = held.get(event.pointerId)
    if (own === undefined) {
      on.hover(at, event.target instanceof Element ? event.target : null)
      return
    }
    const [other] = [...held].flatMap(([id, pointer]) => (id === event.pointerId ? [] : [pointer]))
    if (other !== undefined) {
      pinch(own.at, at, other.at)
    } else {
      const limit = event.pointerType === 'mouse' ? PULL_MOUSE_PX : PULL_FINGER_PX
      const pulled = own.pulled || Math.hypot(at[0] - own.start[0], at[1] - own.start[1]) > limit
      if (!pulled) return
      if (!own.pulled) sheet.setPointerCapture(event.pointerId)
      on.pan([at[0] - own.at[0], at[1] - own.at[1]])
      held.set(event.pointerId, { ...own, at, pulled })
      return
    }
    held.set(event.pointerId, { ...own, at, pulled: true })
  }

  const pinch = (from: ScreenPoint, to: ScreenPoint, still: ScreenPoint): void => {
    const before = Math.hypot(from[0] - still[0], from[1] - still[1])
    const after = Math.hypot(to[0] - still[0], to[1] - still[1])
    const middle: ScreenPoint = [(to[0] + still[0]) / 2, (to[1] + still[1]) / 2]
    on.pan([(to[0] - from[0]) / 2, (to[1] - from[1]) / 2])
    if (before > 0 && after > 0) on.zoom(middle, after / before)
  }

  const up = (event: PointerEvent): void => {
    const own = held.get(event.pointerId)
    held.delete(event.pointerId)
    if (own !== undefined && !own.pulled && !pinched && event.button === 0)
      on.press(pointOf(event), targetOf(event), event.pointerType !== 'mouse')
    if (held.size === 0) pinched = false
  }

  const cancel = (event: PointerEvent): void => {
    held.delete(event.pointerId)
    if (held.size === 0) pinched = false
  }

  const leave = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && held.size === 0) on.leave()
  }

  const wheel = (event: WheelEvent): void => {
    event.preventDefault()
    const unit = [1, LINE_PX, PAGE_PX][event.deltaMode] ?? 1
    on.zoom(pointOf(event), Math.exp((-event.deltaY * unit) / WHEEL_PX))
  }

  const ends = new AbortController()
  const { signal } = ends
  const listen = <K extends 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel' | 'pointerleave'>(
    name: K,
    hear: (event: PointerEvent) => void,
  ): void => sheet.addEventListener(name, (event) => hear(event as PointerEvent), { signal })
  listen('pointerdown', down)
  listen('pointermove', move)
  listen('pointerup', up)
  listen('pointercancel', cancel)
  listen('pointerleave', leave)
  sheet.addEventListener('wheel', (event) => wheel(event as WheelEvent), { signal, passive: false })
  return () => ends.abort()
}
