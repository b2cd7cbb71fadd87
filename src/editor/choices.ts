import { models } from '../load/index.ts'
import { rules } from '../check/index.ts'
import type { Curriculum } from '../ladder/curriculum.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import type { EditorFile, Outline } from './outline.ts'
import { patternOf, type Word } from './word.ts'

/** One thing that may be written: the word, what it is, and a sentence about it. */
export type Choice = { readonly label: string; readonly detail?: string; readonly says?: string }

/** What is known of the workspace around a file: its files as they are, the last state of it that could be read, and any ladder of that, measured when asked. */
export type Around = { readonly files: readonly EditorFile[]; readonly curriculum: Curriculum | undefined; readonly measured: (ladder: string) => MeasuredLadder | undefined }

/** Keys whose value is the id of a rung of the same ladder. */
const RUNGS = new Set(['aim', 'rungs.after', 'rungs.before', 'silence.rung', 'retired.heir', 'withdraw.id', 'withdraw.heir'])

/** The names a value may take because the curriculum has them, rather than because the schema lists them. */
export function choicesFor({ path }: Word, outline: Outline, around: Around): Choice[] {
  const pattern = patternOf(path)
  const ladders = around.curriculum?.ladders ?? []
  if (RUNGS.has(pattern) || (pattern === 'rungs.id' && outline.kind !== 'ladder')) return rungChoices(outline.ladder, around)
  if (pattern === 'translates' && outline.kind === 'page-translation') return (around.curriculum?.pages ?? []).map(({ id, title }) => ({ label: id, detail: title }))
  if (pattern === 'amends' || pattern === 'translates') return ladderChoices(around)
  if (pattern === 'movement') return distinct(ladders.map(({ movement }) => movement))
  if (pattern === 'equipment' || pattern === 'rungs.equipment') return distinct(ladders.flatMap(({ equipment, rungs }) => [...equipment, ...rungs.flatMap((rung) => rung.equipment)]))
  if (pattern === 'silence.rule') return rules.map(({ name, says }) => ({ label: name, detail: 'rule', says }))
  if (pattern === 'rungs.load.model') return models.map(({ name, says }) => ({ label: name, detail: 'load model', says }))
  if (pattern === 'rungs.load.source') return outline.words.filter((word) => word.role === 'value' && patternOf(word.path) === 'sources.id').map(({ text }) => ({ label: text, detail: 'source' }))
  if (pattern === 'extends' && outline.kind === 'handbook') return [{ label: 'rungbook/starter', detail: 'the starter curriculum', says: 'The curriculum that comes with the program.' }]
  return []
}

/** The rungs of a ladder, as its files have them now: also those in a file that is half-typed. */
export function rungChoices(ladder: string | undefined, { files, curriculum }: Around): Choice[] {
  if (ladder === undefined) return []
  const known = curriculum?.ladders.find(({ id }) => id === ladder)?.rungs ?? []
  const ids = files.filter((file) => file.text().includes(ladder)).flatMap((file) => file.outline().mentions.flatMap((mention) => (mention.ladder === ladder && mention.role === 'definition' && mention.rung !== undefined ? [mention.rung] : [])))
  return [...new Set(ids)].map((label) => ({ label, detail: known.find(({ id }) => id === label)?.title ?? 'rung' }))
}

/** Every ladder there is, by its id. */
export const ladderChoices = ({ curriculum }: Around): Choice[] => (curriculum?.ladders ?? []).map(({ id, title }) => ({ label: id, detail: title }))

const distinct = (labels: readonly string[]): Choice[] => [...new Set(labels)].toSorted((a, b) => (a < b ? -1 : 1)).map((label) => ({ label }))
