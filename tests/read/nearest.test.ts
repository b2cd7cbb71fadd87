import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { nearest } from '../../src/read/nearest.ts'

const KEYS = ['title', 'movement', 'aim', 'first_reps', 'form', 'load']

/** One slip or two, and what was meant. */
const slips = [
  ['titel', 'title'],
  ['tite', 'title'],
  ['tittle', 'title'],
  ['Title', 'title'],
  ['mowement', 'movement'],
  ['first-rep', 'first_reps'],
  ['from', 'form'],
  ['laod', 'load'],
  ['ami', 'aim'],
] as const

for (const [typed, meant] of slips) test(`${typed} was meant as ${meant}`, () => assert.equal(nearest(typed, KEYS), meant))

for (const typed of ['', 'x', 'weather', 'tooth', 'constructor', 'loading_bay', 'a'.repeat(10_000)]) {
  test(`${JSON.stringify(typed.slice(0, 12))} is like none of them`, () => assert.equal(nearest(typed, KEYS), undefined))
}

test('where nothing is known there is nothing to mean', () => assert.equal(nearest('title', []), undefined))

test('of two that are as near the first is meant', () => assert.equal(nearest('bat', ['cat', 'rat']), 'cat'))

test('a word with one letter changed, added, dropped or swapped is still found among others', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abcdefgh'), minLength: 4, maxLength: 20 })
  fc.assert(
    fc.property(word, fc.nat(), fc.constantFrom('changed', 'added', 'dropped', 'swapped'), (meant, at, how) => {
      const place = at % (meant.length - 1)
      const [before, letter, next, after] = [meant.slice(0, place), meant.slice(place, place + 1), meant.slice(place + 1, place + 2), meant.slice(place + 2)]
      const typed = { changed: `${before}z${next}${after}`, added: `${before}z${letter}${next}${after}`, dropped: before + next + after, swapped: before + next + letter + after }[how]
      assert.equal(nearest(typed, ['xxxxxxxxxxxxxxxxxxxxxxxx', meant, 'yyyy']), meant)
    }),
    { numRuns: 300 },
  )
})
