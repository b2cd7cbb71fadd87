import { HANDBOOK_FILE } from '../read/read-curriculum.ts'
import { targetOf } from '../read/links.ts'
import { mentionAt, sameTarget, type Mention } from './mention.ts'
import type { EditorFile } from './outline.ts'
import { wordAt } from './word.ts'

/** From where to where in which file. */
export type Span = { readonly file: EditorFile; readonly from: number; readonly to: number }

/** Every mention of one ladder or rung through the files of all layers. Files that do not hold the ladder's name are not looked into. */
export const mentionsOf = (target: Mention, files: readonly EditorFile[]): (Mention & { readonly file: EditorFile })[] =>
  files.filter((file) => file.text().includes(target.ladder)).flatMap((file) => file.outline().mentions.filter((mention) => sameTarget(mention, target)).map((mention) => ({ ...mention, file })))

/**
 * Where what stands at an offset is said to exist: a ladder, a rung, a page, or the handbook that is extended.
 *
 * Shape   a file, an offset and the files of all layers to spans; none where nothing there has a definition.
 */
export function definitions(file: EditorFile, offset: number, files: readonly EditorFile[]): Span[] {
  const { mentions, words } = file.outline()
  const mention = mentionAt(mentions, offset)
  if (mention) return mentionsOf(mention, files).filter(({ role }) => role === 'definition')
  if (file.file === HANDBOOK_FILE && wordAt(words, offset)?.path[0] === 'extends') return whole(files.filter((other) => other.file === HANDBOOK_FILE && other.layer === file.layer - 1))
  const page = pageAt(file.text(), offset)
  return page === undefined ? [] : whole(files.filter((other) => other.file === `content/${page}.md`))
}

/** Every place that names what stands at an offset. */
export function references(file: EditorFile, offset: number, files: readonly EditorFile[]): Span[] {
  const mention = mentionAt(file.outline().mentions, offset)
  return mention ? mentionsOf(mention, files) : []
}

const whole = (files: readonly EditorFile[]): Span[] => files.map((file) => ({ file, from: 0, to: 0 }))

/** The page a Markdown link at an offset leads to. */
function pageAt(text: string, offset: number): string | undefined {
  for (const match of text.matchAll(/\]\(([^)\s]{1,200})/g)) {
    if (offset < match.index || offset > match.index + match[0].length) continue
    const target = targetOf(match[1] ?? '')
    return target.kind === 'page' ? target.id : undefined
  }
  return undefined
}
