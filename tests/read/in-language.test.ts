import assert from 'node:assert/strict'
import { test } from 'vitest'
import { fellBackTo } from '../../src/ladder/translation.ts'
import { measure } from '../../src/measure/measure.ts'
import { inLanguage } from '../../src/read/in-language.ts'
import { edited } from './said.ts'
import { FULL, FULL_ES, read, sealed, TWO } from './spanish.ts'

const WORDS = 'wall: pared\nbalance: equilibrio\nHandbook: Manual\nA club: Un club\n'
const PAGE = '---\ntitle: Safety\nsummary: When to stop.\n---\n\nFirst of all.\n\n## Stepping back\n\n- Go down.\n\n### Why\n\nBecause.\n\n## Asking\n\nAsk.\n'
const PAGE_ES = '---\ntranslates: safety\ntitle: Seguridad\nsummary: Cuándo parar.\n---\n\nAnte todo.\n\n## Bajar {#stepping-back}\n\n- Baja.\n\n### Por qué\n\nPorque sí.\n\n## Preguntar {#asking}\n\nPregunta.\n'

const FILES = { 'handbook.yaml': TWO, 'ladders/balance.md': FULL, 'ladders/balance.es.md': FULL_ES, 'words.es.yaml': WORDS, 'content/safety.md': PAGE, 'content/safety.es.md': PAGE_ES }
const SEALED = sealed('safety', 'content/safety.es.md', sealed('balance', 'ladders/balance.es.md', FILES))
const spanish = (files: Readonly<Record<string, string>>) => inLanguage(measure(read(files)), 'es')

test('a handbook put into Spanish says all of it in Spanish, with the same numbers', () => {
  const english = measure(read(SEALED))
  const { handbook, ladders: [ladder], pages: [page] } = inLanguage(english, 'es')
  assert.ok(ladder && page)
  assert.deepEqual([handbook.title, handbook.organisation, handbook.contact], ['Manual', 'Un club', 'The club'])
  assert.deepEqual([ladder.title, ladder.movement, ladder.equipment, ladder.intro, ladder.form, ladder.stop, ladder.ask_first, ladder.layer], ['De pie sobre una pierna', 'equilibrio', ['pared'], 'Dos peldaños.', ['cinturón a nivel'], ['un tobillo que cede'], ['una caída en el último año'], 'Un club'])
  const [, free] = ladder.rungs
  assert.deepEqual([free?.title, free?.cautions, free?.first_side], ['Libre', ['despeja el suelo', 'quítate los calcetines sueltos'], 'Primero el lado izquierdo.'])
  assert.deepEqual(free?.words, {
    intro: 'Un peldaño sin ayuda.',
    set_up: '- Descalzo.\n- Una línea en el suelo, y mira [seguridad](/safety/).',
    full_rep: ['Inicio: un pie levantado.', 'Final: pie abajo a los 30 s.'],
    cues: ['Dedos quietos.'],
    faults: [{ seen: 'Los brazos se agitan', cause: 'los ojos vagan', say: 'Mira un punto', remedy: 'Vuelve a la pared' }],
    notes: [],
  })
  assert.deepEqual(ladder.rungs.map(({ id, steps, outcome }) => [id, steps, outcome]), english.ladders[0]?.rungs.map(({ id, steps, outcome }) => [id, steps, outcome]))
  assert.equal(ladder.digest, english.ladders[0]?.digest)
  assert.deepEqual([page.title, page.summary, page.spoken?.fellBack.size, ladder.spoken?.fellBack.size], ['Seguridad', 'Cuándo parar.', 0, 0])
  assert.deepEqual(page.stretches, [{ language: 'es', body: 'Ante todo.\n\n## Bajar {#stepping-back}\n\n- Baja.\n\n### Por qué\n\nPorque sí.\n\n## Preguntar {#asking}\n\nPregunta.' }])
  assert.equal(page.body, page.stretches?.[0]?.body)
})

test('a part that is stale, unsealed or of another shape stands in the original’s words, and is named', () => {
  const { ladders: [ladder], pages: [page] } = spanish({
    ...SEALED,
    'ladders/balance.md': edited(FULL, 'take off loose socks', 'take off all socks'),
    'ladders/balance.es.md': edited(SEALED['ladders/balance.es.md'] ?? '', '[un tobillo que cede]', '[un tobillo que cede, una caída]'),
    'content/safety.md': edited(PAGE, '- Go down.', '- Go down a rung.'),
  })
  assert.ok(ladder && page)
  assert.deepEqual([...(ladder.spoken?.fellBack ?? [])], ['stop', 'free'])
  assert.deepEqual(ladder.stop, ['an ankle that gives way'])
  assert.deepEqual([ladder.rungs[1]?.title, ladder.rungs[1]?.cautions, ladder.rungs[1]?.words?.cues], ['Free', ['clear the floor', 'take off all socks'], ['Dedos quietos.']])
  assert.deepEqual([fellBackTo(ladder, 'stop'), fellBackTo(ladder, 'ask_first'), fellBackTo(page, 'stepping-back')], ['en', undefined, 'en'])
  assert.deepEqual(page.stretches, [
    { language: 'es', body: 'Ante todo.' },
    { language: 'en', body: '## Stepping back {#stepping-back}\n\n- Go down a rung.\n\n### Why\n\nBecause.' },
    { language: 'es', body: '## Preguntar {#asking}\n\nPregunta.' },
  ])
  const unsealed = spanish(FILES)
  assert.equal(unsealed.ladders[0]?.title, 'Standing on one leg')
  assert.ok(unsealed.ladders[0]?.spoken?.fellBack.has('title'))
})

test('what no file translates stands in the original’s words', () => {
  const { ladders: [ladder], pages: [page] } = spanish({ 'handbook.yaml': TWO, 'ladders/balance.md': FULL, 'content/safety.md': PAGE })
  assert.deepEqual([ladder?.title, ladder?.spoken?.fellBack.size, page?.spoken?.fellBack.size], ['Standing on one leg', 13, 5])
  assert.deepEqual(page?.stretches?.map(({ language }) => language), ['en'])
})

test('the language a handbook is written in, and one it does not list, change nothing', () => {
  const curriculum = measure(read(SEALED))
  for (const language of ['en', 'fr', '__proto__']) assert.equal(inLanguage(curriculum, language), curriculum)
})
