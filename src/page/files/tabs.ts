const LOCK = 'storyrod tab '

/**
 * Says that this tab is open for as long as it is, and gives the others that are. None where the browser has no such locks:
 * then work of a tab that is still open is offered too, which copies it and harms nothing.
 */
export async function otherTabs(tab: string): Promise<ReadonlySet<string>> {
  try {
    const { held = [] } = await navigator.locks.query()
    // Held until the tab is closed.
    navigator.locks.request(LOCK + tab, () => new Promise(() => undefined)).catch(() => undefined)
    return new Set(held.flatMap(({ name }) => (name?.startsWith(LOCK) ? [name.slice(LOCK.length)] : [])))
  } catch {
    return new Set()
  }
}
