import { createHash } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin } from 'vite'
import { viteSingleFile } from 'vite-plugin-singlefile'

const folder = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/**
 * Nothing is fetched and nothing is sent: only the page's own script runs (it is named by its hash), its workers come out
 * of it as blobs, and no address may be connected to. The editor sets its styles from the script, so these are allowed.
 */
const policy = (script: string): string =>
  [
    "default-src 'none'",
    `script-src 'sha256-${createHash('sha256').update(script).digest('base64')}'`,
    'worker-src blob:',
    "style-src 'unsafe-inline'",
    'img-src data: blob:',
    'font-src data: blob:',
    'frame-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')

/** Writes the policy into the page that is one file by now. */
function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    enforce: 'post',
    // After the one that puts script and style into the page.
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        for (const file of Object.values(bundle)) {
          if (file.type === 'asset' && file.fileName.endsWith('.html')) file.source = withPolicy(String(file.source))
        }
      },
    },
  }
}

function withPolicy(html: string): string {
  const scripts = [...html.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map(([, script = '']) => script)
  const [only] = scripts
  if (scripts.length !== 1 || only === undefined || only === '')
    throw new Error(`${scripts.length} scripts in the page, not 1`)
  const charset = '<meta charset="utf-8" />'
  if (!html.includes(charset)) throw new Error('the page does not say its character set')
  return html.replace(
    charset,
    `${charset}\n    <meta http-equiv="Content-Security-Policy" content="${policy(only)}" />`,
  )
}

export default defineConfig({
  root: folder('.'),
  // One file: whatever it is built into holds nothing else.
  build: {
    outDir: folder('../../dist/page'),
    emptyOutDir: true,
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    chunkSizeWarningLimit: 10_000,
    reportCompressedSize: false,
    rolldownOptions: { input: folder('storyrod.html') },
  },
  // The writer of PDF files is large, and only the worker that makes files writes them: the others are to leave it out.
  worker: {
    format: 'iife',
    rolldownOptions: { treeshake: { moduleSideEffects: [{ test: /node_modules.pdfkit/, sideEffects: false }] } },
  },
  server: { open: '/storyrod.html', fs: { allow: [folder('../..')] } },
  plugins: [viteSingleFile({ removeViteModuleLoader: true }), contentPolicy()],
})
