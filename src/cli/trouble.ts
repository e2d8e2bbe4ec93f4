import type { StopSignal } from './exit-codes.ts'
import { EXIT } from './exit-codes.ts'

/** Something that ends a command and is not our fault: words for the person, an exit code for the shell. */
export class Trouble extends Error {
  readonly exitCode: number

  constructor(exitCode: number, words: string, cause?: unknown) {
    super(words, { cause })
    this.name = 'Trouble'
    this.exitCode = exitCode
  }
}

/** Thrown where work is given up because a signal asked for it. */
export class Stopped extends Error {
  readonly signal: StopSignal

  constructor(signal: StopSignal) {
    super(`stopped by ${signal}`)
    this.name = 'Stopped'
    this.signal = signal
  }
}

interface Reason {
  readonly why: string
  readonly remedy: string
}

/** The errors of the operating system in workshop words; names as in POSIX.1-2017, <errno.h>. */
const REASONS: Readonly<Record<string, Reason>> = {
  ENOSPC: { why: 'the disk is full', remedy: 'Free some space' },
  EDQUOT: { why: 'your share of the disk is used up', remedy: 'Free some space' },
  EFBIG: { why: 'the file is too large for this disk', remedy: 'Free some space' },
  EACCES: { why: 'you have no permission', remedy: 'Change the permissions' },
  EPERM: { why: 'the system does not permit it', remedy: 'Change the permissions' },
  EROFS: { why: 'the disk can only be read', remedy: 'Make it writable' },
  ENOTDIR: { why: 'a part of the path is a file, not a folder', remedy: 'Correct the path' },
  EEXIST: { why: 'a file of that name is in the way', remedy: 'Move it away' },
  EISDIR: { why: 'it is a folder, not a file', remedy: 'Correct the path' },
  ENOENT: { why: 'it is not there, or its folder is not', remedy: 'Make the folder first' },
  ENAMETOOLONG: { why: 'the name is too long for this disk', remedy: 'Choose a shorter one' },
  ELOOP: { why: 'its links lead round in a circle', remedy: 'Correct the links' },
  EMFILE: { why: 'too many files are open', remedy: 'Close other programs and run again' },
  ENFILE: { why: 'too many files are open', remedy: 'Close other programs and run again' },
  EBUSY: { why: 'another program holds it', remedy: 'Close that program and run again' },
  ETXTBSY: { why: 'another program holds it', remedy: 'Close that program and run again' },
  EIO: { why: 'the disk reports an error', remedy: 'Look after the disk' },
}

/** What may be done in place of setting right the disk, where drawings are written. */
export const OTHER_FOLDER = 'choose another folder with --out'

/** The code of an error of the operating system (`ENOSPC`), or undefined for any other thing thrown. */
export function diskErrorCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || !('syscall' in error)) return undefined
  return typeof error.code === 'string' ? error.code : undefined
}

export interface Telling {
  /** Completes "could not …". */
  readonly what: string
  /** How things stand now. */
  readonly after?: string
  /** Completes "…, or …" after the remedy. */
  readonly otherwise?: string
}

/**
 * An error of the operating system as Trouble with exit code 3. Anything else thrown is our bug, or Trouble already,
 * and comes back as it is.
 */
export function diskTrouble(error: unknown, { what, after, otherwise }: Telling): unknown {
  const code = diskErrorCode(error)
  if (code === undefined) return error
  const known = REASONS[code]
  const why = known === undefined ? `the system says ${code}` : `${known.why} (${code})`
  const remedy = [known?.remedy, otherwise].filter((part) => part !== undefined).join(', or ')
  const lines = [`could not ${what}: ${why}.`, after, remedy === '' ? undefined : `${capital(remedy)}.`]
  return new Trouble(EXIT.diskTrouble, lines.filter((line) => line !== undefined).join('\n  '), error)
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}

/** Does `work`, and turns an error of the operating system into Trouble by `diskTrouble`. */
export async function orTrouble<T>(what: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw diskTrouble(error, { what })
  }
}
