import type { Layer, SourceFile } from '../ladder/curriculum.ts'
import { languageIn } from './read-translation.ts'

/** The words of the head of a file, as far as names in it go. */
const headOf = ({ bytes }: SourceFile): string => new TextDecoder().decode(bytes.subarray(0, 2048))
const named = (key: 'id' | 'amends' | 'translates', file: SourceFile): string | undefined => new RegExp(`^${key}: *["']?([a-z0-9-]+)`, 'm').exec(headOf(file))?.[1]

/** The ladder or page a file is of. */
const isOf = (file: SourceFile): string => named(languageIn(file.file) === undefined ? 'id' : 'translates', file) ?? file.file.replace(/^content\//, '').replace(/\.md$/, '').replaceAll('/', '-')

const isSame = (one: SourceFile, other: SourceFile | undefined): boolean => other !== undefined && one.bytes.length === other.bytes.length && one.bytes.every((byte, index) => byte === other.bytes[index])

/**
 * Leaves out of two states of a workspace what is in both to the byte, so that comparing a thousand ladders costs what changed in ten.
 * Amendments stay, and so do the ladders they amend: what changed below them may show only through them.
 * A ladder or page and its translations stay together.
 *
 * Shape   two lists of layers to two; both as they are where the layers themselves do not match.
 */
export function withoutUnchanged(before: readonly Layer[], after: readonly Layer[]): readonly [readonly Layer[], readonly Layer[]] {
  if (before.length !== after.length) return [before, after]
  const all = [...before, ...after].flatMap(({ files }) => files)
  const changed = before.flatMap(({ files }, index) => [...apart(files, after[index]?.files ?? []), ...apart(after[index]?.files ?? [], files)])
  const together = new Set([...all.flatMap((file) => named('amends', file) ?? []), ...changed.map(isOf)])
  const isSpoken = all.some(({ file }) => languageIn(file) !== undefined)
  const stays = (file: SourceFile): boolean => !file.file.endsWith('.md') || named('amends', file) !== undefined || together.has(isSpoken ? isOf(file) : (named('id', file) ?? ''))
  const kept = (layers: readonly Layer[], others: readonly Layer[]): Layer[] =>
    layers.map(({ files }, index) => {
      const own = new Set(apart(files, others[index]?.files ?? []))
      return { files: files.filter((file) => stays(file) || own.has(file)) }
    })
  return [kept(before, after), kept(after, before)]
}

/** Files of one state that the other does not hold to the byte. */
function apart(files: readonly SourceFile[], others: readonly SourceFile[]): SourceFile[] {
  const beside = new Map(others.map((file) => [file.file, file]))
  return files.filter((file) => !isSame(file, beside.get(file.file)))
}
