import { missing, type Outcome } from '../quantity/outcome.ts'
import { id } from '../ladder/words.ts'
import { mentionsOf, type Span } from './find.ts'
import { mentionAt, type Mention } from './mention.ts'
import type { EditorFile } from './outline.ts'

/** The rung id at an offset that may be renamed. Missing where none is, or where a layer below has the say. */
export function renamable(file: EditorFile, offset: number, files: readonly EditorFile[]): Outcome<Mention & { readonly rung: string }> {
  const mention = mentionAt(file.outline().mentions, offset)
  if (!mention) return missing('There is no rung id here. Put the cursor on one.')
  const { ladder, rung } = mention
  if (rung === undefined) return missing(`"${ladder}" is the id of a ladder: its address and file names hang on it. Only rungs are renamed here.`)
  const mentions = mentionsOf(mention, files)
  const foreign = mentions.find(({ file: { own }, role }) => !own && role === 'definition')
  if (foreign) return missing(`"${rung}" is a rung of ${foreign.file.shown}, a layer that is not ours to change.`)
  if (!mentions.some(({ role }) => role === 'definition')) return missing(`No ladder here has a rung "${rung}".`)
  return { ...mention, rung }
}

/**
 * The places in which a rung's id has to be written anew: its own, headings, after, aim, heirs, silences, links, translations.
 *
 * Missing with a sentence that says why not: another has the name, it is no name, or it is not ours.
 */
export function renamed(file: EditorFile, offset: number, name: string, files: readonly EditorFile[]): Outcome<readonly Span[]> {
  const target = renamable(file, offset, files)
  if ('missing' in target) return target
  const fits = id.safeParse(name)
  if (!fits.success) return missing((fits.error.issues[0]?.message ?? '').replaceAll('{key}', `"${name.slice(0, 60)}"`))
  if (name === target.rung) return []
  const taken = mentionsOf({ ...target, rung: name }, files).find(({ role }) => role === 'definition')
  if (taken) return missing(`"${target.ladder}" has a rung "${name}" already, in ${taken.file.shown}. Choose another id.`)
  return mentionsOf(target, files).filter(({ file: { own } }) => own)
}
