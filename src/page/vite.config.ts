import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import { viteSingleFile } from 'vite-plugin-singlefile'
import { firstPicture } from './build/first-picture-of.ts'
import { oneFile } from './build/one-file.ts'
import { programsAside } from './build/programs.ts'

const folder = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

// What a file of ours imports is pure, and of these libraries each program of the page uses little or nothing.
const treeshake = {
  moduleSideEffects: [
    { test: /node_modules.(?:pdfkit|makerjs|dxf-writer|svgson|bezier-js|flatbush|zod|yaml)\b/, sideEffects: false },
    { test: /[\\/]src[\\/](?!page[\\/])/, sideEffects: false },
  ],
}

const programs = new Map<string, string>()

export default defineConfig({
  root: folder('.'),
  // One file: whatever it is built into holds nothing else.
  build: {
    outDir: folder('../../dist/page'),
    emptyOutDir: true,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    chunkSizeWarningLimit: 10_000,
    reportCompressedSize: false,
    rolldownOptions: { input: folder('storyrod.html'), treeshake },
  },
  worker: {
    format: 'iife',
    rolldownOptions: { treeshake },
  },
  server: { open: '/storyrod.html', fs: { allow: [folder('../..')] } },
  plugins: [
    programsAside(programs),
    viteSingleFile({ removeViteModuleLoader: true }),
    oneFile(programs, () => firstPicture(folder('build/first-picture.tsx'))),
  ],
})
