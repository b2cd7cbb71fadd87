import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { languageIn } from '../../src/read/read-translation.ts'
import { HANDBOOK, inFiles, layer } from './layers.ts'
import { edited, LADDER } from './said.ts'
import { FULL, FULL_ES, inSpanish, read, sealed, TWO } from './spanish.ts'

const found = (...layers: readonly Readonly<Record<string, string>>[]): string[] => inFiles(readCurriculum(layers.map((files, index) => layer(index === layers.length - 1 ? '' : 'below/', files))).findings)

const FILES = { 'handbook.yaml': TWO, 'ladders/balance.md': FULL, 'ladders/balance.es.md': FULL_ES }
const standings = (...layers: readonly Readonly<Record<string, string>>[]): Record<string, string> =>
  Object.fromEntries(inSpanish(read(...layers), 'balance').parts.map(({ name, standing, differs }) => [name, differs === undefined ? standing : `${standing}: ${differs}`]))

const PARTS = ['title', 'intro', 'form', 'stop', 'ask_first', 'wall', 'wall/cues', 'free', 'free/intro', 'free/set-up', 'free/full-rep', 'free/cues', 'free/faults']
const every = (standing: string, others: Readonly<Record<string, string>> = {}): Record<string, string> => ({ ...Object.fromEntries(PARTS.map((name) => [name, standing])), ...others })

test('a language is read out of the name of a file', () => {
  for (const [file, language] of [
    ['ladders/press-up.es.md', 'es'],
    ['ladders/arms/press-up.pt-BR.md', 'pt-BR'],
    ['content/safety.de.md', 'de'],
    ['words.es.yaml', 'es'],
    ['ladders/press-up.md', undefined],
    ['ladders/press-up.v2.md', undefined],
    ['ladders/press-up.md.md', undefined],
    ['ladders/.es.md', undefined],
    ['handbook.yaml', undefined],
  ] as const) assert.equal(languageIn(file), language, file)
})

test('every part of a translation is read, and stands once it is sealed', () => {
  assert.deepEqual(standings(FILES), every('unsealed'))
  assert.deepEqual(standings(sealed('balance', 'ladders/balance.es.md', FILES)), every('current'))
})

test('a part whose original moved on is stale, and no other is', () => {
  const files = sealed('balance', 'ladders/balance.es.md', FILES)
  const moved = (from: string, to: string) => standings({ ...files, 'ladders/balance.md': edited(FULL, from, to) })
  assert.deepEqual(moved('Quiet toes', 'Still toes'), every('current', { 'free/cues': 'stale' }))
  assert.deepEqual(moved('an ankle that gives way', 'an ankle that gives way, a fall'), every('current', { stop: 'stale' }))
  assert.deepEqual(moved('take off loose socks', 'take off socks'), every('current', { free: 'stale' }))
  assert.deepEqual(moved('eyes wander', 'the eyes wander'), every('current', { 'free/faults': 'stale' }))
  assert.deepEqual(moved('seconds: 30', 'seconds: 20'), every('current'))
})

test('what has another number of entries, rows or keys says so', () => {
  const said = (from: string, to: string) => Object.entries(standings({ ...FILES, 'ladders/balance.es.md': edited(FULL_ES, from, to) })).filter(([, standing]) => standing !== 'unsealed')
  assert.deepEqual(said('[un tobillo que cede]', '[un tobillo que cede, una caída]'), [['stop', 'unsealed: 2 entries, the original 1']])
  assert.deepEqual(said('[despeja el suelo, quítate los calcetines sueltos]', '[despeja el suelo]'), [['free', 'unsealed: in cautions 1 entry, the original 2']])
  assert.deepEqual(said('    first_side: Primero el lado izquierdo.\n', ''), [['free', 'unsealed: no first_side']])
  assert.deepEqual(said('title: Junto a una pared', 'title: Junto a una pared\n    form: [recto]'), [['wall', 'unsealed: form, which the original does not have']])
  assert.deepEqual(said('| Los brazos se agitan | los ojos vagan | Mira un punto | Vuelve a la pared |\n', ''), [['free/faults', 'missing']])
  assert.deepEqual(said('- Descalzo.\n', ''), [['free/set-up', 'unsealed: 1 entry in its lists, the original 2']])
  assert.deepEqual(said('- Dedos quietos.\n', '- Dedos.\n- Quietos.\n'), [['free/cues', 'unsealed: 2 entries, the original 1']])
})

test('the topmost layer whose words match what stands is used, else the topmost', () => {
  const below = sealed('balance', 'ladders/balance.es.md', FILES)
  const amendment = 'amends: balance\nbecause: We train on grass.\nstop: [a cramp]\nrungs: [{ id: free, title: Without a wall }]'
  const top = { 'handbook.yaml': TWO.replace('A club', 'A union'), 'ladders/balance.md': `---\n${amendment}\n---\n` }
  assert.deepEqual(standings(below, top), { title: 'current', because: 'missing', ...every('current', { stop: 'stale', free: 'stale' }) })
  const own = '---\ntranslates: balance\nbecause: Entrenamos en hierba.\nstop: [un tobillo que cede, un calambre]\n---\n'
  const ours = sealed('balance', 'ladders/balance.es.md', below, { ...top, 'ladders/balance.es.md': own })
  assert.deepEqual(standings(below, ours), { title: 'current', because: 'current', ...every('current', { free: 'stale' }) })
  assert.match(ours['ladders/balance.es.md'] ?? '', /^of:\n {2}because: "[0-9a-f]{12}"\n {2}stop: "[0-9a-f]{12}"\n---$/m)
})

test('where two layers translate the same words, the upper one is used', () => {
  const below = sealed('balance', 'ladders/balance.es.md', FILES)
  const above = sealed('balance', 'ladders/balance.es.md', below, { 'handbook.yaml': TWO, 'ladders/balance.es.md': '---\ntranslates: balance\ntitle: Equilibrio\n---\n' })
  const [title, intro] = inSpanish(read(below, above), 'balance').parts
  assert.deepEqual([title?.said, title?.own, intro?.said, intro?.own], ['Equilibrio', true, 'Dos peldaños.', false])
})

test('each layer translates and seals its own reason, whatever the layers between say', () => {
  const amends = (by: string, because: string, reason: string): Record<string, string> => ({
    'handbook.yaml': TWO.replace('A club', by),
    'ladders/balance.md': `---\namends: balance\nbecause: ${because}\n---\n`,
    'ladders/balance.es.md': `---\ntranslates: balance\nbecause: ${reason}\n---\n`,
  })
  const below = sealed('balance', 'ladders/balance.es.md', FILES)
  const union = sealed('balance', 'ladders/balance.es.md', below, amends('A union', 'We train on grass.', 'Entrenamos en hierba.'))
  const region = sealed('balance', 'ladders/balance.es.md', below, union, amends('A region', 'We train on sand.', 'Entrenamos en arena.'))
  const reasons = inSpanish(read(below, union, region), 'balance').parts.filter(({ key }) => key === 'because')
  assert.deepEqual(reasons.map(({ name, said, standing }) => [name, said, standing]), [['because', 'Entrenamos en hierba.', 'current'], ['because:2', 'Entrenamos en arena.', 'current']])
})

test('a reason that the layer below did not translate is looked up among the shared words', () => {
  const below = sealed('balance', 'ladders/balance.es.md', FILES)
  const union = { 'handbook.yaml': HANDBOOK.replace('A club', 'A union'), 'ladders/balance.md': '---\namends: balance\nbecause: We train on grass.\n---\n' }
  const top = { 'handbook.yaml': TWO.replace('A club', 'A region') }
  assert.deepEqual(inSpanish(read(below, union, top), 'balance').unworded, ['balance', 'wall', 'We train on grass.'])
  const listed = inSpanish(read(below, union, { ...top, 'words.es.yaml': 'We train on grass.: Entrenamos en hierba.\n' }), 'balance')
  assert.deepEqual(listed.unworded, ['balance', 'wall'])
  assert.deepEqual(listed.parts.filter(({ key }) => key === 'because').map(({ said, standing }) => [said, standing]), [['Entrenamos en hierba.', 'current']])
})

test('a handbook in one language has no translations, and reads none of a layer below', () => {
  const broken = { ...FILES, 'ladders/balance.es.md': 'nothing' }
  const { ladders, words } = read(broken, {})
  assert.deepEqual([ladders.map(({ translations }) => translations), words], [[undefined], undefined])
})

test('words shared by all come from the lists of each layer, the topmost first', () => {
  const below = { ...FILES, 'words.es.yaml': 'wall: pared\nbalance: equilibrio\n' }
  const { words } = read(below, { 'handbook.yaml': TWO, 'words.es.yaml': 'wall: muro\n' })
  assert.deepEqual([...(words?.get('es') ?? [])], [['wall', 'muro'], ['balance', 'equilibrio']])
  assert.deepEqual(inSpanish(read(FILES), 'balance').unworded, ['balance', 'wall'])
  assert.deepEqual(inSpanish(read(below), 'balance').unworded, [])
  assert.deepEqual([...(read({ 'words.en.yaml': 'Stop when: Stop if\n' }).words?.get('en') ?? [])], [['Stop when', 'Stop if']])
})

test('a file in a language the handbook does not list is found', () => {
  const NOT = 'is not among the languages of handbook.yaml'
  assert.deepEqual(found({ 'ladders/balance.md': LADDER, 'ladders/balance.es.md': FULL_ES, 'words.fr.yaml': 'a: b\n', 'content/safety.old.md': 'x' }), [
    `content/safety.old.md:1:1 "old" ${NOT} (en). Add it there, or give the file another name. (languages-are-listed)`,
    `ladders/balance.es.md:1:1 "es" ${NOT} (en). Add it there, or give the file another name. (languages-are-listed)`,
    `words.fr.yaml:1:1 "fr" ${NOT} (en). Add it there, or give the file another name. (languages-are-listed)`,
  ])
  assert.deepEqual(found({ 'handbook.yaml': TWO, 'ladders/balance.en.md': LADDER }), [
    'ladders/balance.en.md:1:1 The files are written in en, the first language of handbook.yaml; a translation is into another. Give the file another name. (languages-are-listed)',
  ])
})

test('a translation tells its slips with file and line', () => {
  const slip = (from: string, to: string) => found({ ...FILES, 'ladders/balance.es.md': edited(FULL_ES, from, to) })
  assert.deepEqual(slip('form: [cinturón a nivel]', 'forms: [cinturón a nivel]'), ['ladders/balance.es.md:4:1 There is no key "forms" here. Did you mean form? (keys-are-known)'])
  assert.deepEqual(slip('title: Libre\n', 'title: Libre\n    load: { model: skill }\n'), ['ladders/balance.es.md:12:5 There is no key "load" here. Known keys: id, title, cautions, form, first_side. (keys-are-known)'])
  assert.deepEqual(slip('{#wall}', ''), ['ladders/balance.es.md:18:1 "Junto a una pared" does not say which rung it is. Add the rung\'s id, such as {#floor}. (translations-fit)'])
  assert.deepEqual(slip(' {#set-up}', ''), ['ladders/balance.es.md:27:1 "Preparación" does not say which heading it translates. Add one of {#set-up}, {#full-rep}, {#cues}, {#faults} or {#notes}. (translations-fit)'])
  assert.deepEqual(slip('### Fallos {#faults}', '### Más {#cues}\n- Más.\n\n### Fallos {#faults}'), ['ladders/balance.es.md:38:1 "free/cues" is translated twice. Join the two. (translations-fit)'])
  assert.deepEqual(slip('- Cuello largo.', '- Cuello largo.\n\nY respira.'), ['ladders/balance.es.md:23:1 This line is no item of the list under "Qué decir", and would be lost. Make it one, or take it out. (translations-fit)'])
  assert.deepEqual(slip('  - id: wall\n', '  - id: free\n'), ['ladders/balance.es.md:10:5 The rung "free" is translated twice. Join the two. (translations-fit)'])
  assert.deepEqual(slip('translates: balance', 'translates: balanse'), [
    'ladders/balance.es.md:2:1 The file is named "balance" but translates "balanse". Make the two the same. (translations-fit)',
    'ladders/balance.es.md:2:1 There is no ladder "balanse" to translate. Did you mean balance? (translations-fit)',
  ])
  assert.deepEqual(found({ ...FILES, 'ladders/more/balance.es.md': FULL_ES }), ['ladders/more/balance.es.md:2:1 "balance" is translated already, in ladders/balance.es.md. Join the two files. (translations-fit)'])
  assert.deepEqual(found({ 'handbook.yaml': TWO, 'content/safety.es.md': '---\ntranslates: safety\ntitle: Seguridad\n---\n\n## Parar\n' }), [
    'content/safety.es.md:2:1 There is no page "safety" to translate. Name a page of this handbook. (translations-fit)',
    'content/safety.es.md:6:1 "Parar" does not say which heading it translates. Add the original\'s words in small letters with hyphens, such as {#stepping-back}. (translations-fit)',
  ])
  assert.deepEqual(found({ 'handbook.yaml': TWO, 'words.es.yaml': '- a\n' }), ['words.es.yaml:1:1 The file must hold phrases such as bench: banco. (values-fit)'])
  assert.deepEqual(found({ 'handbook.yaml': TWO, 'words.es.yaml': 'bench: [banco]\n' }), ['words.es.yaml:1:1 bench must be words on one line, at most 450 characters. (values-fit)'])
})

test('whatever a translation holds, reading and checking it throw nothing', () => {
  const pieces = [...FULL_ES.split(/(?<=\n)/), '---\n', 'of: { title: 1 }\n', '__proto__: [a]\n', '- id: __proto__\n', '## x {#__proto__}\n', '### y {#toString}\n', '| a |\n|---|\n', '{{{', 'rungs: 7\n']
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 60 }), fc.array(fc.constantFrom(...pieces), { maxLength: 10 }), (lines, words) => {
      const files = { ...FILES, 'ladders/balance.es.md': `---\ntranslates: balance\n${lines.join('')}`, 'words.es.yaml': words.join(''), 'content/p.md': '---\ntitle: P\nsummary: S\n---\n\n## A\n', 'content/p.es.md': `---\ntranslates: p\n${lines.join('')}` }
      const { value } = readCurriculum([layer('', files)])
      if (value) check(measure(value), '2026-11-26')
    }),
    { numRuns: 300 },
  )
})
