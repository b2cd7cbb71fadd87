import { existsSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import type { WrittenPage } from '../page/handbook-pages.ts'
import { fileOf } from './plugin.ts'
import type { SiteFile } from './site-file.ts'

/** The host's configuration: beside `src` in the repository, among the compiled files in the package. */
const [SOURCE = '', COMPILED = ''] = ['../../eleventy.config.ts', '../eleventy.config.js'].map((file) => fileURLToPath(new URL(file, import.meta.url)))
const CONFIG = existsSync(SOURCE) ? SOURCE : COMPILED

/** Pages as files, by way of Eleventy, from an input folder with nothing in it. */
export async function pageFiles(pages: readonly WrittenPage[]): Promise<SiteFile[]> {
  const { default: Eleventy } = await import('@11ty/eleventy') // loaded only by a build: it takes longer to load than a check takes
  const nothing = await mkdtemp(path.join(os.tmpdir(), 'rungbook-'))
  try {
    const eleventy = new Eleventy(nothing, nothing, {
      quietMode: true,
      configPath: path.relative(process.cwd(), CONFIG),
      config: (config) => {
        config.addGlobalData('handbook', { pages })
        config.benchmarkManager.get('Configuration').setIsVerbose(false) // else it tells a coach which of its own parts took long
      },
    })
    eleventy.disableLogger()
    return (await eleventy.toJSON()).map(({ url, content }) => ({ name: fileOf(url), bytes: content }))
  } finally {
    await rm(nothing, { recursive: true, force: true })
  }
}
