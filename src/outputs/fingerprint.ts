/**
 * Sixteen hexadecimal digits that tell one text from another: two 32-bit FNV-1a hashes (offset and prime from
 * memory; the second starts elsewhere) over UTF-16 units. Keeps the identity of PDF files distinct and
 * the same from run to run; it is no security.
 */
export function fingerprint(text: string): string {
  const prime = 0x01000193
  let a = 0x811c9dc5
  let b = prime
  for (let k = 0; k < text.length; k += 1) {
    const unit = text.charCodeAt(k)
    a = Math.imul(a ^ unit, prime)
    b = Math.imul(b ^ unit, prime)
  }
  const digits = (hash: number): string => (hash >>> 0).toString(16).padStart(8, '0')
  return digits(a) + digits(b)
}
