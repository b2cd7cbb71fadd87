import assert from 'node:assert/strict'
import { test } from 'vitest'
import { check, rules } from '../../src/check/index.ts'
import { measure } from '../../src/measure/measure.ts'
import { readPage } from '../../src/read/read-page.ts'
import { fixture, found, handbook, TODAY } from './fixture.ts'

/** What a coach reads about each bad fixture. */
const BAD: Readonly<Record<string, readonly string[]>> = {
  'ids-are-unique': [
    '"Squat to the lowest box" has the id "low-box", which "Squat to a low box" has already. Give it another.',
  ],
  'titles-are-unique': [
    '"bridge" is the title of two rungs. Say in one of them what is different.',
  ],
  'aim-exists': [
    'The aim is "hollw", but no rung has that id. The rungs are: tucked, hollow.',
  ],
  'the-aim-has-a-way-up': [
    'The aim "line" is the first rung. Put an easier version before it.',
  ],
  'every-rung-is-reachable': [
    '"Edge on still water" follows no rung, so the ladder has two first rungs. Say what it comes after.',
  ],
  'retired-rungs-name-an-heir': [
    'The heir of "crate" is "two-bag", but no rung has that id. Name one of the rungs.',
    '"one-bag" is listed as withdrawn, but there is such a rung. Take it off one of the two.',
  ],
  'every-rung-is-described': [
    '"Single jumps with a rope on the floor" lacks Faults. Write it under its heading.',
    '"Single jumps with a turning rope" is not described. Write a section "## Single jumps with a turning rope {#turning-rope}" with Set up, Full rep, Cues and Faults.',
  ],
  'stop-signs-are-given': [
    'A caution here says nothing. Write what to watch for, or take it out.',
    'There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.',
    'This does not say who should ask first. Name who sees a clinician before starting.',
  ],
  'translated-safety-notes-stand': [
    'The reasons to ask first of "Rise from kneeling" are not translated into es. Translate each, in the same order.',
    'The stop signs have in es 1 entry, the original 2. Translate each, in the same order.',
    'The original cautions of "pole" have changed since they were translated into es. Translate them again, then: rungbook translate es kneel-rise --seal',
  ],
  'supervision-rises-with-risk': [
    '"Pull of 42 kg from the rack" is watched less than "Pull of 40 kg from the rack", which it follows. Write supervision: coach.',
    '"Pull of 44 kg from the rack" asks for less supervision (none) than the ladder does (partner). Take it out, or raise it.',
  ],
  'landings-stay-within-limits': [
    '"Drop from 60 cm" lands as hard as a fall from 60 cm, with supervision: none. Lower it, or write supervision: coach.',
  ],
  'anchored-rungs-ask-for-a-rated-anchor': [
    '"Lean back 44 degrees" hangs on an anchor, but none of its cautions speaks of it. Ask for an anchor rated by a competent person.',
  ],
  'banded-rungs-carry-a-caution': [
    '"Pull-up with the thin band" stretches a band, but none of its cautions speaks of it. Ask for it to be checked before every set.',
  ],
  'one-limb-rungs-say-which-side': [
    '"Stand on one leg and reach" works one side at a time but does not say which first. Add first_side.',
    '"Stand on one leg on a pad" works one side at a time but carries no caution. Add cautions.',
  ],
  'loads-are-computed': [
    'The load of "Hands on a bench" is not computed: hand_height_cm and lean_deg are both given; one of them follows from the other. Change the set-up, or write model: skill.',
  ],
  'measurements-are-plausible': [
    'travel_cm of "Drop from 20 cm" is 5 cm, far from the 30 and 40 cm beside it. Look at the digits again.',
  ],
  'titles-agree-with-loads': [
    'The title "Drop from 25 cm" says 25 cm, the load is computed from 35 and 30. Make them the same.',
  ],
  'rungs-rise': [
    '"Drop from a box" loads 3 cm, less than "Drop from a step" below it (15 cm). Swap them, check the inputs, or name its demand.',
  ],
  'rungs-differ': [
    '"Squat with a bottle of water" has the load and demand of "Squat with a plate in front". Join the two, or name what is different.',
  ],
  'level-steps-name-a-demand': [
    '"Split squat with a pause" loads the same as "Split squat". Name its demand, or leave one of the two out.',
  ],
  'steps-are-climbable': [
    'The step from "Overhead press of 20 kg" to "Overhead press of 22 kg" is too steep: 0 to 2 repetitions to expect where 4 are wanted. Ask for 11 repetitions on "Overhead press of 20 kg", or put a rung between: about 21.0 kg.',
  ],
  'first-reps-leave-room': [
    'first_reps is 6, and the standard only 6. Begin with fewer.',
  ],
  'entry-can-be-met': [
    'The standard asks for 160 repetitions in all, more than 150. Ask for fewer, or for a harder rung.',
    'The entry of "Calf raise on a step" asks for more than one of reps, seconds and metres. Keep one.',
  ],
  'entries-differ-from-the-standard': [
    'The entry of "Swing and hop" says what the standard says already. Take it out.',
  ],
  'standards-suit-the-load': [
    '"Drop from 20 cm" asks for seconds of "Drop from 10 cm", which is a landing. Ask for repetitions that are stuck.',
  ],
  'form-points-are-observable': [
    'The form point "good posture" cannot be seen: "good". Say what it looks like.',
    'The form point "feel the braces with both knees" cannot be seen: "feel". Say what it looks like.',
  ],
  'full-reps-have-a-start-and-an-end': [
    'The full rep of "Lift from the floor" has no line that begins with "End:". Write both as a list.',
  ],
  'cues-are-short': [
    `"Don't touch the mat with your head." says what not to do. Say what to do instead.`,
    '"Push the floor away from you with both of your hands." is long for a cue. Say it in at most 8 words.',
  ],
  'cues-are-few': [
    '"Throw to a wall" has 7 cues. Keep the 6 that change most.',
    'The cue "Shout first." stands twice. Keep one.',
  ],
  'faults-have-remedies': [
    'The fault "Boat rocks" has nothing under "if it stays". Fill it in.',
  ],
  'equipment-is-listed': [
    '"Rope" is listed twice. Keep one.',
    `"Step over a hurdle" uses "hurdle", which is not in the ladder's equipment. Add it there.`,
  ],
  'equipment-is-used': [
    '"kettle weight" is listed, but no rung speaks of it. Take it out, or say where it is used.',
  ],
  'sources-are-cited': [
    `"Kneeling press-up" takes its load from "club2024", which is not among the ladder's sources. Add it there with its full citation.`,
    'The source "scale2025" is listed twice. Keep one.',
  ],
  'seals-match': [
    'The criteria of this ladder are not those that Odalie Wrenfoss signed on 2026-10-03 (now 13a41cb80365). Have them reviewed again, with: rungbook review --seal hollow-hold --by NAME.',
  ],
  'pictures-have-text': [
    'The picture "pictures/hold.png" has no text beside it. Write what it shows between the square brackets.',
    'The picture "pictures/hands.png" has no text beside it. Write what it shows between the square brackets.',
  ],
  'pictures-lie-in-the-workspace': [
    'The picture "hold.png" stands in the front matter, where only words are shown. Move it below.',
    'The picture "https://club.example/hold.png" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.',
    'The picture "/pictures/hands.png" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.',
  ],
  'footnotes-are-whole': [
    'The mark [^1] leads to no footnote. Write "[^1]: " and its words on a line of their own, in the same section. Cues, full reps, faults and front matter hold none.',
    'Nothing leads to the footnote "one", so nobody would see it. Put [^one] where it belongs, in the same section, or take it out.',
    'The footnote "small" is written twice, and only one is shown. Give this one another name.',
    'The mark [^1] leads to no footnote. Write "[^1]: " and its words on a line of their own, in the same section. Cues, full reps, faults and front matter hold none.',
  ],
  'diagrams-can-be-drawn': [
    '"click a "https://club.example"" is not understood. A line is a box such as a["Start"], a("Start") or a{"Ready?"}, or boxes joined by -->, -.-> or ==>, with words as in -->|"yes"|.',
    'The diagram has no title. Write it behind ```mermaid, or on a line "accTitle: ..."; who cannot see it hears the title first.',
    'Only flowcharts are drawn. Begin with "flowchart TB", from top to bottom, or BT, LR or RL.',
  ],
  'links-resolve': [
    'The link "http://club.example/numbers" leads nowhere the handbook may go: links lead to rung:ladder/rung, to a page such as /safety/, or out by https, mailto or tel.',
    'The link "/saftey/" leads to no page. Did you mean /safety/?',
    'The link "rung:first-float/wading" leads to no rung. Did you mean rung:first-float/wade?',
  ],
  'translations-are-there': [
    '"Rise from kneeling" is not translated into es. Begin with: rungbook translate es kneel-rise',
  ],
  'translations-are-complete': [
    '"Rise from kneeling" lacks in es: form, free/cues. Translate them.',
  ],
  'translations-are-current': [
    'Not yet sealed in es: free/cues. Read it beside the original, then: rungbook translate es kneel-rise --seal',
    'The original of "pole/cues" has changed since it was translated into es. Translate it again, then: rungbook translate es kneel-rise --seal',
  ],
  'translations-keep-their-shape': [
    '"free" has in es first_side, which the original does not have. Say the same things, in the same order.',
    '"pole/set-up" has in es 1 entry in its lists, the original 2. Say the same things, in the same order.',
    '"free/faults" has in es 2 rows, the original 1. Say the same things, in the same order.',
  ],
  'translations-keep-links-and-numbers': [
    'The es of "pole/set-up" lacks the number 30. Make them the same.',
    'The es of "free/set-up" lacks the link rung:kneel-rise/pole. Make them the same.',
  ],
  'translations-have-an-original': [
    '"poles/cues" is translated into es, but "Rise from kneeling" has no such part. Take it out.',
  ],
  'shared-words-are-translated': [
    'words.es.yaml has no words for: squat, mat. Write a line for each, such as "bench: banco"; a word that stays the same stands beside itself.',
  ],
}

for (const { name } of rules) {
  test(`${name}: the bad ladder is told what is wrong and what to do`, () => {
    assert.deepEqual(
      found(name, fixture(`${name}.bad.md`)).map(({ message }) => message),
      BAD[name],
    )
  })
}

type Edit = readonly [from: string, to: string]

/** A good fixture after one slip, or a few that go together, and all that is then found. */
const SLIPS: readonly { readonly rule: string; readonly says: string; readonly edits: readonly Edit[]; readonly finds: readonly string[] }[] = [
  {
    rule: 'every-rung-is-reachable',
    says: 'a rung that is not there is named',
    edits: [['after: [still-water]', 'after: [stil-water]']],
    finds: ['"Edge under way" comes after "stil-water", but no rung has that id. Name one of the rungs.'],
  },
  {
    rule: 'every-rung-is-reachable',
    says: 'two rungs that wait for each other are both named',
    edits: [['after: [dock]', 'after: [under-way]']],
    finds: [
      '"Edge on still water" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.',
      '"Edge under way" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.',
    ],
  },
  {
    rule: 'every-rung-is-reachable',
    says: 'a circle is found even where another way leads into it',
    edits: [['after: [dock]', 'after: [dock, under-way]']],
    finds: [
      '"Edge on still water" comes after itself, by way of what it comes after. Mend the order.',
      '"Edge under way" comes after itself, by way of what it comes after. Mend the order.',
    ],
  },
  {
    rule: 'every-rung-is-reachable',
    says: 'a rung may not come after itself',
    edits: [['after: [still-water]', 'after: [still-water, under-way]']],
    finds: ['"Edge under way" comes after itself, by way of what it comes after. Mend the order.'],
  },
  {
    rule: 'every-rung-is-reachable',
    says: 'the one first rung may stand anywhere in the file',
    edits: [
      ['title: Edge beside the dock\n', 'title: Edge beside the dock\n    after: [still-water]\n'],
      ['after: [dock]', 'after: []'],
      ['    after: [still-water]\n    load: { model: skill }\nstop', '    after: [dock]\n    load: { model: skill }\nstop'],
    ],
    finds: [],
  },
  {
    rule: 'every-rung-is-described',
    says: 'everything that a rung lacks is named at once',
    edits: [
      ['### Cues\n- Wrists turn, elbows rest.\n- Jump a book high.\n', '### Cues\n'],
      ['### Set up\n- Rope long enough to reach both armpits when stood on.\n- Elbows beside the ribs.\n', ''],
    ],
    finds: ['"Single jumps with a turning rope" lacks Set up, Cues. Write them under its heading.'],
  },
  {
    rule: 'stop-signs-are-given',
    says: 'three letters are a note to oneself, four are a word',
    edits: [
      ['numb fingers]', 'pain]'],
      ['ask_first: [a shoulder that has come out of joint]', 'ask_first: [tbd]'],
    ],
    finds: ['This does not say who should ask first. Name who sees a clinician before starting.'],
  },
  {
    rule: 'stop-signs-are-given',
    says: 'one sign that says nothing is found among others',
    edits: [['numb fingers]', '"<!-- -->"]']],
    finds: ['There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.'],
  },
  {
    rule: 'loads-are-computed',
    says: 'the reason is the one the model gives',
    edits: [['facing: down, feet: toes, hands: surface, hand_height_cm: 45', 'facing: up, feet: toes, hands: surface, hand_height_cm: 45']],
    finds: ['The load of "Hands on a bench" is not computed: facing up, the feet rest on heels or flat, not on toes. Change the set-up, or write model: skill.'],
  },
  {
    rule: 'rungs-rise',
    says: 'less load is fine where another demand is named',
    edits: [['title: Drop from a box\n    load: { model: landing, drop_height_cm: 30', 'title: Drop from a box\n    demand: [speed]\n    load: { model: landing, drop_height_cm: 3']],
    finds: [],
  },
  {
    rule: 'level-steps-name-a-demand',
    says: 'a load one part in fifty-five heavier is still the same load',
    edits: [['    demand: [balance]\n    load: { model: leg-press-of-body, stance: split, front_leg_percent: 55 }', '    load: { model: leg-press-of-body, stance: split, front_leg_percent: 56 }']],
    finds: ['"Split squat with a pause" loads the same as "Split squat". Name its demand, or leave one of the two out.'],
  },
  {
    rule: 'steps-are-climbable',
    says: 'where no entry would help, a rung between is asked for',
    edits: [
      ['load_kg: 22', 'load_kg: 30'],
      ['title: Overhead press of 22 kg', 'title: Heavy overhead press'],
      ['## Overhead press of 22 kg', '## Heavy overhead press'],
    ],
    finds: ['The step from "Overhead press of 20 kg" to "Heavy overhead press" is too steep: 0 repetitions to expect where 4 are wanted. Put a rung between: about 24.5 kg.'], // √(20 × 30) = 24.49
  },
  {
    rule: 'steps-are-climbable',
    says: 'where no one measurement splits the step, a rung between is asked for without one',
    edits: [
      ['load: { model: one-rep-max, load_kg: 20 }', 'load: { model: leg-press-of-body, stance: two legs }'],
      ['load: { model: one-rep-max, load_kg: 22 }', 'load: { model: leg-press-of-body, stance: one leg }'],
    ],
    finds: ['The step from "Overhead press of 20 kg" to "Overhead press of 22 kg" is too steep: 0 repetitions to expect where 4 are wanted. Put a rung between.'],
  },
  { rule: 'steps-are-climbable', says: 'an uncertain step is not called too steep', edits: [['reps: 13', 'reps: 10']], finds: [] },
  {
    rule: 'entry-can-be-met',
    says: 'a standard has to ask for something',
    edits: [
      ['standard: { sets: 3, reps: 20, sessions: 2 }', 'standard: { sets: 3, sessions: 2 }'],
      ['first_reps: 5\n', ''],
    ],
    finds: ['The standard gives no amount. Add reps, seconds or metres.'],
  },
  {
    rule: 'entry-can-be-met',
    says: 'a standard asks for one thing',
    edits: [['standard: { sets: 3, reps: 20,', 'standard: { sets: 3, reps: 20, metres: 50,']],
    finds: ['The standard asks for more than one of reps, seconds and metres. Keep one.'],
  },
  {
    rule: 'entry-can-be-met',
    says: 'more than half an hour in all is no test',
    edits: [
      ['standard: { sets: 3, reps: 20,', 'standard: { sets: 3, seconds: 900,'],
      ['first_reps: 5\n', ''],
    ],
    finds: ['The standard asks for 2700 s in all, more than 1800 s. Ask for less, or for a harder rung.'],
  },
  {
    rule: 'entry-can-be-met',
    says: 'an entry of more repetitions is counted over the sets of the standard',
    edits: [['entry: { reps: 25 }', 'entry: { reps: 60 }']],
    finds: ['The entry of "Calf raise on a step" asks for 180 repetitions in all, more than 150. Ask for fewer, or for a harder rung.'],
  },
  {
    rule: 'entry-can-be-met',
    says: 'an entry of more sets is counted over the repetitions of the standard',
    edits: [['entry: { reps: 25 }', 'entry: { sets: 8 }']],
    finds: ['The entry of "Calf raise on a step" asks for 160 repetitions in all, more than 150. Ask for fewer, or for a harder rung.'],
  },
  {
    rule: 'entry-can-be-met',
    says: 'an entry that changes only the sessions is not blamed for the standard',
    edits: [
      ['standard: { sets: 3, reps: 20,', 'standard: { sets: 8, reps: 20,'],
      ['entry: { reps: 25 }', 'entry: { sessions: 3 }'],
    ],
    finds: ['The standard asks for 160 repetitions in all, more than 150. Ask for fewer, or for a harder rung.'],
  },
  { rule: 'entry-can-be-met', says: 'an entry may ask for seconds where the standard asks for repetitions', edits: [['entry: { reps: 25 }', 'entry: { seconds: 60 }']], finds: [] },
  {
    rule: 'entry-can-be-met',
    says: 'nothing can be shown before the first rung',
    edits: [['title: Calf raise on the floor\n', 'title: Calf raise on the floor\n    entry: { reps: 10 }\n']],
    finds: ['"Calf raise on the floor" follows no rung, so there is nothing to show its entry on. Remove the entry, or say what it comes after.'],
  },
  {
    rule: 'full-reps-have-a-start-and-an-end',
    says: 'both lines are asked for where both are absent',
    edits: [['- Start: both hands under the crate, crate on the shelf.\n- End: crate on the shelf again', '- Take the crate.\n- Put it back on the shelf']],
    finds: ['The full rep of "Lift from a shelf" has no line that begins with "Start:" or "End:". Write both as a list.'],
  },
  {
    rule: 'cues-are-short',
    says: 'every way to begin with what not to do is found',
    edits: [['- Look at your belly.\n- Push the floor away.\n', '- Do not look up.\n- Don’t look up.\n- never look up\n- Avoid the head.\n- No head on the mat.\n']],
    finds: [
      '"Do not look up." says what not to do. Say what to do instead.',
      '"Don’t look up." says what not to do. Say what to do instead.',
      '"never look up" says what not to do. Say what to do instead.',
      '"Avoid the head." says what not to do. Say what to do instead.',
      '"No head on the mat." says what not to do. Say what to do instead.',
    ],
  },
  { rule: 'cues-are-short', says: 'eight words are few enough, and now, north and another begin like nothing', edits: [['- Push the floor away.\n', '- Now push the floor as far as you.\n- North first.\n- Another one.\n']], finds: [] },
  {
    rule: 'faults-have-remedies',
    says: 'a dash is not a word to say, and the first gap is named',
    edits: [
      ['| Nose over the deck line |', '| — |'],
      ['| Elbow bends early |', '| |'],
    ],
    finds: ['The fault "" has nothing under "seen". Fill it in.', 'The fault "Boat rocks" has nothing under "say". Fill it in.'],
  },
  {
    rule: 'one-limb-rungs-say-which-side',
    says: 'a dot is no caution',
    edits: [['cautions: [The pad cannot slide.]', 'cautions: ["."]']],
    finds: ['"Stand on one leg on a pad" works one side at a time but carries no caution. Add cautions.', 'A caution here says nothing. Write what to watch for, or take it out. (stop-signs-are-given)'],
  },
  {
    rule: 'anchored-rungs-ask-for-a-rated-anchor',
    says: 'a word that merely begins like anchor is one, anywhere in the caution',
    edits: [['cautions: [Use an anchor that a competent person has rated for this use.]', 'cautions: [Rated anchorage only.]']],
    finds: [],
  },
  {
    rule: 'sources-are-cited',
    says: 'a ladder without sources has none to take a load from',
    edits: [['sources:\n  - { id: club2025, cite: "Own measurements 2025: eleven members, bathroom scale under both hands, arms straight" }\n', '']],
    finds: [
      `"Kneeling press-up on a high mat" takes its load from "club2025", which is not among the ladder's sources. Add it there with its full citation.`,
      `"Kneeling press-up" takes its load from "club2025", which is not among the ladder's sources. Add it there with its full citation.`,
    ],
  },
  {
    rule: 'sources-are-cited',
    says: 'one id for two sources is found',
    edits: [['arms straight" }\n', 'arms straight" }\n  - { id: club2025, cite: "Own measurements 2025: nine members" }\n']],
    finds: ['The source "club2025" is listed twice. Keep one.'],
  },
  {
    rule: 'titles-are-unique',
    says: 'blanks and large letters make no other title',
    edits: [
      ['title: Bridge with the feet on a box', 'title: "BRIDGE "'],
      ['## Bridge with the feet on a box', '## BRIDGE'],
    ],
    finds: ['"BRIDGE" is the title of two rungs. Say in one of them what is different.'],
  },
  {
    rule: 'landings-stay-within-limits',
    says: 'a metre asks for a qualified coach',
    edits: [
      ['title: Drop from 60 cm', 'title: High drop'],
      ['## Drop from 60 cm', '## High drop'],
      ['drop_height_cm: 60', 'drop_height_cm: 110'],
    ],
    finds: ['"High drop" lands as hard as a fall from 110 cm, with supervision: coach. Lower it, or write supervision: qualified coach.'],
  },
  {
    rule: 'landings-stay-within-limits',
    says: 'half a metre already asks for a coach',
    edits: [
      ['title: Drop from 45 cm', 'title: Middle drop'],
      ['## Drop from 45 cm', '## Middle drop'],
      ['drop_height_cm: 45', 'drop_height_cm: 50'],
    ],
    finds: ['"Middle drop" lands as hard as a fall from 50 cm, with supervision: none. Lower it, or write supervision: coach.'],
  },
  {
    rule: 'measurements-are-plausible',
    says: 'nothing between two somethings is no slip of the finger',
    edits: [
      ['drop_height_cm: 10,', 'drop_height_cm: 10, level_speed_m_s: 2,'],
      ['drop_height_cm: 20,', 'drop_height_cm: 20, level_speed_m_s: 0,'],
      ['drop_height_cm: 30,', 'drop_height_cm: 30, level_speed_m_s: 2,'],
    ],
    finds: [],
  },
  {
    rule: 'titles-agree-with-loads',
    says: 'a title of two halves agrees with the whole',
    edits: [
      ['title: Drop from 25 cm', 'title: Drop from two 15 cm boxes, 25 cm'],
      ['## Drop from 25 cm', '## Drop from two 15 cm boxes, 25 cm'],
    ],
    finds: [], // twice 15 is the 30 it sinks
  },
  {
    rule: 'first-reps-leave-room',
    says: 'where repetitions are counted, the first are asked for',
    edits: [['first_reps: 2\n', '']],
    finds: ['first_reps is not given. Say with how many strict repetitions work on a new rung may begin.'],
  },
  {
    rule: 'first-reps-leave-room',
    says: 'where none are counted, there are no first ones',
    edits: [['sets: 2, reps: 6,', 'sets: 2, metres: 6,']],
    finds: ['first_reps is given, but the standard counts no repetitions. Take it out.'],
  },
  {
    rule: 'entries-differ-from-the-standard',
    says: 'one part that differs is enough',
    edits: [['entry: { reps: 15 }', 'entry: { reps: 10, sessions: 3 }']],
    finds: [],
  },
  {
    rule: 'standards-suit-the-load',
    says: 'a standard in metres is found where it stands, once for the whole ladder',
    edits: [
      ['standard: { sets: 3, reps: 5, sessions: 2 }\nfirst_reps: 3', 'standard: { sets: 3, metres: 5, sessions: 2 }'],
      ['    entry: { reps: 8 }\n', ''],
    ],
    finds: ['"Drop from 20 cm" asks for metres of "Drop from 10 cm", which is a landing. Ask for repetitions that are stuck.'],
  },
  {
    rule: 'form-points-are-observable',
    says: 'without a form point nobody knows what counts',
    edits: [['form:\n  - back a hand away from the seat\n  - ears above the hips\n  - knees touch the braces\n', 'form: []\n']],
    finds: ['There is no form point. Say what must be seen in every rep for it to count.'],
  },
  {
    rule: 'form-points-are-observable',
    says: 'eight are too many, and those of a rung are looked at too',
    edits: [
      ['  - ears above the hips\n', '  - ears above the hips\n  - one\n  - two\n  - three\n  - four\n  - five\n'],
      ['    demand: [balance]\n', '    demand: [balance]\n    form: [trunk engaged]\n'],
    ],
    finds: ['8 form points are too many to watch in one rep. Keep the 7 that matter most.', 'The form point "trunk engaged" cannot be seen: "engaged". Say what it looks like.'],
  },
  { rule: 'cues-are-few', says: 'six are few enough', edits: [['- Let the coils fall.\n', '- Let the coils fall.\n- Long arm.\n- Step through.\n- Breathe out.\n']], finds: [] },
  {
    rule: 'equipment-is-used',
    says: 'a short word of another script is looked for as it is',
    edits: [
      ['equipment: [mats]', 'equipment: [mats, 棒, 繩]'],
      ['- Hands under the shoulders.', '- Hands under the shoulders, 棒 on the back.'],
    ],
    finds: ['"繩" is listed, but no rung speaks of it. Take it out, or say where it is used.'],
  },
  {
    rule: 'equipment-is-used',
    says: 'one of many speaks of all of them',
    edits: [['equipment: [mats]', 'equipment: [two soft mats, small shoe]']],
    finds: [],
  },
  {
    rule: 'links-resolve',
    says: 'a link that is like nothing gets no guess',
    edits: [
      ['(rung:first-float/wade)', '(rung:capsize)'],
      ['(/safety/)', '(/lost-and-found/)'],
    ],
    finds: ['The link "/lost-and-found/" leads to no page. Mend it or take it out.', 'The link "rung:capsize" leads to no rung. Mend it or take it out.'],
  },
  {
    rule: 'links-resolve',
    says: 'a link may lead to a ladder, to a part of a page and out by telephone',
    edits: [
      ['(sources.md)', '(./sources.md#chapter-2)'],
      ['(/safety/)', '(/first-float/)'],
      ['(rung:first-float/wade)', '(tel:112)'],
    ],
    finds: [],
  },
  {
    rule: 'links-resolve',
    says: 'addresses that browsers read in their own way are refused',
    edits: [['(/safety/)', '(//evil.example) [b](\\\\\\\\evil.example) [c](/../../etc/passwd) [d](/safety%2f..%2f) [e](FILE:x) [f](blob:x)']],
    finds: ['%5C%5Cevil.example', '/../../etc/passwd', '//evil.example', '/safety%2f..%2f', 'blob:x'].map(
      (href) => `The link "${href}" leads nowhere the handbook may go: links lead to rung:ladder/rung, to a page such as /safety/, or out by https, mailto or tel.`,
    ),
  },
  {
    rule: 'links-resolve',
    says: 'what runs a script is no link to begin with',
    edits: [['(/safety/)', '(javascript:alert(1)) [b](JaVaScRiPt:x) [c](&#106;avascript:x) [d](vbscript:x) [e](data:text/html,x) <javascript:x>']],
    finds: [],
  },
]

const edited = (text: string, edits: readonly Edit[]): string =>
  edits.reduce((before, [from, to]) => {
    assert.equal(before.split(from).length, 2, `"${from}" stands there once`)
    return before.replace(from, () => to)
  }, text)

for (const { rule, says, edits, finds } of SLIPS) {
  test(`${rule}: ${says}`, () => {
    assert.deepEqual(
      found(rule, edited(fixture(`${rule}.good.md`), edits)).map((finding) => `${finding.message} (${finding.rule})`),
      finds.map((message) => (/ \([a-z-]+\)$/.test(message) ? message : `${message} (${rule})`)), // one slip may be found by another rule too
    )
  })
}

test('links-resolve: a dead link is placed where it stands, whichever part of a rung that is', () => {
  const good = fixture('links-resolve.good.md')
  const text = edited(good, [
    ['[by mail](mailto:coach@club.example)', '[by mail](ftp:1)'],
    ['(/safety/)', '(ftp:2)'],
    ['- Shoes that stay on in mud.', '- Shoes that stay on in [mud](ftp:3).'],
    ['- End: standing on the bank again after', '- End: [standing](ftp:4) on the bank again after'],
    ['- Feel for each step.', '- [Feel](ftp:5) for each step.'],
    ['| Hurries in |', '| [Hurries in](ftp:6) |'],
    ['today |\n\n## Float', 'today |\n\n### Notes\n[Tides](ftp:7) matter here.\n\n## Float'],
  ])
  const lines = text.split('\n')
  assert.deepEqual(
    found('links.md', text).map(({ line, message }) => [lines[line - 1], /"(.*?)"/.exec(message)?.[1]]),
    [
      [lines.find((line) => line.includes('ftp:1')), 'ftp:1'],
      ['## Wade to the hips {#wade}', 'ftp:2'],
      ['### Set up', 'ftp:3'],
      [lines.find((line) => line.includes('ftp:4')), 'ftp:4'],
      [lines.find((line) => line.includes('ftp:5')), 'ftp:5'],
      [lines.find((line) => line.includes('ftp:6')), 'ftp:6'],
      ['### Notes', 'ftp:7'],
    ],
  )
})

test('links-resolve: past twenty dead links of a ladder no guess is made, so that thousands are found at once', () => {
  const near = 'a'.repeat(50)
  const rungs = Array.from({ length: 400 }, (_, index) => `  - { id: ${near}b${index}, title: Rung, load: { model: skill } }\n`).join('')
  const links = Array.from({ length: 3000 }, (_, index) => `[x](rung:${near}c${index})`).join('\n')
  const text = edited(fixture('links-resolve.good.md'), [['    load: { model: skill }\nstop', `    load: { model: skill }\n${rungs}stop`]])
  const began = process.cpuUsage()
  const dead = found('links.md', `${text}\n### Notes\n${links}\n`).filter(({ rule }) => rule === 'links-resolve')
  const { user } = process.cpuUsage(began)
  assert.equal(dead.length, 3000)
  assert.equal(dead.filter(({ message }) => message.includes('Did you mean')).length, 20)
  assert.ok(user < 2e6, `${user} µs of work; a guess for each would take a minute`)
})

const onPage = (body: string): string[] => {
  const { value, findings } = readPage('content/safety.md', 'content/safety.md', new TextEncoder().encode(`---\ntitle: Safety\nsummary: When to stop\n---\n${body}`), 'A club')
  assert.deepEqual(findings, [])
  return check(measure({ handbook, ladders: [], pages: value ? [value] : [] }), TODAY).findings.map(({ file, line, column, rule, message }) => `${file}:${line}:${column} ${message} (${rule})`)
}

test('links-resolve: a dead link on a page is placed on its own line, in a paragraph, a list or a table', () => {
  const says = 'leads to no page. Mend it or take it out. (links-resolve)'
  assert.deepEqual(onPage('One\n[two](/two/)  \n[three](/three/)\n\n- four\n- [five](/five/) of [them](/safety/)\n\n| a |\n|---|\n| [six](/six-seven/) |\n'), [
    `content/safety.md:6:1 The link "/two/" ${says}`,
    `content/safety.md:7:1 The link "/three/" ${says}`,
    `content/safety.md:10:1 The link "/five/" ${says}`,
    `content/safety.md:14:1 The link "/six-seven/" ${says}`,
  ])
})

test('pictures-have-text: a picture on a page is placed on its own line', () => {
  const PICTURE = 'The picture "a.png" has no text beside it. Write what it shows between the square brackets. (pictures-have-text)'
  assert.deepEqual(onPage('![A boat](a.png)\n![](a.png)\n\n| a |\n|---|\n| ![](a.png) |\n'), [
    `content/safety.md:6:1 ${PICTURE}`,
    `content/safety.md:10:1 ${PICTURE}`,
  ])
})

test('links-resolve: a page may link to itself, to pages the handbook writes, and out', () => {
  assert.deepEqual(onPage('[a](/safety/) [b](/sources/) [c](checks.md) [d](https://club.example) <https://club.example>'), [])
  assert.deepEqual(onPage('[a](/saftey/)'), ['content/safety.md:5:1 The link "/saftey/" leads to no page. Did you mean /safety/? (links-resolve)'])
})

test('links-resolve: a dead link in a form point, a stop sign, a caution or a word on sides is found too', () => {
  const text = edited(fixture('links-resolve.good.md'), [
    ['form: [quiet breath, quiet hands]', 'form: ["[quiet](rung:first-float/wad) breath", quiet hands]'],
    ['stop: [shivering, ', 'stop: ["[shivering](/saftey/)", '],
    ['    title: Float on the back\n', '    title: Float on the back\n    cautions: ["[cold](rung:first-floa)"]\n    first_side: "[left](ftp:1)"\n'],
  ])
  assert.deepEqual(
    found('links.md', text).filter(({ rule }) => rule === 'links-resolve').map(({ line, message }) => `${line} ${message}`),
    [
      '9 The link "rung:first-float/wad" leads to no rung. Did you mean rung:first-float/wade?',
      '17 The link "rung:first-floa" leads to no rung. Did you mean rung:first-float?',
      '18 The link "ftp:1" leads nowhere the handbook may go: links lead to rung:ladder/rung, to a page such as /safety/, or out by https, mailto or tel.',
      '20 The link "/saftey/" leads to no page. Did you mean /safety/?',
    ],
  )
})

test('footnotes-are-whole: on a page each is placed on its own line, whatever holds it, and code holds none', () => {
  const says = (label: string) => `The mark [^${label}] leads to no footnote. Write "[^${label}]: " and its words on a line of their own, in the same section. Cues, full reps, faults and front matter hold none. (footnotes-are-whole)`
  assert.deepEqual(onPage('One\ntwo[^a]\n\n- three[^b]\n\n```\n[^c]: code\n```\n\nfour[^d]\n\n[^d]: Five.\n\n    - six[^e]\n'), [
    `content/safety.md:6:1 ${says('a')}`,
    `content/safety.md:8:1 ${says('b')}`,
    `content/safety.md:18:1 ${says('e')}`,
  ])
})

test('diagrams-can-be-drawn: on a page a flaw is placed on its own line, also in a fence within a list', () => {
  const says = 'is not understood. A line is a box such as a["Start"], a("Start") or a{"Ready?"}, or boxes joined by -->, -.-> or ==>, with words as in -->|"yes"|. (diagrams-can-be-drawn)'
  assert.deepEqual(onPage('One\n\n```mermaid Two\nflowchart TB\n\na --> b\nstyle a fill:red\n```\n\n- Three\n\n  ```mermaid Four\n  flowchart TB\n  a --> end --> "x"\n  ```\n'), [
    `content/safety.md:11:1 "style a fill:red" ${says}`,
    `content/safety.md:18:1 "a --> end --> "x"" ${says}`,
  ])
})

test('diagrams-can-be-drawn: a text holds only so many', () => {
  assert.deepEqual(onPage('```mermaid A\nflowchart TB\na-->b\n```\n'.repeat(13)), ['content/safety.md:53:1 More than 12 diagrams stand in one text. Move some to another page. (diagrams-can-be-drawn)'])
})

test('pictures-lie-in-the-workspace: ways that lead out of it, or mean another thing elsewhere, are refused', () => {
  const astray = ['https://club.example/a.png', '//club.example/a.png', '/a.png', '/etc/passwd', 'data:image/png;base64,AA==', 'a.gif', 'a', '', 'a.png?x', 'a.png#x', '~/a.png', 'C:/a.png', 'c:a.png', '..%5Ca.png', '.git/a.png', 'a/.b/c.png', 'a//b.png', 'a.svg/..', 'a%00.png', 'http:a.png']
  const text = astray.map((way) => `![x](<${way}>)`).join('\n')
  assert.deepEqual(
    onPage(text).filter((line) => line.includes('pictures-lie')).map((line) => /^content\/safety.md:(\d+):/.exec(line)?.[1]),
    astray.map((_, nth) => String(nth + 5)),
  )
})

test('pictures-lie-in-the-workspace: a file beside, below or above may have any letters in its name', () => {
  const fine = ['a.png', './a.JPG', 'pictures/a.jpeg', '../pictures/a.webp', '../../a.svg', 'Griff am Grün.png', 'a..b.png', 'a.b/c.png']
  assert.deepEqual(onPage(fine.map((way) => `![x](<${way}>)`).join('\n')), [])
})
