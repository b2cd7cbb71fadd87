import type { Layer } from '../../src/ladder/curriculum.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { buildSite } from '../../src/site/build.ts'

const HIGHEST_cm = 117
/** From the hip to the floor in forty rungs. Units cm. */
export const LONG_HEIGHTS_cm: readonly number[] = Array.from({ length: 40 }, (_, index) => HIGHEST_cm - 3 * index)

const rung = (hand_height_cm: number) => `  - { id: at-${hand_height_cm}, title: Hands on a surface at ${hand_height_cm} cm, load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: ${hand_height_cm} } }\n`

const said = (hand_height_cm: number) => `## Hands on a surface at ${hand_height_cm} cm {#at-${hand_height_cm}}

### Set up
- A surface that cannot slide or tip.

### Full rep
- Start: arms straight.
- End: chest a fist above the surface.

### Cues
- Long neck.

### Faults
| seen | likely cause | say | if it stays |
|---|---|---|---|
| Hips sag | the trunk tires first | Belt buckle to ribs | Step back one rung |
`

const ladder = (id: string, title: string, heights_cm: readonly number[]) => `---
id: ${id}
title: ${title}
movement: horizontal press
aim: at-${heights_cm.at(-1)}
equipment: [bench, mat]
standard: { sets: 3, reps: 12, sessions: 2, rest_s: 90, reserve_reps: 2 }
first_reps: 3
form: [one line from heel to ear, chest to a fist above the floor]
rungs:
${heights_cm.map(rung).join('')}stop: [sharp or spreading pain, form lost twice in a set]
ask_first: [a shoulder operated on in the last year]
---

What this ladder is for.

${heights_cm.map(said).join('\n')}`

/** The shortest ladder there may be, called short, and one of forty rungs, called long. */
function layer(published: string): Layer {
  const encoder = new TextEncoder()
  const file = (name: string, text: string) => ({ file: name, bytes: encoder.encode(text) })
  return {
    files: [
      file('handbook.yaml', 'title: Short and long\norganisation: A made-up club\nedition: "1"\ncontact: nobody\naddress: ' + published + '\n'),
      file('content/safety.md', '---\ntitle: Safety\nsummary: When to stop\n---\n## Stop\n\nWhen it hurts.\n'),
      file('ladders/short.md', ladder('short', 'Two rungs', [45, 0])),
      file('ladders/long.md', ladder('long', 'Forty rungs', LONG_HEIGHTS_cm)),
    ],
  }
}

/** Builds the handbook of a ladder of two rungs and one of forty below a folder, as it would be published at an address, and says where it is. */
export async function builtShortAndLong(folder: string, published: string): Promise<string> {
  const { value, findings } = readCurriculum([layer(published)])
  if (!value) throw new Error(`bug: the generated workspace does not read: ${findings[0]?.message}`)
  const site = `${folder}/short-and-long`
  await buildSite(measure(value), { folder, layers: [folder] }, site, () => undefined, {})
  return site
}
