import type { Layer, SourceFile } from '../ladder/curriculum.ts'

/** The words of the head of a file, as far as names in it go. */
const headOf = ({ bytes }: SourceFile): string => new TextDecoder().decode(bytes.subarray(0, 2048))
const named = (key: 'id' | 'amends', file: SourceFile): string | undefined => new RegExp(`^${key}: *["']?([a-z0-9-]+)`, 'm').exec(headOf(file))?.[1]

const isSame = (one: SourceFile, other: SourceFile | undefined): boolean => other !== undefined && one.bytes.length === other.bytes.length && one.bytes.every((byte, index) => byte === other.bytes[index])

/**
 * Leaves out of two states of a workspace what is in both to the byte, so that comparing a thousand ladders costs what changed in ten.
 * Amendments stay, and so do the ladders they amend: what changed below them may show only through them.
 *
 * Shape   two lists of layers to two; both as they are where the layers themselves do not match.
 */
export function withoutUnchanged(before: readonly Layer[], after: readonly Layer[]): readonly [readonly Layer[], readonly Layer[]] {
  if (before.length !== after.length) return [before, after]
  const all = [...before, ...after].flatMap(({ files }) => files)
  const amended = new Set(all.map((file) => named('amends', file)).filter((id) => id !== undefined))
  const stays = (file: SourceFile): boolean => !file.file.endsWith('.md') || named('amends', file) !== undefined || amended.has(named('id', file) ?? '')
  const kept = (layers: readonly Layer[], others: readonly Layer[]): Layer[] =>
    layers.map(({ files }, index) => {
      const beside = new Map((others[index]?.files ?? []).map((file) => [file.file, file]))
      return { files: files.filter((file) => stays(file) || !isSame(file, beside.get(file.file))) }
    })
  return [kept(before, after), kept(after, before)]
}
