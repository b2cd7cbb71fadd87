import { readFile } from 'node:fs/promises'
import type { Cache } from './cache.ts'
import { drawDiagram } from './draw-diagram.ts'
import { ownDigest } from './own-digest.ts'

/** Draws a flowchart under a name. */
export type Draw = typeof drawDiagram

/** Draws what was not drawn before, by `draw`. */
export async function drawnOnce(cache: Cache, draw: Draw = drawDiagram): Promise<Draw> {
  const kind = `diagram, ${await drawingDigest()}`
  return async (source, name) => new TextDecoder().decode(await cache.of(kind, `${name}\n${source}`, async () => new TextEncoder().encode(await draw(source, name))))
}

/** What the drawing program is at this moment: this folder's modules, and which libraries they ask for. */
async function drawingDigest(): Promise<string> {
  const libraries = ['mermaid', 'linkedom'].map((library) => readFile(new URL(import.meta.resolve(`${library}/package.json`))).catch(() => library))
  return ownDigest(/^(dia|draw|glyph)/, ...(await Promise.all(libraries)))
}
