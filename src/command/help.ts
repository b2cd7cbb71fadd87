import type { Verb } from './verb.ts'

/** What the program does, in a screen. */
export const help = (verbs: readonly Verb[]): string => `rungbook VERB [options]

${verbs.map(({ name, says }) => `  ${name.padEnd(10)} ${says}`).join('\n')}

  rungbook VERB --help says more, with examples.

It ends with 0 when there is nothing to put right, 1 with findings, 2 when it was asked wrongly, 3 by a mistake of ours.
Results are written to the output, everything else beside it. NO_COLOR takes the colours away.
`

/** What one verb does, how it is asked, and examples. */
export const helpOf = ({ usage, says, examples }: Verb): string => `${usage}\n\n${says}\n\nExamples\n${examples.map((line) => `  ${line}\n`).join('')}`
