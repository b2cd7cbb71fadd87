import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { parseHTML } from 'linkedom'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import { measure } from '../../src/measure/measure.ts'
import { inEnglish } from '../../src/page/html.ts'
import { prose } from '../../src/page/prose.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'

const ROOT = path.resolve(import.meta.dirname, '../..')
const README = readFileSync(path.join(ROOT, 'README.md'), 'utf8')
const section = /^## What you can write\n([^]*?)^## /m.exec(README)?.[1] ?? ''

/** The rows of the table: what to show, and the examples, of which those with a break between them stand on lines of their own. */
const rows = [...section.matchAll(/^\| (.*?) \| (`.*`) \|$/gm)].map(([, shows = '', cell = '']) => ({ shows, text: cell.split('<br>').map((part) => part.replaceAll(/^`|`$/g, '').replaceAll('`, `', ' ')).join('\n').replace('\n[^', '\n\n[^') }))

/** What each row must become. */
const BECOMES: Readonly<Record<string, string>> = {
  'a link to a rung, a ladder or a page': 'a[href="../press-up/bench-hands/"] + a[href="../press-up/"] + a[href="../safety/"]',
  'a footnote': '.footnotes li',
  'a picture with its text and a caption': 'figure.picture figcaption',
  'a word and what it means': 'dl dt + dd',
  'a flowchart': 'figure.drawn [role="img"]',
}

test('the table in README.md shows what it says', () => assert.deepEqual(rows.map(({ shows }) => shows), Object.keys(BECOMES)))

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

for (const { shows, text } of rows) {
  test(`README.md: ${shows} is read without a finding and becomes one`, () => {
    const files = [{ file: 'handbook.yaml', bytes: bytes('title: One\norganisation: One club\nedition: "1"\ncontact: nobody yet\n') }, ...['ladders/press-up.md', 'content/safety.md'].map((file) => ({ file, bytes: readFileSync(path.join(ROOT, file)) }))]
    const { value, findings } = readCurriculum([{ files: [...files, { file: 'content/example.md', bytes: bytes(`---\ntitle: Example\norder: 1\nsummary: One.\n---\n${text}\n`) }] }])
    assert.deepEqual(findings, [])
    const body = value?.pages.find(({ id }) => id === 'example')?.body ?? ''
    assert.ok(value && body.trim() === text)
    assert.deepEqual(check(measure(value), '2026-01-01').findings.filter(({ file }) => file === 'content/example.md'), [])
    const page = parseHTML(`<!doctype html><html><body>${inEnglish(prose(body, { from: '/example/', first_heading: 2, file: () => 'content/example.md' }))}</body></html>`).document
    assert.ok(page.querySelector(BECOMES[shows] ?? 'none'), page.body.innerHTML)
  })
}
