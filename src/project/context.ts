import { formatLength, parseLength, type Units } from '../length/index.ts'
import { Kept } from '../memory/index.ts'
import { nearestName } from './nearest.ts'
import type { Span } from './places.ts'
import { cutText, type Problem, pathInWords, printable } from './problem.ts'
import { ProjectHardware } from './project-hardware.ts'
import { AS_LARGE_AS_FITS, KINDS, type Kind, type KindKey } from './schema/kinds.ts'
import type { Source } from './source.ts'
import type { Contour } from './svg/contour.ts'
import { pathKey } from './to-data.ts'
import type { DefinitionPath, Stock } from './types.ts'

/** Problems that are collected; nobody reads more, and a file of nonsense has a million. */
const MOST_PROBLEMS = 1000
/** Problems for which the nearest name is looked up. */
const MOST_LOOKUPS = 200

/** What is expected of a length that may also be a word: what was wrong with it as a length stays the first to be said. */
function lengthWords({ expected, words = [] }: Kind, parsed: string): string {
  if (expected.includes(parsed)) return expected
  return words.length > 0 ? `${parsed}; or: ${words.join(', ')}` : parsed
}

export interface Report {
  readonly expected: string
  readonly nearest?: string | undefined
  /** Show the key and not the value. */
  readonly on?: 'key' | 'value'
  /** The key that it is about, where that is missing; else the path itself. */
  readonly about?: DefinitionPath
}

/** A value with the place that says it. */
export interface Said<T> {
  readonly value: T
  readonly path: DefinitionPath
}

/** A default in mm, for metric work and for inch work. */
export interface Default {
  readonly mm: number
  readonly in: number
}

/** What a definition says of its units. */
export interface SaidUnits {
  readonly units?: Units | undefined
  readonly 'usual sizes'?: Units | undefined
}

/** What all parts of the resolving share: the units, the stock and the hardware by name, and the problems found so far. */
export class Context {
  stocks: Map<string, Stock | undefined> = new Map()
  /** False when the stock group itself is missing or no group: then no name is reported as unknown. */
  stocksKnown = true
  /** Whose usual sizes and hardware hold where nothing is said. */
  usual: Units = 'mm'
  /** Places of sizes that are to be as large as fits. */
  readonly fits: DefinitionPath[] = []
  hardware = new ProjectHardware()
  private readonly found: { problem: Problem; offset: number }[] = []
  private readonly known = new Set<string>()
  private readonly troubledPaths = new Set<string>()
  private readonly misspeltPaths = new Set<string>()

  constructor(
    readonly source: Source,
    /** The unit of bare numbers, and of lengths in messages. */
    public units: Units = 'mm',
    /** Texts of the files that the definition names, by name. */
    readonly files: ReadonlyMap<string, string> = new Map(),
    /** What sizes that are as large as fits are taken for, mm; nothing while it is not known. */
    readonly fitted: number | undefined = undefined,
    /** Contours of drawings, by the place that names them. */
    readonly contours: Kept<Contour> = new Kept(),
  ) {}

  /** Takes what a definition says of its units. */
  inUnits({ units = 'mm', 'usual sizes': usual = units }: SaidUnits): void {
    this.units = units
    this.usual = usual
  }

  /** Problems sorted by position, none twice, at most MOST_PROBLEMS. */
  problems(): Problem[] {
    return this.found.sort((a, b) => a.offset - b.offset).map(({ problem }) => problem)
  }

  /** True when a problem was reported at exactly this path. */
  troubled(path: DefinitionPath): boolean {
    return this.troubledPaths.size > 0 && this.troubledPaths.has(pathKey(path))
  }

  /** The known name that was probably meant. Looked up for the first problems only: it takes time. */
  nearest(written: string, known: readonly string[]): string | undefined {
    return this.found.length < MOST_LOOKUPS ? nearestName(written, known) : undefined
  }

  /** Notes that a key of this path was probably meant, though another was written. */
  misspelt(path: DefinitionPath): void {
    this.misspeltPaths.add(pathKey(path))
  }

  /** Reports that a group lacks a key, unless it was tried: its place has a problem, or it was misspelt. */
  reportMissing(group: DefinitionPath, key: string, expected: string): void {
    const path = [...group, key]
    if (this.troubled(path) || this.isMisspelt(path)) return
    this.report(group, `the key "${key}" is missing`, { expected, on: 'key', about: path })
  }

  /** True when a key was probably meant, though another was written. */
  isMisspelt(path: DefinitionPath): boolean {
    return this.misspeltPaths.size > 0 && this.misspeltPaths.has(pathKey(path))
  }

  /** Reports a problem at a path; `what` is said behind the path in words. */
  report(path: DefinitionPath, what: string, { on = 'value', ...words }: Report): void {
    this.reportAt(this.source.span(path, on), path, what, words)
  }

  /** The same, at other offsets than the path's own. */
  reportAt(span: Span, path: DefinitionPath, what: string, { expected, nearest, about }: Report): void {
    this.troubledPaths.add(pathKey(path))
    const where = pathInWords(path)
    const message = where === '' ? what : `${where}: ${what}`
    const key = `${span[0]} ${message}`
    if (this.known.has(key) || this.found.length >= MOST_PROBLEMS) return
    this.known.add(key)
    const words = nearest === undefined ? { message, expected } : { message, expected, nearest }
    this.found.push({ problem: { ...this.source.problem(span, words), path: about ?? path }, offset: span[0] })
  }

  /** The value as a message shows it: as written, in quotes. */
  written(path: DefinitionPath, value?: unknown): string {
    const written = this.source.place(path)?.written
    if (Array.isArray(value)) return 'a list'
    if (typeof value === 'object' && value !== null) return 'a group of keys'
    if (written === undefined) return typeof value === 'string' ? quoted(value) : cutText(String(value), 40)
    return typeof value === 'string' ? quoted(value) : cutText(printable(written), 40)
  }

  /** Reports that the value at a path is not of its kind. */
  reportKind(path: DefinitionPath, value: unknown, key: KindKey, expected?: string): void {
    const kind: { noun: string; expected: string; words?: readonly string[] } = KINDS[key]
    const nearest = typeof value === 'string' ? this.nearest(value, kind.words ?? []) : undefined
    this.report(path, `${this.written(path, value)} is not ${kind.noun}`, {
      expected: expected ?? kind.expected,
      nearest,
    })
  }

  /** A length in mm, or `undefined` when it is not said or when it is none, which is reported. */
  length(said: Said<number | string> | undefined, limits: LengthLimits = {}): number | undefined {
    if (said === undefined) return undefined
    const kind = limits.kind ?? 'length'
    const parsed = parseLength(said.value, this.units, { negative: limits.negative === true })
    if (!parsed.ok) {
      this.reportKind(said.path, said.value, kind, lengthWords(KINDS[kind], parsed.expected))
      return undefined
    }
    if (limits.aboveZero && parsed.mm <= 0) {
      this.report(said.path, `${this.written(said.path, said.value)} is no size`, { expected: 'a length above 0' })
      return undefined
    }
    if (Math.abs(parsed.mm) > LONGEST.mm) {
      this.report(said.path, `${this.written(said.path, said.value)} is too large`, { expected: LONGEST.words })
      return undefined
    }
    return parsed.mm
  }

  /** The same for a size that may be as large as fits: then the size that is tried, or one to go on with. */
  size(said: Said<number | string> | undefined, limits: LengthLimits = {}): number | undefined {
    if (said?.value !== AS_LARGE_AS_FITS) return this.length(said, { ...limits, aboveZero: true })
    this.fits.push(said.path)
    return this.fitted ?? PROVISIONAL_MM
  }

  /** A length in mm, or the default where none is said. */
  lengthOr(said: Said<number | string> | undefined, fallback: Default | number, limits?: LengthLimits): number {
    return this.length(said, limits) ?? this.default(fallback)
  }

  /** A length in the project's units, for a message. */
  show(mm: number): string {
    return formatLength(mm, this.units)
  }

  default(fallback: Default | number): number {
    return typeof fallback === 'number' ? fallback : fallback[this.usual]
  }
}

/** Stands in for a size that is not known yet; nothing is judged by it. */
const PROVISIONAL_MM = 600

/** Beyond it a unit was mistaken: no sheet is that long. */
const LONGEST = { mm: 10_000, words: 'at most 10 m (393 3/4 in)' }

export interface LengthLimits {
  readonly aboveZero?: boolean
  /** A length below 0 is allowed. */
  readonly negative?: boolean
  readonly kind?: KindKey
}

/** A value in quotes for a message, on one line and not too long. */
export const quoted = (value: string): string => `"${cutText(printable(value), 40)}"`
