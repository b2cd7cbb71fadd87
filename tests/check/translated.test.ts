import assert from 'node:assert/strict'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import { measure } from '../../src/measure/measure.ts'
import { inFiles } from '../read/layers.ts'
import { edited } from '../read/said.ts'
import { FULL, FULL_ES, read, sealed, TWO } from '../read/spanish.ts'
import { fixture, found, TODAY } from './fixture.ts'

/** What rules about translations find, of layers in which all reads. */
const told = (...layers: readonly Readonly<Record<string, string>>[]): string[] =>
  inFiles(check(measure(read(...layers)), TODAY).findings.filter(({ rule }) => /^(translat|shared)/.test(rule)))

const PAGE = '---\ntitle: Safety\nsummary: When to stop.\n---\n\nFirst of all.\n\n## Stepping back\n\n- Go down 1 rung, see [pain](/safety/).\n'
const PAGE_ES = '---\ntranslates: safety\ntitle: Seguridad\nsummary: Cuándo parar.\n---\n\nAnte todo.\n\n## Bajar {#stepping-back}\n\n- Baja 1 peldaño, mira [dolor](/safety/).\n'
const WORDS = 'wall: pared\nbalance: equilibrio\n'
const LADDER = { 'handbook.yaml': TWO, 'ladders/balance.md': FULL, 'ladders/balance.es.md': FULL_ES, 'words.es.yaml': WORDS }
const SEALED = sealed('balance', 'ladders/balance.es.md', LADDER)
const PAGES = sealed('safety', 'content/safety.es.md', { 'handbook.yaml': TWO, 'content/safety.md': PAGE, 'content/safety.es.md': PAGE_ES })

test('a handbook whose translations stand is found without fault, and one in a single language is not asked for any', () => {
  assert.deepEqual(told(SEALED), [])
  assert.deepEqual(told(PAGES), [])
  assert.deepEqual(told({ 'ladders/balance.md': FULL, 'content/safety.md': PAGE }), [])
})

test('a translation that was never sealed names what has to be read, the safety notes by a rule of their own', () => {
  const SAFETY = 'are not yet sealed in es. Read them beside the original, then: rungbook translate es balance --seal (translated-safety-notes-stand)'
  assert.deepEqual(told(LADDER), [
    'ladders/balance.es.md:2:1 Not yet sealed in es: title, intro, form, wall, wall/cues, free/intro, free/set-up, free/full-rep, free/cues, free/faults. Read them beside the original, then: rungbook translate es balance --seal (translations-are-current)',
    `ladders/balance.es.md:5:1 The stop signs ${SAFETY}`,
    `ladders/balance.es.md:6:1 The reasons to ask first ${SAFETY}`,
    `ladders/balance.es.md:10:5 The cautions of "free" ${SAFETY}`,
  ])
})

test('pages are held to the same', () => {
  const page = (change: Readonly<Record<string, string>>) => told({ ...PAGES, ...change })
  assert.deepEqual(page({ 'content/safety.es.md': '---\ntranslates: safety\ntitle: Seguridad\n---\n\n## Bajar {#steping-back}\n\n- Baja.\n' }), [
    'content/safety.es.md:2:1 "Safety" lacks in es: summary, intro, stepping-back. Translate them. (translations-are-complete)',
    'content/safety.es.md:2:1 Not yet sealed in es: title. Read it beside the original, then: rungbook translate es safety --seal (translations-are-current)',
    'content/safety.es.md:6:1 "steping-back" is translated into es, but "Safety" has no such part. Did you mean stepping-back? (translations-have-an-original)',
  ])
  assert.deepEqual(told({ 'handbook.yaml': TWO, 'content/safety.md': PAGE }), ['content/safety.md:2:1 "Safety" is not translated into es. Begin with: rungbook translate es safety (translations-are-there)'])
  const spanish = PAGES['content/safety.es.md'] ?? ''
  assert.deepEqual(page({ 'content/safety.es.md': edited(edited(spanish, 'Baja 1 ', 'Baja 10 '), 'Ante todo.', 'Ante todo, [para](/pain/).') }).map((line) => line.replace(/^\S+ /, '')), [
    'The es of "intro" has the link /pain/, which the original does not have. Make them the same. (translations-keep-links-and-numbers)',
    'The es of "stepping-back" lacks the number 1. Make them the same. (translations-keep-links-and-numbers)',
  ])
  assert.deepEqual(page({ 'content/safety.es.md': `${spanish}- Y descansa.\n` }).map((line) => line.replace(/^\S+ /, '')), ['"stepping-back" has in es 2 entries in its lists, the original 1. Say the same things, in the same order. (translations-keep-their-shape)'])
})

test('numbers are the same with a comma and with a point', () => {
  const files = sealed('balance', 'ladders/balance.es.md', { ...LADDER, 'ladders/balance.md': edited(FULL, 'after 30 s', 'after 1.5 to 30 s'), 'ladders/balance.es.md': edited(FULL_ES, 'a los 30 s', 'de 30 a 1,5 s') })
  assert.deepEqual(told(files), [])
})

test('what a layer changed is told where the layer changed it, not in the files below', () => {
  const amendment = '---\namends: balance\nbecause: We train on grass.\nstop: [a cramp]\nrungs:\n  - id: free\n    title: Without a wall\n---\n\n## Without a wall {#free}\n\n### Cues\n- Eyes up.\n'
  const top = { 'handbook.yaml': TWO.replace('A club', 'A union'), 'ladders/balance.md': amendment }
  const THEN = 'then: rungbook translate es balance --seal'
  assert.deepEqual(told(SEALED, top), [
    'ladders/balance.md:3:1 "Standing on one leg" lacks in es: because. Translate it. (translations-are-complete)',
    `ladders/balance.md:4:1 The original stop signs have changed since they were translated into es. Translate them again, ${THEN} (translated-safety-notes-stand)`,
    `ladders/balance.md:6:5 The original cautions of "free" have changed since they were translated into es. Translate them again, ${THEN} (translated-safety-notes-stand)`,
    `ladders/balance.md:12:1 The original of "free/cues" has changed since it was translated into es. Translate it again, ${THEN} (translations-are-current)`,
  ])
})

test('nobody silences what keeps translated safety notes whole', () => {
  const silence = 'silence:\n  - { rule: translated-safety-notes-stand, because: Later., until: 2099-01-01 }\n  - { rule: translations-are-current, because: Later., until: 2099-01-01 }\nrungs:\n'
  const text = fixture('translated-safety-notes-stand.bad.md').replace('rungs:\n', silence)
  assert.deepEqual(found('silenced', text).map(({ line, rule }) => `${line} ${rule}`), ['10 silences-are-used', '11 silences-are-used', '68 translated-safety-notes-stand', '71 translated-safety-notes-stand', '73 translated-safety-notes-stand'])
})

test('a translation full of what is not there is told within seconds', () => {
  const rungs = Array.from({ length: 400 }, (_, index) => `  - { id: rung-number-${index}, title: Rung ${index}, load: { model: skill } }\n`).join('')
  const astray = Array.from({ length: 5000 }, (_, index) => `## x {#rung-namber-${index}}\n\nx\n`).join('')
  const sections = Array.from({ length: 400 }, (_, index) => `## Rung ${index} {#rung-number-${index}}\n\nx\n`).join('')
  const many = '1 '.repeat(100_000)
  const measured = measure(read({ ...LADDER, 'ladders/balance.md': `${FULL.replace('stop:', `${rungs}stop:`)}\n${sections}`, 'ladders/balance.es.md': `${FULL_ES}\n${astray}`, 'content/safety.md': `${PAGE}\n${many}`, 'content/safety.es.md': `${PAGE_ES}\n${many}` }))
  const began = process.cpuUsage()
  const lines = inFiles(check(measured, TODAY).findings).filter((line) => line.includes('translations-have-an-original'))
  const { user } = process.cpuUsage(began)
  assert.equal(lines.length, 5000)
  assert.equal(lines.filter((line) => line.includes('Did you mean')).length, 20)
  assert.ok(user < 8e6, `${user} µs of work; a guess for each, or a list gone through for each number, would take minutes`)
})
