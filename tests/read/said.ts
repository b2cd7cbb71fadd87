import type { Finding } from '../../src/ladder/finding.ts'

/** A finding without its file, as "12:5 What to do. (rule)". */
export const said = (findings: readonly Finding[]): string[] => findings.map(({ line, column, message, rule }) => `${line}:${column} ${message} (${rule})`)

export const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

/** A ladder of two rungs with nothing wrong in it. */
export const LADDER = `---
id: balance
title: Standing on one leg
movement: balance
aim: free
equipment: [wall]
standard: { sets: 2, seconds: 30 }
form: [belt level]
rungs:
  - id: wall
    title: Beside a wall
    load: { model: skill }
  - id: free
    title: Free
    load: { model: skill }
stop: [an ankle that gives way]
ask_first: [a fall in the last year]
---

Two rungs.

## Beside a wall {#wall}

### Cues
- Tall neck.

## Free {#free}

### Cues
- Quiet toes.
`

/** A text with one stretch of it replaced. */
export function edited(text: string, from: string, to: string): string {
  if (text.split(from).length !== 2) throw new Error(`"${from}" does not stand there once`)
  return text.replace(from, () => to)
}
