import assert from 'node:assert/strict'
import { test } from 'vitest'
import { ladderSchema } from '../../src/ladder/schema.ts'
import { models } from '../../src/load/index.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { bytes, edited, LADDER, said } from './said.ts'

const read = (text: string) => readLadderFile('ladders/balance.md', bytes(text), 'A club')
const after = (from: string, to: string): string[] => said(read(edited(LADDER, from, to)).findings)

test('a ladder without a slip reads without a finding, its silences filled in', () => {
  const { value, findings } = read(LADDER)
  assert.deepEqual(findings, [])
  assert.ok(value?.kind === 'ladder')
  const { places: _, rungs, ...fields } = value.ladder
  assert.deepEqual(fields, {
    id: 'balance',
    title: 'Standing on one leg',
    movement: 'balance',
    aim: 'free',
    equipment: ['wall'],
    standard: { sets: 2, seconds: 30, sessions: 2, rest_s: 90, reserve_reps: 0 },
    sessions_per_week: 2,
    form: ['belt level'],
    supervision: 'none',
    stop: ['an ankle that gives way'],
    ask_first: ['a fall in the last year'],
    intro: 'Two rungs.',
    amended: [],
    withdrawn_notes: [],
    layer: 'A club',
  })
  assert.deepEqual(
    rungs.map(({ id, after: below, demand, entry, load, words }) => ({ id, below, demand, entry, load, cues: words?.cues })),
    [
      { id: 'wall', below: [], demand: [], entry: {}, load: { model: 'skill' }, cues: ['Tall neck.'] },
      { id: 'free', below: ['wall'], demand: [], entry: {}, load: { model: 'skill' }, cues: ['Quiet toes.'] },
    ],
  )
})

test('line ends of another system and a byte order mark change nothing', () => {
  const [theirs, ours] = [read(`\ufeff${LADDER.replaceAll('\n', '\r\n')}`), read(LADDER)].map(({ value, findings }) => {
    if (value?.kind !== 'ladder') assert.fail('no ladder was read')
    const { places, ...ladder } = value.ladder
    return { ladder, places: places(), findings }
  })
  assert.deepEqual(theirs, ours)
})

const LADDER_KEYS = Object.keys(ladderSchema.shape).join(', ')
const RUNG_KEYS = Object.keys(ladderSchema.shape.rungs.element.shape).join(', ')
const MODELS = models.map(({ name }) => name).join(', ')

/** One slip in the front matter, and everything it is told. */
const slips = [
  { says: 'a key with a letter changed', from: 'movement:', to: 'mowement:', finds: ['4:1 There is no key "mowement" here. Did you mean movement? (keys-are-known)'] },
  { says: 'a key with letters swapped', from: 'form:', to: 'from:', finds: ['8:1 There is no key "from" here. Did you mean form? (keys-are-known)'] },
  { says: 'a key like no other', from: 'id: balance\n', to: 'id: balance\nweather: dry\n', finds: [`3:1 There is no key "weather" here. Known keys: ${LADDER_KEYS}. (keys-are-known)`] },
  { says: 'a key of a rung', from: 'title: Free\n', to: 'title: Free\n    demands: [grip]\n', finds: ['15:5 There is no key "demands" here. Did you mean demand? (keys-are-known)'] },
  { says: 'a key of a rung like no other', from: 'title: Free\n', to: 'title: Free\n    weather: dry\n', finds: [`15:5 There is no key "weather" here. Known keys: ${RUNG_KEYS}. (keys-are-known)`] },
  { says: 'a key of the standard', from: 'seconds: 30', to: 'seconds: 30, rests: 60', finds: ['7:35 There is no key "rests" here. Did you mean rest_s? (keys-are-known)'] },
  {
    says: 'a key of a load',
    from: 'Free\n    load: { model: skill }',
    to: 'Free\n    load: { model: landing, drop_hight_cm: 20 }',
    finds: ['15:29 There is no key "drop_hight_cm" here. Did you mean drop_height_cm? (keys-are-known)'],
  },
  {
    says: 'a key that another load model knows',
    from: 'Free\n    load: { model: skill }',
    to: 'Free\n    load: { model: skill, load_kg: 20 }',
    finds: ['15:27 There is no key "load_kg" here. Known keys: model. (keys-are-known)'],
  },
  { says: 'a long unknown key', from: 'id: balance\n', to: `id: balance\n${'w'.repeat(70)}: 1\n`, finds: [`3:1 There is no key "${'w'.repeat(60)}" here. Known keys: ${LADDER_KEYS}. (keys-are-known)`] },
  { says: 'a key that is no word', from: 'id: balance\n', to: 'id: balance\n? \n: 1\n', finds: [`2:1 There is no key "" here. Known keys: ${LADDER_KEYS}. (keys-are-known)`] },
  ...['__proto__', 'constructor', 'prototype', 'toString'].map((key) => ({
    says: `a key named ${key}`,
    from: 'title: Free\n',
    to: `title: Free\n    ${key}: { ${key}: 1 }\n`,
    finds: [`15:5 There is no key "${key}" here. Known keys: ${RUNG_KEYS}. (keys-are-known)`],
  })),
  { says: 'no load', from: 'Free\n    load: { model: skill }', to: 'Free', finds: ['13:5 load is not given here. Add it. (keys-are-given)'] },
  { says: 'a load without a model', from: 'Free\n    load: { model: skill }', to: 'Free\n    load: {}', finds: ['15:5 model is not given here. Add it. (keys-are-given)'] },
  ...['skil', 'constructor', '__proto__', '[skill]', '', '7'].map((model) => ({
    says: `a load model written ${model || 'as nothing'}`,
    from: 'Free\n    load: { model: skill }',
    to: `Free\n    load: { model: ${model} }`,
    finds: [`15:13 model must be one of: ${MODELS}. (values-fit)`],
  })),
  { says: 'a load that is a word', from: 'Free\n    load: { model: skill }', to: 'Free\n    load: skill', finds: [`15:5 model must be one of: ${MODELS}. (values-fit)`] },

  { says: 'no repetitions', from: 'seconds: 30', to: 'reps: 0', finds: ['7:22 reps must be a whole number from 1 to 200. (values-fit)'] },
  { says: 'half a repetition', from: 'seconds: 30', to: 'reps: 12.5', finds: ['7:22 reps must be a whole number from 1 to 200. (values-fit)'] },
  { says: 'sets less than none', from: 'sets: 2', to: 'sets: -1', finds: ['7:13 sets must be a whole number from 1 to 10. (values-fit)'] },
  ...['3x10', '½', '55%', '1_0', '1:30', '"10"', 'true', '[3]', '{ a: 3 }', 'null'].map((value) => ({
    says: `sets written ${value}`,
    from: 'sets: 2',
    to: `sets: ${value}`,
    finds: ['7:13 sets must be a whole number from 1 to 10. (values-fit)'],
  })),
  { says: 'a number of thirty digits', from: 'seconds: 30', to: `seconds: ${'9'.repeat(30)}`, finds: ['7:22 seconds must be a number from 1 to 1800 s. (values-fit)'] },
  {
    says: 'a number that is not one',
    from: 'seconds: 30',
    to: 'seconds: .nan',
    finds: ['7:31 ".nan" is not a plain number. Write it as 12 or 12.5. (front-matter-is-plain)', '7:22 seconds must be a number from 1 to 1800 s. (values-fit)'],
  },
  { says: 'a number in another base', from: 'seconds: 30', to: 'seconds: 0x1F', finds: ['7:31 "0x1F" is not a plain number. Write it as 12 or 12.5. (front-matter-is-plain)'] },
  { says: 'a decimal comma', from: 'seconds: 30', to: 'seconds: 5,5', finds: ['7:33 A number stands here where a key should. Write decimals with a point, such as 5.5. (front-matter-is-plain)', `7:33 There is no key "5" here. Known keys: sets, reps, seconds, metres, sessions, rest_s, reserve_reps. (keys-are-known)`] },
  { says: 'more metres than a session holds', from: 'seconds: 30', to: 'metres: 5001', finds: ['7:22 metres must be a number from 1 to 5000 m. (values-fit)'] },
  { says: 'a rest of an hour', from: 'seconds: 30', to: 'seconds: 30, rest_s: 3600', finds: ['7:35 rest_s must be a number from 0 to 900 s. (values-fit)'] },
  { says: 'a reserve of six', from: 'seconds: 30', to: 'seconds: 30, reserve_reps: 6', finds: ['7:35 reserve_reps must be a whole number from 0 to 5. (values-fit)'] },
  { says: 'no sessions', from: 'seconds: 30', to: 'seconds: 30, sessions: 0', finds: ['7:35 sessions must be a whole number from 1 to 10. (values-fit)'] },
  { says: 'a standard that is a number', from: 'standard: { sets: 2, seconds: 30 }', to: 'standard: 30', finds: ['7:1 standard must hold keys such as sets and reps. (values-fit)'] },
  { says: 'first_reps of none', from: 'form:', to: 'first_reps: 0\nform:', finds: ['8:1 first_reps must be a whole number from 1 to 50. (values-fit)'] },
  { says: 'a session every hour', from: 'form:', to: 'sessions_per_week: 168\nform:', finds: ['8:1 sessions_per_week must be a number from 0.5 to 14. (values-fit)'] },
  { says: 'an entry that is a number', from: 'Free\n', to: 'Free\n    entry: 12\n', finds: ['15:5 entry must hold keys such as reps. (values-fit)'] },
  { says: 'a demand nobody knows', from: 'Free\n', to: 'Free\n    demand: [balance, flair]\n', finds: ['15:23 demand must be one of: balance, one side, longer range, speed, grip. (values-fit)'] },
  { says: 'six demands', from: 'Free\n', to: 'Free\n    demand: [grip, grip, grip, grip, grip, grip]\n', finds: ['15:5 demand must be a list of at most 5. (values-fit)'] },
  { says: 'a supervision nobody knows', from: 'form:', to: 'supervision: parent\nform:', finds: ['8:1 supervision must be one of: none, partner, coach, qualified coach. (values-fit)'] },
  ...[
    { load: 'supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: -3', column: 74, finds: 'hand_height_cm must be a number from 0 to 250 cm.' },
    { load: 'supported-body, facing: down, feet: toes, hands: surface, lean_deg: 91', column: 74, finds: 'lean_deg must be a number from 0 to 90 deg.' },
    { load: 'supported-body, facing: side, feet: toes, hands: surface, hand_height_cm: 3', column: 29, finds: 'facing must be one of: down, up.' },
    { load: 'landing, drop_height_cm: 151', column: 22, finds: 'drop_height_cm must be a number from 0 to 150 cm.' },
    { load: 'one-rep-max, load_kg: 0', column: 26, finds: 'load_kg must be a number from 0.5 to 500 kg.' },
  ].map(({ load, finds }) => ({
    says: `a load of ${load}`,
    from: 'Free\n    load: { model: skill }',
    to: `Free\n    load: { model: ${load} }`,
    finds: [`15:${'    load: { model: '.length + 1 + Math.max(load.indexOf(finds.split(' ')[0] ?? ''), 0)} ${finds} (values-fit)`],
  })),
  { says: 'a title of nothing', from: 'title: Free', to: 'title: "  "', finds: ['14:5 title is empty; write something or leave the key out. (values-fit)'] },
  { says: 'a title of 81 letters', from: 'title: Free', to: `title: ${'F'.repeat(81)}`, finds: ['14:5 title must be words on one line, at most 80 characters. (values-fit)'] },
  { says: 'a title of two lines', from: 'title: Free', to: 'title: "Free\\nas air"', finds: ['14:5 title must be words on one line, at most 80 characters. (values-fit)'] },
  { says: 'a title that is a number', from: 'title: Standing on one leg', to: 'title: 12', finds: ['3:1 title must be words on one line, at most 80 characters. (values-fit)'] },
  { says: 'a title that writes backwards', from: 'title: Free', to: 'title: "F\\u202eree"', finds: ['14:5 title holds a hidden or direction-changing character; type it again by hand. (values-fit)'] },
  { says: 'a title with a letter of no width', from: 'title: Free', to: 'title: F\u200bree', finds: ['14:5 title holds a hidden or direction-changing character; type it again by hand. (values-fit)'] },
  { says: 'a title with a NUL', from: 'title: Free', to: 'title: "F\\0ree"', finds: ['14:5 title holds a hidden or direction-changing character; type it again by hand. (values-fit)'] },
  { says: 'a list that is a word', from: 'equipment: [wall]', to: 'equipment: wall', finds: ['6:1 equipment must be a list of at most 30. (values-fit)'] },
  { says: 'an entry of a list that is empty', from: 'equipment: [wall]', to: 'equipment: [wall, ""]', finds: ['6:19 equipment is empty; write something or leave the key out. (values-fit)'] },
  { says: 'thirty-one pieces of equipment', from: 'equipment: [wall]', to: `equipment: [${Array.from({ length: 31 }, () => 'mat').join(', ')}]`, finds: ['6:1 equipment must be a list of at most 30. (values-fit)'] },
  { says: 'a day that is not in the calendar', from: 'form:', to: 'review: { by: A coach, on: 2026-02-30 }\nform:', finds: ['8:24 on is not a day in the calendar. (values-fit)'] },
  { says: 'a day in another order', from: 'form:', to: 'review: { by: A coach, on: 3.10.2026 }\nform:', finds: ['8:24 on must be a day such as 2026-10-03. (values-fit)', '8:24 on is not a day in the calendar. (values-fit)'] },
  { says: 'a review that is a name', from: 'form:', to: 'review: A coach\nform:', finds: ['8:1 review must hold by and on. (values-fit)'] },
  { says: 'a source that is a name', from: 'form:', to: 'sources: [A book]\nform:', finds: ['8:11 each source must hold id and cite. (values-fit)'] },
  { says: 'sources that are a name', from: 'form:', to: 'sources: A book\nform:', finds: ['8:1 sources must be a list. (values-fit)'] },
  { says: 'sixty-one sources', from: 'form:', to: `sources: [${Array.from({ length: 61 }, () => '{ id: a, cite: b }').join(', ')}]\nform:`, finds: ['8:1 sources must be a list of at most 60. (values-fit)'] },
  { says: 'a rung that is a word', from: 'stop:', to: '  - free\nstop:', finds: ['16:5 each rung must hold keys such as id, title and load. (values-fit)'] },
  { says: 'a rung that is nothing', from: 'stop:', to: '  -\nstop:', finds: ['16:4 each rung must hold keys such as id, title and load. (values-fit)'] },
]

for (const { says, from, to, finds } of slips) test(`${says} is told where and what to do`, () => assert.deepEqual(after(from, to), finds))

const rungsOf = (rungs: string): string => LADDER.replace(/rungs:[^]*?\nstop/, () => `rungs: ${rungs}\nstop`)

for (const [rungs, finds] of [
  ['', '9:1 rungs must be a list of rungs. (values-fit)'],
  ['{ wall: 1 }', '9:1 rungs must be a list of rungs. (values-fit)'],
  ['[]', '9:1 rungs must hold at least one rung. (values-fit)'],
  [`[${'1,'.repeat(499)}1]`, undefined],
  [`\n${'  - 1\n'.repeat(501)}`, '9:1 rungs must be a list of at most 500. (values-fit)'],
] as const) {
  test(`rungs written ${JSON.stringify(rungs.slice(0, 20))} are ${finds ? 'no list of rungs' : 'each looked at'}`, () => {
    const findings = said(read(rungsOf(rungs)).findings)
    if (finds) assert.equal(findings.at(-1), finds)
    else assert.equal(findings.length, 500)
  })
}

for (const front of ['', '- a\n- b', 'hello', '12', 'null']) {
  test(`front matter that is ${JSON.stringify(front)} holds no keys`, () => {
    assert.deepEqual(said(read(`---\n${front}\n---\n`).findings), ['2:1 The front matter must hold keys such as id, title and rungs. (values-fit)'])
  })
}

const SHAPE = 'id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands. (values-fit)'
const RESERVED = 'id is a name the handbook keeps for itself; choose another. (values-fit)'
const NAME = 'id must be a short name such as bench-hands. (values-fit)'

/** Ids that would make bad addresses, as they are written in the file. */
const ids = [
  ...['../../x', '%2e%2e%2f', '"..\\\\x"', '/etc', '//host', '"C:"', '"file:x"', 'x.', '"x "', 'Wall', 'a--b', '-a', 'a-', 'a_b', 'a b', '2026-10-03', '"404"', 'é', 'а', 'ﬁn', '"a\\nb"', '"a\\0b"', '"\\u202ea"', '"a\\u200b"', '__proto__', 'INDEX', 'CON'].map((id) => ({ id, finds: id.startsWith('%') ? 'Text may not begin with this character. Put quotes around it. (front-matter-is-plain)' : SHAPE, column: id.startsWith('%') ? 9 : 5 })),
  { id: '"%2e%2e%2f"', finds: SHAPE, column: 5 },
  ...['index', 'assets', 'data', 'service-worker', 'search', 'con', 'nul', 'aux', 'com1'].map((id) => ({ id, finds: RESERVED, column: 5 })),
  ...['12', 'true', 'null', '', '[a]'].map((id) => ({ id, finds: NAME, column: 5 })),
  { id: 'a'.repeat(61), finds: 'id must have at most 60 characters. (values-fit)', column: 5 },
]

for (const { id, finds, column } of ids) {
  test(`the id ${id.length > 40 ? `of ${id.length} letters` : id || 'of nothing'} is refused`, () => assert.deepEqual(after('- id: free', `- id: ${id}`).slice(0, 1), [`13:${column} ${finds}`]))
}

for (const id of ['no', 'on', 'y', 'off', 'a1', 'constructor', 'prototype', 'a'.repeat(60)]) {
  test(`the id ${id.slice(0, 20)} is a name like any other`, () => {
    const { value, findings } = read(edited(edited(LADDER, '- id: free', `- id: ${id}`), '{#free}', `{#${id}}`))
    assert.deepEqual(findings, [])
    assert.equal(value?.kind === 'ladder' && value.ladder.rungs[1]?.id, id)
    assert.deepEqual(value?.kind === 'ladder' && value.ladder.rungs[1]?.words?.cues, ['Quiet toes.'])
  })
}

test('an id that is too long and of the wrong letters is told both, and every other slip with it', () => {
  assert.deepEqual(after('- id: free\n    title: Free', `- id: ${'A'.repeat(61)}\n    titel: Free`), [
    '13:5 id must have at most 60 characters. (values-fit)',
    `13:5 ${SHAPE}`,
    '14:5 There is no key "titel" here. Did you mean title? (keys-are-known)',
  ])
})

const KNOWN = 'Known headings: Set up, Full rep, Cues, Faults, Notes. (sections-are-known)'
const COLUMNS = 'Faults must be a table with the columns seen, likely cause, say, if it stays. (sections-are-known)'
const HEAD = '| seen | likely cause | say | if it stays |\n|---|---|---|---|\n'

/** One slip in the body, whose `## Free {#free}` stands on line 27, its `### Cues` on line 29. */
const sections = [
  { says: 'a section of no rung', from: '## Free {#free}', to: '## Floor', finds: [`27:1 "Floor" belongs to no rung. Give it the title of a rung, or add the rung's id: {#wall}. (sections-match-rungs)`] },
  { says: 'a section of an id that is not there', from: '{#free}', to: '{#fre}', finds: [`27:1 "Free" belongs to no rung. Give it the title of a rung, or add the rung's id: {#wall}. (sections-match-rungs)`] },
  { says: 'a section whose heading is not the title', from: '## Free {#free}', to: '## Freely {#free}', finds: ['27:1 The heading says "Freely", the rung is called "Free". Make them the same. (sections-match-rungs)'] },
  { says: 'a rung described twice', from: '## Free {#free}', to: '## Beside a wall', finds: ['27:1 The rung "wall" is described twice. Join the two sections. (sections-match-rungs)'] },
  { says: 'a section found by its title alone', from: '## Free {#free}', to: '## Free', finds: [] },
  { says: 'a heading spelt another way', from: '### Cues\n- Quiet', to: '### Cue\n- Quiet', finds: ['29:1 "Cue" is not a heading a rung knows. Did you mean Cues? (sections-are-known)'] },
  { says: 'a heading like no other', from: '### Cues\n- Quiet', to: '### Thoughts\n- Quiet', finds: [`29:1 "Thoughts" is not a heading a rung knows. ${KNOWN}`] },
  { says: 'a heading that stands twice', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n### Cues\n- Tall.\n', finds: ['32:1 "Cues" stands twice under "Free". Join the two. (sections-are-known)'] },
  { says: 'faults in prose', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n### Faults\nToes claw.\n', finds: [`32:1 ${COLUMNS}`] },
  { says: 'faults with a column renamed', from: '- Quiet toes.\n', to: `- Quiet toes.\n\n### Faults\n\n${HEAD.replace('likely cause', 'cause')}`, finds: [`34:1 ${COLUMNS}`] },
  { says: 'faults with columns in another order', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n### Faults\n| seen | say | likely cause | if it stays |\n|---|---|---|---|\n', finds: [`33:1 ${COLUMNS}`] },
  { says: 'faults with a column too few', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n### Faults\n| seen | likely cause | say |\n|---|---|---|\n', finds: [`33:1 ${COLUMNS}`] },
  { says: 'faults with a column too many', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n### Faults\n| seen | likely cause | say | if it stays | who |\n|---|---|---|---|---|\n', finds: [`33:1 ${COLUMNS}`] },
  { says: 'faults in two tables', from: '- Quiet toes.\n', to: `- Quiet toes.\n\n### Faults\n${HEAD}| a | b | c | d |\n\n${HEAD}| e | f | g | h |\n`, finds: ['32:1 Faults holds more than one table. Join them into one. (sections-are-known)'] },
  { says: 'a sentence between cues and their list', from: '- Quiet toes.\n', to: 'Say it softly.\n\n- Quiet toes.\n', finds: ['30:1 Cues is a list, and this line is no item of it. Begin it with a hyphen, or move it to Notes. (sections-are-known)'] },
  { says: 'a table among cues', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n| a |\n|---|\n| b |\n', finds: ['32:1 Cues is a list, and this line is no item of it. Begin it with a hyphen, or move it to Notes. (sections-are-known)'] },
  { says: 'a footnote among cues', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n[^1]: Not too quiet.\n', finds: ['32:1 Cues is a list, and this line is no item of it. Begin it with a hyphen, or move it to Notes. (sections-are-known)'] },
  { says: 'a full rep in a sentence', from: '- Quiet toes.\n', to: '- Quiet toes.\n\n### Full rep\nUp and down.\n', finds: ['33:1 Full rep is a list, and this line is no item of it. Begin it with a hyphen, or move it to Notes. (sections-are-known)'] },
  { says: 'a sentence below the table of faults', from: '- Quiet toes.\n', to: `- Quiet toes.\n\n### Faults\n${HEAD}| a | b | c | d |\n\nAnd others.\n`, finds: ['37:1 Faults is a table, and this line is no row of it. Write it as a row, or move it to Notes. (sections-are-known)'] },
  { says: 'a table of faults with large letters', from: '- Quiet toes.\n', to: `- Quiet toes.\n\n### Faults\n${HEAD.toUpperCase()}| a | b | c | d |\n`, finds: [] },
]

for (const { says, from, to, finds } of sections) test(`${says}: ${finds.length === 0 ? 'nothing to put right' : 'told where and what to do'}`, () => assert.deepEqual(after(from, to), finds))

test('a heading and a title that differ only in how an accent is stored are one', () => {
  const text = edited(LADDER, 'title: Free', 'title: "Fr\u00e9e"').replace('## Free {#free}', '## Fre\u0301e')
  assert.deepEqual(read(text).findings, [])
})

test('what a rung says is kept part by part, each with its line', () => {
  const text = edited(
    LADDER,
    '### Cues\n- Quiet toes.\n',
    `No hand on the wall.\n\n### Set up\nShoes off.\n\n### Full rep\n1. Start: foot up.\n2. End: foot\n   down.\n\n### Cues\n- Quiet toes.\n- *Tall* neck.\n\n### Faults\n${HEAD}| Claws \\| curls | tries hard | Piano | |\n\n### Notes\nOn sand too.\n`,
  )
  const { value, findings } = read(text)
  assert.deepEqual(findings, [])
  assert.ok(value?.kind === 'ladder')
  assert.deepEqual(value.ladder.rungs[1]?.words, {
    intro: 'No hand on the wall.',
    set_up: 'Shoes off.',
    full_rep: ['Start: foot up.', 'End: foot down.'],
    cues: ['Quiet toes.', '*Tall* neck.'],
    faults: [{ seen: 'Claws | curls', cause: 'tries hard', say: 'Piano', remedy: '' }],
    notes: [{ title: 'Notes', body: 'On sand too.' }],
  })
  const line = (path: string) => text.split('\n')[(value.ladder.places().get(path)?.line ?? 0) - 1]
  assert.equal(line('rungs/free'), '  - id: free')
  assert.equal(line('rungs/1/title'), '    title: Free')
  assert.equal(line('rungs/free/section'), '## Free {#free}')
  assert.equal(line('rungs/free/full-rep/1'), '2. End: foot')
  assert.equal(line('rungs/free/cues/1'), '- *Tall* neck.')
  assert.equal(line('rungs/free/faults/0'), '| Claws \\| curls | tries hard | Piano | |')
  assert.equal(line('intro'), 'Two rungs.')
})

/** Items with more in them than one line, as they are typed and as they are kept. */
const items = [
  { says: 'a list within', typed: '- Quiet toes.\n  - Big one down.\n    - Not curled.\n  - Small ones long.\n- Tall.', kept: ['Quiet toes.\n\n- Big one down.\n  - Not curled.\n- Small ones long.', 'Tall.'] },
  { says: 'a numbered list within a numbered list', typed: '1. Quiet\n   toes.\n   1. Heel.\n2. Tall.', kept: ['Quiet toes.\n\n1. Heel.', 'Tall.'] },
  { says: 'a second paragraph', typed: '- Quiet toes.\n\n  Barefoot.\n\n- Tall.', kept: ['Quiet toes.\n\nBarefoot.', 'Tall.'] },
  { says: 'a list at once', typed: '- - Quiet toes.\n  - Tall.', kept: ['- Quiet toes.\n- Tall.'] },
  { says: 'a quote at once', typed: '- > Quiet toes.\n- Tall.', kept: ['> Quiet toes.', 'Tall.'] },
  { says: 'a picture of code', typed: '- Count:\n\n      1 2 3\n- Tall.', kept: ['Count:\n\n1 2 3', 'Tall.'] },
  { says: 'two lists', typed: '- Quiet toes.\n\n* Tall.', kept: ['Quiet toes.', 'Tall.'] },
]

for (const { says, typed, kept } of items) {
  test(`an item of cues with ${says} loses nothing`, () => {
    const { value, findings } = read(edited(LADDER, '- Quiet toes.', typed))
    assert.deepEqual(findings, [])
    assert.ok(value?.kind === 'ladder')
    assert.deepEqual(value.ladder.rungs[1]?.words?.cues, kept)
  })
}

test('no letter of a footnote is lost to the section it stands in', () => {
  const { value } = read(edited(LADDER, '### Cues\n- Quiet toes.\n', 'Free.[^1]\n\n[^1]: As air.\n\n    - And water.\n\n### Set up\n\nShoes[^1] off.\n\n[^1]: Socks too.\n\n### Cues\n- Quiet toes.\n'))
  assert.ok(value?.kind === 'ladder')
  const { intro, set_up, cues } = value.ladder.rungs[1]?.words ?? {}
  assert.deepEqual([intro, set_up, cues], ['Free.[^1]\n\n[^1]: As air.\n\n    - And water.', 'Shoes[^1] off.\n\n[^1]: Socks too.', ['Quiet toes.']])
  assert.equal(value.ladder.places().get('rungs/free/set-up/text')?.line, 37)
})

test('headings that look like parts of every object are only headings', () => {
  const findings = after('- Quiet toes.\n', '- Quiet toes.\n\n### constructor\n\n### __proto__\n\n## toString\n\n## body {#constructor}\n')
  assert.deepEqual(findings, [
    `32:1 "constructor" is not a heading a rung knows. ${KNOWN}`,
    `34:1 "__proto__" is not a heading a rung knows. ${KNOWN}`,
    `36:1 "toString" belongs to no rung. Give it the title of a rung, or add the rung's id: {#wall}. (sections-match-rungs)`,
    `38:1 "body" belongs to no rung. Give it the title of a rung, or add the rung's id: {#wall}. (sections-match-rungs)`,
  ])
})

test('a slip that is nearly a word we know comes with the edit that puts it right', () => {
  const text = edited(edited(LADDER, 'movement:', 'mowement:'), 'Free\n', 'Free\n    demand: [balanse]\n')
  const lines = text.split('\n')
  const edits = read(text).findings.flatMap(({ edit }) => (edit ? [edit] : []))
  assert.deepEqual(
    edits.map(({ old, text: put }) => [old, put]),
    [
      ['balanse', 'balance'],
      ['mowement', 'movement'],
    ],
  )
  for (const { line, column, old } of edits) assert.ok(lines[line - 1]?.slice(column - 1).startsWith(old))
})

test('of many unknown keys in one map twenty are named, and the rest counted', () => {
  const { findings } = readLadderFile('a.md', bytes(LADDER.replace('id:', `${Array.from({ length: 30 }, (_, index) => `zz${index}: 1`).join('\n')}\nid:`)), 'A club')
  assert.equal(findings.length, 21)
  assert.equal(findings.at(-1)?.message, 'From here on 10 more keys are not known. Take out what was pasted in by mistake.')
})
