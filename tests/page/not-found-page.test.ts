import assert from 'node:assert/strict'
import { test } from 'vitest'
import { framed } from '../../src/page/frame.ts'
import { notFoundPage } from '../../src/page/not-found-page.ts'
import type { Frame } from '../../src/page/site-page.ts'
import { tongueOf } from '../../src/page/tongue.ts'
import { faultsOfPage } from '../site/faults-of-page.ts'

const FRAME: Frame = { title: 'Club handbook', logo: undefined, organisation: 'Tarnwick Gym Club', edition: '1', contact: 'The club', published: undefined, language: 'en', languages: [], safety: undefined }
const shown = (published: string | undefined): string => framed(notFoundPage(published), { ...FRAME, published }, tongueOf('en', { words: {}, theirs: new Set() }))

test('where the handbook does not know its address, the page that is shown at any depth asks for no file and leads nowhere', () => {
  const page = shown(undefined)
  assert.doesNotMatch(page, /(href|src|action)=/)
  assert.match(page, /Go back, or open the first page of the handbook, and look for its ladder there\./)
  assert.match(page, /This handbook is no medical advice/)
  assert.deepEqual(faultsOfPage(page), [])
})

test('where it does, every file and link of that page begins at the root of the host, below the folder it is published in', () => {
  for (const [published, root] of [['https://handbook.example', '/'], ['https://club.example/handbook', '/handbook/']] as const) {
    const ways = [...shown(published).matchAll(/(?:href|src|action)="([^"]*)"/g)].map(([, way = '']) => way)
    assert.ok(ways.length > 10)
    assert.deepEqual(ways.filter((way) => !way.startsWith('#') && !way.startsWith(root)), [])
  }
})
