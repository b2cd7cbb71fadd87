import { escaped } from './escaped.ts'
import { filled, printed } from './finished.ts'
import type { Amount, Html, Kept, Part, Phrase } from './html.ts'
import { piecesOf, type Context, type Piece } from './template.ts'
import type { Said, Tongue } from './tongue.ts'

const isHtml = (part: object): part is Html => 'strings' in part
const isPhrase = (part: object): part is Phrase => 'says' in part
const isKept = (part: object): part is Kept => 'kept' in part
const isAmount = (part: object): part is Amount => 'unit' in part

/** A page, or any part of one, as markup in one language. */
export const written = (markup: Html, tongue: Tongue): string => part(markup, 'words', tongue)

/** Words as plain text in one language. */
export const spoken = (words: Part, tongue: Tongue): string => {
  if (words === undefined || words === false) return ''
  if (typeof words === 'function') return spoken(words(tongue), tongue)
  if (typeof words === 'string' || typeof words === 'number') return counted(tongue.said(String(words)), String(words), tongue).text
  if (isList(words)) return words.map((each) => spoken(each, tongue)).join('')
  if (isHtml(words)) return part(words, 'plain', tongue)
  if (isKept(words)) return words.kept
  return isPhrase(words) ? phrase(words, tongue).text : tongue.amount(words).text
}

const isList = (value: object): value is readonly Part[] => Array.isArray(value)

/** Notes what could not be said. */
function counted(said: Said, asked: string, tongue: Tongue): Said {
  if (!said.known) tongue.untranslated.add(asked.trim())
  return said
}

function part(value: Part, context: Context, tongue: Tongue): string {
  if (value === undefined || value === false) return ''
  if (typeof value === 'function') return part(value(tongue), context, tongue)
  if (typeof value === 'number') return context === 'tag' || context === 'verbatim' ? String(value) : tongue.said(String(value)).text
  if (typeof value === 'string') return context === 'tag' || context === 'verbatim' ? escaped(value) : marked(counted(tongue.said(value), value, tongue), context)
  if (isList(value)) return value.map((each) => part(each, context, tongue)).join('')
  if (isPhrase(value)) return marked(phrase(value, tongue), context)
  if (isKept(value)) return escaped(value.kept)
  if (isAmount(value)) return marked(tongue.amount(value), context)
  if (value.raw) return value.strings.join('')
  return pieces(piecesOf(value.strings, context), value.parts, tongue)
}

/** Text a page takes as it is; what is in another language says so where it can. */
const marked = ({ text, known, language = known ? undefined : 'en' }: Said, context: Context): string => (language === undefined || context !== 'words' ? escaped(text) : `<span lang="${language}">${escaped(text)}</span>`)

const pieces = (all: readonly Piece[], parts: readonly Part[], tongue: Tongue): string =>
  all.map((piece) => (piece.kind === 'markup' ? piece.text : piece.kind === 'hole' ? part(parts[piece.index], piece.context, tongue) : sentence(piece, parts, tongue))).join('')

/** The number in a hole, by which a language may choose a form. */
function numberIn(value: Part): number | undefined {
  if (typeof value === 'number') return value
  if (typeof value === 'string') return printed(value)
  return typeof value === 'object' && isAmount(value) && value.low === value.high ? value.low : undefined
}

/** A sentence of a template: as it stands, or the language's own with holes and elements put where it wants them. */
function sentence(piece: Extract<Piece, { kind: 'sentence' }>, parts: readonly Part[], tongue: Tongue): string {
  const { key, holes, before, after, context } = piece
  const entry = tongue.entry(key)
  if (entry === undefined) {
    const plain = pieces(piece.pieces, parts, tongue)
    if (!tongue.foreign) return plain
    tongue.untranslated.add(key)
    return context === 'words' ? `${before}<span lang="en">${plain.trim()}</span>${after}` : plain
  }
  const said = tongue.form(entry, holes.map(({ index }) => numberIn(parts[index])))
  return before + said.split(/(\{\d+\}|<\/?\d+\/?>)/).map((token) => placed(token, piece, parts, tongue)).join('') + after

  function placed(token: string, { holes: own, tags: elements }: typeof piece, values: readonly Part[], to: Tongue): string {
    const hole = own[Number(/^\{(\d+)\}$/.exec(token)?.[1] ?? 0) - 1]
    if (hole) return part(values[hole.index], hole.context, to)
    const nth = /^<(\/?)(\d+)(\/?)>$/.exec(token)
    const tag = nth && elements[Number(nth[2]) - 1]
    if (!nth || !tag) return escaped(token)
    return nth[1] === '/' ? tag.close : pieces(tag.open, values, to)
  }
}

/** A phrase with its holes filled, and whether all of it could be said. */
function phrase({ says, holes }: Phrase, tongue: Tongue): Said {
  const key = says.map((text, index) => (index === 0 ? text : `{${index}}${text}`)).join('')
  const values = holes.map((hole) => spoken(hole, tongue))
  const entry = tongue.entry(key.trim())
  const words = /\p{L}/u.test(says.join(''))
  const said = entry === undefined ? key : `${/^\s*/.exec(key)?.[0] ?? ''}${tongue.form(entry, holes.map(numberIn))}${/\s*$/.exec(key)?.[0] ?? ''}`
  return counted({ text: filled(said, values), known: entry !== undefined || !words || !tongue.foreign }, key, tongue)
}
