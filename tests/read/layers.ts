import type { Layer, SourceFile } from '../../src/ladder/curriculum.ts'
import type { Finding } from '../../src/ladder/finding.ts'
import { bytes } from './said.ts'

/** A handbook.yaml with nothing wrong in it. */
export const HANDBOOK = 'title: Handbook\norganisation: A club\nedition: "2026.1"\ncontact: The club\n'

/** One workspace of these files, named in findings with `shown` before them. */
export const layer = (shown: string, files: Readonly<Record<string, string>>): Layer => ({
  files: Object.entries({ 'handbook.yaml': HANDBOOK, ...files }).map(([file, text]): SourceFile => ({ file, shown: shown + file, bytes: bytes(text) })),
})

/** Findings with their files, as "ladders/a.md:12:5 What to do. (rule)". */
export const inFiles = (findings: readonly Finding[]): string[] => findings.map(({ file, line, column, message, rule }) => `${file}:${line}:${column} ${message} (${rule})`)
