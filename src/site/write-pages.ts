import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import Eleventy from '@11ty/eleventy'
import type { WrittenPage } from '../page/handbook-pages.ts'

const CONFIG = fileURLToPath(new URL('../../eleventy.config.ts', import.meta.url))

/** Writes pages as files below `folder`, by way of Eleventy, from an input folder with nothing in it. */
export async function writePages(pages: readonly WrittenPage[], folder: string): Promise<void> {
  const nothing = await mkdtemp(path.join(os.tmpdir(), 'rungbook-'))
  try {
    const eleventy = new Eleventy(nothing, folder, {
      quietMode: true,
      configPath: path.relative(process.cwd(), CONFIG),
      config: (config) => config.addGlobalData('handbook', { pages }),
    })
    eleventy.disableLogger()
    await eleventy.write()
  } finally {
    await rm(nothing, { recursive: true, force: true })
  }
}
