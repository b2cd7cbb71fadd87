import type { Layer } from '../../src/ladder/curriculum.ts'

/** A seeded sequence of numbers from 0 to 1, the same on every machine (a linear congruential generator, Numerical Recipes' constants). */
function sequence(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

type Chance = () => number

const loads: readonly ((rung: number, chance: Chance) => string)[] = [
  (rung, chance) => `{ model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: ${60 - 7 * rung - Math.floor(chance() * 3)} }`,
  (rung, chance) => `{ model: supported-body, facing: up, feet: heels, hands: straps, anchor_height_cm: 240, lean_deg: ${30 + 6 * rung + Math.floor(chance() * 3)} }`,
  (rung, chance) => `{ model: one-rep-max, load_kg: ${20 + 2 * rung + Math.floor(chance() * 2)} }`,
  (rung) => `{ model: leg-press-of-body, stance: split, front_leg_percent: ${55 + 4 * rung} }`,
  (rung) => `{ model: landing, drop_height_cm: ${5 * (rung + 1)} }`,
  (rung) => `{ model: lever-hold, hold: front, reach_cm: ${3 * rung} }`,
  (rung) => `{ model: assisted, exercise: hang, counterweight_percent: ${45 - 5 * rung} }`,
  () => '{ model: skill }',
]

const RUNGS = 8

/** One ladder of eight rungs on one model, every section written. */
function ladder(index: number, chance: Chance): string {
  const load = loads[index % loads.length] ?? (() => '{ model: skill }')
  const ids = Array.from({ length: RUNGS }, (_, rung) => `rung-${rung + 1}`)
  const rungs = ids.map((id, rung) => `  - { id: ${id}, title: Version ${rung + 1} of movement ${index}, demand: [longer range], cautions: [ask for an anchor rated by a competent person], load: ${load(rung, chance)} }`)
  const sections = ids.map(
    (id, rung) => `## Version ${rung + 1} of movement ${index} {#${id}}

Words about this version, with a [link](/safety/) and *one* more.

### Set up
- Place the bench ${20 + rung} steps from the wall.
- Stand tall.

### Full rep
- Start: arms straight.
- End: chest low.

### Cues
- Long neck.
- Push the floor.
- Ribs down.

### Faults
| seen | likely cause | say | if it stays |
|---|---|---|---|
| Hips sag | the trunk tires | Belt to ribs | Step back one rung |
| Half a rep | haste | All the way | Fewer reps |
| Elbows wide | hands too far | Hands in | Mark the hands |
`,
  )
  return `---
id: movement-${index}
title: Movement ${index}
movement: movement group ${index % 20}
aim: rung-6
equipment: [bench]
standard: { sets: 3, reps: 12, sessions: 2, rest_s: 90, reserve_reps: 2 }
first_reps: 2
form: [one line from heel to ear, chest to a fist above the floor]
rungs:
${rungs.join('\n')}
stop: [sharp or spreading pain, form lost twice in a set]
ask_first: [a shoulder operated on in the last year]
---

What this ladder is for.

${sections.join('\n')}`
}

/** A workspace of so many ladders: eight rungs each, all models in turn, tables, lists and links. The same bytes for the same number. */
export function generatedLayer(ladders: number): Layer {
  const chance = sequence(ladders)
  const encoder = new TextEncoder()
  const file = (name: string, text: string) => ({ file: name, bytes: encoder.encode(text) })
  return {
    files: [
      file('handbook.yaml', 'title: Generated\norganisation: A generated club\nedition: "1"\ncontact: nobody\n'),
      file('content/safety.md', '---\ntitle: Safety\nsummary: When to stop\n---\n## Stop\n\nWhen it hurts.\n'),
      ...Array.from({ length: ladders }, (_, index) => file(`ladders/movement-${index}.md`, ladder(index, chance))),
    ],
  }
}

/** The same below a club that amends every tenth ladder and is published in two languages; in the second the interface speaks, and ladders stand in the original. */
export function generatedLayers(ladders: number): Layer[] {
  const encoder = new TextEncoder()
  const file = (name: string, text: string) => ({ file: name, bytes: encoder.encode(text) })
  const amended = Array.from({ length: Math.ceil(ladders / 10) }, (_, tenth) => 10 * tenth)
  return [
    {
      files: [
        file('handbook.yaml', 'title: Generated\norganisation: A generated club above it\nedition: "1"\ncontact: nobody\nextends: ../below\nlanguages: [en, es]\n'),
        ...amended.map((index) => file(`ladders/movement-${index}.md`, `---\namends: movement-${index}\nbecause: Our hall is open twice a week.\nsessions_per_week: 2\n---\n`)),
      ],
    },
    generatedLayer(ladders),
  ]
}
