import type { ParseArgsConfig } from 'node:util'

/** Where a verb writes, and where it was started. Results go out, everything else goes to `note`. */
export type Console = {
  out(text: string): void
  note(text: string): void
  /** Says what long work is doing, on a terminal only. */
  progress(stage: string): void
  /** Resolves when the person has had enough: an interrupt. */
  ended(): Promise<void>
  readonly colour: boolean
  readonly folder: string
  /** Who can be asked, where anybody can. */
  readonly asked?: Asked
}

/** Answers, one line each: typed on a terminal, or read from what was piped in. */
export type Asked = {
  readonly terminal: boolean
  /** The next answer to a question, or undefined where no more will come. */
  answer(question: string): Promise<string | undefined>
}

/** What was typed after the verb: its options and the rest. */
export type Typed = { readonly options: Readonly<Record<string, string | boolean | undefined>>; readonly rest: readonly string[] }

/** How a run ends: nothing to put right, findings, wrong usage, our bug. */
export const EXIT = { fine: 0, findings: 1, usage: 2, bug: 3 } as const

/** One verb of the command line. */
export type Verb = {
  readonly name: string
  readonly says: string
  readonly usage: string
  /** Whole command lines, as somebody would type them. */
  readonly examples: readonly string[]
  readonly options: NonNullable<ParseArgsConfig['options']>
  /** Takes options only: a word that is none of them is a slip. */
  readonly alone?: true
  /** What an option, or "" for the word after the verb, may be. */
  readonly choices?: Readonly<Record<string, readonly string[]>>
  run(typed: Typed, console: Console): Promise<number>
}

/** A mistake in what was typed; said in one sentence, with exit 2. */
export class Misuse extends Error {}
