import assert from 'node:assert/strict'
import { test } from 'vitest'
import { cutFrontMatter } from '../../src/read/front-matter.ts'
import { said } from './said.ts'

test('a file is cut at its fences, and knows where each part begins', () => {
  assert.deepEqual(cutFrontMatter('a.md', '---\nid: a\ntitle: A\n---\n\nProse.\n'), {
    value: { yaml: 'id: a\ntitle: A', yaml_line: 2, body: '\nProse.\n', body_line: 5 },
    findings: [],
  })
})

test('blanks after a fence do no harm, and the first closing fence closes', () => {
  assert.deepEqual(cutFrontMatter('a.md', '---  \nid: a\n---\t\n---\nx').value, { yaml: 'id: a', yaml_line: 2, body: '---\nx', body_line: 4 })
})

test('a fence that is indented does not close', () => {
  assert.equal(cutFrontMatter('a.md', '---\ntitle: |\n  ---\n---\n').value?.yaml, 'title: |\n  ---')
})

const OTHER = 'Begin it with a line of three hyphens, ---, and write the front matter as YAML. (front-matter-is-there)'
const NONE = '1:1 The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again. (front-matter-is-there)'
const OPEN = '1:1 The front matter is not closed. Put a line of three hyphens, ---, after its last key. (front-matter-is-there)'

const refused = [
  { text: '---js\n{ id: process.exit() }\n---\n', finds: `1:1 The file begins with "---js". ${OTHER}` },
  { text: '---json\n{}\n---\n', finds: `1:1 The file begins with "---json". ${OTHER}` },
  { text: '----\nid: a\n----\n', finds: `1:1 The file begins with "----". ${OTHER}` },
  { text: `---${'j'.repeat(100)}\n`, finds: `1:1 The file begins with "---jjjjjjjjj". ${OTHER}` },
  { text: '+++\nid = "a"\n+++\n', finds: `1:1 The file begins with "+++". ${OTHER}` },
  { text: ';;;\n{}\n;;;\n', finds: `1:1 The file begins with ";;;". ${OTHER}` },
  { text: '# Press-up\n', finds: NONE },
  { text: '\n---\nid: a\n---\n', finds: NONE },
  { text: ' ---\nid: a\n---\n', finds: NONE },
  { text: '\ufeff---\nid: a\n---\n', finds: NONE },
  { text: '---\nid: a\n', finds: OPEN },
  { text: '---', finds: OPEN },
  { text: '---\nid: a\n...\n', finds: OPEN },
]

for (const { text, finds } of refused) {
  test(`${JSON.stringify(text.slice(0, 24))} is no front matter`, () => {
    const { value, findings } = cutFrontMatter('a.md', text)
    assert.equal(value, undefined)
    assert.deepEqual(said(findings), [finds])
  })
}
