import type { Inputs } from '../load/model.ts'
import type { Demand } from '../ladder/schema.ts'

/** A ladder as it was told in an interview. */
export type Told = {
  readonly id: string
  readonly title: string
  readonly movement: string
  readonly aim: string
  readonly equipment: readonly string[]
  readonly standard: Readonly<Record<string, number>>
  readonly first_reps: number
  readonly form: readonly string[]
  readonly rungs: readonly ToldRung[]
  readonly stop: readonly string[]
  readonly ask_first: readonly string[]
}

export type ToldRung = { readonly id: string; readonly title: string; readonly demand: readonly Demand[]; readonly load: Inputs & { readonly model: string } }

/** Words that YAML takes for something else, and signs that mean something to it. */
const PLAIN = /^(?!(?:true|false|null|yes|no|on|off)$)[A-Za-z][A-Za-z0-9 ()%/-]*$/i

const scalar = (value: unknown): string => (typeof value === 'string' && PLAIN.test(value) ? value : JSON.stringify(value))
const inline = (entries: Readonly<Record<string, unknown>>): string => `{ ${Object.entries(entries).filter(([, value]) => value !== undefined).map(([key, value]) => `${key}: ${scalar(value)}`).join(', ')} }`
const list = (lines: readonly string[]): string => (lines.length === 0 ? ' []' : lines.map((line) => `\n  - ${scalar(line)}`).join(''))

const rungLines = ({ id, title, demand, load: { model, ...inputs } }: ToldRung): string =>
  [`  - id: ${id}`, `    title: ${scalar(title)}`, ...(demand.length > 0 ? [`    demand: [${demand.join(', ')}]`] : []), `    load: ${inline({ model, ...inputs })}`].join('\n')

/** Headings with nothing under them: `check` names each until it is written. */
const section = ({ id, title }: ToldRung): string => `## ${title} {#${id}}

### Set up

### Full rep

### Cues

### Faults
| seen | likely cause | say | if it stays |
|---|---|---|---|
`

/** The file of a ladder: its head whole, its prose a heading for everything that is still to be said. */
export const ladderText = (told: Told): string => `---
id: ${told.id}
title: ${scalar(told.title)}
movement: ${scalar(told.movement)}
aim: ${told.aim}
equipment: [${told.equipment.map(scalar).join(', ')}]
standard: ${inline(told.standard)}
first_reps: ${told.first_reps}
form:${list(told.form)}
rungs:
${told.rungs.map(rungLines).join('\n')}
stop:${list(told.stop)}
ask_first:${list(told.ask_first)}
---

${told.rungs.map(section).join('\n')}`
