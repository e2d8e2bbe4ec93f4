#!/usr/bin/env node
import { storyrod } from './default-engine.ts'
import { processIo } from './process-io.ts'
import { runCli } from './run.ts'

process.exitCode = await runCli(process.argv.slice(2), processIo(), storyrod)
