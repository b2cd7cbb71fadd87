import type { MeasuredCurriculum } from '../measure/measure.ts'
import { accentOf, LIGHT_PAPER } from './accent.ts'
import { escaped } from './escaped.ts'
import { POLICY } from './frame.ts'
import type { WrittenPage } from './handbook-pages.ts'

/** What a telephone shows of the handbook when it is put on its first screen. */
export function webManifest({ handbook }: MeasuredCurriculum): string {
  const accent = accentOf(handbook.colours?.accent ?? '#7a3b12')
  return `${JSON.stringify(
    {
      name: handbook.title,
      short_name: handbook.title.slice(0, 30),
      description: `${handbook.organisation}, edition ${handbook.edition}`,
      lang: handbook.languages[0] ?? 'en',
      start_url: './',
      scope: './',
      display: 'minimal-ui',
      background_color: LIGHT_PAPER,
      theme_color: accent.onLight,
      icons: [{ src: 'assets/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
    },
    null,
    1,
  )}\n`
}

/** Every page by its whole address, for those who look for pages; only where the handbook says where it is published. */
export function siteMap(pages: readonly WrittenPage[], address: string): string {
  const root = address.replace(/\/$/, '')
  const locations = pages.flatMap(({ address: page }) => (page.endsWith('/') ? [`  <url><loc>${escaped(root + page)}</loc></url>\n`] : []))
  return `<?xml version="1.0" encoding="utf-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${locations.join('')}</urlset>\n`
}

/** Seconds a file may be kept without asking again: named by its content, a year; else asked for each time. */
const YEAR_S = 31_536_000

/** Headers for static hosts that read a file of this form: a path, then indented headers. */
export const headersFile = (): string => `/*
  Content-Security-Policy: ${POLICY}; frame-ancestors 'none'
  Strict-Transport-Security: max-age=${YEAR_S}
  X-Content-Type-Options: nosniff
  Referrer-Policy: no-referrer
  Permissions-Policy: camera=(), microphone=(), geolocation=(), payment=(), usb=()
  Cache-Control: no-cache

/pagefind/fragment/*
  Cache-Control: public, max-age=${YEAR_S}, immutable

/pagefind/index/*
  Cache-Control: public, max-age=${YEAR_S}, immutable
`
