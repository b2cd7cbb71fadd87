import assert from 'node:assert/strict'
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import Ajv from 'ajv'
import { expect, test } from 'vitest'
import { REPOSITORY, run, scratch } from '../site/demo.ts'
import { HANDBOOK, ladder } from './small.ts'

const folder = await scratch()
let count = 0

/** A workspace of its own for one test. */
function workspace(files: Readonly<Record<string, string>> = {}): { at: string; write(file: string, text: string | Uint8Array): void; read(file: string): string; files(): string[] } {
  count += 1
  const at = path.join(folder, `club ${count}`)
  const write = (file: string, text: string | Uint8Array): void => {
    mkdirSync(path.dirname(path.join(at, file)), { recursive: true })
    writeFileSync(path.join(at, file), text)
  }
  for (const [file, text] of Object.entries({ 'handbook.yaml': HANDBOOK, ...files })) write(file, text)
  return { at, write, read: (file) => readFileSync(path.join(at, file), 'utf8'), files: () => readdirSync(at, { recursive: true, encoding: 'utf8' }).filter((file) => /\.(md|new)$/.test(file)).toSorted() }
}

test('a handbook’s ladders go out as a table, into an empty workspace, and out again as the same bytes', async () => {
  const { out } = await run(REPOSITORY, 'export')
  const club = workspace({ 'ladders.csv': out })
  const { code, out: said, note } = await run(club.at, 'import', 'ladders.csv')
  assert.equal(code, 0, said + note)
  assert.match(said, /^written {2}ladders\/calf-raise\.md$/m)
  assert.equal((await run(club.at, 'export')).out, out)
  const checked = await run(club.at, 'check')
  assert.doesNotMatch(checked.out, /keys-are|values-fit|sections-|front-matter/)
})

test('the template is a table that can be imported as it is', async () => {
  const club = workspace()
  const { code, note } = await run(club.at, 'export', '--template', '--output', 'template.csv')
  assert.equal(code, 0)
  assert.equal(note, 'written to template.csv\n')
  assert.equal((await run(club.at, 'import', 'template.csv')).code, 0)
  assert.deepEqual(club.files(), ['ladders/press-up-template.md'])
  assert.match(club.read('ladders/press-up-template.md'), /^---\nid: press-up-template\ntitle: Press-up\n/)
})

test('a new file is written, and one that is there is not', async () => {
  const club = workspace({ 'ladders/bench-press.md': ladder() })
  assert.equal((await run(club.at, 'export', 'bench-press', '--output', 'one.csv')).code, 0)
  const again = await run(club.at, 'export', '--output', 'one.csv')
  assert.equal(again.code, 2)
  assert.match(again.note, /^"one\.csv" is there already, and is not written over\. Name another file, or take it away\.\n/)
  assert.equal((await run(club.at, 'export', 'bench-pres')).note.split('\n')[0], 'There is no ladder "bench-pres" here. Did you mean bench-press?')
})

test('one wrong row, and nothing is written', async () => {
  const club = workspace({ 'ladders/bench-press.md': ladder() })
  const { out } = await run(club.at, 'export')
  club.write('two.csv', out.replaceAll('bench-press', 'press') + out.split('\r\n').slice(1, 3).join('\r\n').replaceAll('bench-press', 'row').replace(',22,', ',twenty,'))
  const { code, out: said, note } = await run(club.at, 'import', 'two.csv')
  assert.equal(code, 1)
  assert.match(said, /^1 to fix\n {2}two\.csv:5:7 {2}Row 5, column G \(load_kg\): "twenty" is not a plain number\. Write it as 12 or 12\.5\. {2}\(tables-are-sound\)\n$/)
  assert.equal(note, 'Nothing was written.\n')
  assert.deepEqual(club.files(), ['ladders/bench-press.md'])
})

test('a ladder that is there is written anew only with --replace, in the file it stands in, and not at all if nothing is new', async () => {
  const club = workspace({ 'ladders/presses/first.md': ladder() })
  const { out } = await run(club.at, 'export')
  club.write('ladders.csv', out.replace(',22,', ',24,'))
  const refused = await run(club.at, 'import', 'ladders.csv')
  assert.equal(refused.code, 1)
  assert.match(refused.out, /Row 2: The ladder "bench-press" is already there, in ladders\/presses\/first\.md\. Import with --replace to write it anew, or give this one another id\./)
  assert.equal(club.read('ladders/presses/first.md'), ladder())
  const replaced = await run(club.at, 'import', 'ladders.csv', '--replace')
  assert.equal(replaced.out, 'written  ladders/presses/first.md\n')
  assert.match(club.read('ladders/presses/first.md'), /load_kg: 24/)
  assert.equal((await run(club.at, 'import', 'ladders.csv', '--replace')).out, 'as it was  ladders/presses/first.md\n')
  assert.deepEqual(club.files(), ['ladders/presses/first.md'])
})

test('a ladder of a layer below, a file of another ladder and a file behind a link are left alone', async () => {
  const below = workspace({ 'ladders/bench-press.md': ladder() })
  const club = workspace({ 'handbook.yaml': `${HANDBOOK}extends: ${JSON.stringify(path.relative(path.join(folder, 'x'), below.at))}\n` })
  const { out } = await run(below.at, 'export')
  club.write('ladders.csv', out)
  const foreign = await run(club.at, 'import', 'ladders.csv', '--replace')
  assert.equal(foreign.code, 1)
  assert.match(foreign.out, /That layer is not ours to change\. Give this one another id, or amend that one\./)
  const taken = workspace({ 'ladders/bench-press.md': ladder({ id: 'other' }), 'ladders.csv': out })
  assert.equal((await run(taken.at, 'import', 'ladders.csv', '--replace')).note, 'Nothing was written: "ladders/bench-press.md" is there already.\n')
  const linked = workspace({ 'ladders.csv': out, 'elsewhere.md': 'mine', 'ladders/x.md': ladder({ id: 'x', title: 'X' }) })
  symlinkSync(path.join(linked.at, 'elsewhere.md'), path.join(linked.at, 'ladders/bench-press.md'))
  assert.equal((await run(linked.at, 'import', 'ladders.csv', '--replace')).code, 1)
  assert.equal(linked.read('elsewhere.md'), 'mine')
})

test('if one of several files cannot be put in place, those before it are as they were', async () => {
  const club = workspace({ 'ladders/a-press.md': ladder({ id: 'a-press', title: 'A' }) })
  const { writeLadders } = await import('../../src/site/write-ladders.ts')
  const first = { file: 'ladders/a-press.md', text: 'changed', instead: true }
  let asked = 0
  const late = {
    file: 'ladders/b-press.md',
    text: 'ours',
    get instead() {
      asked += 1
      if (asked === 2) club.write('ladders/b-press.md', 'somebody else’s, this moment')
      return false
    },
  }
  assert.deepEqual(await writeLadders(club.at, [first, late]), { refused: 'the files could not be written (EEXIST)' })
  assert.equal(club.read('ladders/a-press.md'), ladder({ id: 'a-press', title: 'A' }))
  assert.equal(club.read('ladders/b-press.md'), 'somebody else’s, this moment')
  assert.ok('refused' in (await writeLadders(club.at, [first, { file: 'ladders/a-press.md/c.md', text: 'cannot be', instead: false }])))
  assert.equal(club.read('ladders/a-press.md'), ladder({ id: 'a-press', title: 'A' }))
  assert.deepEqual(club.files(), ['ladders/a-press.md', 'ladders/b-press.md'])
})

test('a table an older spreadsheet wrote is read in its encoding', async () => {
  const club = workspace({ 'ladders/bench-press.md': ladder({ id: 'old', title: 'Développé' }) })
  const { out } = await run(club.at, 'export')
  club.write('old.csv', Uint8Array.from([...out.slice(1).replaceAll('old,', 'new,').replace('Rung 1', 'Échelon 1')].map((letter) => letter.charCodeAt(0))))
  assert.match((await run(club.at, 'import', 'old.csv')).out, /A letter here is not UTF-8\. Save the table again as "CSV UTF-8", or import it with --encoding windows-1252/)
  assert.equal((await run(club.at, 'import', 'old.csv', '--encoding', 'windows-1252')).code, 0)
  assert.match(club.read('ladders/new.md'), /title: Échelon 1/)
  assert.match((await run(club.at, 'import', 'old.csv', '--encoding', 'ebcdic')).note, /^--encoding must be one of windows-1252, iso-8859-15, macintosh, not "ebcdic"\./)
  assert.match((await run(club.at, 'import', 'none.csv')).note, /^There is no file "none\.csv"\./)
})

test('the whole curriculum goes out as one JSON that fits its schema', async () => {
  for (const at of [REPOSITORY, path.join(REPOSITORY, 'site-demo')]) {
    const { code, out } = await run(at, 'export', '--format', 'json')
    assert.equal(code, 0)
    const { out: schema } = await run(at, 'schema', 'curriculum')
    const ajv = new Ajv({ allErrors: true })
    expect(ajv.validate(JSON.parse(schema) as object, JSON.parse(out)), ajv.errorsText()).toBe(true)
    const whole = JSON.parse(out) as { ladders: { id: string; rungs: { words?: { cues?: string[] } }[] }[] }
    assert.ok((whole.ladders.find(({ id }) => id === 'press-up')?.rungs[0]?.words?.cues?.length ?? 0) > 0)
    assert.ok(!out.includes('"places"'))
  }
})

test('the JSON goes into an empty workspace, and out of it again as the same bytes but for whose it is', async () => {
  const { out } = await run(REPOSITORY, 'export', '--format', 'json')
  const club = workspace({ 'handbook.yaml': readFileSync(path.join(REPOSITORY, 'handbook.yaml'), 'utf8').replace(/^logo:.*\n/m, ''), 'all.json': out })
  const { code, out: said, note } = await run(club.at, 'import', 'all.json')
  assert.equal(code, 0, said + note)
  const again = await run(club.at, 'export', '--format', 'json')
  assert.deepEqual({ ...(JSON.parse(again.out) as object), handbook: undefined }, { ...(JSON.parse(out) as object), handbook: undefined })
})

test('JSON that is none, or not ours, is found with the way to what is wrong, and nothing is written', async () => {
  const club = workspace({ 'no.json': '{', 'other.json': '{"version": 1}' })
  assert.match((await run(club.at, 'import', 'no.json')).out, /The file is not JSON\. Write it with rungbook export --format json\./)
  assert.match((await run(club.at, 'import', 'other.json')).out, /The file: ladders is not given here\. Add it\./)
  const { out } = await run(workspace({ 'ladders/bench-press.md': ladder() }).at, 'export', '--format', 'json')
  club.write('wrong.json', out.replace('"load_kg": 22', '"load_kg": 2200'))
  assert.match((await run(club.at, 'import', 'wrong.json')).out, /ladders\[0\]\.rungs\[1\]\.load\.load_kg: load_kg must be a number from 0\.5 to 500 kg\./)
  club.write('prose.json', out.replace('"intro": ""', '"intro": "## A heading"'))
  assert.match((await run(club.at, 'import', 'prose.json')).out, /ladders\[0\]\.intro: These words would be read otherwise in a ladder file/)
  assert.deepEqual(club.files(), [])
})
