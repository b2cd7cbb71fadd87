import type { Finding } from '../ladder/finding.ts'
import { jsonReport } from './report-json.ts'
import { githubReport } from './report-github.ts'
import { junitReport } from './report-junit.ts'
import { sarifReport } from './report-sarif.ts'
import { textReport } from './report-text.ts'

/** The lines of each file, by the name findings give it. */
export type Sources = Pick<ReadonlyMap<string, readonly string[]>, 'get'>

/** What a check came to: what is to be put right, and what could not be told. */
export type Outcome = { readonly findings: readonly Finding[]; readonly untold: readonly Finding[]; readonly sources: Sources }

/** The ways findings may be written, by name. */
export const FORMATS = {
  text: ({ findings, sources }: Outcome, colour: boolean) => textReport(findings, sources, colour),
  json: jsonReport,
  sarif: sarifReport,
  junit: junitReport,
  github: githubReport,
} as const satisfies Record<string, (outcome: Outcome, colour: boolean) => string>

export type Format = keyof typeof FORMATS

export const isFormat = (name: unknown): name is Format => typeof name === 'string' && Object.hasOwn(FORMATS, name)
