// Run as a child process under several time zones by pdf.test.ts: prints the hash of one PDF.
import { createHash } from 'node:crypto'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { pdfOf } from '../../src/writers/pdf.ts'
import { DOOR } from '../drawing/page-panels.ts'
import { FONTS } from './pdf-fonts.ts'

const info = { title: 'door', subject: 'test', fingerprint: 'abc' }
pdfOf(pageDrawings(DOOR, 'A', 'A4', 'mm'), info, FONTS).then((bytes) => {
  process.stdout.write(createHash('sha256').update(bytes).digest('hex'))
})
