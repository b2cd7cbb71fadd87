import { ladderSchema } from '../../src/ladder/schema.ts'
import { held, heldTogether } from './held.ts'
import { HANDBOOK, LADDER, LADDER_FILE, ladder, lines, type Files } from './place.ts'

/** A ladder of rungs that need no prose: what is found is about their order and numbers. */
function rungs(...written: readonly string[]): string {
  const sections = written.map((rung, index) => `## Rung ${index} {#${/id: ([a-z0-9-]+)/.exec(rung)?.[1]}}\n\n### Set up\n- Mat.\n\n### Full rep\n- Start: lying.\n- End: standing.\n\n### Cues\n- Long neck.\n\n### Faults\n| seen | likely cause | say | if it stays |\n|---|---|---|---|\n| Hips sag | tired | Ribs down | Rest |\n`)
  return `---\nid: hollow-hold\ntitle: Hollow hold\nmovement: trunk\naim: a\nequipment: [mat]\nstandard: { sets: 3, reps: 10, sessions: 2 }\nfirst_reps: 3\nform: [low back stays on the mat, quiet breath]\nrungs:\n${written.map((rung, index) => `  - { title: Rung ${index}, ${rung} }\n`).join('')}stop: [pain in the back, a held breath]\nask_first: [a back injured in the last year, pregnancy]\n---\n\nWhat it is for.\n\n${sections.join('\n')}`
}
const KEYS = Object.keys(ladderSchema.shape).join(', ')
const SKILL = 'load: { model: skill }'
const raised = (keys: string): string => rungs(`id: z, ${SKILL}`, `id: a, load: { model: supported-body, facing: down, feet: toes, hands: surface, ${keys} }`)

/** Orders that are none. */
heldTogether('orders that are none', [
  { says: 'a circle of two', body: rungs(`id: z, ${SKILL}`, `id: a, after: [b], ${SKILL}`, `id: b, after: [a], ${SKILL}`), finds: ['12:29  "Rung 1" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.  (every-rung-is-reachable)', '13:29  "Rung 2" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.  (every-rung-is-reachable)'] },
  { says: 'a circle of three above the aim', body: rungs(`id: z, ${SKILL}`, `id: a, ${SKILL}`, `id: b, after: [d], ${SKILL}`, `id: c, after: [b], ${SKILL}`, `id: d, after: [c], ${SKILL}`), finds: ['13:29  "Rung 2" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.  (every-rung-is-reachable)', '14:29  "Rung 3" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.  (every-rung-is-reachable)', '15:29  "Rung 4" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.  (every-rung-is-reachable)'] },
  { says: 'a rung after itself', body: rungs(`id: z, ${SKILL}`, `id: a, after: [a], ${SKILL}`), finds: ['12:29  "Rung 1" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.  (every-rung-is-reachable)'] },
  { says: 'two starts', body: rungs(`id: b, ${SKILL}`, `id: c, after: [], ${SKILL}`, `id: a, after: [b], ${SKILL}`), finds: ['12:29  "Rung 1" follows no rung, so the ladder has two first rungs. Say what it comes after.  (every-rung-is-reachable)'] },
  { says: 'a rung after one that is not there', body: rungs(`id: z, ${SKILL}`, `id: a, ${SKILL}`, `id: b, after: [nowhere], ${SKILL}`), finds: ['13:37  "Rung 2" comes after "nowhere", but no rung has that id. Name one of the rungs.  (every-rung-is-reachable)'] },
  { says: 'a rung twice after the same', body: rungs(`id: z, ${SKILL}`, `id: a, ${SKILL}`, `id: b, after: [a, a], ${SKILL}`), finds: [] },
  { says: 'a rung after eleven others', body: rungs(...Array.from({ length: 11 }, (_, index) => `id: a${index === 0 ? '' : index}, after: [], ${SKILL}`), `id: z, after: [a, ${Array.from({ length: 10 }, (_, index) => `a${index + 1}`).join(', ')}], ${SKILL}`), finds: ['22:30  after must be a list of at most 10.  (values-fit)'] },
  { says: 'no rungs', body: ladder(['rungs:\n', 'rungs: []\nxrungs:\n']), finds: ['9:1  rungs must hold at least one rung.  (values-fit)', '10:1  There is no key "xrungs" here. Did you mean rungs?  (keys-are-known)'] },
  { says: 'rungs that are no list', body: ladder(['rungs:\n', 'rungs: 7\nother:\n']), finds: ['9:1  rungs must be a list of rungs.  (values-fit)', `10:1  There is no key "other" here. Known keys: ${KEYS}.  (keys-are-known)`] },
  { says: 'an aim that is not there', body: ladder(['aim: hollow', 'aim: nowhere']), finds: ['5:1  The aim is "nowhere", but no rung has that id. The rungs are: tucked, hollow.  (aim-exists)'] },
  { says: 'a withdrawn rung whose heir is withdrawn', body: ladder(['stop:', 'retired: [{ id: x, heir: y, because: b }, { id: y, heir: x, because: b }]\nstop:']), finds: ['16:20  The heir of "x" is "y", but no rung has that id. Name one of the rungs.  (retired-rungs-name-an-heir)', '16:52  The heir of "y" is "x", but no rung has that id. Name one of the rungs.  (retired-rungs-name-an-heir)'] },
])

/** Numbers beyond what a body, a bench or a bar can do. */
heldTogether('numbers beyond a body', [
  ...(
    [
      ['hand_height_cm: -5', '12:102  hand_height_cm must be a number from 0 to 250 cm.  (values-fit)'],
      ['hand_height_cm: 100000', '12:102  hand_height_cm must be a number from 0 to 250 cm.  (values-fit)'],
      ['hand_height_cm: 1e308', '12:102  hand_height_cm must be a number from 0 to 250 cm.  (values-fit)', '12:118  "1e308" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['lean_deg: 91', '12:102  lean_deg must be a number from 0 to 90 deg.  (values-fit)'],
      ['lean_deg: 45'],
      ['hand_height_cm: 0, foot_height_cm: 200', '12:121  foot_height_cm must be a number from 0 to 150 cm.  (values-fit)'],
      ['hand_height_cm: 0, working_side_percent: 0', '12:121  working_side_percent must be a number from 50 to 100 %.  (values-fit)'],
      ['hand_height_cm: 0, working_side_percent: 101', '12:121  working_side_percent must be a number from 50 to 100 %.  (values-fit)'],
      ['hand_height_cm: 0, added_mass_percent: -10', '12:121  added_mass_percent must be a number from 0 to 100 % of body mass.  (values-fit)'],
      ['hand_height_cm: 0, added_mass_percent: 100000', '12:121  added_mass_percent must be a number from 0 to 100 % of body mass.  (values-fit)'],
      ['hand_height_cm: 190', '12:29  The load of "Rung 1" is not computed: the hands cannot be reached from the feet: the height is more than the body spans. Change the set-up, or write model: skill.  (loads-are-computed)'],
      ['hand_height_cm: 60, foot_height_cm: 150'],
    ] as const
  ).map(([keys, ...finds]) => ({ says: `a press-up with ${keys}`, body: raised(keys), finds })),
  { says: 'straps shorter than the arm', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: supported-body, facing: up, feet: heels, hands: straps, anchor_height_cm: 200, feet_from_anchor_cm: 100, strap_cm: 10 }'), finds: ['12:149  strap_cm must be a number from 20 to 500 cm.  (values-fit)'] },
  { says: 'an anchor under the floor', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: supported-body, facing: up, feet: heels, hands: straps, anchor_height_cm: -60, strap_cm: 100 }'), finds: ['12:100  anchor_height_cm must be a number from 50 to 600 cm.  (values-fit)'] },
  { says: 'a drop from a roof', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: landing, drop_height_cm: 5000 }'), finds: ['12:53  drop_height_cm must be a number from 0 to 150 cm.  (values-fit)'] },
  { says: 'a drop of nothing', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: landing, drop_height_cm: 0 }'), finds: [] },
  { says: 'a negative weight', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: one-rep-max, load_kg: -20 }'), finds: ['12:57  load_kg must be a number from 0.5 to 500 kg.  (values-fit)'] },
  { says: 'a weight of nothing', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: one-rep-max, load_kg: 0 }'), finds: ['12:57  load_kg must be a number from 0.5 to 500 kg.  (values-fit)'] },
  { says: 'more than the maximum', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: one-rep-max, percent_1rm: 150 }'), finds: ['12:57  percent_1rm must be a number from 20 to 100 % of 1RM.  (values-fit)'] },
  { says: 'kilograms and pounds in one rung', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: one-rep-max, load_kg: 20, load_lb: 45 }'), finds: ['12:70  There is no key "load_lb" here. Did you mean load_kg?  (keys-are-known)'] },
  { says: 'a band of two points that fall', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: assisted, exercise: hang, stretch_start_cm: 60, stretch_end_cm: 30, band_points: [[20, 200], [80, 100]] }'), finds: ['12:5  "Rung 1" stretches a band, but none of its cautions speaks of it. Ask for it to be checked before every set.  (banded-rungs-carry-a-caution)', '12:29  The load of "Rung 1" is not computed: a band needs at least 3 measured points with different stretches. Change the set-up, or write model: skill.  (loads-are-computed)'] },
  { says: 'a band whose points repeat', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: assisted, exercise: hang, stretch_start_cm: 60, stretch_end_cm: 30, band_points: [[20, 100], [20, 100], [20, 100]] }'), finds: ['12:5  "Rung 1" stretches a band, but none of its cautions speaks of it. Ask for it to be checked before every set.  (banded-rungs-carry-a-caution)', '12:29  The load of "Rung 1" is not computed: a band needs at least 3 measured points with different stretches. Change the set-up, or write model: skill.  (loads-are-computed)'] },
  { says: 'a band of one point', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: assisted, exercise: hang, stretch_start_cm: 60, stretch_end_cm: 30, band_points: [[20, 100]] }'), finds: ['12:5  "Rung 1" stretches a band, but none of its cautions speaks of it. Ask for it to be checked before every set.  (banded-rungs-carry-a-caution)', '12:29  The load of "Rung 1" is not computed: a band needs at least 3 measured points with different stretches. Change the set-up, or write model: skill.  (loads-are-computed)'] },
  { says: 'a counterweight heavier than the body', body: rungs(`id: z, ${SKILL}`, 'id: a, load: { model: assisted, exercise: hang, counterweight_percent: 100 }'), finds: ['12:70  counterweight_percent must be a number from 0 to 90 % of body mass.  (values-fit)'] },
  { says: 'standards of nothing', body: ladder(['{ sets: 3, seconds: 30, sessions: 2 }', '{ sets: 0, seconds: 0, sessions: 0 }']), finds: ['7:13  sets must be a whole number from 1 to 10.  (values-fit)', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)', '7:34  sessions must be a whole number from 1 to 10.  (values-fit)'] },
  { says: 'standards without bound', body: ladder(['{ sets: 3, seconds: 30, sessions: 2 }', '{ sets: 999999, seconds: 99999999, sessions: 9999 }']), finds: ['7:13  sets must be a whole number from 1 to 10.  (values-fit)', '7:27  seconds must be a number from 1 to 1800 s.  (values-fit)', '7:46  sessions must be a whole number from 1 to 10.  (values-fit)'] },
  { says: 'half a set', body: ladder(['{ sets: 3, seconds: 30, sessions: 2 }', '{ sets: 0.5, seconds: 30.5, sessions: 1.5 }']), finds: ['7:13  sets must be a whole number from 1 to 10.  (values-fit)', '7:39  sessions must be a whole number from 1 to 10.  (values-fit)'] },
  { says: 'first reps of nothing', body: ladder(['form:', 'first_reps: 0\nform:']), finds: ['8:1  first_reps must be a whole number from 1 to 50.  (values-fit)'] },
  { says: 'a hundred sessions a week', body: ladder(['form:', 'sessions_per_week: 100\nform:']), finds: ['8:1  sessions_per_week must be a number from 0.5 to 14.  (values-fit)'] },
  { says: 'a review in the thirteenth month', body: ladder(['form:', 'review: { by: A, on: 2026-13-01 }\nform:']), finds: ['8:18  on is not a day in the calendar.  (values-fit)'] },
  { says: 'a review on the thirtieth of February', body: ladder(['form:', 'review: { by: A, on: 2026-02-30 }\nform:']), finds: ['8:18  on is not a day in the calendar.  (values-fit)'] },
])

/** Safety notes that say nothing. */
heldTogether('safety notes that say nothing', [
  { says: 'no stop signs', body: ladder(['stop: [pain in the back, a held breath]\n', '']), finds: ['2:1  stop is not given here. Add it.  (keys-are-given)'] },
  { says: 'an empty list of stop signs', body: ladder(['stop: [pain in the back, a held breath]', 'stop: []']), finds: ['16:1  There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.  (stop-signs-are-given)'] },
  { says: 'stop signs that are blank', body: ladder(['stop: [pain in the back, a held breath]', 'stop: ["", " "]']), finds: ['16:8  stop is empty; write something or leave the key out.  (values-fit)', '16:12  stop is empty; write something or leave the key out.  (values-fit)'] },
  { says: 'a stop sign that is a comment', body: ladder(['stop: [pain in the back, a held breath]', 'stop: # pain in the back']), finds: ['16:1  stop must be a list of at most 20.  (values-fit)'] },
  { says: 'a stop sign that is a dot', body: ladder(['stop: [pain in the back, a held breath]', 'stop: ["."]']), finds: ['16:1  There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.  (stop-signs-are-given)'] },
  { says: 'a stop sign of no width', body: ladder(['stop: [pain in the back, a held breath]', 'stop: ["\\u200b"]']), finds: ['16:8  stop holds a hidden or direction-changing character; type it again by hand.  (values-fit)'] },
  { says: 'a stop sign of markup alone', body: ladder(['stop: [pain in the back, a held breath]', 'stop: ["**"]']), finds: ['16:1  There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.  (stop-signs-are-given)'] },
  { says: 'a stop sign that waits to be written', body: ladder(['stop: [pain in the back, a held breath]', 'stop: [TODO]']), finds: ['16:1  There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.  (stop-signs-are-given)'] },
  { says: 'nobody who asks first', body: ladder(['ask_first: [a back injured in the last year, pregnancy]', 'ask_first: []']), finds: ['17:1  This does not say who should ask first. Name who sees a clinician before starting.  (stop-signs-are-given)'] },
  { says: 'a caution that is a dot', body: ladder(['title: Tucked hold\n', 'title: Tucked hold\n    cautions: ["."]\n']), finds: ['12:5  A caution here says nothing. Write what to watch for, or take it out.  (stop-signs-are-given)'] },
])

const amends = (yaml: string): Files => ({ 'handbook.yaml': `${HANDBOOK}extends: base\n`, [LADDER_FILE]: `---\namends: hollow-hold\nbecause: our club\n${yaml}\n---\n`, 'base/handbook.yaml': HANDBOOK.replace('Tarnwick Gym Club', 'Union of Clubs'), 'base/ladders/a.md': LADDER })
const layers = (count: number): Files => ({ 'handbook.yaml': `${HANDBOOK}extends: l1\n`, ...Object.fromEntries(Array.from({ length: count }, (_, index) => [`${lines(index + 1, (depth) => `l${depth + 1}`).replaceAll('\n', '/')}/handbook.yaml`, `${HANDBOOK}extends: l${index + 2}\n`])) })

/** Layers, and what is too much. */
held([
  { says: 'two handbooks that extend one another', files: { 'handbook.yaml': `${HANDBOOK}extends: other\n`, 'other/handbook.yaml': `${HANDBOOK}extends: ..\n` }, finds: ['other/handbook.yaml:1:1  This handbook extends, by way of others, itself. Take out one extends.  (layers-end)'] },
  { says: 'fifty layers', files: layers(50), finds: ['l1/l2/l3/l4/l5/l6/l7/l8/l9/l10/l11/l12/l13/l14/l15/l16/l17/l18/l19/handbook.yaml:1:1  More than 20 handbooks extend one another. Join some of them.  (layers-end)'] },
  { says: 'a layer that takes out a note by other words', files: amends('withdraw_notes: [{ note: pain, because: we know better, by: A. Coach }]'), finds: ['ladders/a.md:4:18  "hollow-hold" has no safety note "pain" to withdraw. Copy its exact words.  (amendments-fit)'] },
  { says: 'a layer that takes out a note without a name', files: amends('withdraw_notes: [{ note: pain in the back, because: we know better }]'), finds: ['ladders/a.md:4:18  by is not given here. Add it.  (keys-are-given)'] },
  { says: 'a layer that lowers supervision', files: { ...amends('supervision: none'), 'base/ladders/a.md': ladder(['form:', 'supervision: coach\nform:']) }, finds: ['ladders/a.md:4:1  "hollow-hold" asks for less supervision than the curriculum below (coach). A layer may ask for more, not for less.  (amendments-fit)'] },
  { says: 'a layer that withdraws a rung to itself', files: amends('withdraw: [{ id: tucked, heir: tucked, because: x }]'), finds: ['base/ladders/a.md:5:1  The aim "hollow" is the first rung. Put an easier version before it.  (the-aim-has-a-way-up)', 'ladders/a.md:4:26  The heir of "tucked" is "tucked", but no rung has that id. Name one of the rungs.  (retired-rungs-name-an-heir)'] },
  { says: 'a layer that withdraws every rung', files: amends('withdraw: [{ id: tucked, heir: hollow, because: x }, { id: hollow, heir: tucked, because: x }]'), finds: ['base/ladders/a.md:5:1  The aim is "hollow", but no rung has that id. The rungs are: .  (aim-exists)', 'ladders/a.md:4:26  The heir of "tucked" is "hollow", but no rung has that id. Name one of the rungs.  (retired-rungs-name-an-heir)', 'ladders/a.md:4:68  The heir of "hollow" is "tucked", but no rung has that id. Name one of the rungs.  (retired-rungs-name-an-heir)'] },
  { says: '250 rungs in a chain', files: { [LADDER_FILE]: rungs(...Array.from({ length: 250 }, (_, index) => `id: a${index === 1 ? '' : index}, ${SKILL}`)) }, finds: [] },
  { says: '10,000 rungs in a chain', files: { [LADDER_FILE]: rungs(...Array.from({ length: 10_000 }, (_, index) => `id: a${index === 0 ? '' : index}, ${SKILL}`)) }, finds: ['ladders/a.md:1:1  This file cannot be read: it is larger than 1024 KiB. Mend it or take it away.  (files-are-text)'] },
  { says: '18,000 keys that are not known, over sixty files', files: Object.fromEntries(Array.from({ length: 60 }, (_, file) => [`ladders/x${file}.md`, LADDER.replace('id: hollow-hold', `id: x-${file}`).replace('stop:', `${lines(300, (key) => `k${key}: 1`)}\nstop:`)])), finds: [`ladders/x0.md:16:1  There is no key "k0" here. Known keys: ${KEYS}.  (keys-are-known)`, `ladders/x0.md:17:1  There is no key "k1" here. Known keys: ${KEYS}.  (keys-are-known)`], of: 500 },
])
