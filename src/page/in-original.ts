import type { Spoken } from '../ladder/translation.ts'
import { fellBackTo } from '../ladder/translation.ts'
import { asIs, html, type Html, type Part } from './html.ts'

/** A ladder or page that may have been put into another language. */
type Whole = { readonly spoken?: Spoken }

/** The attribute of an element whose words stand in the language they were written in; nothing where they are in the page's own. */
export function langOf(whole: Whole, part: string): Html | undefined {
  const language = fellBackTo(whole, part)
  return language === undefined ? undefined : html` lang="${language}"`
}

/** Says, in the reader's language, that a page or some of it is not in that language yet. */
export function untranslatedNote(whole: Whole, parts: readonly string[]): Part {
  const fallen = parts.filter((part) => fellBackTo(whole, part) !== undefined)
  if (fallen.length === 0 || whole.spoken === undefined) return undefined
  const { original } = whole.spoken
  const all = fallen.length === parts.length
  return ({ language }) => {
    const name = asIs(new Intl.DisplayNames([language], { type: 'language' }).of(original) ?? original)
    return html`<p class="amended untranslated">${all ? html`This has no translation yet that says what the original says now. It stands in the original: ${name}.` : html`Some of this has no translation yet that says what the original says now. It stands in the original: ${name}.`}</p>`
  }
}
