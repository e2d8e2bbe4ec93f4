import type { Page } from 'playwright-core'

interface Chosen extends Window {
  folder: Map<string, Uint8Array>
}

/**
 * In place of the folder that a person chooses, which keeps what is written below it as the browser does: a file is there, and
 * empty, once it is asked for, and has its bytes when all of them are written. The file at `refused` is never written.
 */
export async function withFolder(page: Page, refused?: string): Promise<void> {
  await page.evaluate((never) => {
    const folder = new Map<string, Uint8Array>()
    const fileAt = (path: string) => ({
      kind: 'file',
      name: path.replace(/^.*\//, ''),
      getFile: async () => new File([(folder.get(path) ?? new Uint8Array()) as BlobPart], path),
      createWritable: async () => {
        let all = new Uint8Array()
        return {
          write: async (bytes: Uint8Array<ArrayBuffer>) => {
            if (path === never) throw new DOMException('the disk is full', 'QuotaExceededError')
            all = bytes
          },
          close: async () => {
            folder.set(path, all)
          },
          abort: async () => undefined,
        }
      },
    })
    const below = (at: string): object => ({
      kind: 'directory',
      name: 'drawings',
      getDirectoryHandle: async (name: string) => below(`${at}${name}/`),
      getFileHandle: async (name: string) => {
        if (!folder.has(`${at}${name}`)) folder.set(`${at}${name}`, new Uint8Array())
        return fileAt(`${at}${name}`)
      },
      removeEntry: async (name: string) => {
        folder.delete(`${at}${name}`)
      },
    })
    Object.assign(window, { folder, showDirectoryPicker: async () => below('') })
  }, refused)
}

/** What is in the folder now, by path. */
export async function inFolder(page: Page): Promise<ReadonlyMap<string, Buffer>> {
  const files = await page.evaluate(() =>
    [...(window as unknown as Chosen).folder].map(([path, bytes]) => [
      path,
      btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')),
    ]),
  )
  return new Map(files.map(([path = '', bytes = '']) => [path, Buffer.from(bytes, 'base64')]))
}
