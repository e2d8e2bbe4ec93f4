interface Keys {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
}

const isCommand = ({ ctrlKey, metaKey, altKey }: Keys): boolean => (ctrlKey || metaKey) && !altKey

/** Ctrl+Z, or with the command key. */
export const asksUndo = (keys: Keys): boolean => isCommand(keys) && keys.key.toLowerCase() === 'z' && !keys.shiftKey

/** Ctrl+Y or Ctrl+Shift+Z, or with the command key. */
export function asksRedo(keys: Keys): boolean {
  const key = keys.key.toLowerCase()
  return isCommand(keys) && (key === 'y' || (key === 'z' && keys.shiftKey))
}
