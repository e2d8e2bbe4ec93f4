import { isScalar } from 'yaml'

/** A key of a YAML group as it was written: `01` and `1` are two names. */
export function printableKey(key: unknown): string {
  if (!isScalar(key)) return String(key)
  return key.source ?? String(key.value)
}
