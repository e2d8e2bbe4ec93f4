import regular from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?inline'
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?inline'
import type { Fonts } from '../../outputs/index.ts'
import type { FilesAsk } from '../files/asks.ts'
import { filesMaker } from './files.ts'

let fonts: Fonts | undefined

/** The fonts of the command, which lie in the page as text: the policy lets nothing be fetched, not even from there. */
function readFonts(): Fonts {
  fonts ??= { regular: bytesOf(regular), bold: bytesOf(bold) }
  return fonts
}

const bytesOf = (data: string): Uint8Array =>
  Uint8Array.from(atob(data.slice(data.indexOf(',') + 1)), (letter) => letter.charCodeAt(0))

const make = filesMaker(readFonts, (answer) => postMessage(answer))

addEventListener('message', ({ data }: MessageEvent<FilesAsk>) => {
  make(data).catch((error: unknown) => {
    // Ours, and not the person's: it goes to the console as well as to the page.
    postMessage({ number: data.number, kind: 'refused', words: `This is a mistake of Storyrod itself: ${error}` })
    throw error
  })
})
