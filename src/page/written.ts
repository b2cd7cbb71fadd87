import { escaped } from './escaped.ts'
import { filled, printed } from './finished.ts'
import type { Amount, Html, Kept, Part, Phrase } from './html.ts'
import { isHole, isPlural, planOf, type Plan, type Plural, type Unsaid } from './plan.ts'
import type { Context } from './template.ts'
import type { Said, Tongue } from './tongue.ts'

const isTemplate = (part: object): part is Extract<Html, { strings: unknown }> => 'strings' in part
const isRaw = (part: object): part is Extract<Html, { raw: unknown }> => 'raw' in part
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
  if (isTemplate(words) || isRaw(words)) return part(words, 'plain', tongue)
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
  if (typeof value === 'string') return context === 'tag' || context === 'verbatim' ? escaped(value) : marked(counted(tongue.said(value), value, tongue), context)
  if (typeof value === 'number') return context === 'tag' || context === 'verbatim' ? String(value) : tongue.said(String(value)).text
  if (typeof value === 'function') return part(value(tongue), context, tongue)
  if (isList(value)) return listed(value, context, tongue)
  if (isTemplate(value)) return followed(planOf(value.strings, context, tongue), value.parts, tongue)
  if (isRaw(value)) return value.raw
  if (isPhrase(value)) return marked(phrase(value, tongue), context)
  if (isKept(value)) return escaped(value.kept)
  return marked(tongue.amount(value), context)
}

function listed(values: readonly Part[], context: Context, tongue: Tongue): string {
  let text = ''
  for (const value of values) text += part(value, context, tongue)
  return text
}

/** Text a page takes as it is; what is in another language says so where it can. */
const marked = ({ text, known, language = known ? undefined : 'en' }: Said, context: Context): string => (language === undefined || context !== 'words' ? escaped(text) : `<span lang="${language}">${escaped(text)}</span>`)

/** A template with its holes filled. */
function followed(plan: Plan, parts: readonly Part[], tongue: Tongue): string {
  let text = ''
  for (const step of plan) text += typeof step === 'string' ? step : isHole(step) ? part(parts[step.index], step.context, tongue) : isPlural(step) ? plural(step, parts, tongue) : unsaid(step, parts, tongue)
  return text
}

/** The number in a hole, by which a language may choose a form. */
function numberIn(value: Part): number | undefined {
  if (typeof value === 'number') return value
  if (typeof value === 'string') return printed(value)
  return typeof value === 'object' && isAmount(value) && value.low === value.high ? value.low : undefined
}

const plural = ({ sentence: { holes }, entry, forms }: Plural, parts: readonly Part[], tongue: Tongue): string => followed(forms.get(tongue.form(entry, holes.map(({ index }) => numberIn(parts[index])))) ?? [], parts, tongue)

/** A sentence without words in this language stands in English, and says so where it can. */
function unsaid({ sentence: { key, before, after, context }, plain }: Unsaid, parts: readonly Part[], tongue: Tongue): string {
  tongue.untranslated.add(key)
  const text = followed(plain, parts, tongue)
  return context === 'words' ? `${before}<span lang="en">${text.trim()}</span>${after}` : text
}

/** What a phrase is found by, without the spaces around it, and whether there are words in it besides its holes. */
type Key = { readonly key: string; readonly before: string; readonly after: string; readonly words: boolean }

const keys = new WeakMap<readonly string[], Key>()

/** The key of a phrase; worked out once for each phrase of the program. */
function keyOf(says: readonly string[]): Key {
  const kept = keys.get(says)
  if (kept) return kept
  const whole = says.map((text, index) => (index === 0 ? text : `{${index}}${text}`)).join('')
  const key = whole.trim()
  const made = { key, before: key === '' ? whole : whole.slice(0, whole.indexOf(key)), after: key === '' ? '' : whole.slice(whole.indexOf(key) + key.length), words: /\p{L}/u.test(says.join('')) }
  keys.set(says, made)
  return made
}

/** A phrase with its holes filled, and whether all of it could be said. */
function phrase({ says, holes }: Phrase, tongue: Tongue): Said {
  const { key, before, after, words } = keyOf(says)
  const values = holes.map((hole) => spoken(hole, tongue))
  const entry = tongue.entry(key)
  const text = entry === undefined ? says.map((said, index) => (index === 0 ? said : values[index - 1] + said)).join('') : before + filled(tongue.form(entry, holes.map(numberIn)), values) + after
  return counted({ text, known: entry !== undefined || !words || !tongue.foreign }, key, tongue)
}
