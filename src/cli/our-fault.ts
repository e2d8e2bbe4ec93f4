/** What is said of an error that is our own bug: one sentence and a request, the stack only when STORYROD_DEBUG is set. */
export function describeFault(error: unknown, env: Readonly<Record<string, string | undefined>>): string {
  const message = error instanceof Error ? error.message : String(error)
  const firstLine = message.split(/[\r\n]/, 1)[0] ?? ''
  const words = `storyrod: a fault in Storyrod itself, not in your work: ${firstLine}
  Please report it, with the definition that was read. STORYROD_DEBUG=1 shows where it happened.
`
  if (env.STORYROD_DEBUG === undefined || env.STORYROD_DEBUG === '') return words
  return `${words}${error instanceof Error ? error.stack : ''}\n`
}
