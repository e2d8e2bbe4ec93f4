import { digest } from './digest.ts'

// Started by repeatable.test.ts in other surroundings.
process.stdout.write(await digest())
