import type { DefinitionPath } from '../../project/index.ts'

/** A group or list that is open at some place of a text. */
export interface Frame {
  readonly kind: 'group' | 'list'
  /** In brackets. */
  readonly flow: boolean
  /** Column of its keys or dashes; of one in brackets that of the line that it is opened on. */
  readonly column: number
  /** The key that was read last; nothing before the first. */
  key: string | undefined
  /** In brackets: the colon behind the key has been read. */
  valued: boolean
  /** The item that was read last, from 0. */
  index: number
  /** All keys that were read, with where they begin. */
  readonly keys: { readonly name: string; readonly from: number }[]
}

/** The groups and lists that are open, the outermost first. */
export class Frames {
  readonly open: Frame[] = []

  get top(): Frame | undefined {
    return this.open.at(-1)
  }

  push(kind: Frame['kind'], flow: boolean, column: number): Frame {
    const frame: Frame = { kind, flow, column, key: undefined, valued: false, index: flow ? 0 : -1, keys: [] }
    this.open.push(frame)
    return frame
  }

  /** Ends all in block style that what stands in a column is not in; a list ends in its own column, but by a dash. */
  endedBy(column: number, dash: boolean): void {
    while (this.top !== undefined && ends(this.top, column, dash)) this.open.pop()
  }

  /** Of what stands within all that is open; `until` leaves the innermost out. */
  path(until = this.open.length): DefinitionPath {
    return this.open
      .slice(0, until)
      .flatMap(
        ({ kind, key, index }): DefinitionPath =>
          kind === 'list' ? [Math.max(index, 0)] : key === undefined ? [] : [key],
      )
  }
}

const ends = ({ kind, column }: Frame, at: number, dash: boolean): boolean =>
  column > at || (column === at && kind === 'list' && !dash)
