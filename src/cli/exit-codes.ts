/** What the program tells the shell. A code never changes its meaning. */
export const EXIT = {
  done: 0,
  /** Nothing drawn, because a finding of severity stop stands. */
  stopStands: 1,
  /** A bad definition, or a command line that cannot be followed. */
  badInput: 2,
  /** The disk refused: full, not permitted, a file where a folder must be, another run at work. */
  diskTrouble: 3,
  /** A fault in Storyrod itself (EX_SOFTWARE of the BSD sysexits.h list). */
  ourFault: 70,
} as const

/** The signals that ask the program to stop, with the exit code that shells use for each: 128 + its number. */
export const STOP_SIGNALS = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const

export type StopSignal = keyof typeof STOP_SIGNALS
