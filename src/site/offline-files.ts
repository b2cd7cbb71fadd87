import { createHash } from 'node:crypto'
import { LIST, type OfflineList } from '../browser/offline-list.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import type { Written } from './filling.ts'
import type { SiteFile } from './site-file.ts'

/** What every page needs. */
const CORE = /^(index\.html|404\.html|assets\/(?!share\/).*|search\/index\.html|data\/index\.json)$/
/** What nobody reads without a signal: earlier editions, papers to print, what other programs read. */
const LEFT_OUT = /^(editions\/|pdf\/|assets\/share\/|build\.json|feed\.xml|sitemap\.xml|service-worker\.js|_headers|\.rungbook-output)|\.schema\.json$/

/** The ladder a file would belong to, by where it lies. */
const ladderOf = (file: string): string => /^data\/ladders\/([^/]+)\.json$/.exec(file)?.[1] ?? file.slice(0, Math.max(0, file.indexOf('/')))

/** The list by which a device keeps the handbook in one language: made from the files that were written below its folder, without the folders of other languages. */
export function offlineFile({ handbook, ladders }: MeasuredCurriculum, written: readonly Written[], under: string, others: readonly string[]): SiteFile {
  const kept = written.flatMap(({ file, sha256 }) => (file.startsWith(under) ? [{ file: file.slice(under.length), sha256 }] : [])).filter(({ file }) => !LEFT_OUT.test(file) && file !== LIST && !others.some((other) => file.startsWith(other)))
  const digest = createHash('sha256')
  for (const { file, sha256 } of kept) digest.update(`${file} ${sha256}\n`)
  const files = kept.map(({ file }) => file)
  const core = files.filter((file) => CORE.test(file))
  const own = new Map(ladders.map(({ id }): [string, string[]] => [id, []]))
  const rest: string[] = []
  for (const file of files) {
    const holder = own.get(ladderOf(file)) ?? rest
    if (holder !== rest || !CORE.test(file)) holder.push(file)
  }
  const list: OfflineList = { version: 1, edition: handbook.edition, build: digest.digest('hex').slice(0, 16), off: handbook.offline === false, core, ladders: Object.fromEntries(own), rest }
  return { name: LIST, bytes: `${JSON.stringify(list)}\n` }
}

/** The list of a handbook that is kept nowhere, as a preview is: its pages ask for no worker, and one that is there takes itself away. */
export const keptNowhere = ({ handbook, ...curriculum }: MeasuredCurriculum): SiteFile => offlineFile({ ...curriculum, handbook: { ...handbook, offline: false }, ladders: [] }, [], '', [])
