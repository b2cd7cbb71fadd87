import { readdir, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { compareText } from '../ladder/finding.ts'
import type { Written } from './filling.ts'

/** Every file below a folder, by name, with forward slashes. */
export async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  return entries.filter((entry) => entry.isFile()).map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/')).toSorted(compareText)
}

/** Writes build.json: every file with its size and digest, so that a deploy sends only what changed. */
export const writeManifest = (folder: string, edition: string, files: readonly Written[]): Promise<void> => writeFile(path.join(folder, 'build.json'), `${JSON.stringify({ version: 1, edition, files }, null, 1)}\n`)
