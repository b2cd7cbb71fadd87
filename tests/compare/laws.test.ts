import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { OPPOSITE, type Change, type ChangeKind, type Comparison } from '../../src/compare/change.ts'
import { compare, editionKind } from '../../src/compare/compare.ts'
import { changeText, exampleText, SAYS, sidesText } from '../../src/compare/say.ts'
import type { Curriculum, Ladder } from '../../src/ladder/curriculum.ts'
import { isNumberKey } from '../../src/load/model.ts'
import { modelNamed } from '../../src/load/index.ts'
import { measure, type MeasuredCurriculum } from '../../src/measure/measure.ts'
import { placement } from '../../src/measure/place.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { pairs } from './pairs.ts'
import { before, compared, demoWith, editedFiles, line, lines, measured as measuredFiles, readFiles, starterFiles, type Edit } from './versions.ts'

const compareAll = (): readonly (readonly [says: string, comparison: Comparison])[] =>
  pairs.map(({ says, edits }) => [says, compared(before(edits), editedFiles(before(edits), edits))])

/** Every pair, compared once. */
const all = compareAll()

const PRESS = starterFiles('ladders/press-up.md')
const pressWith = (...edits: readonly Omit<Edit, 'file'>[]): Record<string, string> => editedFiles(PRESS, edits.map((edit) => ({ file: 'ladders/press-up.md', ...edit })))

test('a curriculum compared with itself, or with itself read again, shows nothing', () => {
  const files = starterFiles('ladders/press-up.md', 'ladders/calf-raise.md', 'ladders/crawl.md', 'content/pain.md')
  const one = measuredFiles(files)
  for (const other of [one, measuredFiles(files)]) assert.deepEqual(compare(one, other), { typed: [], followed: [] })
  assert.equal(editionKind(compare(one, one)), 'no change')
  assert.deepEqual(compare(demoWith(), demoWith()), { typed: [], followed: [] })
})

test('every kind has its opposite, whose opposite is the kind', () => {
  for (const [kind, opposite] of Object.entries(OPPOSITE) as [ChangeKind, ChangeKind][]) assert.equal(OPPOSITE[opposite], kind)
})

test('every kind is called something, and no two the same', () => {
  const called = Object.keys(OPPOSITE).map((kind) => SAYS[kind as ChangeKind])
  assert.equal(new Set(called).size, Object.keys(OPPOSITE).length)
})

test('where nothing was typed nothing follows, and what follows names at least one typed change and none but those', () => {
  for (const [says, { typed, followed }] of all) {
    const known = new Set(typed.map(({ fingerprint }) => fingerprint))
    if (typed.length === 0) assert.deepEqual(followed, [], says)
    for (const change of followed) {
      assert.ok(change.causes.length > 0, `${says}: ${line(change)} follows from nothing`)
      for (const cause of change.causes) assert.ok(known.has(cause), `${says}: ${line(change)}`)
    }
    for (const change of typed) assert.deepEqual(change.causes, [], says)
  }
})

test('no two changes of one comparison have one fingerprint', () => {
  for (const [says, { typed, followed }] of all) {
    const own = [...typed, ...followed].map(({ fingerprint }) => fingerprint)
    assert.equal(new Set(own).size, own.length, says)
  }
})

test('no sentence holds a difference of nothing', () => {
  for (const [says, { typed, followed }] of all) for (const change of [...typed, ...followed]) assert.doesNotMatch(changeText(change), /[+−]0$|NaN|undefined/, says)
})

test('a fingerprint outlives a reword of the sentences', () => {
  const printed = (comparisons: typeof all): string[] => comparisons.flatMap(([, { typed, followed }]) => [...typed, ...followed].map(({ fingerprint }) => fingerprint))
  const called = { ...SAYS }
  try {
    for (const kind of Object.keys(SAYS) as ChangeKind[]) SAYS[kind] = `reworded: ${kind}`
    assert.deepEqual(printed(compareAll()), printed(all))
    const [[, { typed: [change] }] = assert.fail()] = all
    assert.match(changeText(change ?? assert.fail()), /^reworded: /)
  } finally {
    Object.assign(SAYS, called)
  }
})

/** The same ladders with their rungs the other way round, each still after the rungs it was after. */
const turned = (curriculum: Curriculum): Curriculum => ({ ...curriculum, ladders: curriculum.ladders.map((ladder) => ({ ...ladder, rungs: ladder.rungs.toReversed() })) })

const prints = ({ typed, followed }: Comparison): string[] => [...typed, ...followed].map(({ fingerprint }) => fingerprint).toSorted()

test('the order of rungs in the file is no change where each still follows the same rungs', () => {
  for (const name of ['calf-raise', 'pull-up', 'press-up', 'jump']) {
    const curriculum = readFiles(starterFiles(`ladders/${name}.md`))
    assert.deepEqual(compare(measure(curriculum), measure(turned(curriculum))), { typed: [], followed: [] })
  }
})

test('fingerprints do not change with the order of rungs in the file', () => {
  for (const { says, edits, followed } of pairs) {
    if (followed === undefined) continue
    const [was, is] = [readFiles(before(edits)), readFiles(editedFiles(before(edits), edits))]
    const straight = prints(compare(measure(was), measure(is)))
    assert.deepEqual(prints(compare(measure(turned(was)), measure(turned(is)))), straight, says)
    assert.deepEqual(prints(compare(measure(was), measure(turned(is)))), straight, says)
  }
})

test('of equally heavy rungs nobody is placed on another by their order and a reworded title', () => {
  const curriculum = readFiles(starterFiles('ladders/squat-one-leg.md'))
  const reworded: Curriculum = { ...turned(curriculum), ladders: turned(curriculum).ladders.map((ladder) => ({ ...ladder, title: 'Squat on one leg' })) }
  assert.deepEqual(lines(compare(measure(curriculum), measure(reworded))), { typed: ['squat-one-leg: wording-changed, title'], followed: {} })
})

// — numbers edited at random —

const starter = readFiles(starterFiles(...['press-up', 'squat-one-leg', 'hinge', 'calf-raise'].map((name) => `ladders/${name}.md`)))
const starting = measure(starter)

/** One number of one ladder, and how much it moves: a share of itself. */
type Nudge = { readonly ladder: number; readonly number: number; readonly by: number }

/** The numbers of a ladder that a coach might change, each with how it is set. */
function numbersIn(ladder: Ladder): { readonly value: number; set(value: number): Ladder }[] {
  const { standard, first_reps } = ladder
  const rungs = ladder.rungs.flatMap((rung, index) =>
    Object.entries(rung.load).flatMap(([key, value]) => {
      const spec = modelNamed(rung.load.model)?.keys[key]
      if (typeof value !== 'number' || !spec || !isNumberKey(spec)) return []
      const set = (to: number): Ladder => ({ ...ladder, rungs: ladder.rungs.with(index, { ...rung, load: { ...rung.load, [key]: Math.min(spec.max, Math.max(spec.min, to)) } as Ladder['rungs'][number]['load'] }) })
      return [{ value, set }]
    }),
  )
  return [
    ...(standard.reps === undefined ? [] : [{ value: standard.reps, set: (to: number): Ladder => ({ ...ladder, standard: { ...standard, reps: Math.max(1, Math.round(to)) } }) }]),
    ...(first_reps === undefined ? [] : [{ value: first_reps, set: (to: number): Ladder => ({ ...ladder, first_reps: Math.max(1, Math.round(to)) }) }]),
    ...rungs,
  ]
}

function nudged(curriculum: Curriculum, { ladder: which, number, by }: Nudge): Curriculum {
  const at = which % curriculum.ladders.length
  const ladder = curriculum.ladders[at] ?? assert.fail()
  const numbers = numbersIn(ladder)
  const { value, set } = numbers[number % numbers.length] ?? assert.fail()
  return { ...curriculum, ladders: curriculum.ladders.with(at, set(value * (1 + by / 100))) }
}

const nudge = fc.record({ ladder: fc.nat(3), number: fc.nat(60), by: fc.integer({ min: -40, max: 40 }) })
const nudges = fc.array(nudge, { minLength: 1, maxLength: 3 })

/** Measured, but for the ladders that stand as they stood. */
function measured(curriculum: Curriculum): MeasuredCurriculum {
  const moved = curriculum.ladders.filter((ladder, index) => ladder !== starter.ladders[index])
  const now = new Map(measure({ ...curriculum, ladders: moved }).ladders.map((ladder) => [ladder.id, ladder]))
  return { ...starting, ladders: starting.ladders.map((ladder) => now.get(ladder.id) ?? ladder) }
}

/** Where one strict set places an athlete, computed again. */
function placedOn(curriculum: MeasuredCurriculum, id: string, on: string, reps: number, reserve_reps: number): string {
  const ladder = curriculum.ladders.find((candidate) => candidate.id === id) ?? assert.fail()
  const placed = placement(ladder, on, reps, reserve_reps)
  assert.ok(!isMissing(placed) && !isMissing(placed.highest))
  return placed.highest
}

test('every example athlete stands where the comparison says, before and after', () => {
  let examples = 0
  fc.assert(
    fc.property(nudges, (several) => {
      const [was, is] = [starting, measured(several.reduce(nudged, starter))]
      for (const change of compare(was, is).followed) {
        assert.equal(change.kind.startsWith('placement-'), change.example !== undefined)
        if (change.example === undefined) continue
        const { ladder, on, reps, reserve_reps, stood, stands } = change.example
        assert.equal(placedOn(was, ladder, on, reps, reserve_reps), stood)
        assert.equal(placedOn(is, ladder, on, reps, reserve_reps), stands)
        assert.notEqual(stood, stands)
        examples += 1
      }
    }),
    { numRuns: 60, seed: 7 },
  )
  assert.ok(examples > 40, `only ${examples} examples were seen`)
})

test('edits at random: typed changes are undone by their opposites, and so is what follows while the standard stays', () => {
  fc.assert(
    fc.property(nudges, (several) => {
      const [was, is] = [starting, measured(several.reduce(nudged, starter))]
      const [there, back] = [compare(was, is), compare(is, was)]
      const shown = (changes: readonly Change[], kindOf: (kind: ChangeKind) => ChangeKind): string[] =>
        changes.filter(({ kind }) => !kind.startsWith('placement-')).map((change) => line({ ...change, kind: kindOf(change.kind) })).toSorted()
      assert.deepEqual(shown(back.typed, (kind) => kind), shown(there.typed, (kind) => OPPOSITE[kind]))
      assert.deepEqual(shown(back.followed, (kind) => kind), shown(there.followed, (kind) => OPPOSITE[kind]))
    }),
    { numRuns: 60, seed: 7 },
  )
})

test('two edits one after the other are one edit: the first one’s before and the second one’s after', () => {
  fc.assert(
    fc.property(nudges, nudges, (first, second) => {
      const between = first.reduce(nudged, starter)
      const [a, b, c] = [starting, measured(between), measured(second.reduce(nudged, between))]
      const about = (change: Change): string => line({ ...change, kind: 'wording-changed' })
      const values = new Map<string, { before?: string | undefined; after?: string | undefined }>()
      for (const change of compare(a, b).typed) values.set(about(change), { before: change.before?.text, after: change.after?.text })
      for (const change of compare(b, c).typed) values.set(about(change), { before: values.get(about(change))?.before ?? change.before?.text, after: change.after?.text })
      const joined = [...values].filter(([, value]) => value.before !== value.after).map(([key, value]) => ({ key, ...value }))
      const direct = compare(a, c).typed.map((change) => ({ key: about(change), before: change.before?.text, after: change.after?.text })).filter((value) => value.before !== value.after)
      const byKey = (values: { key: string }[]) => values.toSorted((x, y) => (x.key < y.key ? -1 : 1))
      assert.deepEqual(byKey(direct), byKey(joined))
    }),
    { numRuns: 40, seed: 7 },
  )
})

test('an interval that narrows about its middle has risen one way and fallen the other', () => {
  const foretold = (first_reps: number, low: number, high: number): MeasuredCurriculum => ({
    ...starting,
    ladders: starting.ladders.slice(0, 1).map((ladder) => ({ ...ladder, first_reps, rungs: ladder.rungs.slice(0, 2).map((rung) => ({ ...rung, steps: rung.steps.map((step) => ({ ...step, predicted: { low, high, formulas: [] }, block: { sessions: [low, high] as const, weeks: [low, high] as const } })) })) })),
  })
  const [wide, narrow] = [foretold(3, 3, 7), foretold(4, 4, 6)]
  const kinds = (one: MeasuredCurriculum, other: MeasuredCurriculum): string[] => compare(one, other).followed.map(({ kind }) => kind).filter((kind) => /^(first-reps|block)-/.test(kind))
  assert.deepEqual(kinds(wide, narrow), ['first-reps-rise', 'block-lengthens'])
  assert.deepEqual(kinds(narrow, wide), ['first-reps-fall', 'block-shortens'])
})

// — what must never be taken for something else —

test('a ladder moved to another file is no change', () => {
  const { 'ladders/press-up.md': text = '', ...others } = PRESS
  assert.deepEqual(compared(PRESS, { ...others, 'ladders/floor/press.md': text }), { typed: [], followed: [] })
})

test('a change in a moved ladder says where it was and where it is', () => {
  const { 'ladders/press-up.md': text = '', ...others } = pressWith({ from: 'first_reps: 3', to: 'first_reps: 4' })
  const [change] = compared(PRESS, { ...others, 'ladders/moved.md': text }).typed
  assert.deepEqual([change?.was, change?.is], [{ file: 'ladders/press-up.md', line: 8, column: 1 }, { file: 'ladders/moved.md', line: 8, column: 1 }])
})

test('a rung with a new id carries its changes, and its athletes, to it', () => {
  const { edits } = pairs.find(({ says }) => says.startsWith('a rung gets a new id and more load')) ?? assert.fail()
  const { typed, followed } = compared(before(edits), editedFiles(before(edits), edits))
  assert.deepEqual(typed.map(({ subject, before: was, after }) => [subject.rung, was?.text, after?.text]), [['kg-18-x', '18 kg', '20 kg'], ['kg-18-x', 'kg-18', 'kg-18-x']])
  const moved = followed.find(({ example }) => example)
  assert.equal(moved && exampleText(moved), 'an athlete of average build with 12 strict reps on kg-16 and 2 in reserve: was ready for kg-18, is ready for kg-16')
})

test('a rung withdrawn without an heir could hurt somebody, and comes before all else', () => {
  const edits: Edit[] = [
    { file: 'ladders/press-up.md', from: 'title: Press-up\n', to: 'title: Press-ups\n' },
    { file: 'ladders/press-up.md', from: 'first_reps: 3', to: 'first_reps: 4' },
    { file: 'ladders/press-up.md', from: '  - id: one-side\n', to: '  - id: one-arm\n' },
    { file: 'ladders/press-up.md', from: '{#one-side}', to: '{#one-arm}' },
  ]
  const [first, second] = compared(PRESS, editedFiles(PRESS, edits)).typed
  assert.deepEqual([first?.kind, first?.unsafe, first?.name, second?.unsafe], ['rung-withdrawn', true, 'without an heir', false])
})

/** What an edit weighs, and whether it could hurt somebody. */
const weights = [
  { says: 'a safety note taken out', edits: [{ from: '  - numbness or tingling in a hand\n', to: '' }], weight: 're-placing', unsafe: true },
  { says: 'a unit changed while the number stayed', edits: [{ from: 'reps: 12', to: 'seconds: 12' }], weight: 're-placing', unsafe: true },
  { says: 'a unit changed with its number', edits: [{ from: 'reps: 12', to: 'seconds: 40' }], weight: 're-placing', unsafe: false },
  { says: 'more supervision', edits: [{ from: 'supervision: none', to: 'supervision: coach' }], weight: 'growth', unsafe: false },
  { says: 'the prose of a criterion', edits: [{ from: '- End: breastbone within a fist of the bar for a still moment.', to: '- End: breastbone near the bar.' }], weight: 'to judge', unsafe: false },
  { says: 'a note said otherwise', edits: [{ from: '- dizziness, chest pain or unusual breathlessness', to: '- dizziness or chest pain or unusual breathlessness' }], weight: 'to judge', unsafe: false },
  { says: 'a cue', edits: [{ from: '- Lean like a ladder.', to: '- Lean like a plank.' }], weight: 'wording', unsafe: false },
] as const

for (const { says, edits, weight, unsafe } of weights) {
  test(`${says} is ${weight}${unsafe ? ' and could hurt somebody' : ''}`, () => {
    const { typed } = compared(PRESS, pressWith(...edits))
    assert.deepEqual(typed.map((change) => [change.weight, change.unsafe]), [[weight, unsafe]])
  })
}

test('two notes of which little is the same are one taken out and one added', () => {
  const { typed } = compared(PRESS, pressWith({ from: '- numbness or tingling in a hand', to: '- a cramp in the calf' }))
  assert.deepEqual(typed.map(line), ['press-up: note-removed, stop', 'press-up: note-added, stop'])
})

test('a difference is said with both sides, and with how much where both are numbers of one unit', () => {
  const said = (edit: Omit<Edit, 'file'>): string[] => compared(PRESS, pressWith(edit)).typed.map(changeText)
  assert.deepEqual(said({ from: 'reps: 12', to: 'reps: 15' }), ['criterion raised: standard reps, 12 reps → 15 reps, +3'])
  assert.deepEqual(said({ from: 'hand_height_cm: 95', to: 'hand_height_cm: 92.5' }), ['set-up lowered: hand_height_cm, 95 cm → 92.5 cm, −2.5'])
  assert.deepEqual(said({ from: 'reps: 12', to: 'seconds: 40' }), ['criterion counted in another unit: standard amount, 12 reps → 40 s'])
  assert.deepEqual(said({ from: 'aim: floor', to: 'aim: one-side' }), ['another aim: floor → one-side'])
  assert.equal(sidesText({ ...(compared(PRESS, PRESS).typed[0] ?? ({} as Change)) }), '')
})

// — the seal over the demo —

/** The demo with a review of its press-up that matches what it holds. */
function sealed(edits: readonly Omit<Edit, 'file'>[] = []): MeasuredCurriculum {
  const file = 'ladders/press-up.md'
  const find = (curriculum: MeasuredCurriculum) => curriculum.ladders.find(({ id }) => id === 'press-up') ?? assert.fail()
  const stands = find(demoWith()).review?.seal ?? assert.fail('the demo has no seal')
  const seal: Edit = { file, from: `"${stands}"`, to: `"${find(demoWith()).digest}"` }
  return demoWith([seal, ...edits.map((edit) => ({ file, ...edit }))])
}

test('a review stands while only words change, and no longer where a criterion does', () => {
  const seals = (...edits: Omit<Edit, 'file'>[]): [boolean | undefined, string[]] => {
    const after = sealed(edits)
    return [after.ladders.find(({ id }) => id === 'press-up')?.sealed, compare(sealed(), after).followed.filter(({ kind }) => kind.startsWith('seal-')).map(line)]
  }
  assert.deepEqual(seals(), [true, []])
  assert.deepEqual(seals({ from: 'rungs:\n', to: 'title: Press-ups\nrungs:\n' }), [true, []])
  assert.deepEqual(seals({ from: 'entry: { reps: 15 }', to: 'entry: { reps: 14 }' }), [false, ['press-up: seal-broken, review']])
  assert.deepEqual(seals({ from: 'rungs:\n', to: 'standard: { rest_s: 60 }\nrungs:\n' }), [false, ['press-up: seal-broken, review']])
  assert.deepEqual(seals({ from: 'rungs:\n', to: 'stop: [a cramp]\nrungs:\n' }), [false, ['press-up: seal-broken, review']])
})

test('cues, faults and set-up may be said otherwise under a seal, a full rep may not', () => {
  const [{ digest } = assert.fail()] = measuredFiles(PRESS).ladders
  const signed = { from: 'stop:\n', to: `review: { by: A. Reviewer, on: 2026-11-25, seal: "${digest}" }\nstop:\n` }
  const seals = (edit: Omit<Edit, 'file'>): string[] => compared(pressWith(signed), pressWith(signed, edit)).followed.map(line)
  assert.deepEqual(seals({ from: '- Lean like a ladder.', to: '- Lean like a plank.' }), [])
  assert.deepEqual(seals({ from: 'Bar to the lower breastbone', to: 'Bar to the breastbone' }), [])
  assert.deepEqual(seals({ from: '- Fix the bar at 72 cm.', to: '- Fix the bar at 72 cm, firmly.' }), [])
  assert.deepEqual(seals({ from: '- End: breastbone within a fist of the bar for a still moment.', to: '- End: breastbone near the bar.' }), ['press-up: seal-broken, review'])
  assert.deepEqual(seals({ from: '  - elbows straight at the top\n', to: '' }), ['press-up: seal-broken, review'])
})

test('a broken seal names what broke it, and is mended when that is taken back', () => {
  const raised = sealed([{ from: 'rungs:\n', to: 'standard: { rest_s: 60 }\nfirst_reps: 4\ntitle: Press-ups\nrungs:\n' }])
  const { typed, followed } = compare(sealed(), raised)
  const broken = followed.find(({ kind }) => kind === 'seal-broken') ?? assert.fail()
  assert.deepEqual(typed.filter(({ fingerprint }) => broken.causes.includes(fingerprint)).map(line), ['press-up: criterion-raised, first_reps', 'press-up: criterion-lowered, standard rest_s'])
  assert.deepEqual(compare(raised, sealed()).followed.filter(({ kind }) => kind.startsWith('seal-')).map(({ kind }) => kind), ['seal-mended'])
})

test('a review that comes or goes with a change is neither broken nor mended', () => {
  const unsigned = sealed([{ from: 'review:', to: 'silence: []\nreview:' }])
  const none = demoWith([{ file: 'ladders/press-up.md', from: 'entry: { reps: 15 }', to: 'entry: { reps: 14 }' }])
  const without = measure({ ...readFiles(PRESS), ladders: readFiles(PRESS).ladders })
  for (const [one, other] of [[without, none], [none, without], [unsigned, sealed()]] as const) {
    assert.deepEqual(compare(one, other).followed.filter(({ kind }) => kind.startsWith('seal-')), [])
  }
})
