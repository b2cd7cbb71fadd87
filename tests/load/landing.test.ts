import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { landing } from '../../src/load/landing.ts'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

const asked = (inputs: Inputs): Outcome<Load> => ask(landing, inputs, ATHLETE)
const land = (drop_height_cm: number, slope_deg = 0, level_speed_m_s = 0, travel_cm = 35): Outcome<Load> => asked({ drop_height_cm, slope_deg, level_speed_m_s, travel_cm })
const fall_cm = (outcome: Outcome<Load>): Outcome => (isMissing(outcome) ? outcome : outcome.load.mid)
const figure = (outcome: Outcome<Load>, name: string): Outcome => {
  if (isMissing(outcome)) return outcome
  const value = outcome.figures.find((each) => each.name === name)?.value ?? assert.fail(name)
  return isMissing(value) ? value : value.mid
}

/** Each row was worked without this code, g = 9.80665 m/s². */
const worked = [
  { drop: 45, slope: 0, level: 0, travel: 30, fall: 45, speed: 2.97086, energy: 4.41299, force: 2.5, from: 'by hand: √(2 × 9.80665 × 0.45) = √8.825985; 9.80665 × 0.45; 1 + 45/30' },
  { drop: 100, slope: 30, level: 2, travel: 50, fall: 40.9888, speed: 4.85929, energy: 4.01963, force: 1.6858, from: 'by hand: 4.42869 × 0.866025 − 2 × 0.5 = 2.835359 m/s into it; 2.835359² = 8.039258; / 19.6133 = 0.409888 m; √(19.6133 + 4); 8.039258/2; the slope carries cos 30° of the weight: 0.866025 + 40.9888/50' },
  { drop: 50, slope: 20, level: 1.5, travel: 35, fall: 30.0985, speed: 3.47227, energy: 2.95165, force: 1.79965, from: 'by hand: 3.131557 × 0.939693 − 1.5 × 0.342020 = 2.429671 m/s into it; ² = 5.903301; / 19.6133; √(9.80665 + 2.25); 5.903301/2; 0.939693 + 30.0985/35' },
  { drop: 0, slope: 0, level: 0, travel: 35, fall: 0, speed: 0, energy: 0, force: 1, from: 'standing still carries body weight' },
]

for (const { drop, slope, level, travel, fall, speed, energy, force, from } of worked) {
  test(`${drop} cm, ${slope}°, ${level} m/s lands like ${fall} cm — ${from}`, () => {
    const outcome = land(drop, slope, level, travel)
    near(fall_cm(outcome), fall, 1e-3) // hand values carry six figures
    near(figure(outcome, 'landing speed'), speed, 1e-4)
    near(figure(outcome, 'energy to absorb'), energy, 1e-4)
    near(figure(outcome, 'mean stopping force'), force, 1e-4)
  })
}

/** Zhang 2000 pairs these heights with these speeds, to a tenth. */
for (const { drop, speed } of [
  { drop: 32, speed: 2.5 },
  { drop: 62, speed: 3.5 },
  { drop: 103, speed: 4.5 },
]) {
  test(`a drop of ${drop} cm lands at ${speed} m/s, as measured — from: Zhang 2000`, () => near(figure(land(drop), 'landing speed'), speed, 0.05))
}

const drops = fc.double({ min: 0, max: 150, noNaN: true })
const slopes = fc.double({ min: 0, max: 45, noNaN: true })
const levels = fc.double({ min: 0, max: 8, noNaN: true })

test('on the flat, take-off speed does not matter', () => {
  fc.assert(fc.property(drops, levels, (drop, level) => near(fall_cm(land(drop, 0, level)), drop, 1e-9)))
})

test('a landing along the path of the fall costs nothing', () => {
  const level = Math.sqrt(2 * 9.80665 * 0.5) // as fast level as down, so the path falls at 45°
  near(fall_cm(land(50, 45, level)), 0, 1e-9)
})

test('a straight drop on a slope is softened by the square of its cosine', () => {
  near(fall_cm(land(80, 45)), 40, 1e-9) // cos² 45° = 1/2
  near(fall_cm(land(80, 30)), 60, 1e-9) // cos² 30° = 3/4
})

test('twice the travel halves what the stopping adds to body weight', () => {
  const added = (travel: number): number => {
    const force = figure(land(60, 0, 0, travel), 'mean stopping force')
    return isMissing(force) ? assert.fail(force.missing) : force - 1
  }
  near(added(40), added(20) / 2, 1e-12)
})

test('on a slope, only the part of the weight that presses into it is carried besides the stopping — by hand: standing still on 45°, cos 45°', () => {
  near(figure(land(0, 45), 'mean stopping force'), Math.SQRT1_2, 1e-12)
  for (const slope of [0, 15, 30, 45]) {
    const [one, other] = [figure(land(60, slope, 0, 20), 'mean stopping force'), figure(land(60, slope, 0, 40), 'mean stopping force')]
    assert.ok(!isMissing(one) && !isMissing(other))
    near(2 * other - one, Math.cos((slope * Math.PI) / 180), 1e-12) // 2 (c + h/2s) − (c + h/s) = c
  }
})

test('more drop never lands softer on the same slope at the same speed', () => {
  fc.assert(
    fc.property(drops, drops, slopes, levels, (a, b, slope, level) => {
      const [low, high] = [fall_cm(land(Math.min(a, b), slope, level)), fall_cm(land(Math.max(a, b), slope, level))]
      if (!isMissing(low)) assert.ok(!isMissing(high) && high >= low - 1e-9)
    }),
  )
})

test('every answer is finite and none is negative, and the force is at least what presses into the slope: 0.707 of body weight at 45°, all of it on the flat', () => {
  fc.assert(
    fc.property(drops, slopes, levels, fc.double({ min: 5, max: 80, noNaN: true }), (drop, slope, level, travel) => {
      const outcome = land(drop, slope, level, travel)
      if (isMissing(outcome)) return assert.equal(outcome.missing, 'the path is shallower than the slope, so it never comes down on it')
      for (const value of [fall_cm(outcome), figure(outcome, 'landing speed'), figure(outcome, 'energy to absorb')]) assert.ok(!isMissing(value) && Number.isFinite(value) && value >= 0)
      const force = figure(outcome, 'mean stopping force')
      assert.ok(!isMissing(force) && Number.isFinite(force) && force >= Math.cos((slope * Math.PI) / 180) - 1e-12 && force >= Math.SQRT1_2 - 1e-12)
      const flat = figure(land(drop, 0, level, travel), 'mean stopping force')
      assert.ok(!isMissing(flat) && flat >= 1)
    }),
  )
})

const SUGGESTED = ['At or above 1 m, the suggested design value for jumps (Minetti 1998, Levy 2015).']
const MOST = ['At or above 1.5 m, the absolute maximum quoted in the design of jumps (Minetti 1998, Levy 2015).']
for (const { drop, cautions } of [
  { drop: 50, cautions: [] },
  { drop: 99, cautions: [] },
  { drop: 100, cautions: SUGGESTED },
  { drop: 149, cautions: SUGGESTED },
  { drop: 150, cautions: MOST },
]) {
  test(`a drop of ${drop} cm onto the flat is cautioned with: ${cautions.join('') || 'nothing'}`, () => {
    const outcome = land(drop)
    assert.ok(!isMissing(outcome))
    assert.deepEqual(outcome.cautions, cautions)
  })
}

test('a landing is no exercise that is repeated, so no repetitions follow from it', () => {
  const outcome = land(30)
  assert.ok(!isMissing(outcome))
  assert.deepEqual(outcome.quantity, { name: 'equivalent fall height', unit: 'cm', repeats: false })
})

test('says why, instead of squaring a negative speed, when the path is shallower than the slope', () => {
  assert.deepEqual(land(10, 40, 8), { missing: 'the path is shallower than the slope, so it never comes down on it' })
})

for (const { inputs, missing } of [
  { inputs: {}, missing: 'drop_height_cm is not given; landing needs it' },
  { inputs: { drop_height_cm: 151 }, missing: 'drop_height_cm is 151; landing holds from 0 to 150 cm' },
  { inputs: { drop_height_cm: 30, travel_cm: 4 }, missing: 'travel_cm is 4; landing holds from 5 to 80 cm' },
  { inputs: { drop_height_cm: 30, slope_deg: 46 }, missing: 'slope_deg is 46; landing holds from 0 to 45 deg' },
  { inputs: { drop_height_cm: 30, level_speed_m_s: -1 }, missing: 'level_speed_m_s is -1; landing holds from 0 to 8 m/s' },
]) {
  test(`says: ${missing}`, () => assert.deepEqual(asked(inputs), { missing }))
}
