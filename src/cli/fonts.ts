import { createRequire } from 'node:module'
import type { Disk } from './disk.ts'
import type { Fonts } from './engine.ts'
import { EXIT } from './exit-codes.ts'
import { orTrouble, Trouble } from './trouble.ts'

/** The two fonts of the drawings, from the package that brings them. Trouble (exit code 3) when they are missing. */
export async function loadFonts(disk: Disk): Promise<Fonts> {
  return { regular: await load(disk, 'DejaVuSans.ttf'), bold: await load(disk, 'DejaVuSans-Bold.ttf') }
}

async function load(disk: Disk, name: string): Promise<Uint8Array> {
  const path = locate(name)
  return orTrouble(`read the font ${path}`, () => disk.read(path))
}

function locate(name: string): string {
  try {
    return createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}`)
  } catch (error) {
    const words = `the font ${name} is missing from the installed program.\n  Install Storyrod again (in its folder: npm ci).`
    throw new Trouble(EXIT.diskTrouble, words, error)
  }
}
