import { builderOf, type Figures, findItem, type Item } from '../../hardware/index.ts'
import { type Context, quoted, type Said } from '../context.ts'
import { isGroup, type Loose } from '../layers.ts'
import type { RawOwnHardware } from '../schema/definition.ts'
import { JOINT_WORDS } from '../schema/kinds.ts'
import type { DefinitionPath } from '../types.ts'
import { readFigures } from './figures.ts'
import { reportUnknown } from './hardware.ts'
import { type Holes, readHoles } from './holes.ts'

type Raw = Loose<RawOwnHardware>

/** Own items in one definition, at most; each may be like the next. */
const MOST_ITEMS = 1000

/** Words that stand for hardware in a definition, so that no item can be called by them. */
const TAKEN: readonly string[] = ['auto', 'none', 'bolted', ...JOINT_WORDS]

/** Keys of an own item that are no figures. */
const NO_FIGURES: readonly string[] = ['like', 'title', 'source', 'holes']

/** An own item, with the parts whose holes were replaced: items like it keep them. */
interface Own {
  readonly item: Item
  readonly holes: Holes
}

/** Makes the project's own hardware known by its names; what cannot be is reported, and its name known all the same. */
export function resolveOwnHardware(context: Context, entries: readonly (readonly [name: string, raw?: Raw])[]): void {
  if (entries.length > MOST_ITEMS) {
    const what = `${entries.length} pieces of hardware are more than are read`
    context.report(['hardware'], what, { expected: `at most ${MOST_ITEMS}`, on: 'key' })
    for (const [name] of entries) context.hardware.add(name, undefined)
    return
  }
  const reader = new OwnHardware(context, new Map(entries.map(([name, raw]) => [name, raw] as const)))
  for (const [name] of entries) context.hardware.add(name, reader.own(name)?.item)
}

/** Reads own items, each after the one that it is like. */
class OwnHardware {
  private readonly done = new Map<string, Own | undefined>()
  /** Items being read, each like the next. */
  private readonly open: string[] = []

  constructor(
    private readonly context: Context,
    private readonly raws: ReadonlyMap<string, Raw | undefined>,
  ) {}

  own(name: string): Own | undefined {
    if (this.done.has(name)) return this.done.get(name)
    this.open.push(name)
    const own = this.read(name, this.raws.get(name))
    this.open.pop()
    this.done.set(name, own)
    return own
  }

  private read(name: string, raw: Raw | undefined): Own | undefined {
    const { context } = this
    const path: DefinitionPath = ['hardware', name]
    if (TAKEN.includes(name)) {
      const what = `${quoted(name)} is a word of its own in a definition`
      context.report(path, what, { expected: 'another name', on: 'key' })
      return undefined
    }
    const base = raw && this.base(name, raw, path)
    return raw && base && this.changed(name, raw, path, base)
  }

  /** What an item is like; one of the catalogue's own name is like that, unless it says otherwise. */
  private base(name: string, raw: Raw, path: DefinitionPath): Own | undefined {
    const { context } = this
    const same = findItem(name)
    const like = raw.like ?? (context.troubled([...path, 'like']) ? undefined : same?.id)
    if (like === undefined) {
      context.reportMissing(path, 'like', 'the name of a piece of hardware that it is like')
      return undefined
    }
    const found = this.like(name, { value: like, path: [...path, 'like'] })
    if (found === undefined || same === undefined || found.item.kind === same.kind) return found
    const what = `${quoted(name)} is a ${same.kind} in the catalogue, and ${quoted(like)} is a ${found.item.kind}`
    context.report([...path, 'like'], what, { expected: `another name, or the name of a ${same.kind}` })
    return undefined
  }

  private like(name: string, said: Said<string>): Own | undefined {
    const like = said.value
    const item = findItem(like)
    if (like === name && item !== undefined) return { item, holes: {} }
    const from = this.open.indexOf(like)
    if (from >= 0) {
      const by = this.open.slice(from + 1).map(quoted)
      const what =
        by.length === 0 ? `${quoted(like)} is like itself` : `${quoted(like)} is like itself, by way of ${some(by)}`
      this.context.report(said.path, what, { expected: 'the name of a piece of hardware of the catalogue at the end' })
      return undefined
    }
    if (this.raws.has(like)) return this.own(like)
    if (item !== undefined) return { item, holes: {} }
    reportUnknown(this.context, said, [
      ...[...this.raws.keys()].filter((one) => one !== name),
      ...this.context.hardware.names(),
    ])
    return undefined
  }

  private changed(name: string, raw: Raw, path: DefinitionPath, base: Own): Own | undefined {
    const { context } = this
    const { builder, figures: old } = builderOf(base.item)
    const said = Object.entries(raw).filter(([key, value]) => !NO_FIGURES.includes(key) && value !== undefined)
    const figures: Figures | undefined = readFigures(context, path, said, builder, old)
    const holes = isGroup(raw.holes) ? readHoles(context, [...path, 'holes'], raw.holes, base.item) : {}
    if (figures === undefined || holes === undefined) return undefined
    const source = raw.source ?? `the project; what it does not say, as ${base.item.id}: ${base.item.source}`
    const built = builder.build({ id: name, title: raw.title ?? name, source }, figures)
    const replaced = { ...base.holes, ...holes }
    return { item: { ...built, parts: { ...built.parts, ...replaced } } as Item, holes: replaced }
  }
}

/** The first few of a chain. */
const some = (names: readonly string[]): string =>
  names.length <= 4 ? names.join(', ') : `${names.slice(0, 4).join(', ')} and ${names.length - 4} more`
