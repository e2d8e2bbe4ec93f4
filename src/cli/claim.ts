import { basename, join } from 'node:path'
import type { Disk } from './disk.ts'
import { EXIT } from './exit-codes.ts'
import { STAGING_PREFIX } from './output-paths.ts'
import { putBack } from './placing.ts'
import { diskErrorCode, diskTrouble, OTHER_FOLDER, Trouble } from './trouble.ts'

/** Staging folders that this process is using now; one that bears our number but is not here is of a dead namesake. */
const inUse = new Set<string>()

/**
 * Makes this run's staging folder inside `root`, which at the same time bars other runs from `root`, and clears
 * away what dead runs left, after putting back what they had half replaced.
 *
 * The folder is made first and the others are looked for afterwards: of two runs that start at once at least one
 * sees the other and gives way (both, at worst). Whether a run lives is asked of this computer's processes alone,
 * so two computers must not draw into one shared folder at once.
 *
 * Trouble (exit code 3) when another run is drawing into `root`, or when the disk refuses.
 */
export async function claim(disk: Disk, root: string): Promise<string> {
  const mine = join(root, `${STAGING_PREFIX}${process.pid}`)
  if (inUse.has(mine)) throw busy(root, mine)
  inUse.add(mine)
  let made = false
  try {
    await makeMine(disk, root, mine)
    made = true
    const others = (await stagingFolders(disk, root)).filter((folder) => folder !== mine)
    const living = others.find((folder) => isAlive(processOf(folder)))
    if (living !== undefined) throw busy(root, living)
    for (const folder of others) await clearAway(disk, root, folder)
    return mine
  } catch (error) {
    inUse.delete(mine)
    if (made) await disk.removeTree(mine).catch(() => undefined)
    throw diskTrouble(error, {
      what: `make a working folder in ${root}`,
      after: 'The earlier output is as it was.',
      otherwise: OTHER_FOLDER,
    })
  }
}

/** Ends the claim and removes the staging folder. One that cannot be removed now is left to the next run. */
export async function release(disk: Disk, staging: string): Promise<void> {
  inUse.delete(staging)
  await disk.removeTree(staging).catch(() => undefined)
}

/** Ends the claim but leaves the folder, with the old files in it, to the next run. */
export function abandon(staging: string): void {
  inUse.delete(staging)
}

async function makeMine(disk: Disk, root: string, mine: string): Promise<void> {
  try {
    await disk.makeFolder(mine)
  } catch (error) {
    if (diskErrorCode(error) !== 'EEXIST') throw error
    await clearAway(disk, root, mine)
    await disk.makeFolder(mine)
  }
}

async function clearAway(disk: Disk, root: string, folder: string): Promise<void> {
  try {
    if ((await disk.look(folder))?.kind === 'folder') await putBack(disk, root, folder)
    await disk.removeTree(folder)
  } catch (error) {
    const after = `What that run had replaced is kept in ${folder} until it can be put back.`
    throw diskTrouble(error, { what: `clear up after a run that was cut off in ${root}`, after })
  }
}

async function stagingFolders(disk: Disk, root: string): Promise<readonly string[]> {
  const found: string[] = []
  for (const name of await disk.list(root)) {
    if (!name.startsWith(STAGING_PREFIX) || !/^\d+$/.test(name.slice(STAGING_PREFIX.length))) continue
    const path = join(root, name)
    if ((await disk.look(path))?.kind === 'folder') found.push(path)
  }
  return found
}

function processOf(folder: string): number {
  return Number(basename(folder).slice(STAGING_PREFIX.length))
}

function isAlive(pid: number): boolean {
  if (pid === process.pid) return false
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    // EPERM: a process of someone else, which is alive all the same.
    return diskErrorCode(error) === 'EPERM'
  }
}

function busy(root: string, folder: string): Trouble {
  const words = `could not draw into ${root}: another run (process ${processOf(folder)}) is drawing there.`
  const remedy = `Wait for it to end. If there is no such run, delete ${folder} and run again.`
  return new Trouble(EXIT.diskTrouble, `${words}\n  Nothing was changed. ${remedy}`)
}
