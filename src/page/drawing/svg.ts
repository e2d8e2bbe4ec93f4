const SPACE = 'http://www.w3.org/2000/svg'

/** A new element of a drawing with these attributes. */
export function svgElement<K extends keyof SVGElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string | number>> = {},
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SPACE, name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value))
  return element
}

/**
 * A row of elements that is used again from one drawing to the next: only attributes that differ are written, since
 * writing a path costs more than anything else that a drawing does.
 */
export class Row<K extends keyof SVGElementTagNameMap> {
  readonly #parent: Element
  readonly #name: K
  readonly #elements: SVGElementTagNameMap[K][] = []
  readonly #written: Map<string, string>[] = []
  #used = 0

  constructor(parent: Element, name: K) {
    this.#parent = parent
    this.#name = name
  }

  /** Elements in use, in order. */
  get elements(): readonly SVGElementTagNameMap[K][] {
    return this.#elements.slice(0, this.#used)
  }

  begin(): void {
    this.#used = 0
  }

  /** The next element, with exactly these attributes. */
  next(attributes: Readonly<Record<string, string>>): SVGElementTagNameMap[K] {
    const index = this.#used
    this.#used += 1
    let element = this.#elements[index]
    let written = this.#written[index]
    if (element === undefined || written === undefined) {
      element = svgElement(this.#name)
      written = new Map()
      this.#elements[index] = element
      this.#written[index] = written
    }
    if (element.parentNode === null) this.#parent.append(element)
    for (const key of written.keys()) {
      if (key in attributes) continue
      element.removeAttribute(key)
      written.delete(key)
    }
    for (const key in attributes) {
      const value = attributes[key] ?? ''
      if (written.get(key) === value) continue
      element.setAttribute(key, value)
      written.set(key, value)
    }
    return element
  }

  /** Takes away what is left over from the last time. */
  end(): void {
    for (let index = this.#elements.length - 1; index >= this.#used; index -= 1) {
      this.#elements[index]?.remove()
    }
    this.#elements.length = this.#used
    this.#written.length = this.#used
  }
}
