import type { Entry, Said } from './tongue.ts'

/**
 * English sentences that come finished from loads, steps and rules, said in another language.
 *
 * A phrase with holes is found by its shape: `not even {1} repetitions with {2} in reserve …`. What stands in the holes is said in
 * turn, numbers by the rules of the language. A list is said item by item. A coach's own words stay.
 */

/** Texts one may ask for, however many there are. */
export type Lookup = Pick<ReadonlySet<string>, 'has'>

/** What finished text is said with. */
type With = {
  readonly language: string
  readonly foreign: boolean
  readonly entry: (key: string) => Entry | undefined
  readonly form: (entry: Entry, numbers: readonly (number | undefined)[]) => string
  readonly keys: readonly string[]
  /** Where a coach's words are not told apart: a shape counts though what stands in its holes is not known. */
  readonly bold?: boolean
}

/** What was said, and what was asked of a coach's words on the way to it: where the answers are the same, so is what is said. */
type Answer = { readonly said: Said; readonly asked: readonly (readonly [text: string, theirs: boolean])[] }

/** A shape with fewer letters of its own than this proves nothing by itself. Chosen by us. */
const FEWEST_LETTERS = 4

const NUMBER = /^[−-]?\d+(?:\.\d+)?$/
const DAY = /^\d{4}-\d{2}-\d{2}$/
const LETTER = /\p{L}/u
/** What is between the items of a list, the widest first. */
const BETWEEN = [' · ', '; ', ', ', ' and ', ' or '] as const
/** Holes within holes within holes: deeper than any phrase of ours. */
const DEEPEST = 6

type Shape = { readonly key: string; readonly shape: RegExp; readonly weight: number; readonly start: string; readonly order: readonly number[] }

/** The value of a number as it was printed. */
export const printed = (text: string): number | undefined => (NUMBER.test(text) ? Number(text.replace('−', '-')) : undefined)

/** A phrase with holes as a pattern; what stands between its holes tells how sure a match is. */
function shapeOf(key: string): Shape[] {
  if (!/\{\d+\}/.test(key) || /<\d+\/?>/.test(key)) return []
  const parts = key.split(/\{(\d+)\}/)
  const pattern = parts.map((part, at) => (at % 2 === 1 ? '(.+?)' : part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))).join('')
  return [{ key, shape: new RegExp(`^${pattern}$`, 'u'), weight: parts.filter((_, at) => at % 2 === 0).join('').length, start: parts[0] ?? '', order: parts.filter((_, at) => at % 2 === 1).map(Number) }]
}

/** The form of an entry that goes with the numbers in its holes. */
export function formOf(said: Entry, numbers: readonly (number | undefined)[], plurals: Pick<Intl.PluralRules, 'select'>): string {
  if (typeof said === 'string') return said
  const number = said.of === undefined ? numbers.find((each) => each !== undefined) : numbers[said.of - 1]
  return (number === undefined ? undefined : said[plurals.select(number)]) ?? said.other
}

/** Puts values in the numbered holes of a sentence. */
export const filled = (sentence: string, values: readonly string[]): string => sentence.replace(/\{(\d+)\}/g, (_, nth: string) => values[Number(nth) - 1] ?? '')

/** How finished text is said beside a coach's own words. Answers are kept, for the same few hundred phrases stand on every page. */
export function finished({ language, foreign, entry, form, keys, bold = false }: With): (theirs: Lookup) => (text: string) => Said {
  const shapes = keys.flatMap(shapeOf).toSorted((a, b) => b.weight - a.weight)
  const shared = new Map<string, Answer[]>()
  const listsMatter = foreign || shapes.length < keys.length // in English without a single word said otherwise, a list is what it was

  const number = (text: string): string => {
    const decimals = text.split('.')[1]?.length ?? 0
    return new Intl.NumberFormat(language, { minimumFractionDigits: decimals, maximumFractionDigits: decimals, useGrouping: false }).format(printed(text) ?? 0).replace('-', '−')
  }
  const date = (text: string): string => new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${text}T00:00:00Z`))

  return (theirs) => {
    const answers = new Map<string, Answer>()
    let asked: (readonly [text: string, theirs: boolean])[] = []

    function isTheirs(text: string): boolean {
      const is = theirs.has(text)
      asked.push([text, is])
      return is
    }

    /** An answer from beside other words, where these would have led to it too. */
    const elsewhere = (key: string): Answer | undefined => shared.get(key)?.find((answer) => answer.asked.every(([text, is]) => theirs.has(text) === is))

    function fresh(key: string, depth: number): Answer {
      const outer = asked
      asked = []
      const answer = { said: piece(key, depth), asked }
      asked = outer
      if (answer.said.known || depth === 0) shared.set(key, [...(shared.get(key) ?? []), answer])
      return answer
    }

    /** One piece of text without the spaces around it. */
    function piece(text: string, depth: number): Said {
      const exact = entry(text)
      if (exact !== undefined) return { text: form(exact, []), known: true }
      if (isTheirs(text)) return { text, known: true }
      if (foreign && NUMBER.test(text)) return { text: number(text), known: true }
      if (foreign && DAY.test(text)) return { text: date(text), known: true }
      if (!LETTER.test(text)) return { text, known: true }
      return (depth < DEEPEST ? (shaped(text, depth) ?? (listsMatter ? listed(text, depth) : undefined)) : undefined) ?? { text, known: !foreign }
    }

    function shaped(text: string, depth: number): Said | undefined {
      let best: Said | undefined
      for (const { key, shape, start, order } of shapes) {
        if (!text.startsWith(start)) continue
        const found = shape.exec(text)
        const said = entry(key)
        if (!found || said === undefined) continue
        const values: string[] = []
        const numbers: (number | undefined)[] = []
        let known = true
        for (const [at, nth] of order.entries()) {
          const held = found[at + 1] ?? ''
          const inner = whole(held, depth + 1)
          values[nth - 1] = inner.text
          numbers[nth - 1] = printed(held)
          known &&= inner.known
        }
        const answer = { text: filled(form(said, numbers), values), known }
        if (known) return answer
        if (key.replace(/\{\d+\}/g, '').replace(/\P{L}/gu, '').length >= FEWEST_LETTERS) best ??= answer
      }
      return best?.known || bold ? best : undefined
    }

    /** A list, where every item of it can be said. */
    function listed(text: string, depth: number): Said | undefined {
      for (const between of BETWEEN) {
        const items = text.split(between)
        if (items.length < 2) continue
        const said = items.map((item) => whole(item, depth + 1))
        if (!said.every(({ known }) => known)) continue
        const joint = entry(between.trim())
        const joined = joint === undefined ? between : ` ${form(joint, [])} `
        return { text: said.map((each) => each.text).join(joined), known: true }
      }
      return undefined
    }

    function whole(text: string, depth: number): Said {
      const key = text.trim()
      const answer = answers.get(key) ?? elsewhere(key) ?? fresh(key, depth)
      const { said } = answer
      if (said.known || depth === 0) answers.set(key, answer)
      if (depth > 0) asked.push(...answer.asked)
      if (key === text) return said
      const at = text.indexOf(key)
      return { text: text.slice(0, at) + said.text + text.slice(at + key.length), known: said.known }
    }

    return (text) => whole(text, 0)
  }
}
