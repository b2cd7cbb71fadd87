import { linksIn } from '../read/links.ts'
import { textsIn, type Words } from '../ladder/translation.ts'
import type { Found, Rule } from './rule.ts'
import { begun, called, lacking, pathOf, type Spoken } from './translated.ts'

/** Numbers in digits, with a point whichever sign the language writes. Those inside a link belong to it. */
const numbersIn = (text: string): string[] => (text.replaceAll(/\]\([^)\s]*\)/g, ']').match(/\d+(?:[.,]\d+)*/g) ?? []).map((number) => number.replaceAll(',', '.'))

const hrefsIn = (words: Words): string[] => textsIn(words).flatMap((text) => (text.includes('](') || text.includes('<') ? linksIn(text).map(({ href }) => href) : []))

/** What the original holds and the translation does not, and the other way round. */
function differing(said: Words, original: Words): string[] {
  const [links, numbers] = [[hrefsIn(said), hrefsIn(original)], [textsIn(said).flatMap(numbersIn), textsIn(original).flatMap(numbersIn)]] as const
  const sides = ([is = [], was = []]: readonly string[][], what: string): string[] => [...lacking(was, is).map((one) => `lacks the ${what} ${one}`), ...lacking(is, was).map((one) => `has the ${what} ${one}, which the original does not have`)]
  return [...sides(links, 'link'), ...sides(numbers, 'number')]
}

const found = (one: Spoken): Found[] =>
  begun(one).flatMap((translated) =>
    translated.parts.flatMap((part) => {
      if (part.said === undefined || part.standing === 'stale' || part.differs !== undefined) return []
      const [first] = differing(part.said, part.words)
      return first === undefined ? [] : [{ path: pathOf(translated, part), message: `The ${translated.language} of ${called(part)} ${first}. Make them the same.` }]
    }),
  )

export const translationsKeepLinksAndNumbers: Rule = {
  name: 'translations-keep-links-and-numbers',
  says: 'A translation has the links of its original, and its numbers in digits.',
  why: 'A height of 30 cm that became 300 in one language can hurt somebody, and nobody who reads one language sees it.',

  check: found,

  checkPage: found,
}
