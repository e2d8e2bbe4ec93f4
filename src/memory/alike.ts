/**
 * The older of two pieces of plain data where they are alike in every key and value, else the newer: what has not changed
 * stays the same thing, and is known again by it. Anything but lists and groups of keys is alike only when it is the same.
 */
export function olderIfAlike<T>(older: T | undefined, newer: T): T {
  return older !== undefined && alike(older, newer) ? older : newer
}

/** True when two pieces of plain data have the same keys in the same order, and the same values. */
export function alike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((item, k) => alike(item, b[k]))
  }
  if (!isGroup(a) || !isGroup(b)) return false
  const keys = Object.keys(a)
  const others = Object.keys(b)
  return keys.length === others.length && keys.every((key, k) => key === others[k] && alike(a[key], b[key]))
}

function isGroup(value: object): value is Readonly<Record<string, unknown>> {
  const prototype = Object.getPrototypeOf(value)
  return prototype === Object.prototype || prototype === null
}
