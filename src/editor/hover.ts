import { rules } from '../check/index.ts'
import type { JsonSchema } from '../ladder/json-schema.ts'
import type { Around } from './choices.ts'
import { mentionAt } from './mention.ts'
import type { EditorFile, Outline } from './outline.ts'
import { ladderFacts, rungFacts } from './rung-facts.ts'
import { schemaAt } from './schema-at.ts'
import { patternOf, valueOf, wordAt, type Word } from './word.ts'

/** Markdown about what stands at an offset, and from where to where it stands. */
export type Hover = { readonly says: string; readonly from: number; readonly to: number }

/** A rung's load and derivation, a ladder's loads, what a rule asks, or what a key is for: whatever the offset is on. */
export function hover(file: EditorFile, offset: number, around: Around): Hover | undefined {
  const outline = file.outline()
  const mention = mentionAt(outline.mentions, offset)
  const word = wordAt(outline.words, offset)
  const named = (says: string | undefined, { from, to }: { readonly from: number; readonly to: number }): Hover | undefined => (says === undefined ? undefined : { says, from, to })
  if (mention && word?.role !== 'key') return named(factsOf(mention.ladder, mention.rung, around), mention)
  if (word) return named(ofWord(word, outline, around), word)
  return named(...headingAt(outline, offset, around))
}

function factsOf(ladder: string | undefined, rung: string | undefined, { measured }: Around): string | undefined {
  const found = ladder === undefined ? undefined : measured(ladder)
  if (!found) return undefined
  if (rung === undefined) return ladderFacts(found)
  const one = found.rungs.find(({ id }) => id === rung)
  return one && rungFacts(found, one)
}

function ofWord(word: Word, outline: Outline, around: Around): string | undefined {
  const pattern = patternOf(word.path)
  if (word.role === 'value' && pattern === 'silence.rule') {
    const rule = rules.find(({ name }) => name === word.text)
    if (rule) return `**${rule.name}**: ${rule.says}\n\n${rule.why}`
  }
  const key = keyText(word.path.findLast((step) => typeof step === 'string'), schemaAt(outline.kind, word.path, outline.words) ?? schemaAt(outline.kind, word.path.slice(0, -1), outline.words))
  const within = word.path[0] === 'rungs' && /^rungs\.(title|load)/.test(pattern) ? valueOf(outline.words, [...word.path.slice(0, 2), 'id']) : undefined
  const facts = within === undefined ? undefined : factsOf(outline.ladder, within, around)
  return [key, facts].filter((part) => part !== undefined).join('\n\n---\n\n') || undefined
}

/** A key's name, what it is for, what holds unless it is given, and an example. */
function keyText(name: string | number | undefined, schema: JsonSchema | undefined): string | undefined {
  if (schema?.description === undefined) return undefined
  const span = schema.minimum === undefined || schema.maximum === undefined || /from .+ to /.test(schema.description) ? [] : [`From ${schema.minimum} to ${schema.maximum}.`]
  const choices = schema.enum === undefined ? [] : [`One of: ${schema.enum.join(', ')}.`]
  const given = schema.default === undefined ? [] : [`Unless given: \`${JSON.stringify(schema.default)}\`.`]
  const example = schema.examples?.[0] === undefined ? [] : [`Such as \`${JSON.stringify(schema.examples[0])}\`.`]
  return [`**${name}**: ${schema.description}`, ...span, ...choices, ...given, ...example].join('\n\n')
}

/** The rung a heading without an id belongs to, by its title. */
function headingAt({ text, ladder }: Outline, offset: number, around: Around): [string | undefined, { readonly from: number; readonly to: number }] {
  const from = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1
  const line = /^[^\r\n]*/.exec(text.slice(from))?.[0] ?? ''
  const title = /^##[ \t]+([^{]*)/.exec(line)?.[1]?.trim()
  const rung = title === undefined ? undefined : around.curriculum?.ladders.find(({ id }) => id === ladder)?.rungs.find((candidate) => candidate.title === title || line.includes(`{#${candidate.id}}`))
  return [rung && factsOf(ladder, rung.id, around), { from, to: from + line.length }]
}
