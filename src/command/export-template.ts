import type { Ladder } from '../ladder/curriculum.ts'
import { readLadderFile } from '../read/read-ladder.ts'

/** A ladder of two rungs that shows how each column is filled in. */
const TEMPLATE = `---
id: press-up-template
title: Press-up
movement: horizontal press
aim: floor
equipment: [bench, mat]
standard: { sets: 3, reps: 12, sessions: 2, rest_s: 90, reserve_reps: 2 }
first_reps: 3
form: [one line from heel to ear, chest to a fist above the floor]
rungs:
  - id: bench-hands
    title: Hands on a bench
    load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 45 }
    cautions: [The bench cannot slide.]
  - id: floor
    title: Hands on the floor
    load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 0 }
stop: [sharp or spreading pain, form lost twice in a set]
ask_first: [a shoulder operated on in the last year]
---

What the ladder is for, in a sentence or two.

## Hands on a bench {#bench-hands}

### Set up
* A bench against a wall.

### Full rep
- Start: arms straight.
- End: chest a fist above the bench.

### Cues
- Long neck.
- Push the bench away.

### Faults
| seen | likely cause | say | if it stays |
|---|---|---|---|
| Hips sag | the trunk tires first | Belt buckle to ribs | Step back one rung |

## Hands on the floor {#floor}

### Full rep
- Start: arms straight.
- End: chest a fist above the floor.
`

/** The ladder a table's template shows. */
export function templateLadder(): Ladder {
  const { value } = readLadderFile('template.md', new TextEncoder().encode(TEMPLATE), '')
  if (value?.kind !== 'ladder') throw new Error('bug: the template does not read')
  return value.ladder
}
