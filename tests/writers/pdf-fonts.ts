import { readFileSync } from 'node:fs'
import type { PdfFonts } from '../../src/writers/pdf.ts'

const fontAt = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)))

export const FONTS: PdfFonts = { regular: fontAt('DejaVuSans'), bold: fontAt('DejaVuSans-Bold') }
