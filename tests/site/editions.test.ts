import assert from 'node:assert/strict'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { changeText } from '../../src/compare/say.ts'
import { measure } from '../../src/measure/measure.ts'
import { changesPage } from '../../src/page/changes-page.ts'
import { inEnglish } from '../../src/page/html.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { buildSite } from '../../src/site/build.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { readEditions } from '../../src/site/editions.ts'
import { commit, folderNamed, git, repository, write } from '../command/repository.ts'
import { HANDBOOK } from '../read/layers.ts'
import { edited, LADDER } from '../read/said.ts'

const EDITIONS = 'editions:\n  - { edition: "2025.2", on: 2025-11-08, keep: true }\n'
const LONGER = edited(LADDER, 'seconds: 30', 'seconds: 40')

/** What is typed otherwise since each edition that is listed, or why that cannot be said; and whether only own files were compared. */
async function told(folder: string) {
  const { value } = readCurriculum((await readWorkspace(folder)).layers)
  assert.ok(value)
  const now = measure(value)
  const { changes, kept } = await readEditions(folder, now)
  return {
    changes: changes.map(({ edition, since, comparison, own_only }) => [edition, since, 'missing' in comparison ? comparison.missing : comparison.typed.map(changeText), own_only]),
    kept: kept.map(({ edition }) => edition),
    page: inEnglish(changesPage(now, changes).body),
  }
}

test('an edition kept as a folder of its files is compared with the handbook as it is now, without any git', async () => {
  const folder = folderNamed('folder')
  write(folder, { 'handbook.yaml': HANDBOOK + EDITIONS, 'ladders/balance.md': LONGER, 'editions/2025.2/handbook.yaml': HANDBOOK, 'editions/2025.2/ladders/balance.md': LADDER })
  const { changes, kept } = await told(folder)
  assert.deepEqual(changes, [['2026.1', 'edition 2025.2', ['criterion raised: standard seconds, 30 s → 40 s, +10'], false]])
  assert.deepEqual(kept, ['2025.2'])
})

test('an earlier edition that stays has no search index, and its search page asks for none', { timeout: 120_000 }, async () => {
  const folder = folderNamed('unsearched')
  const two = edited(edited(LADDER, 'id: balance', 'id: hinge'), 'movement: balance', 'movement: hinge')
  write(folder, { 'handbook.yaml': HANDBOOK + EDITIONS, 'ladders/balance.md': LONGER, 'ladders/hinge.md': two, 'editions/2025.2/handbook.yaml': HANDBOOK, 'editions/2025.2/ladders/balance.md': LADDER, 'editions/2025.2/ladders/hinge.md': two })
  const site = path.join(folder, 'site')
  const { layers, folders } = await readWorkspace(folder)
  const { value } = readCurriculum(layers)
  assert.ok(value)
  await buildSite(measure(value), { folder, layers: folders }, site, () => undefined)
  const page = (under: string): string => readFileSync(path.join(site, under, 'search/index.html'), 'utf8')
  assert.match(page(''), /<select name="movement"[^]*<ol id="search-results" class="results" data-tag/)
  assert.match(page('editions/2025.2'), /<ol id="search-results" class="results">/)
  assert.doesNotMatch(page('editions/2025.2'), /preload|<select/)
  assert.ok(!existsSync(path.join(site, 'editions/2025.2/pagefind')))
})

test('what a kept edition extends is found from the workspace, read as it is now, and the page says so', async () => {
  const root = folderNamed('layers')
  const amends = (seconds: number): string => `---\namends: balance\nbecause: We have time.\nstandard: { seconds: ${seconds} }\n---\n`
  const own = `${HANDBOOK}extends: ../starter\n${EDITIONS}`
  write(root, { 'starter/handbook.yaml': HANDBOOK, 'starter/ladders/balance.md': LADDER, 'club/handbook.yaml': own, 'club/ladders/balance.md': amends(45), 'club/editions/2025.2/handbook.yaml': own, 'club/editions/2025.2/ladders/balance.md': amends(35) })
  const { changes, page } = await told(path.join(root, 'club'))
  assert.deepEqual(changes, [['2026.1', 'edition 2025.2', ['criterion raised: standard seconds, 35 s → 45 s, +10'], true]])
  assert.match(page, /Compared are the files of this handbook alone; the curriculum it extends is taken as it is today\./)
})

test('a folder comes before a tag of the same name, a revision that is named before both', async () => {
  const folder = repository('tags', { 'handbook.yaml': HANDBOOK + EDITIONS, 'ladders/balance.md': edited(LADDER, 'seconds: 30', 'seconds: 20') })
  git(folder, 'tag', 'edition/2025.2')
  write(folder, { 'ladders/balance.md': LONGER })
  assert.deepEqual((await told(folder)).changes, [['2026.1', 'edition 2025.2', ['criterion raised: standard seconds, 20 s → 40 s, +20'], false]])
  write(folder, { 'editions/2025.2/handbook.yaml': HANDBOOK, 'editions/2025.2/ladders/balance.md': LADDER })
  assert.deepEqual((await told(folder)).changes, [['2026.1', 'edition 2025.2', ['criterion raised: standard seconds, 30 s → 40 s, +10'], false]])
  commit(folder, 'kept')
  write(folder, { 'handbook.yaml': HANDBOOK + edited(EDITIONS, ', keep: true', ', revision: edition/2025.2') })
  assert.deepEqual((await told(folder)).changes, [['2026.1', 'edition 2025.2', ['criterion raised: standard seconds, 20 s → 40 s, +20'], false]])
})

test('the name of an edition leads to no folder outside editions', async () => {
  const folder = folderNamed('outside/club')
  write(folder, { 'handbook.yaml': `${HANDBOOK}editions: [{ edition: "../../elsewhere", on: 2025-11-08 }]\n`, 'ladders/balance.md': LADDER, '../elsewhere/handbook.yaml': HANDBOOK, '../elsewhere/ladders/balance.md': LONGER })
  const { value, findings } = readCurriculum((await readWorkspace(folder)).layers)
  assert.equal(value, undefined)
  assert.deepEqual(findings.map(({ message }) => message), ['edition must be letters, digits, dots and hyphens, such as "2026.2".'])
})
