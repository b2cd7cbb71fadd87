import assert from 'node:assert/strict'
import { test } from 'vitest'
import { pageFiles } from '../../src/site/page-files.ts'

test('the host hands every page back as it was given, in order, whatever signs are in it', async () => {
  const pages = [{ address: '/404.html' as const, html: '<p>{{ not a template }}' }, ...Array.from({ length: 100 }, (_, index) => ({ address: `/row/rung-${index}/` as const, html: `<!doctype html>\n<p>${index} “%” {% raw %}\n` }))]
  assert.deepEqual(await pageFiles(pages), [{ name: '404.html', bytes: pages[0]?.html }, ...pages.slice(1).map(({ address, html }) => ({ name: `${address.slice(1)}index.html`, bytes: html }))])
})
