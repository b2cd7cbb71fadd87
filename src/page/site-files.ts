import type { MeasuredCurriculum } from '../measure/measure.ts'
import { accentOf, LIGHT_PAPER, STARTER_ACCENT } from './accent.ts'
import { escaped } from './escaped.ts'
import { say } from './html.ts'
import type { Tongue } from './tongue.ts'
import { spoken } from './written.ts'
import type { WrittenPage } from './handbook-pages.ts'

/** What a telephone shows of the handbook when it is put on its first screen. */
export function webManifest({ handbook }: MeasuredCurriculum, tongue: Tongue): string {
  const accent = accentOf(handbook.colours?.accent ?? STARTER_ACCENT)
  return `${JSON.stringify(
    {
      name: handbook.title,
      short_name: handbook.title.slice(0, 30),
      description: spoken(say`${handbook.organisation}, edition ${handbook.edition}`, tongue),
      lang: tongue.language,
      start_url: './',
      scope: './',
      display: 'minimal-ui',
      background_color: LIGHT_PAPER,
      theme_color: accent.onLight,
      icons: [
        { src: 'assets/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
        { src: 'assets/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
        { src: 'assets/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
        { src: 'assets/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      ],
    },
    null,
    1,
  )}\n`
}

/** The pages of a handbook in one language, and where that is published. */
export type Mapped = { readonly language: string; readonly root: string; readonly pages: readonly Pick<WrittenPage, 'address'>[] }

/** Every page in every language by its whole address, each with the same page in the others, for those who look for pages. */
export function siteMap(languages: readonly Mapped[]): string {
  const [first] = languages
  const all = (address: string): string =>
    languages.length < 2 || !first
      ? ''
      : [...languages, { ...first, language: 'x-default' }].map(({ language, root }) => `<xhtml:link rel="alternate" hreflang="${language}" href="${escaped(root + address.slice(1))}"/>`).join('')
  const locations = languages.flatMap(({ root, pages }) => pages.flatMap(({ address }) => (address.endsWith('/') ? [`  <url><loc>${escaped(root + address.slice(1))}</loc>${all(address)}</url>\n`] : [])))
  const more = languages.length < 2 ? '' : ' xmlns:xhtml="http://www.w3.org/1999/xhtml"'
  return `<?xml version="1.0" encoding="utf-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9"${more}>\n${locations.join('')}</urlset>\n`
}
