import { mkdir, writeFile } from 'node:fs/promises'
import path from 'node:path'

/** One file of a handbook, by its name below the output folder, with forward slashes. */
export type SiteFile = { readonly name: string; readonly bytes: Uint8Array | string }

/** Files by their names in a folder further up. */
export const below = <File extends { readonly name: string }>(folder: string, files: readonly File[]): File[] => files.map((file) => ({ ...file, name: folder + file.name }))

/** Writes files below a folder. */
export async function writeFiles(files: readonly SiteFile[], folder: string): Promise<void> {
  for (const { name, bytes } of files) {
    const to = path.join(folder, name)
    await mkdir(path.dirname(to), { recursive: true })
    await writeFile(to, bytes)
  }
}
