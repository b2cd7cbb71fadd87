import assert from 'node:assert/strict'
import type { Curriculum } from '../../src/ladder/curriculum.ts'
import type { Translated } from '../../src/ladder/translation.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { wordSeal } from '../../src/read/seal-words.ts'
import { withSeal } from '../../src/site/write-words.ts'
import { HANDBOOK, layer } from './layers.ts'
import { edited, LADDER } from './said.ts'

/** A handbook in two languages. */
export const TWO = `${HANDBOOK}languages: [en, es]\n`

/** A ladder of one rung with everything that is words. */
export const FULL = edited(edited(LADDER, 'title: Free\n    load: { model: skill }', 'title: Free\n    load: { model: skill }\n    cautions: [clear the floor, take off loose socks]\n    first_side: Left side first.'), '### Cues\n- Quiet toes.\n', `A rung without help.

### Set up
- Bare feet.
- A line on the floor, and see [safety](/safety/).

### Full rep
- Start: one foot lifted.
- End: foot down after 30 s.

### Cues
- Quiet toes.

### Faults
| seen | likely cause | say | if it stays |
|---|---|---|---|
| Arms wave | eyes wander | Look at one spot | Back to the wall |
`)

/** The same in Spanish, not yet sealed. */
export const FULL_ES = `---
translates: balance
title: De pie sobre una pierna
form: [cinturón a nivel]
stop: [un tobillo que cede]
ask_first: [una caída en el último año]
rungs:
  - id: wall
    title: Junto a una pared
  - id: free
    title: Libre
    cautions: [despeja el suelo, quítate los calcetines sueltos]
    first_side: Primero el lado izquierdo.
---

Dos peldaños.

## Junto a una pared {#wall}

### Qué decir {#cues}
- Cuello largo.

## Libre {#free}

Un peldaño sin ayuda.

### Preparación {#set-up}
- Descalzo.
- Una línea en el suelo, y mira [seguridad](/safety/).

### Repetición completa {#full-rep}
- Inicio: un pie levantado.
- Final: pie abajo a los 30 s.

### Qué decir {#cues}
- Dedos quietos.

### Fallos {#faults}
| se ve | causa probable | decir | si continúa |
|---|---|---|---|
| Los brazos se agitan | los ojos vagan | Mira un punto | Vuelve a la pared |
`

/** Reads one layer, in which nothing is wrong. */
export function read(...layers: readonly Readonly<Record<string, string>>[]): Curriculum {
  const { value, findings } = readCurriculum(layers.map((files, index) => layer(index === layers.length - 1 ? '' : 'below/', files)))
  assert.deepEqual(findings, [])
  assert.ok(value)
  return value
}

/** What the ladder or page says in Spanish. */
export function inSpanish({ ladders, pages }: Curriculum, id: string): Translated {
  const found = [...ladders, ...pages].find((one) => one.id === id)?.translations?.find(({ language }) => language === 'es')
  assert.ok(found, `${id} is not in the handbook in Spanish`)
  return found
}

/** The files of the last layer with its translation of one ladder or page sealed against what stands. */
export function sealed(id: string, file: string, ...layers: readonly Readonly<Record<string, string>>[]): Record<string, string> {
  const curriculum = read(...layers)
  const top = layers.at(-1) ?? {}
  const { of, left } = wordSeal(inSpanish(curriculum, id))
  assert.deepEqual(left, [])
  return { ...top, [file]: withSeal(top[file] ?? '', of) }
}
