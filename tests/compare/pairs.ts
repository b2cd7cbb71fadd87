import type { ChangeKind } from '../../src/compare/change.ts'
import type { Edit } from './versions.ts'

/** A small edit to the starter curriculum, or to the demo over it, and all that it changes. */
export type EditPair = {
  readonly says: string
  readonly edits: readonly Edit[]
  /** "ladder/rung: kind, name". */
  readonly typed: readonly string[]
  /** What follows, by rung; where left out, nothing does. */
  readonly followed?: Readonly<Record<string, readonly ChangeKind[]>>
  /** Which of the typed changes could hurt somebody. */
  readonly unsafe?: readonly string[]
  /** What the edit is when it is taken back, where that is not each change's opposite. */
  readonly back?: readonly string[]
}

/** An edit to a ladder. */
const inLadder = (ladder: string, from: string, to: string, at?: string): Edit => ({ file: `ladders/${ladder}.md`, from, to, ...(at === undefined ? {} : { at }) })

/** An edit to one rung in a ladder's front matter. */
const inRung = (ladder: string, rung: string, from: string, to: string): Edit => inLadder(ladder, from, to, `  - id: ${rung}\n`)

/** A ladder of a club's own, of two rungs. */
const OWN = `---
id: bench-press
title: Bench press
movement: horizontal press
aim: kg-22
equipment: [bench]
standard: { sets: 3, reps: 10, sessions: 2 }
first_reps: 3
form: [feet stay down]
rungs:
  - id: kg-20
    title: Twenty
    load: { model: one-rep-max, load_kg: 20, lift: floor lift }
  - id: kg-22
    title: Twenty-two
    load: { model: one-rep-max, load_kg: 22 }
stop: [pain in a shoulder]
ask_first: [a shoulder operated on in the last year]
---
`

const PAGE = '---\ntitle: Opening hours\nsummary: When the hall is open.\n---\n\nEvery evening.\n'

/** A rung's title stands in the front matter and above its section. */
const FLOOR_TITLE = [inRung('press-up', 'floor', 'title: Hands on the floor', 'title: On the floor'), inLadder('press-up', '## Hands on the floor', '## On the floor')]

/** So does its id. */
const KG_18 = [inLadder('overhead-press', '  - id: kg-18\n', '  - id: kg-18-x\n'), inLadder('overhead-press', '{#kg-18}', '{#kg-18-x}')]

export const pairs: readonly EditPair[] = [
  // — what weighs nothing —
  { says: 'a ladder gets another title', edits: [inLadder('press-up', 'title: Press-up\n', 'title: Press-ups\n')], typed: ['press-up: wording-changed, title'] },
  { says: 'what a ladder is for is said otherwise', edits: [inLadder('press-up', 'Two branches wait above the floor', 'Two branches begin at the floor')], typed: ['press-up: wording-changed, what it is for'] },
  { says: 'a ladder is listed under another movement', edits: [inLadder('press-up', 'movement: horizontal press', 'movement: press')], typed: ['press-up: wording-changed, movement'] },
  { says: 'a rung gets another title', edits: [...FLOOR_TITLE], typed: ['press-up/floor: wording-changed, title'] },
  { says: 'a cue is said otherwise', edits: [inLadder('press-up', '- Lean like a ladder.', '- Lean like a plank.')], typed: ['press-up/bar-95: wording-changed, cues'] },
  { says: 'a fault is said otherwise', edits: [inLadder('press-up', 'Bar to the lower breastbone', 'Bar to the breastbone')], typed: ['press-up/bar-95: wording-changed, faults'] },
  { says: 'the set-up of a rung is said otherwise', edits: [inLadder('press-up', '- Fix the bar at 72 cm.', '- Fix the bar at 72 cm, firmly.')], typed: ['press-up/bar-72: wording-changed, set-up'] },
  { says: 'the introduction of a rung is said otherwise', edits: [inLadder('press-up', 'The bar now lies near the middle of the thighs.', 'The bar now lies at mid-thigh.')], typed: ['press-up/bar-72: wording-changed, introduction'] },
  { says: 'which side is first is said otherwise', edits: [inRung('press-up', 'one-side', 'Weaker side first, then match it on the other.', 'Weaker side first.')], typed: ['press-up/one-side: wording-changed, first_side'] },
  { says: 'a ladder lists another piece of equipment', edits: [inLadder('press-up', 'low step, mat]', 'low step, mat, chalk]')], typed: ['press-up: list-changed, equipment'] },
  { says: 'a ladder cites another source', edits: [inLadder('press-up', 'Mier CM and others 2014', 'Mier CM 2014')], typed: ['press-up: list-changed, sources'] },
  { says: 'the rest between sets grows', edits: [inLadder('press-up', 'rest_s: 90', 'rest_s: 120')], typed: ['press-up: criterion-raised, standard rest_s'] },
  { says: 'the handbook names another contact', edits: [{ file: 'handbook.yaml', from: 'contact: Ask the organisation that gave you this handbook.', to: 'contact: The office' }], typed: [': handbook-changed, contact'] },
  { says: 'the handbook has another edition, which is no change', edits: [{ file: 'handbook.yaml', from: '"2026.1"', to: '"2026.2"' }], typed: [] },

  // — ladders and pages —
  { says: 'a ladder is written', edits: [{ file: 'ladders/bench-press.md', to: OWN }], typed: ['bench-press: ladder-added, ladder'] },
  { says: 'a ladder is taken away', edits: [{ file: 'ladders/crawl.md' }], typed: ['crawl: ladder-withdrawn, ladder'], unsafe: ['crawl: ladder-withdrawn, ladder'] },
  { says: 'a page is written', edits: [{ file: 'content/opening-hours.md', to: PAGE }], typed: ['opening-hours: page-added, page'] },
  { says: 'a page is taken away', edits: [{ file: 'content/pain.md' }], typed: ['pain: page-withdrawn, page'], unsafe: ['pain: page-withdrawn, page'] },
  { says: 'a page is said otherwise', edits: [{ file: 'content/glossary.md', at: 'title: ', from: '\n\n', to: '\n\nWords we use.\n\n' }], typed: ['glossary: page-reworded, page'] },

  // — safety —
  { says: 'a stop sign is added', edits: [inLadder('press-up', 'stop:\n', 'stop:\n  - a cramp in a calf\n')], typed: ['press-up: note-added, stop'] },
  { says: 'a stop sign is taken out', edits: [inLadder('press-up', '  - numbness or tingling in a hand\n', '')], typed: ['press-up: note-removed, stop'], unsafe: ['press-up: note-removed, stop'] },
  { says: 'a stop sign is said otherwise', edits: [inLadder('press-up', '- sharp pain, or pain that spreads down an arm', '- sharp pain, or any pain that spreads down an arm')], typed: ['press-up: note-reworded, stop'] },
  { says: 'who asks first is one fewer', edits: [inLadder('press-up', '  - a shoulder that has come out of joint\n', '')], typed: ['press-up: note-removed, ask_first'], unsafe: ['press-up: note-removed, ask_first'] },
  { says: 'a caution of a rung is taken out', edits: [inLadder('press-up', '      - Keep the other hand on the floor through the whole set.\n', '')], typed: ['press-up/one-side: note-removed, cautions'], unsafe: ['press-up/one-side: note-removed, cautions'] },
  { says: 'a rung asks for a partner', edits: [inRung('press-up', 'feet-raised', '    cautions:', '    supervision: partner\n    cautions:')], typed: ['press-up/feet-raised: supervision-raised, supervision'] },
  { says: 'a ladder asks for less supervision', edits: [inLadder('overhead-press', 'supervision: partner\nrungs', 'supervision: none\nrungs')], typed: ['overhead-press: supervision-lowered, supervision'], unsafe: ['overhead-press: supervision-lowered, supervision'] },

  // — criteria —
  { says: 'the standard asks for more repetitions', edits: [inLadder('overhead-press', 'reps: 12', 'reps: 15')], typed: ['overhead-press: criterion-raised, standard reps'], followed: { 'kg-10': ['block-lengthens', 'first-reps-rise'], 'kg-11': ['block-lengthens', 'first-reps-rise'], 'kg-12-5': ['block-lengthens', 'first-reps-rise'], 'kg-14': ['block-lengthens', 'first-reps-rise'], 'kg-16': ['block-lengthens', 'first-reps-rise'], 'kg-18': ['block-lengthens', 'first-reps-rise'], 'kg-7': ['block-lengthens'], 'kg-8': ['block-lengthens', 'first-reps-rise'], 'kg-9': ['block-lengthens', 'first-reps-rise'], 'one-hand-7': ['block-lengthens'] } },
  { says: 'the standard asks for fewer sessions', edits: [inLadder('overhead-press', 'sessions: 2', 'sessions: 1')], typed: ['overhead-press: criterion-lowered, standard sessions'], followed: { 'kg-10': ['block-shortens'], 'kg-11': ['block-shortens'], 'kg-12-5': ['block-shortens'], 'kg-14': ['block-shortens'], 'kg-16': ['block-shortens'], 'kg-18': ['block-shortens'], 'kg-7': ['block-shortens'], 'kg-8': ['block-shortens'], 'kg-9': ['block-shortens'], 'one-hand-7': ['block-shortens'] } },
  { says: 'the standard asks for more sets, which moves no number', edits: [inLadder('overhead-press', 'sets: 3', 'sets: 4')], typed: ['overhead-press: criterion-raised, standard sets'] },
  { says: 'the standard keeps another repetition in reserve', edits: [inLadder('hinge', 'reserve_reps: 2', 'reserve_reps: 3')], typed: ['hinge: criterion-raised, standard reserve_reps'], followed: { 'floor-14': ['block-shortens', 'first-reps-rise', 'least-entry-falls'], 'floor-16': ['first-reps-rise', 'least-entry-falls'], 'floor-18': ['least-entry-falls'], 'floor-20': ['block-shortens', 'first-reps-rise', 'least-entry-falls'], 'floor-22': ['block-shortens', 'first-reps-rise', 'least-entry-falls'], 'floor-24': ['block-shortens', 'first-reps-rise', 'least-entry-falls'], 'floor-28': ['block-shortens', 'first-reps-rise', 'least-entry-falls'], 'floor-32': ['first-reps-rise', 'least-entry-falls'], 'suitcase-14': ['block-shortens', 'first-reps-rise', 'least-entry-falls'] } },
  { says: 'the standard counts seconds and keeps its number', edits: [inLadder('press-up', 'reps: 12', 'seconds: 12')], typed: ['press-up: criterion-unit-changed, standard amount'], unsafe: ['press-up: criterion-unit-changed, standard amount'], followed: { 'bar-60': ['step-no-longer-told'], 'bar-72': ['step-no-longer-told'], 'bar-82': ['step-no-longer-told'], 'bar-90': ['step-no-longer-told'], 'bench-hands': ['step-no-longer-told'], 'box-hands': ['step-no-longer-told'], 'feet-raised': ['step-no-longer-told'], floor: ['step-no-longer-told'], 'step-hands': ['step-no-longer-told'] } },
  { says: 'a rung asks for an entry of its own', edits: [inRung('press-up', 'floor', '    load:', '    entry: { reps: 15 }\n    load:')], typed: ['press-up/floor: criterion-given, entry reps'], followed: { floor: ['block-shortens', 'first-reps-rise'] } },
  { says: 'a rung no longer asks for an entry of its own', edits: [inRung('press-up', 'one-side', '    entry: { reps: 15 }\n', '')], typed: ['press-up/one-side: criterion-taken-out, entry reps'], followed: { 'one-side': ['block-lengthens', 'first-reps-fall'] } },
  { says: 'an entry counts seconds with another number', edits: [inRung('press-up', 'one-side', 'reps: 15', 'seconds: 30')], typed: ['press-up/one-side: criterion-unit-changed, entry amount'], followed: { 'one-side': ['step-no-longer-told'] } },
  { says: 'an entry counts seconds and keeps its number', edits: [inRung('press-up', 'one-side', 'reps: 15', 'seconds: 15')], typed: ['press-up/one-side: criterion-unit-changed, entry amount'], unsafe: ['press-up/one-side: criterion-unit-changed, entry amount'], followed: { 'one-side': ['step-no-longer-told'] } },
  { says: 'more first repetitions are wanted', edits: [inLadder('press-up', 'first_reps: 3', 'first_reps: 5')], typed: ['press-up: criterion-raised, first_reps'], followed: { 'bar-60': ['least-entry-rises', 'placement-falls', 'step-steepens'], 'bar-72': ['least-entry-rises', 'placement-falls', 'step-steepens'], 'bar-82': ['least-entry-rises', 'placement-falls', 'step-steepens'], 'bar-90': ['least-entry-rises', 'placement-falls', 'step-steepens'], 'bar-95': ['placement-falls'], 'bench-hands': ['least-entry-rises', 'placement-falls', 'step-steepens'], 'box-hands': ['least-entry-rises', 'placement-falls'], 'feet-raised': ['least-entry-rises', 'placement-falls'], floor: ['least-entry-rises', 'placement-falls'], 'one-side': ['step-steepens'], 'step-hands': ['least-entry-rises'] } },
  { says: 'first repetitions are wanted no longer', edits: [inLadder('press-up', 'first_reps: 3\n', '')], typed: ['press-up: criterion-taken-out, first_reps'], followed: { 'bar-60': ['step-no-longer-told'], 'bar-72': ['step-no-longer-told'], 'bar-82': ['step-no-longer-told'], 'bar-90': ['step-no-longer-told'], 'bench-hands': ['step-no-longer-told'], 'box-hands': ['step-no-longer-told'], 'feet-raised': ['step-no-longer-told'], floor: ['step-no-longer-told'], 'one-side': ['step-no-longer-told'], 'step-hands': ['step-no-longer-told'] } },
  { says: 'a session more a week', edits: [inLadder('press-up', 'sessions_per_week: 2', 'sessions_per_week: 3')], typed: ['press-up: criterion-raised, sessions_per_week'], followed: { 'bar-60': ['block-shortens'], 'bar-72': ['block-shortens'], 'bar-82': ['block-shortens'], 'bar-90': ['block-shortens'], 'bench-hands': ['block-shortens'], 'box-hands': ['block-shortens'], 'feet-raised': ['block-shortens'], floor: ['block-shortens'], 'one-side': ['block-shortens'], 'step-hands': ['block-shortens'] } },
  { says: 'a full rep is said otherwise', edits: [inLadder('press-up', '- End: breastbone within a fist of the bar for a still moment.', '- End: breastbone within a fist of the bar.')], typed: ['press-up/bar-90: criterion-reworded, full rep'] },
  { says: 'a form point is added', edits: [inLadder('press-up', '  - elbows straight at the top\n', '  - elbows straight at the top\n  - the neck is long\n')], typed: ['press-up: form-point-added, form'] },
  { says: 'a form point is taken out', edits: [inLadder('press-up', '  - elbows straight at the top\n', '')], typed: ['press-up: form-point-removed, form'] },

  // — what the load is computed from —
  { says: 'a bar is set higher', edits: [inRung('press-up', 'bar-72', 'hand_height_cm: 72', 'hand_height_cm: 75')], typed: ['press-up/bar-72: set-up-raised, hand_height_cm'], followed: { 'bar-60': ['block-lengthens', 'first-reps-fall', 'least-entry-rises'], 'bar-72': ['block-shortens', 'first-reps-rise', 'least-entry-falls', 'load-falls'] } },
  { says: 'a weight is raised', edits: [inRung('hinge', 'floor-18', 'load_kg: 18', 'load_kg: 20')], typed: ['hinge/floor-18: set-up-raised, load_kg'], followed: { 'floor-16': ['placement-falls'], 'floor-18': ['block-lengthens', 'first-reps-fall', 'load-rises', 'placement-rises', 'step-steepens'], 'floor-20': ['block-shortens', 'first-reps-rise', 'least-entry-falls', 'step-eases'] } },
  { says: 'a weight is lowered below the rung before', edits: [inRung('hinge', 'floor-24', 'load_kg: 24', 'load_kg: 21')], typed: ['hinge/floor-24: set-up-lowered, load_kg'], followed: { 'floor-22': ['placement-falls'], 'floor-24': ['block-shortens', 'first-reps-rise', 'least-entry-falls', 'load-falls', 'placement-falls', 'step-eases'], 'floor-28': ['block-lengthens', 'first-reps-fall', 'step-steepens'] } },
  { says: 'a weight is raised out of reach', edits: [inRung('overhead-press', 'kg-18', 'load_kg: 18', 'load_kg: 24')], typed: ['overhead-press/kg-18: set-up-raised, load_kg'], followed: { 'kg-16': ['placement-falls'], 'kg-18': ['block-lengthens', 'first-reps-fall', 'load-rises', 'step-steepens'] } },
  { says: 'a drop is made higher, of which no repetitions are foretold', edits: [inRung('landing', 'drop-30', 'drop_height_cm: 30', 'drop_height_cm: 35')], typed: ['landing/drop-30: set-up-raised, drop_height_cm'], followed: { 'drop-30': ['load-rises'] } },
  { says: 'the feet are raised on a box', edits: [inRung('press-up', 'one-side', 'hand_height_cm: 0, working', 'hand_height_cm: 0, foot_height_cm: 10, working')], typed: ['press-up/one-side: set-up-given, foot_height_cm'], followed: { floor: ['placement-falls'], 'one-side': ['block-lengthens', 'first-reps-fall', 'least-entry-rises', 'load-rises'] } },
  { says: 'a default is written out, which moves no number', edits: [inRung('press-up', 'floor', 'hand_height_cm: 0 }', 'hand_height_cm: 0, foot_height_cm: 0 }')], typed: ['press-up/floor: set-up-given, foot_height_cm'] },
  { says: 'a held weight is taken out', edits: [inRung('squat-one-leg', 'full-held', ', added_mass_percent: 10', '')], typed: ['squat-one-leg/full-held: set-up-taken-out, added_mass_percent'], followed: { full: ['placement-falls'], 'full-held': ['block-shortens', 'first-reps-rise', 'least-entry-falls', 'load-falls', 'placement-falls', 'step-eases'], 'high-box': ['placement-falls'], 'knee-high-box': ['placement-falls'], 'low-box': ['placement-falls'], split: ['block-lengthens', 'first-reps-fall', 'step-steepens'] } },
  { says: 'a hold rests on the forearms', edits: [inRung('front-plank', 'knees-hands', 'rest_on: hands', 'rest_on: forearms')], typed: ['front-plank/knees-hands: set-up-changed, rest_on'], followed: { 'knees-forearms': ['step-now-told'], 'knees-hands': ['load-rises'] } },
  { says: 'a bridge is done on one leg', edits: [inRung('hip-bridge', 'far', 'legs: two', 'legs: one')], typed: ['hip-bridge/far: set-up-changed, legs'], followed: { far: ['load-rises'], 'lap-15': ['step-now-told'] } },
  { says: 'a band is measured at another point', edits: [inRung('pull-up', 'band-slim', '[123, 123]', '[123, 140]')], typed: ['pull-up/band-slim: set-up-changed, band_points'], followed: { 'band-slim': ['load-rises'], full: ['first-reps-rise'] } },
  { says: 'a rung is no longer computed', edits: [inRung('hinge', 'floor-20', 'load: { model: one-rep-max, load_kg: 20, lift: floor lift }', 'load: { model: skill }')], typed: ['hinge/floor-20: set-up-changed, model'], followed: { 'floor-18': ['placement-falls'], 'floor-20': ['load-no-longer-computed', 'placement-falls', 'step-no-longer-told'], 'floor-22': ['step-no-longer-told'] } },
  { says: 'a rung is computed as a load of another kind', edits: [inRung('hinge', 'floor-20', 'load: { model: one-rep-max, load_kg: 20, lift: floor lift }', 'load: { model: leg-press-of-body, stance: two legs }')], typed: ['hinge/floor-20: set-up-changed, model'], followed: { 'floor-18': ['placement-falls'], 'floor-20': ['placement-falls', 'step-no-longer-told'], 'floor-22': ['step-no-longer-told'] } },

  // — rungs and their order —
  { says: 'a rung demands balance', edits: [inRung('press-up', 'feet-raised', '    load:', '    demand: [balance]\n    load:')], typed: ['press-up/feet-raised: demand-added, demand'] },
  { says: 'a rung that is no heavier loses its only demand', edits: [inRung('hinge', 'floor-12', '    demand: [longer range]\n', '')], typed: ['hinge/floor-12: demand-dropped, demand'] },
  { says: 'a rung is put between two others', edits: [inLadder('press-up', '  - id: box-hands\n', '  - id: box-38\n    title: Hands at 38 cm\n    load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 38 }\n  - id: box-hands\n')], typed: ['press-up/box-38: rung-added, between others', 'press-up/box-hands: order-changed, after'], followed: { 'bar-60': ['placement-rises'] } },
  { says: 'a rung is put at the end of a branch', edits: [inLadder('press-up', 'stop:\n', '  - id: one-side-more\n    title: More on one arm\n    demand: [one side, balance]\n    load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 0, working_side_percent: 62 }\nstop:\n')], typed: ['press-up/one-side-more: rung-added, at the end of a branch'], followed: { 'one-side': ['placement-rises'] } },
  { says: 'a rung is put at the start', edits: [inLadder('press-up', 'rungs:\n', 'rungs:\n  - id: bar-105\n    title: Hands on a bar at 105 cm\n    load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 105 }\n')], typed: ['press-up/bar-105: rung-added, at the start', 'press-up/bar-95: order-changed, after'] },
  {
    says: 'a rung is withdrawn without an heir',
    edits: KG_18,
    typed: ['overhead-press/kg-18: rung-withdrawn, without an heir', 'overhead-press/kg-18-x: rung-added, at the end of a branch'],
    unsafe: ['overhead-press/kg-18: rung-withdrawn, without an heir'],
    followed: { 'kg-16': ['placement-rises'] },
  },
  {
    says: 'a rung gets a new id, and its old one names the new as its heir',
    edits: [...KG_18, inLadder('overhead-press', 'stop:\n', 'retired:\n  - { id: kg-18, heir: kg-18-x, because: The weights were counted anew. }\nstop:\n')],
    typed: ['overhead-press/kg-18-x: rung-renamed, id'],
    back: ['overhead-press/kg-18: rung-added, at the end of a branch', 'overhead-press/kg-18-x: rung-withdrawn, without an heir'],
  },
  {
    says: 'a rung gets a new id and more load, and its old one names the new as its heir',
    edits: [...KG_18, inLadder('overhead-press', 'load_kg: 18', 'load_kg: 20'), inLadder('overhead-press', 'stop:\n', 'retired:\n  - { id: kg-18, heir: kg-18-x, because: The next plates are of a kilogram. }\nstop:\n')],
    typed: ['overhead-press/kg-18-x: rung-renamed, id', 'overhead-press/kg-18-x: set-up-raised, load_kg'],
    followed: { 'kg-16': ['placement-falls'], 'kg-18-x': ['block-lengthens', 'first-reps-fall', 'load-rises', 'step-steepens'] },
    back: ['overhead-press/kg-18: rung-added, at the end of a branch', 'overhead-press/kg-18-x: rung-withdrawn, without an heir'],
  },
  {
    says: 'a rung is withdrawn in favour of one that was there',
    edits: [
      inLadder('crawl', '  - id: slope-down\n', '  - id: slope-again\n'),
      inLadder('crawl', '{#slope-down}', '{#slope-again}'),
      inLadder('crawl', 'stop:\n', 'retired:\n  - { id: slope-down, heir: slope-up, because: Fewer athletes slipped. }\nstop:\n'),
    ],
    typed: ['crawl/slope-again: rung-added, at the end of a branch', 'crawl/slope-down: rung-withdrawn, heir: slope-up'],
    back: ['crawl/slope-again: rung-withdrawn, without an heir', 'crawl/slope-down: rung-added, at the end of a branch'],
  },
  { says: 'a branch grows from another rung', edits: [inRung('press-up', 'feet-raised', 'after: [floor]', 'after: [step-hands]')], typed: ['press-up/feet-raised: order-changed, after'] },
  {
    says: 'a rung follows one far below, and the one it followed nothing',
    edits: [inRung('overhead-press', 'kg-18', '    title:', '    after: [kg-6]\n    title:')],
    typed: ['overhead-press/kg-18: order-changed, after'],
    followed: { 'kg-18': ['steep-step-comes'] },
  },
  { says: 'a rule is silenced', edits: [inLadder('crawl', 'stop:\n', 'silence:\n  - { rule: rungs-rise, because: The slope is short., until: 2027-01-01 }\nstop:\n')], typed: ['crawl: list-changed, silence'] },
  { says: 'somebody signs for a ladder', edits: [inLadder('crawl', 'stop:\n', 'review: { by: A. Coach, on: 2026-10-01 }\nstop:\n')], typed: ['crawl: list-changed, review'] },
  { says: 'a rung may be reached another way besides', edits: [inRung('press-up', 'one-side', 'after: [floor]', 'after: [floor, feet-raised]')], typed: ['press-up/one-side: order-changed, after'] },
  { says: 'another rung is the aim', edits: [inLadder('press-up', 'aim: floor', 'aim: one-side')], typed: ['press-up: aim-moved, aim'] },
  {
    says: 'two changes stand side by side and are told apart',
    edits: [...FLOOR_TITLE, inRung('landing', 'drop-50', 'drop_height_cm: 50', 'drop_height_cm: 45')],
    typed: ['landing/drop-50: set-up-lowered, drop_height_cm', 'press-up/floor: wording-changed, title'],
    followed: { 'drop-50': ['load-falls'] },
  },
]
