import type { Config } from '@11ty/eleventy'
import type { Address } from '../page/address.ts'
import type { WrittenPage } from '../page/handbook-pages.ts'

/** Where a page's file goes: "/press-up/" to press-up/index.html, "/404.html" as it is. */
export const fileOf = (address: string): string => (address.endsWith('/') ? `${address.slice(1)}index.html` : address.slice(1))

/** The address a page's file is read at. */
export const addressOf = (file: string): Address => `/${file.replace(/(^|\/)index\.html$/, '$1')}`

type PageData = { readonly written: WrittenPage }

/** All that templates are given: one virtual template, one file a page. Nothing of the workspace is read as a template. */
export function handbookPlugin(eleventy: Config): void {
  eleventy.addTemplate('handbook.11ty.js', {
    data: {
      pagination: { data: 'handbook.pages', size: 1, alias: 'written' },
      permalink: ({ written }: PageData) => fileOf(written.address),
      eleventyExcludeFromCollections: true,
    },
    render: ({ written }: PageData) => written.html,
  })
}
