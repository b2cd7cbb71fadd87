import { mkdir, writeFile } from 'node:fs/promises'
import path from 'node:path'

/** One file of a handbook, by its name below the output folder, with forward slashes. */
export type SiteFile = { readonly name: string; readonly bytes: Uint8Array | string }

/** Writes files below a folder. */
export async function writeFiles(files: readonly SiteFile[], folder: string): Promise<void> {
  for (const { name, bytes } of files) {
    const to = path.join(folder, name)
    await mkdir(path.dirname(to), { recursive: true })
    await writeFile(to, bytes)
  }
}
