import assert from 'node:assert/strict'
import { test } from 'vitest'
import type { Finding } from '../../src/ladder/finding.ts'
import { checked, fixture } from './fixture.ts'

const said = (findings: readonly Finding[]): string[] => findings.map(({ line, message, rule }) => `${line} ${message} (${rule})`)

/** A bad fixture of a rule with silences written into it, above its rungs. */
const silenced = (rule: string, ...silences: readonly string[]): string[] =>
  said(checked(rule, fixture(`${rule}.bad.md`).replace('rungs:\n', () => `silence:\n${silences.map((silence) => `  - { ${silence} }\n`).join('')}rungs:\n`)).findings)

const CUES = 'cues-are-short'
const LONG = `62 "Push the floor away from you with both of your hands." is long for a cue. Say it in at most 8 words. (${CUES})`
const DONT = `61 "Don't touch the mat with your head." says what not to do. Say what to do instead. (${CUES})`

test('a silence keeps a rule quiet until its day and on it', () => {
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, because: We shout slowly., until: 2026-11-25`), [])
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, rung: wedge, because: We shout slowly., until: 2099-01-01`), [])
})

test('a silence that has ended is found, and so is all it kept quiet', () => {
  const ENDED = 'ended on 2026-11-24. Put right what it kept quiet, or give a new day and reason. (silences-are-used)'
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, because: We shout slowly., until: 2026-11-24`), [`12 The silence of ${CUES} ${ENDED}`, DONT, LONG])
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, rung: wedge, because: We shout slowly., until: 2026-11-24`), [`12 The silence of ${CUES} on "wedge" ${ENDED}`, DONT, LONG])
})

test('a silence that keeps nothing quiet is found', () => {
  const NOTHING = 'keeps nothing quiet. Take it out. (silences-are-used)'
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, rung: rock, because: We shout slowly., until: 2099-01-01`), [`12 The silence of ${CUES} on "rock" ${NOTHING}`, DONT, LONG])
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, because: Slowly., until: 2099-01-01`, 'rule: rungs-rise, because: They do., until: 2099-01-01'), [`13 The silence of rungs-rise ${NOTHING}`])
  assert.deepEqual(silenced(CUES, `rule: ${CUES}, because: Slowly., until: 2099-01-01`, 'rule: constructor, because: Who knows., until: 2099-01-01'), [`13 The silence of constructor ${NOTHING}`])
})

test('what a rule cannot tell is told apart from what it finds, and why', () => {
  const { findings, untold } = checked('steps-are-climbable', fixture('steps-are-climbable.good.md').replace('reps: 13', 'reps: 25'))
  assert.deepEqual(said(findings), [])
  assert.deepEqual(said(untold), ['15 Whether the step from "Overhead press of 20 kg" to "Overhead press of 22 kg" can be climbed cannot be told: no repetition formula holds at 25 repetitions; they hold from 1 to 20. (steps-are-climbable)'])
})
