import type { PanelId } from '../../assembly/index.ts'
import type { SceneHole, ScenePart } from '../scene/types.ts'
import { panned, type ScreenPoint, toScene, toScreen, zoomed } from './camera.ts'
import { lookAtSubject, waysToSee } from './looks.ts'
import { nearest } from './near.ts'
import type { PickedOpening, SheetState } from './sheet-state.ts'
import { type MeasurePoint, snapAt } from './snap.ts'

/** Within a finger of a hole one means the hole, px. */
const FINGER_PX = 22
/** Where whole panels are to be pressed, holes are taken only close by, and only where they can be told apart, px and px a mm. */
const CLOSE_PX = 9
const TOLD_APART = 0.3

/** What is nearer to the rim of the sheet is brought in, px. */
const RIM_PX = 14

/** What a person does on the sheet, by pointer or keys. */
export interface Actions {
  readonly holeAt: (at: ScreenPoint) => SceneHole | undefined
  readonly snapNear: (at: ScreenPoint) => MeasurePoint | undefined
  readonly pan: (by: ScreenPoint) => void
  readonly zoom: (at: ScreenPoint, factor: number) => void
  readonly zoomMiddle: (factor: number) => void
  /** Moves the drawing so far that the point can be seen. */
  readonly bringIn: (at: readonly [number, number]) => void
  readonly choose: (hole: SceneHole) => void
  /** Chooses a hole that was pressed; where modules are seen, its panel or module is picked with it. */
  readonly pressHole: (hole: SceneHole) => void
  readonly pressPart: (part: ScenePart | undefined) => void
  readonly goToPicked: () => void
  readonly setPoint: (point: MeasurePoint) => void
  readonly toggleMeasuring: () => void
  /** Lets go of the last thing that was taken hold of; false where there is none. */
  readonly letGo: () => boolean
}

export function actionsOf(state: SheetState): Actions {
  const { page, camera, size, picked, measuring, pinned, ringed } = state
  const { workshop } = page
  const showsWood = (): boolean => ['face', 'pair'].includes(workshop.scene.peek()?.look.kind ?? 'face')

  const zoom = (at: ScreenPoint, factor: number): void => {
    const scene = workshop.scene.peek()
    if (scene !== undefined) state.move(zoomed(camera.peek(), at, factor, scene.bounds, size.peek()))
  }
  const pan = (by: ScreenPoint): void => {
    const scene = workshop.scene.peek()
    if (scene !== undefined) state.move(panned(camera.peek(), by, scene.bounds, size.peek()))
  }

  const goToPicked = (): void => {
    const pick = picked.peek()
    if (pick?.opening !== undefined) {
      showOpening(pick.opening)
      page.area.value = 'Define'
      return
    }
    const outline = workshop.outline.peek()
    if (pick === undefined || outline === undefined) return
    const module = outline.modules.find(
      ({ key, panels }) => key === pick.module || panels.some(({ id }) => id === pick.panel),
    )
    if (module === undefined) return
    const panel = module.panels.find(({ id }) => id === pick.panel)
    const subject = { module, ...(panel && { panel }) }
    const [first = 'Isometric'] = waysToSee(subject)
    picked.value = undefined
    state.look(lookAtSubject(subject, first, workshop.look.peek()))
  }

  const nameOf = (part: { readonly panel?: PanelId; readonly module?: string; readonly title?: string }): string => {
    for (const module of workshop.outline.peek()?.modules ?? []) {
      const panel = module.panels.find(({ id }) => id === part.panel)
      if (panel !== undefined) return `${module.name}: ${panel.name}`
      if (module.key === part.module) return module.name
    }
    return part.title ?? ''
  }

  const showOpening = ({ path }: PickedOpening): void => {
    page.goTo.value = { path }
  }
  const pickOpening = ({ key, at, title = '' }: ScenePart): void => {
    const look = workshop.scene.peek()?.look
    if (at === undefined || look?.kind !== 'front') return
    const opening = { key, path: at }
    state.pick({ opening, module: look.module, name: title })
    showOpening(opening)
  }

  const choose = (hole: SceneHole): void => {
    state.pick(undefined)
    state.pointAt(hole)
    pinned.value = true
  }

  return {
    holeAt: (at) => {
      const { scale } = camera.peek()
      if (!showsWood() && scale < TOLD_APART) return undefined
      return nearest(state.holes.peek(), toScene(camera.peek(), at), (showsWood() ? FINGER_PX : CLOSE_PX) / scale)
    },
    snapNear: (at) => {
      const scene = workshop.scene.peek()
      const now = camera.peek()
      return scene && snapAt(scene, state.holes.peek(), toScene(now, at), FINGER_PX / now.scale)
    },
    pan,
    zoom,
    zoomMiddle: (factor) => zoom([size.peek().width / 2, size.peek().height / 2], factor),
    bringIn: (at) => {
      const [x, y] = toScreen(camera.peek(), at)
      const { width, height } = size.peek()
      const shift = (value: number, room: number): number =>
        value < RIM_PX ? RIM_PX - value : value > room - RIM_PX ? room - RIM_PX - value : 0
      const by: ScreenPoint = [shift(x, width), shift(y, height)]
      if (by[0] !== 0 || by[1] !== 0) pan(by)
    },
    choose,
    pressHole: (hole) => {
      choose(hole)
      if (showsWood()) return
      const isFloor = workshop.scene.peek()?.look.kind === 'floor'
      const module = workshop.outline.peek()?.modules.find(({ panels }) => panels.some(({ id }) => id === hole.panel))
      const part = isFloor && module !== undefined ? { module: module.key } : { panel: hole.panel }
      state.pick({ ...part, name: nameOf(part) })
    },
    pressPart: (part) => {
      if (part?.kind === 'opening') {
        pickOpening(part)
        return
      }
      if (part === undefined || showsWood() || (part.panel === undefined && part.module === undefined)) {
        state.pick(undefined)
        return
      }
      const now = picked.peek()
      const isSame =
        now !== undefined && now.panel === part.panel && (part.panel !== undefined || now.module === part.module)
      if (isSame) goToPicked()
      else
        state.pick({
          ...(part.panel !== undefined && { panel: part.panel }),
          ...(part.module !== undefined && { module: part.module }),
          name: nameOf(part),
        })
    },
    goToPicked,
    setPoint: (point) => {
      const now = measuring.peek()
      if (now === undefined) return
      measuring.value = now.from === undefined || now.to !== undefined ? { from: point } : { from: now.from, to: point }
    },
    toggleMeasuring: () => {
      measuring.value = measuring.peek() === undefined ? {} : undefined
      state.pointAt(undefined)
      state.pick(undefined)
    },
    letGo: () => {
      const now = measuring.peek()
      if (page.hole.peek() !== undefined) state.pointAt(undefined)
      else if (now?.from !== undefined) measuring.value = {}
      else if (now !== undefined) measuring.value = undefined
      else if (picked.peek() !== undefined) state.pick(undefined)
      else if (ringed.peek() !== undefined) ringed.value = undefined
      else return false
      return true
    },
  }
}
