import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import type { Cache } from './cache.ts'
import { drawDiagram } from './draw-diagram.ts'

/** Draws a flowchart under a name. */
export type Draw = typeof drawDiagram

/** Draws what was not drawn before. */
export async function drawnOnce(cache: Cache): Promise<Draw> {
  const kind = `diagram, ${await ownDigest()}`
  return async (source, name) => new TextDecoder().decode(await cache.of(kind, `${name}\n${source}`, async () => new TextEncoder().encode(await drawDiagram(source, name))))
}

/** What the drawing program is at this moment: this folder's modules, and which libraries they ask for. */
async function ownDigest(): Promise<string> {
  const digest = createHash('sha256')
  const here = new URL('.', import.meta.url)
  for (const name of (await readdir(here)).toSorted()) if (/^(dia|draw|glyph)/.test(name)) digest.update(name).update(await readFile(new URL(name, here)))
  for (const library of ['mermaid', 'linkedom']) digest.update(await readFile(new URL(import.meta.resolve(`${library}/package.json`))).catch(() => library))
  return digest.digest('hex')
}
