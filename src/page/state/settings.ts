import { effect, type Signal, signal } from '@preact/signals'
import type { Units } from '../../length/index.ts'

export type Theme = 'as the system' | 'light' | 'dark'

/** What a person chose for this page, kept in the browser where it lets us. */
export interface Settings {
  /** In which lengths are shown; nothing: as the definition says. */
  readonly units: Signal<Units | undefined>
  readonly theme: Signal<Theme>
  /** The three steps for those who have never been here. */
  readonly firstLook: Signal<'shown' | 'put away'>
  /** Whether Define is folded, so that the drawing has its room. */
  readonly define: Signal<'open' | 'folded'>
}

/** Under which they are kept. */
export const SETTINGS_KEY = 'storyrod settings'

/** Settings as they were last left. A browser that keeps nothing gives the usual ones. */
export function keptSettings(storage: Pick<Storage, 'getItem' | 'setItem'> | undefined): Settings {
  const kept = read(storage)
  const units = signal<Units | undefined>(kept.units === 'mm' || kept.units === 'in' ? kept.units : undefined)
  const theme = signal<Theme>(kept.theme === 'light' || kept.theme === 'dark' ? kept.theme : 'as the system')
  const firstLook = signal<'shown' | 'put away'>(kept.firstLook === 'put away' ? 'put away' : 'shown')
  const define = signal<'open' | 'folded'>(kept.define === 'folded' ? 'folded' : 'open')
  effect(() => {
    const text = JSON.stringify({
      units: units.value,
      theme: theme.value,
      firstLook: firstLook.value,
      define: define.value,
    })
    try {
      storage?.setItem(SETTINGS_KEY, text)
    } catch {
      // Full or forbidden: the choice then lasts as long as the page is open.
    }
  })
  return { units, theme, firstLook, define }
}

function read(storage: Pick<Storage, 'getItem'> | undefined): Readonly<Partial<Record<keyof Settings, unknown>>> {
  try {
    const kept: unknown = JSON.parse(storage?.getItem(SETTINGS_KEY) ?? '{}')
    return typeof kept === 'object' && kept !== null ? kept : {}
  } catch {
    return {}
  }
}
