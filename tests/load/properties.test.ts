import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { bodies } from '../../src/load/body.ts'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import type { Spread } from '../../src/quantity/spread.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

/** Laws of `supported-body` over random set-ups. A set-up that is not computed gives a reason, and keeps the law by having no number. */
const asked = (inputs: Inputs, stature_m = ATHLETE.stature_m): Outcome<Load> => ask(supportedBody, inputs, { ...ATHLETE, stature_m })

/** Arithmetic, made up to a thousand times larger by a force that passes near the feet. */
const ROUNDING = 1e-9

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const statures = between(1.4, 2.1)

const common = {
  foot_height_cm: between(0, 60),
  knee_deg: between(60, 180),
  elbow_deg: between(40, 170),
  working_side_percent: between(50, 100),
  added_mass_percent: between(0, 100),
  added_mass_at: fc.constantFrom('vest', 'back', 'lap'),
}
const optional = { requiredKeys: ['facing', 'feet', 'hands'] } as const

const kneeling = fc.record({ facing: fc.constant('down'), feet: fc.constant('knees'), hands: fc.constantFrom('surface', 'bar', 'straps'), ...common, shanks: fc.constantFrom('rest', 'lifted'), hand_height_cm: between(0, 130) }, { requiredKeys: [...optional.requiredKeys, 'hand_height_cm'] })
const pushes = fc.record({ facing: fc.constant('down'), feet: fc.constantFrom('toes', 'flat'), hands: fc.constantFrom('surface', 'bar', 'straps'), ...common, hand_height_cm: between(0, 130) }, { requiredKeys: [...optional.requiredKeys, 'hand_height_cm'] })
const rows = fc.record(
  { facing: fc.constant('up'), feet: fc.constantFrom('heels', 'flat'), hands: fc.constant('straps'), ...common, anchor_height_cm: between(120, 400), feet_from_anchor_cm: between(-150, 100), lean_deg: between(15, 90) },
  { requiredKeys: [...optional.requiredKeys, 'anchor_height_cm', 'lean_deg'] },
)
const bars = fc.record({ facing: fc.constant('up'), feet: fc.constantFrom('heels', 'flat'), hands: fc.constant('bar'), ...common, lean_deg: between(55, 90) }, { requiredKeys: [...optional.requiredKeys, 'lean_deg'] })
const setUps: fc.Arbitrary<Inputs> = fc.oneof(pushes, kneeling, rows, bars)

/** Anything within the spans, sensible or not: what a hurried coach might type. */
const anything: fc.Arbitrary<Inputs> = fc.record(
  {
    facing: fc.constantFrom('down', 'up'),
    feet: fc.constantFrom('toes', 'heels', 'flat', 'knees'),
    hands: fc.constantFrom('surface', 'bar', 'straps'),
    ...common,
    shanks: fc.constantFrom('rest', 'lifted'),
    foot_height_cm: between(0, 150),
    hand_height_cm: between(0, 250),
    lean_deg: between(0, 90),
    anchor_height_cm: between(50, 600),
    feet_from_anchor_cm: between(-300, 300),
    strap_cm: between(20, 500),
  },
  { requiredKeys: ['facing', 'feet', 'hands'] },
)

const settledFigures = ({ figures }: Load): readonly { readonly name: string; readonly value: Spread }[] => figures.flatMap(({ name, value }) => (isMissing(value) ? [] : [{ name, value }]))
const numbersOf = ({ mid, points }: Spread): readonly number[] => [mid, ...points]

test('most of the random set-ups are computed, so that the laws below say something', () => {
  const tried = fc.sample(setUps, { numRuns: 300, seed: 1996 }).map((inputs) => asked(inputs))
  assert.ok(tried.filter((outcome) => !isMissing(outcome)).length > 150, `${tried.filter((outcome) => !isMissing(outcome)).length}`)
})

/** Places may lie to either side, and a strap from a low anchor may pull the hands down; these may not be less than nothing. */
const NEVER_NEGATIVE = /^(load|force|what the feet carry|friction|moment)/

for (const { of, inputs } of [
  { of: 'sensible', inputs: setUps },
  { of: 'careless', inputs: anything },
]) {
  test(`${of} set-ups give finite numbers or a reason, and no load, reaction or friction is negative`, () => {
    fc.assert(
      fc.property(inputs, statures, (setUp, stature_m) => {
        const outcome = asked(setUp, stature_m)
        if (isMissing(outcome)) return assert.match(outcome.missing, /^[a-z][^.]+[a-z)0-9]$/) // a phrase, after "not computed:"
        for (const { name, value } of [{ name: 'load', value: outcome.load }, ...settledFigures(outcome)]) {
          for (const number of numbersOf(value)) assert.ok(Number.isFinite(number) && (number >= 0 || !NEVER_NEGATIVE.test(name)), `${name}: ${number}`)
        }
        for (const { joints, forces } of outcome.poses) {
          for (const { x, y } of [...Object.values(joints), ...forces.flatMap(({ at, per_weight }) => [at, per_weight])]) assert.ok(Number.isFinite(x) && Number.isFinite(y))
        }
      }),
    )
  })
}

const figure = (load: Load, name: string): Spread | undefined => settledFigures(load).find((each) => each.name === name)?.value

/** What the tables weigh, in % of body mass: women 99.99, men and Dempster 100; foot and shank 6.10, 5.70 and 6.10 a side. By hand. */
const WHOLE = { women: 99.99, men: 100, Dempster: 100 } as const
const BOTH_SHANKS = { women: 12.2, men: 11.4, Dempster: 12.2 } as const
const tableOf = (name: string): keyof typeof WHOLE => (name.startsWith('women') ? 'women' : name.startsWith('men') ? 'men' : 'Dempster')

test('hands and feet together hold up the body and what it carries, less the shanks that rest on the floor', () => {
  fc.assert(
    fc.property(setUps, (setUp) => {
      const outcome = asked(setUp)
      if (isMissing(outcome)) return
      const resting = setUp['feet'] === 'knees' && setUp['shanks'] !== 'lifted'
      for (const at of ['at the start of the rep', 'at the end of the rep']) {
        const [hands, feet] = [figure(outcome, `upright part of that force ${at}`), figure(outcome, `what the feet carry ${at}`)]
        if (!hands || !feet) continue
        for (const [index, up] of hands.points.entries()) {
          const table = tableOf(bodies[Math.floor(index / 6)]?.name ?? assert.fail()) // six assumptions a body
          const weight = WHOLE[table] - (resting ? BOTH_SHANKS[table] : 0) + Number(setUp['added_mass_percent'] ?? 0)
          near(up + (feet.points[index] ?? Number.NaN), weight, 1e-9)
        }
      }
    }),
  )
})

test('the same set-up gives the same digits', () => {
  fc.assert(fc.property(setUps, statures, (setUp, stature_m) => assert.equal(JSON.stringify(asked(setUp, stature_m)), JSON.stringify(asked({ ...setUp }, stature_m)))))
})

test('a working side that takes everything carries twice what one carries that takes half', () => {
  fc.assert(
    fc.property(setUps, (setUp) => {
      const [all, half] = [100, 50].map((working_side_percent) => asked({ ...setUp, working_side_percent }))
      if (!all || !half || isMissing(all) || isMissing(half)) return assert.deepEqual(all, half)
      for (const [index, share] of numbersOf(half.load).entries()) near(numbersOf(all.load)[index] ?? Number.NaN, 2 * share, 1e-9)
      assert.deepEqual(all.figures, half.figures)
    }),
  )
})

test('nothing added is the same as no word of it', () => {
  fc.assert(fc.property(setUps, (setUp) => assert.deepEqual(asked({ ...setUp, added_mass_percent: 0 }), asked({ ...setUp, added_mass_percent: undefined }))))
})

test('a mass carried on the trunk never lightens the hands of a body that leans', () => {
  fc.assert(
    fc.property(setUps, between(0, 100), (setUp, added_mass_percent) => {
      const [without, carrying] = [asked({ ...setUp, added_mass_at: 'vest', added_mass_percent: 0 }), asked({ ...setUp, added_mass_at: 'vest', added_mass_percent })]
      if (isMissing(without) || isMissing(carrying)) return
      assert.ok(carrying.load.mid >= without.load.mid - ROUNDING)
    }),
  )
})

const LENGTHS = ['hand_height_cm', 'foot_height_cm', 'anchor_height_cm', 'feet_from_anchor_cm'] as const

test('a body and its surroundings scaled together keep every share', () => {
  fc.assert(
    fc.property(setUps, between(0.8, 1.2), (setUp, scale) => {
      const scaled = { ...setUp, ...Object.fromEntries(LENGTHS.flatMap((name) => (setUp[name] === undefined ? [] : [[name, Number(setUp[name]) * scale]]))) }
      const [one, other] = [asked(setUp), asked(scaled, ATHLETE.stature_m * scale)]
      if (isMissing(one) || isMissing(other)) return
      for (const [index, share] of numbersOf(one.load).entries()) near(numbersOf(other.load)[index] ?? Number.NaN, share, ROUNDING)
    }),
  )
})

const loadAt = (inputs: Inputs, stature_m: number): number | undefined => {
  const outcome = asked(inputs, stature_m)
  return isMissing(outcome) ? undefined : outcome.load.mid
}

test('a press-up gets lighter as the hands rise from the floor', () => {
  fc.assert(
    fc.property(fc.constantFrom('toes', 'knees'), between(0, 130), between(0, 130), statures, (feet, a, b, stature_m) => {
      const at = (hand_height_cm: number) => loadAt({ facing: 'down', feet, hands: 'surface', hand_height_cm }, stature_m)
      const [low, high] = [at(Math.min(a, b)), at(Math.max(a, b))]
      if (low !== undefined && high !== undefined) assert.ok(high <= low + ROUNDING)
    }),
  )
})

test('a row on straps gets heavier as the body leans farther, where the feet are under the anchor or before it', () => {
  fc.assert(
    fc.property(fc.constantFrom('heels', 'flat'), between(-120, 0), between(20, 80), between(20, 80), statures, (feet, feet_from_anchor_cm, a, b, stature_m) => {
      const at = (lean_deg: number) => loadAt({ facing: 'up', feet, hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm, lean_deg }, stature_m)
      const [less, more] = [at(Math.min(a, b)), at(Math.max(a, b))]
      if (less !== undefined && more !== undefined) assert.ok(less <= more + ROUNDING)
    }),
  )
})

test('with the feet well past the anchor a row may get lighter as the body leans farther: the strap passes near the feet', () => {
  const at = (lean_deg: number): number => loadAt({ facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: 60, lean_deg }, ATHLETE.stature_m) ?? assert.fail()
  assert.ok(at(45) < at(30) && at(45) < at(75))
})
