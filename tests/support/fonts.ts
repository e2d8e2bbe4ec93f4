import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Fonts } from '../../src/outputs/index.ts'

const require = createRequire(import.meta.url)
const font = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)))

/** The fonts that the command embeds. */
export const FONTS: Fonts = { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') }
