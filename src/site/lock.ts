import { open, readFile, rm } from 'node:fs/promises'

/** True while the process of that number runs on this machine. */
function runs(pid: number): boolean {
  try {
    return process.kill(pid, 0)
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM' // it is there, and somebody else's
  }
}

/** Takes a lock: a file that holds the number of this process. False where a process that runs holds it; one that was killed does not. */
async function taken(file: string): Promise<boolean> {
  for (let attempt = 0; attempt < 3; attempt += 1) {
    const handle = await open(file, 'wx').catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error
      return undefined
    })
    if (handle) {
      await handle.writeFile(String(process.pid))
      await handle.close()
      return true
    }
    const holder = Number(await readFile(file, 'utf8').catch(() => ''))
    if (holder > 0 && runs(holder)) return false
    if (holder > 0) await rm(file, { force: true })
    else await new Promise((resolve) => setTimeout(resolve, 50)) // just made, its number not yet written; or just gone
  }
  await rm(file, { force: true }) // a process was killed before it wrote its number
  return taken(file)
}

/** Does the work while nobody else does, or gives undefined where another process is at it. */
export async function alone<Value>(file: string, work: () => Promise<Value>): Promise<Value | undefined> {
  if (!(await taken(file))) return undefined
  try {
    return await work()
  } finally {
    await rm(file, { force: true })
  }
}
