import assert from 'node:assert/strict'
import { test } from 'vitest'
import { bodies, dempster, men, REFERENCE_STATURE_M, women, type Body } from '../../src/load/body.ts'
import { near } from '../quantity/near.ts'
import { deLevaMen, deLevaWomen, winter, type SegmentTable } from './segment-tables.ts'

const TWICE = ['thigh', 'shank', 'foot', 'upper_arm', 'forearm', 'hand'] as const
const EACH = [...TWICE, 'trunk'] as const

const wholeMass = (body: Body): number => body.head.mass + body.trunk.mass + TWICE.reduce((sum, segment) => sum + 2 * body[segment].mass, 0)

/** Each sum was worked without this code. */
const sums = [
  { body: men, expect: 1, from: 'by hand: 6.94 + 43.46 + 2 × (2.71 + 1.62 + 0.61 + 14.16 + 4.33 + 1.37) = 50.40 + 2 × 24.80 = 100.00 %' },
  { body: women, expect: 0.9999, from: 'by hand: 6.68 + 42.57 + 2 × (2.55 + 1.38 + 0.56 + 14.78 + 4.81 + 1.29) = 49.25 + 2 × 25.37 = 99.99 %' },
  { body: dempster, expect: 1, from: 'by hand: 0.081 + 0.497 + 2 × (0.028 + 0.016 + 0.006 + 0.100 + 0.0465 + 0.0145) = 0.578 + 2 × 0.211 = 1.000' },
]

for (const { body, expect, from } of sums) {
  test(`the segments of ${body.name} weigh ${expect} of the body — ${from}`, () => near(wholeMass(body), expect, 1e-12)) // arithmetic
}

const retyped: readonly (readonly [Body, SegmentTable])[] = [
  [women, deLevaWomen],
  [men, deLevaMen],
  [dempster, winter],
]

for (const [body, table] of retyped) {
  for (const segment of EACH) {
    test(`the ${segment} of ${body.name} is the published row`, () => {
      const [mass_percent, length_mm, centre_percent] = table[segment]
      near(body[segment].mass, mass_percent / 100, 1e-12)
      near(body[segment].length, length_mm / table.stature_mm, 1e-12)
      const fromFirstEnd = segment === 'trunk' ? 1 - body.trunk.centre : body[segment].centre // the body counts its trunk from the hip
      near(fromFirstEnd, centre_percent / 100, 1e-12)
    })
  }
  test(`the head of ${body.name} has the published mass`, () => near(body.head.mass, table.head[0] / 100, 1e-12))
}

test('the trunk of a man balances nearer to the shoulders than to the hips', () => assert.ok(men.trunk.centre > 0.5)) // 43.10 % from the shoulder

/** Each row was worked without this code. */
const places = [
  { body: men, above_shoulder: 0.09871, ankle_height: 0.04, ball_length: 0.1131, from: 'by hand, mm: ankle 69.64, knee 509.94, hip 932.14, shoulder 1447.64; vertex 1741 − 0.5002 × 242.9 = 1619.50; (1619.50 − 1447.64) / 1741' },
  { body: women, above_shoulder: 0.13984, ankle_height: 0.04, ball_length: 0.1131, from: 'by hand, mm: ankle 69.4, knee 508.0, hip 876.5, shoulder 1374.4; vertex 1735 − 0.4841 × 243.7 = 1617.02; (1617.02 − 1374.4) / 1735' },
  { body: dempster, above_shoulder: 0.091, ankle_height: 0.039, ball_length: 0.1131, from: 'by hand: half of 1 − 0.818; ball (0.1144 + 0.1118) / 2' },
]

for (const { body, above_shoulder, ankle_height, ball_length, from } of places) {
  test(`the head of ${body.name} balances ${above_shoulder} of stature above the shoulder — ${from}`, () => {
    near(body.head.above_shoulder, above_shoulder, 5e-6) // five decimals are given
    near(body.ankle_height, ankle_height, 1e-12)
    near(body.ball_length, ball_length, 1e-12)
  })
}

test('there are twenty-one bodies, each table as it stands and then six proportions of it', () => {
  const six = ['short legs', 'long legs', 'short trunk', 'long trunk', 'short arms', 'long arms']
  const names = ['women, de Leva', 'men, de Leva', 'Dempster'].flatMap((name) => [name, ...six.map((part) => `${name}, ${part}`)])
  assert.deepEqual(
    bodies.map(({ name }) => name),
    names,
  )
})

const named = (name: string): Body => bodies.find((body) => body.name === name) ?? assert.fail(name)

/** SD over mean, ANSUR II, men's and women's averaged, times 1.6449. Each row was worked without this code. */
const proportions = [
  { name: 'men, de Leva, long legs', segment: 'thigh', expect: 0.25395, from: 'by hand: (0.0152/0.5128 + 0.0144/0.5190)/2 = 0.028693; 422.2/1741 × (1 + 1.6449 × 0.028693)' },
  { name: 'men, de Leva, short trunk', segment: 'trunk', expect: 0.28328, from: 'by hand: (0.0135/0.5231 + 0.0141/0.5262)/2 = 0.026302; 515.5/1741 × (1 − 1.6449 × 0.026302)' },
  { name: 'Dempster, long arms', segment: 'upper_arm', expect: 0.1948, from: 'by hand: (0.0106/0.3896 + 0.0117/0.3862)/2 = 0.028751; 0.186 × (1 + 1.6449 × 0.028751)' },
] as const

for (const { name, segment, expect, from } of proportions) {
  test(`the ${segment} of ${name} is ${expect} of stature — ${from}`, () => near(named(name)[segment].length, expect, 5e-6)) // five decimals are given
}

const CHANGES = { legs: ['thigh', 'shank'], trunk: ['trunk'], arms: ['upper_arm', 'forearm'] } as const

for (const of of [women, men, dempster]) {
  for (const part of ['legs', 'trunk', 'arms'] as const) {
    test(`short and long ${part} of ${of.name} lie evenly to either side, and change nothing else`, () => {
      const [short, long] = [named(`${of.name}, short ${part}`), named(`${of.name}, long ${part}`)]
      for (const segment of EACH) {
        near((short[segment].length + long[segment].length) / 2, of[segment].length, 1e-12)
        assert.equal(long[segment].length > of[segment].length, (CHANGES[part] as readonly string[]).includes(segment))
        for (const body of [short, long]) assert.deepEqual([body[segment].mass, body[segment].centre], [of[segment].mass, of[segment].centre])
      }
      for (const body of [short, long]) assert.deepEqual(body.head, of.head)
    })
  }
}

test('the reference stature is half-way between the reference woman and man — by hand: (1.735 + 1.741) / 2', () => near(REFERENCE_STATURE_M, 1.738, 1e-12))
