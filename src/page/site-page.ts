import type { Address } from './address.ts'
import type { Html, Words } from './html.ts'
import type { About } from './linked-data.ts'

/** One page of the handbook before its frame is put around it. */
export type SitePage = {
  readonly address: Address
  readonly title: Words
  readonly description: Words
  readonly body: Html
  /** Hosts show this page at addresses of any depth: its links begin at the root of the host, or there are none where that is not known. */
  readonly anywhere?: true
  /** The ladder the page belongs to: what is kept for reading without a signal. */
  readonly ladder?: string
  /** What the page is about, for programs that read it. */
  readonly about?: About
  /** True of a page that asks the device for a body half-way down: the script that does is fetched with the stylesheet, so that it keeps nobody waiting. */
  readonly own?: true
  /** What search may filter by, and show: words by name. Absent, and the page is not searched. */
  readonly found?: { readonly kind: string; readonly movement?: string; readonly equipment?: readonly string[]; readonly demand?: readonly string[]; readonly load?: Words }
}

/** The frame's own words and links, the same on every page. */
export type Frame = {
  readonly title: string
  readonly logo: Html | undefined
  readonly organisation: string
  readonly edition: string
  readonly contact: string
  /** Where the handbook is published, without a slash at its end, if that is known. */
  readonly published: string | undefined
  readonly language: string
  /** Every language the handbook is in, the first at its root; `root` is where that is published, where that is known. */
  readonly languages: readonly { readonly language: string; readonly name: string; readonly under: string; readonly root: string | undefined }[]
  /** The page on safety, one step from every other, where the handbook has one. */
  readonly safety: { readonly id: string; readonly title: string } | undefined
}
