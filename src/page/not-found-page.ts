import { rootedAt } from './address.ts'
import { html } from './html.ts'
import type { SitePage } from './site-page.ts'

/** What is shown where nothing is, at addresses of any depth. Where the handbook does not know its own address no link would surely lead home, and the words stand alone. */
export const notFoundPage = (published: string | undefined): SitePage => ({
  address: '/404.html',
  anywhere: true,
  title: 'This page is not here',
  description: 'There is no page at this address.',
  body: html`<h1>This page is not here</h1>
${published === undefined ? html`<p>A rung may have been renamed or withdrawn since a card was printed. Go back, or open the first page of the handbook, and look for its ladder there.</p>` : html`<p>A rung may have been renamed or withdrawn since a card was printed. Look for its ladder on the <a href="${rootedAt(published, '/')}">first page</a>, or search for it above.</p>`}`,
})
