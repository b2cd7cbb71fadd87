import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { check, type Checked } from '../../src/check/index.ts'
import { inOrder, type Finding } from '../../src/ladder/finding.ts'
import type { Handbook } from '../../src/ladder/schema.ts'
import { measure, measureLadder } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'

const MARK = /[ \t]*(?:# finds: ([a-z-]+)|<!-- finds: ([a-z-]+) -->)/g

/** Every fixture, by name. */
export const fixtures: readonly string[] = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.md'))

/** A fixture as it lies on disk, marks and all. */
export const fixture = (name: string): string => readFileSync(`${import.meta.dirname}/${name}`, 'utf8')

/** What the marks in a text ask for: "12 aim-exists". */
export const marked = (text: string): string[] =>
  text.split('\n').flatMap((line, index) => [...line.matchAll(MARK)].map(([, inYaml, inBody]) => `${index + 1} ${inYaml ?? inBody}`))

export const handbook: Handbook = { title: 'Fixtures', organisation: 'A club', edition: '1', languages: ['en'], units: 'metric', contact: 'The club' }

/** The day it is in every fixture. */
export const TODAY = '2026-11-25'

/** A line that begins another file of the same handbook, which then has two languages. */
const FILE = /^=== (\S+)\n/m

/** What the rules say of the files of one fixture, as if they were lines of one. */
function checkedTogether(file: string, text: string): Checked {
  const [own = '', ...others] = text.split(FILE)
  const names = ['ladders/own.md', ...others.filter((_, index) => index % 2 === 0)]
  const texts = [own, ...others.filter((_, index) => index % 2 === 1)]
  const before = texts.map((_, index) => texts.slice(0, index).reduce((lines, one) => lines + one.split('\n').length, 0))
  const bytes = (one: string): Uint8Array => new TextEncoder().encode(one.replace(MARK, ''))
  const both = { file: 'handbook.yaml', bytes: bytes('title: Fixtures\norganisation: A club\nedition: "1"\ncontact: The club\nlanguages: [en, es]\n') }
  const { value, findings } = readCurriculum([{ files: [both, ...texts.map((one, index) => ({ file: names[index] ?? '', bytes: bytes(one) }))] }])
  assert.deepEqual(findings, [], `${file} does not read`)
  assert.ok(value, `${file} is no handbook`)
  const placed = (found: Finding): Finding => ({ ...found, file, line: found.line + (before[names.indexOf(found.file)] ?? 0) })
  const { findings: told, untold } = check(measure(value), TODAY)
  return { findings: inOrder(told.map(placed)), untold: inOrder(untold.map(placed)) }
}

/** What the rules say of one ladder, read without its marks, in a handbook that has a page on safety. */
export function checked(file: string, text: string): Checked {
  if (FILE.test(text)) return checkedTogether(file, text)
  const { value, findings } = readLadderFile(file, new TextEncoder().encode(text.replace(MARK, '')), 'A club')
  assert.deepEqual(findings, [], `${file} does not read`)
  assert.ok(value?.kind === 'ladder', `${file} is no ladder`)
  const { ladder } = value
  const known = { rungs: new Set([ladder.id, ...ladder.rungs.map(({ id }) => `${ladder.id}/${id}`)]), pages: new Set(['safety', 'sources']) }
  return check({ ladders: [measureLadder(ladder, known)], pages: [] }, TODAY)
}

/** Everything the rules find in one ladder. */
export const found = (file: string, text: string): readonly Finding[] => checked(file, text).findings
