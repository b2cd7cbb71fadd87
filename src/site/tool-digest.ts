import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { filesBelow } from './manifest.ts'

/** All modules of the tool, as they are now: the folder above this one, in the repository and in the package. */
const TOOL = fileURLToPath(new URL('..', import.meta.url))

/** A file of the nearest node_modules folder that has it. */
function installed(name: string, from: string): string | undefined {
  const file = path.join(from, 'node_modules', name)
  if (existsSync(file)) return file
  return path.dirname(from) === from ? undefined : installed(name, path.dirname(from))
}

/**
 * What the whole tool is at this moment: its own files, the libraries it asks for, all that is installed beside them where that is listed, and the Node it runs on.
 * By it a cache knows what this very tool made.
 */
export async function toolDigest(tool = TOOL): Promise<string> {
  const { dependencies = {} } = JSON.parse(await readFile(path.join(tool, '../package.json'), 'utf8')) as { dependencies?: Record<string, string> }
  const libraries = ['.package-lock.json', ...Object.keys(dependencies).map((name) => `${name}/package.json`)].flatMap((name) => installed(name, tool) ?? [])
  const digest = createHash('sha256').update(process.version)
  for (const file of [...(await filesBelow(tool)).map((name) => path.join(tool, name)), ...libraries]) digest.update(`\0${path.basename(file)}\0`).update(await readFile(file))
  return digest.digest('hex')
}
