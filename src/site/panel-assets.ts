import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import type { SiteFile } from './site-file.ts'

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url))

/** The author's panel of a preview: one script and one stylesheet, made when they are first wanted. */
export async function panelFiles(): Promise<ReadonlyMap<string, SiteFile['bytes']>> {
  const [script, style] = await Promise.all([
    build({ entryPoints: [here('../browser/preview')], bundle: true, format: 'esm', minify: true, charset: 'utf8', target: 'es2022', write: false, logLevel: 'silent' }),
    readFile(here('../browser/preview.css'), 'utf8'),
  ])
  return new Map([['panel.js', script.outputFiles[0]?.text ?? ''], ['panel.css', style]])
}
