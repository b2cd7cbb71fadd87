import assert from 'node:assert/strict'
import path from 'node:path'
import { beforeAll, test } from 'vitest'
import { compare } from '../../src/compare/compare.ts'
import { measure, type MeasuredCurriculum } from '../../src/measure/measure.ts'
import { amendedLine } from '../../src/page/amended-line.ts'
import { changesPage, type EditionChanges } from '../../src/page/changes-page.ts'
import { inEnglish } from '../../src/page/html.ts'
import { html } from '../../src/page/html.ts'
import { speechesOf, type Speech } from '../../src/page/speech.ts'
import { withdrawnPages } from '../../src/page/withdrawn-page.ts'
import { written } from '../../src/page/written.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { readEditions } from '../../src/site/editions.ts'
import { pairs } from '../compare/pairs.ts'
import { before, editedFiles, measured } from '../compare/versions.ts'
import { REPOSITORY } from '../site/demo.ts'

/** The page of changes as a reader of that language sees it: one line a change, without markup. */
const lines = (page: string): string[] => [...page.matchAll(/\n<li>(.*?)<\/li>/gs)].map(([, item = '']) => item.replace(/<br>.*/s, '').replace(/<[^>]+>/g, ''))

const edition = (was: MeasuredCurriculum, is: MeasuredCurriculum): EditionChanges => ({ edition: '2026.2', on: '2026-10-01', note: undefined, since: 'edition 2026.1', comparison: compare(was, is), own_only: false, kept: undefined, kept_own_only: false })

const said = ({ tongue, curriculum }: Speech, changes: readonly EditionChanges[]): string => written(changesPage(curriculum, changes).body, tongue)

/** The demo's own editions, and what was changed in a ladder of the starter, in English and in Spanish. */
const demo = { en: '', es: '', amended: '', cambiado: '' }
const plain = (html: string): string => html.replace(/<[^>]+>/g, '')

beforeAll(async () => {
  const { layers } = await readWorkspace(path.join(REPOSITORY, 'site-demo'))
  const { value } = readCurriculum(layers)
  const now = measure(value ?? assert.fail())
  const { changes } = await readEditions(path.join(REPOSITORY, 'site-demo'), now)
  const [en, es] = speechesOf(now)
  demo.en = said(en ?? assert.fail(), changes)
  demo.es = said(es ?? assert.fail(), changes)
  const amendedIn = ({ curriculum, tongue }: Speech): string => written(html`${curriculum.ladders.filter(({ id }) => id === 'loaded-carry').map((ladder) => ladder.amended.map((each) => amendedLine(each, ladder)))}`, tongue)
  demo.amended = plain(amendedIn(en ?? assert.fail()))
  demo.cambiado = plain(amendedIn(es ?? assert.fail()))
})

test('whatever changes, its kind, its name and phrases of ours are said in Spanish', () => {
  let told = 0
  const english = new Set<string>()
  for (const { edits, says } of pairs) {
    const was = before(edits)
    const states = [was, editedFiles(was, edits)].map((files) => measured({ ...files, 'handbook.yaml': `${files['handbook.yaml'] ?? ''}`.replace(/^languages:.*$/m, '') + 'languages: [en, es]\n' }))
    for (const [one, other] of [states, states.toReversed()]) {
      assert.ok(one && other)
      const es = speechesOf(other)[1] ?? assert.fail()
      told += lines(said(es, [edition(one, other)])).length
      for (const phrase of es.tongue.untranslated) english.add(`${says}: ${phrase}`)
    }
  }
  assert.deepEqual([...english], [])
  assert.ok(told > 100, `${told}`)
})

test('a rung stands by its title, the one that is gone by the title it had, and no id or key is shown', () => {
  const page = lines(demo.en)
  for (const line of [
    'Lifting a boat to a rack with a partner, Waist rack to vehicle roof, 12 kg each: rung withdrawn: heir: Waist rack to vehicle roof, 9 kg each',
    'Lifting a boat to a rack with a partner, Trestles to waist rack, 9 kg each: follows another rung: The words and the way with a pole → Trestles to waist rack, 8 kg each',
  ]) assert.ok(page.includes(line), `${line} is not among\n${page.filter((each) => each.startsWith('Lifting')).join('\n')}`)
  for (const id of ['roof-12', 'waist-8', 'drop-50', 'kg-18', 'both-12-5', 'step-hands', 'withdraw_notes', 'ask_first', '"en"']) assert.deepEqual([id, ...page.filter((line) => line.includes(id))], [id])
})

test('a rung is not taken for the equipment of the same name, nor a coach’s words for a phrase', () => {
  const page = lines(demo.es)
  assert.deepEqual(page.filter((line) => /sigue a otro peldaño.*(: pértiga|, pértiga)/.test(line)), [])
  assert.ok(page.some((line) => line.includes('sigue a otro peldaño: Las palabras y el camino con una pértiga → De los caballetes al soporte de cintura, 8 kg cada persona')), page.join('\n'))
})

test('words of a coach that have a translation today stand in it, and what has none says which language it is in', () => {
  assert.match(demo.es, /nota de seguridad añadida: señales para parar, suelas mojadas/)
  assert.match(demo.es, /repetición completa, <span lang="en">…[^<]+<\/span> → <span lang="en">…/)
  assert.match(demo.es, /<h2 id="edition-2026-2">Edición 2026\.2 /)
})

test('where long words differ late, what differs is seen', () => {
  const [line = ''] = lines(demo.en).filter((each) => each.includes('criterion said otherwise: full rep'))
  const [was, is] = line.split(' → ')
  assert.ok(was && is)
  assert.notEqual(was.split(': full rep, ')[1], is)
})

test('a card of a withdrawn rung leads to why it is gone and to what takes its place', async () => {
  const { layers } = await readWorkspace(path.join(REPOSITORY, 'site-demo'))
  const { value } = readCurriculum(layers)
  const wetExit = measure(value ?? assert.fail()).ladders.find(({ id }) => id === 'wet-exit') ?? assert.fail()
  const [page, ...more] = withdrawnPages(wetExit, '2026.2')
  assert.deepEqual([page?.address, more], ['/wet-exit/pool-blind/', []])
  assert.match(page === undefined ? '' : inEnglish(page.body), /In its place: <a href="\.\.\/\.\.\/wet-exit\/pool-deck\/">Pool capsize with a closed deck<\/a>\..*Why it was withdrawn: Shut eyes under water/s)
  const chain = { ...wetExit, retired: [{ id: 'older', heir: 'pool-blind', because: 'It was too early.' }, ...(wetExit.retired ?? []), { id: 'pool-deck', heir: 'pool-open', because: 'It stands again.' }] }
  const led = withdrawnPages(chain, '2026.2').map(({ address, body }) => [address, /In its place: <a href="([^"]+)"/.exec(inEnglish(body))?.[1]])
  assert.deepEqual(led, [['/wet-exit/older/', '../../wet-exit/pool-deck/'], ['/wet-exit/pool-blind/', '../../wet-exit/pool-deck/']])
})

test('what a layer changed in a ladder is told with titles, and a rung is not taken for a thing of the same name', () => {
  assert.match(demo.amended, /^Changed by Morrowfleet Paddlesport Union \(stop signs; changed: Walk with two full cups; changed: Two weights of 14 kg; withdrawn: Two weights of 12 kg for 60 m, in its place Two weights of 12 kg for 40 m; a safety note taken out\): /)
  assert.match(demo.cambiado, /\(señales para parar; cambiado: Caminar con dos tazas llenas; cambiado: Dos pesos de 14 kg; retirado: Dos pesos de 12 kg durante 60 m, en su lugar Dos pesos de 12 kg, 40 m; una nota de seguridad retirada\): /)
})
