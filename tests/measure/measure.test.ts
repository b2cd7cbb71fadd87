import assert from 'node:assert/strict'
import { test } from 'vitest'
import type { Handbook } from '../../src/ladder/schema.ts'
import { measure, measureLadder, placeIn } from '../../src/measure/measure.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { bytes } from '../read/said.ts'

const TEXT = `---
id: pull
title: Pull
movement: hip hinge
aim: kg-44
equipment: [bar]
standard: { sets: 3, reps: 10, sessions: 2 }
first_reps: 3
form: [bar close to the legs]
rungs:
  - id: kg-40
    title: Forty
    load: { model: one-rep-max, load_kg: 40 }
  - id: kg-44
    title: Forty-four
    load: { model: one-rep-max, load_kg: 44 }
  - id: hold
    title: Hold
    after: [kg-40]
    entry: { reps: 12 }
    load: { model: skill }
  - id: kg-48
    title: Forty-eight
    after: [kg-44, hold, kg-40]
    load: { model: one-rep-max, load_kg: 48 }
stop: [pain in the back]
ask_first: [a hernia]
---
`

const NOTHING_KNOWN = { rungs: new Set<string>(), pages: new Set<string>() }
const handbook: Handbook = { title: 'A', organisation: 'A', edition: '1', languages: ['en'], units: 'metric', contact: 'A' }

function ladder(text = TEXT) {
  const { value, findings } = readLadderFile('ladders/pull.md', bytes(text), 'A club')
  assert.deepEqual(findings, [])
  assert.ok(value?.kind === 'ladder')
  return value.ladder
}

test('every rung keeps its place and has a load, or the reason why not', () => {
  const { rungs } = measureLadder(ladder(), NOTHING_KNOWN)
  assert.deepEqual(
    rungs.map(({ id, model, outcome }) => [id, model.name, isMissing(outcome) ? outcome.missing : outcome.load.mid]),
    [
      ['kg-40', 'one-rep-max', 40],
      ['kg-44', 'one-rep-max', 44],
      ['hold', 'skill', 'this rung is a skill: what counts is how it is done, not how much it loads'],
      ['kg-48', 'one-rep-max', 48],
    ],
  )
})

test('a step leads from each rung that is followed, in the order they are named, with the entry of the rung it leads to', () => {
  const steps = measureLadder(ladder(), NOTHING_KNOWN).rungs.flatMap((rung) => rung.steps)
  assert.deepEqual(
    steps.map(({ from, to, entry, kind }) => [from, to, entry.amount?.value, isMissing(kind) ? 'not computed' : kind]),
    [
      ['kg-40', 'kg-44', 10, 'comfortable'], // 1.1 times: 3 to 7 by hand, 3 wanted
      ['kg-40', 'hold', 12, 'not computed'],
      ['kg-44', 'kg-48', 10, 'comfortable'], // 48/44 = 1.091, less than 1.1
      ['hold', 'kg-48', 10, 'not computed'],
      ['kg-40', 'kg-48', 10, 'uncertain'], // 1.2 times: Lombardi 10/6.19 = 1.6, Brzycki 37 − 1.2 × 27 = 4.6
    ],
  )
})

test('a rung that follows itself, or one that is not there, has no step from it', () => {
  const { rungs } = measureLadder(ladder(TEXT.replace('after: [kg-44, hold, kg-40]', 'after: [kg-48, kg-50, kg-44]')), NOTHING_KNOWN)
  assert.deepEqual(rungs[3]?.steps.map(({ from }) => from), ['kg-44'])
})

test('what prose may point at is every ladder, every rung and every page', () => {
  const page = { id: 'safety', title: 'Safety', order: 1, summary: 'When to stop', body: '', layer: 'A club', places: () => new Map() }
  const { ladders, pages } = measure({ handbook, ladders: [ladder()], pages: [page] })
  assert.deepEqual([...(ladders[0]?.known.rungs ?? [])], ['pull', 'pull/kg-40', 'pull/kg-44', 'pull/hold', 'pull/kg-48'])
  for (const id of ['safety', 'sources', 'checks']) assert.ok(pages[0]?.known.pages.has(id), id)
})

test('a way into a ladder has the place where it was written, or the nearest thing around it', () => {
  const measured = measureLadder(ladder(), NOTHING_KNOWN)
  const line = (path: readonly (string | number)[]) => TEXT.split('\n')[placeIn(measured, path).line - 1]
  assert.equal(line(['rungs', 1, 'title']), '    title: Forty-four')
  assert.equal(line(['rungs', 'kg-44', 'title']), '    title: Forty-four')
  assert.equal(line(['rungs', 1, 'cautions', 3]), '  - id: kg-44')
  assert.equal(line(['nowhere']), 'id: pull')
})

test('a model nobody knows is our bug', () => {
  const { rungs, ...others } = ladder()
  const strange = JSON.parse('{ "model": "strange" }')
  assert.throws(() => measureLadder({ ...others, rungs: rungs.map((rung) => ({ ...rung, load: strange })) }, NOTHING_KNOWN), /^Error: bug: no load model is named strange$/)
})
