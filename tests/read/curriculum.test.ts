import assert from 'node:assert/strict'
import { test } from 'vitest'
import { readCurriculum, readHandbook } from '../../src/read/read-curriculum.ts'
import { readPage } from '../../src/read/read-page.ts'
import { HANDBOOK, inFiles, layer } from './layers.ts'
import { bytes, edited, LADDER, said } from './said.ts'

const PAGE = '---\ntitle: A page\nsummary: What it says\n---\nProse.\n'

/** What is found in one workspace of these files. */
const found = (files: Readonly<Record<string, string>>): string[] => inFiles(readCurriculum([layer('', files)]).findings)

test('two ladders of one id are a finding in the second, by the name of the file', () => {
  assert.deepEqual(found({ 'ladders/b.md': LADDER, 'ladders/a/z.md': LADDER }), [
    'ladders/b.md:2:1 The ladder "balance" is already there, in ladders/a/z.md:2. Give this one another id, or write amends: balance to change that one. (ids-are-unique)',
  ])
})

test('a ladder of a layer above with the id of one below is a finding too', () => {
  const { findings } = readCurriculum([layer('../base/', { 'ladders/a.md': LADDER }), layer('', { 'ladders/a.md': LADDER })])
  assert.deepEqual(inFiles(findings), [
    'ladders/a.md:2:1 The ladder "balance" is already there, in ../base/ladders/a.md:2. Give this one another id, or write amends: balance to change that one. (ids-are-unique)',
  ])
})

test('a page and a ladder of one address are a finding on the page', () => {
  assert.deepEqual(found({ 'ladders/a.md': LADDER, 'content/balance.md': PAGE }), [
    'content/balance.md:2:1 The page "balance" and the ladder "balance" would share one address. Rename the page\'s file. (ids-are-unique)',
  ])
})

test('a ladder or page called as another language of the handbook is a finding, whatever its letters; one called as the first is none', () => {
  const named = (id: string): string => LADDER.replace('id: balance', `id: ${id}`)
  const handbook = `${HANDBOOK}languages: [en, es, pt-BR]\n`
  const told = found({ 'handbook.yaml': handbook, 'ladders/a.md': named('es'), 'ladders/b.md': named('en'), 'ladders/c.md': named('de'), 'content/pt-br.md': PAGE })
  assert.deepEqual(told.filter((line) => line.endsWith('(ids-are-unique)')), [
    'content/pt-br.md:2:1 The page "pt-br" would stand where the handbook stands in the language pt-BR. Rename its file. (ids-are-unique)',
    'ladders/a.md:2:1 The ladder "es" would stand where the handbook stands in the language es. Give it another id. (ids-are-unique)',
  ])
})

test('two pages of one address in one layer are a finding in the second', () => {
  assert.deepEqual(found({ 'content/on-water.md': PAGE, 'content/on/water.md': PAGE }), [
    'content/on/water.md:2:1 The page "on-water" is already there, in content/on-water.md. Rename one of the two files. (ids-are-unique)',
  ])
})

test('a page takes the place of one in the layer below', () => {
  const { value, findings } = readCurriculum([layer('../base/', { 'content/safety.md': PAGE }), layer('', { 'content/safety.md': PAGE.replace('Prose', 'Ours') })])
  assert.deepEqual(findings, [])
  assert.deepEqual(value?.pages.map(({ id, body }) => [id, body]), [['safety', 'Ours.\n']])
})

test('ladders and pages come in the order of their ids, whatever their files are called', () => {
  const { value, findings } = readCurriculum([layer('', { 'ladders/1.md': LADDER, 'ladders/2.md': edited(LADDER, 'id: balance', 'id: archery'), 'content/z.md': PAGE, 'content/b.md': PAGE })])
  assert.deepEqual(findings, [])
  assert.deepEqual([value?.ladders.map(({ id }) => id), value?.pages.map(({ id }) => id)], [['archery', 'balance'], ['b', 'z']])
})

test('findings of many files come in file order', () => {
  assert.deepEqual(found({ 'ladders/b.md': 'x', 'content/a.md': 'x', 'ladders/a.md': '' }).map((line) => line.split(' ')[0]), ['content/a.md:1:1', 'ladders/a.md:1:1', 'ladders/b.md:1:1'])
})

for (const [file, id] of [
  ['content/Safety.md', 'Safety'],
  ['content/a b.md', 'a b'],
  ['content/index.md', 'index'],
  ['content/con.md', 'con'],
  ['content/404.md', '404'],
  ['content/%2e%2e.md', '%2e%2e'],
  ['content/..%2fx.md', '..%2fx'],
  ['content/x\\y.md', 'x\\y'],
  ['content/x\ny.md', 'x\ny'],
  ['content/é.md', 'é'],
  ['content/x.md.md', 'x.md'],
  [`content/${'a'.repeat(300)}.md`, 'a'.repeat(80)],
] as const) {
  test(`a page in ${JSON.stringify(file.slice(0, 30))} has no address`, () => {
    assert.deepEqual(found({ [file]: PAGE }), [
      `${file}:1:1 The file is named "${id}", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md. (file-names-are-addresses)`,
    ])
  })
}

test('a page tells its slips with their lines', () => {
  const page = (text: string) => said(readPage('content/a.md', 'content/a.md', bytes(text), 'A club').findings)
  assert.deepEqual(page('---\ntitel: A\norder: many\n---\n'), [
    '3:1 order must be a number from 0 to 1000. (values-fit)',
    '2:1 summary is not given here. Add it. (keys-are-given)',
    '2:1 There is no key "titel" here. Did you mean title? (keys-are-known)',
  ])
  assert.deepEqual(page('# A'), ['1:1 The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again. (front-matter-is-there)'])
  for (const empty of ['', '- a', 'hello']) assert.deepEqual(page(`---\n${empty}\n---\n`), ['2:1 The file must hold keys such as title. (values-fit)'])
})

test('a handbook tells its slips with their lines', () => {
  const handbook = (text: string) => said(readHandbook({ file: 'handbook.yaml', bytes: bytes(text) }).findings)
  assert.deepEqual(handbook(HANDBOOK), [])
  assert.deepEqual(handbook('# nothing yet'), ['1:1 The file must hold keys such as title. (values-fit)'])
  assert.deepEqual(handbook('- title'), ['1:1 The file must hold keys such as title. (values-fit)'])
  assert.deepEqual(handbook(HANDBOOK.replace('"2026.1"', '2026.1')), ['3:1 edition must be words in quotes, such as "2026.2". (values-fit)'])
  assert.deepEqual(handbook(HANDBOOK.replace('"2026.1"', '../2026')), ['3:1 edition must be letters, digits, dots and hyphens, such as "2026.2". (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}languages: en\n`), ['5:1 languages must be a list such as [en, es]. (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}languages: []\n`), ['5:1 languages must name at least one language. (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}languages: [en, english, 5]\n`), ['5:17 Each language must be a code such as en or pt-BR. (values-fit)', '5:26 Each language must be a code such as en or pt-BR. (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}languages: [${Array.from({ length: 21 }, () => 'en').join(', ')}]\n`), ['5:1 languages must be a list of at most 20. (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}units: stone\n`), ['5:1 units must be one of: metric, imperial. (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}colours: red\n`), ['5:1 colours must hold accent. (values-fit)'])
  assert.deepEqual(handbook(`${HANDBOOK}colours: { accent: red }\n`), ['5:12 accent must be a colour such as "#0b5563". (values-fit)'])
  for (const address of ['handbook.example', 'http://handbook.example', 'https://handbook.example/?a=b', 'https://handbook.example/#top', 'https://', `https://${'a'.repeat(193)}`, '[]']) {
    assert.deepEqual(handbook(`${HANDBOOK}address: ${address}\n`), [
      `5:1 address must be the https address at which the handbook is published, such as https://handbook.example, at most 200 characters. (values-fit)`,
    ])
  }
  for (const address of ['https://handbook.example', 'https://handbook.example/', 'https://a-b.example:8443/club/2026']) assert.deepEqual(handbook(`${HANDBOOK}address: ${address}\n`), [])
  assert.deepEqual(handbook(`${HANDBOOK}colour: red\n`), ['5:1 There is no key "colour" here. Did you mean colours? (keys-are-known)'])
  assert.deepEqual(handbook(''), ['1:1 The file is empty. Write in it, or delete it. (files-are-text)'])
})

test('without a handbook that reads there is no curriculum, and what is wrong is told', () => {
  assert.deepEqual(readCurriculum([{ files: [] }]), {
    findings: [{ file: 'handbook.yaml', line: 1, column: 1, rule: 'handbook-is-there', message: 'There is no handbook.yaml here. Write one with title, organisation, edition and contact.' }],
  })
  assert.deepEqual(readCurriculum([]), { findings: [{ file: 'handbook.yaml', line: 1, column: 1, rule: 'handbook-is-there', message: 'There is no workspace here.' }] })
  assert.deepEqual(inFiles(readCurriculum([layer('', { 'handbook.yaml': 'title: A\norganisation: B\nedition: "1"\n' })]).findings), ['handbook.yaml:1:1 contact is not given here. Add it. (keys-are-given)'])
})
