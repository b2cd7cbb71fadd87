import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { LIST, type OfflineList } from '../browser/offline-list.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { filesBelow } from './manifest.ts'
import type { SiteFile } from './site-file.ts'

/** What every page needs. */
const CORE = /^(index\.html|404\.html|assets\/(?!share\/).*|search\/index\.html|data\/index\.json)$/
/** What nobody reads without a signal: earlier editions, papers to print, what other programs read. */
const LEFT_OUT = /^(editions\/|pdf\/|assets\/share\/|build\.json|feed\.xml|sitemap\.xml|service-worker\.js|_headers|\.rungbook-output)|\.schema\.json$/

/** The list by which a device keeps the handbook in one language: made from its files as they were written, without the folders of other languages. */
export async function offlineFile({ handbook, ladders }: MeasuredCurriculum, folder: string, others: readonly string[]): Promise<SiteFile> {
  const files = (await filesBelow(folder)).filter((file) => !LEFT_OUT.test(file) && file !== LIST && !others.some((other) => file.startsWith(other)))
  const digest = createHash('sha256')
  for (const file of files) digest.update(file).update(await readFile(path.join(folder, file)))
  const core = files.filter((file) => CORE.test(file))
  const own = new Map(ladders.map(({ id }) => [id, files.filter((file) => file.startsWith(`${id}/`) || file === `data/ladders/${id}.json`)]))
  const placed = new Set([...core, ...[...own.values()].flat()])
  const list: OfflineList = { version: 1, edition: handbook.edition, build: digest.digest('hex').slice(0, 16), off: handbook.offline === false, core, ladders: Object.fromEntries(own), rest: files.filter((file) => !placed.has(file)) }
  return { name: LIST, bytes: `${JSON.stringify(list)}\n` }
}
