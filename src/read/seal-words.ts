import type { Translated, Words } from '../ladder/translation.ts'
import { shapeDiffers } from './shape.ts'

/** Digests to write, by key, and the parts that cannot be signed for yet, with the reason. */
export type WordSeal = { readonly of: ReadonlyMap<string, string>; readonly left: readonly { readonly key: string; readonly why: string }[] }

/** Words in a line from which on it is not the same in two languages by chance. Chosen by us. */
const MANY = 4

/**
 * What a translator who has read everything again can sign for: each part of the topmost layer's own file, beside the words that stand now.
 * Of several reasons, the topmost layer's comes last and is the one that is signed for. A part in which a line still stands in the original's words, or which has another number of entries, is left out.
 */
export function wordSeal({ parts, own }: Translated): WordSeal {
  const of = new Map<string, string>()
  const left: { key: string; why: string }[] = []
  for (const { key, words, digest } of parts) {
    const said = own?.parts.get(key)
    if (said === undefined) continue
    const differs = shapeDiffers(said, words)
    const untouched = untouchedLine(said, words)
    if (differs !== undefined) left.push({ key, why: `it has ${differs}` })
    else if (untouched !== undefined) left.push({ key, why: `"${untouched}" is still in the original’s words` })
    else of.set(key, digest)
  }
  return { of, left }
}

const linesOf = (words: Words): string[] => (typeof words === 'string' ? words.split('\n') : Object.values(words).flatMap((inside: Words) => linesOf(inside)))

function untouchedLine(said: Words, original: Words): string | undefined {
  const before = new Set(linesOf(original).map((line) => line.trim()))
  return linesOf(said)
    .map((line) => line.trim())
    .find((line) => before.has(line) && (line.match(/\p{Letter}+/gu) ?? []).length >= MANY)
}
