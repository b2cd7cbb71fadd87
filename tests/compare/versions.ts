import assert from 'node:assert/strict'
import type { Change, ChangeKind, Comparison } from '../../src/compare/change.ts'
import { compare } from '../../src/compare/compare.ts'
import type { Curriculum, Layer, SourceFile } from '../../src/ladder/curriculum.ts'
import { measure, type MeasuredCurriculum } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { bytes, edited } from '../read/said.ts'
import { REPOSITORY } from '../site/demo.ts'

/** One stretch of one file, the first after `at`, and what stands there instead. A file with no `from` is written anew; one with no `to` is taken away. */
export type Edit = { readonly file: string; readonly at?: string; readonly from?: string; readonly to?: string }

const starter = await readWorkspace(REPOSITORY)
const demo = await readWorkspace(`${REPOSITORY}/site-demo`)

const text = (file: SourceFile): string => new TextDecoder().decode(file.bytes)

/** The files of the starter curriculum that are named, and its handbook.yaml. */
export function starterFiles(...names: readonly string[]): Record<string, string> {
  const [layer] = starter.layers
  return Object.fromEntries((layer?.files ?? []).filter(({ file }) => file === 'handbook.yaml' || names.includes(file)).map((file) => [file.file, text(file)]))
}

/** A curriculum of these files, measured. Nothing in it may be wrong. */
export function measured(files: Readonly<Record<string, string>>): MeasuredCurriculum {
  return measure(readFiles(files))
}

/** The same, read and not yet measured. */
export const readFiles = (files: Readonly<Record<string, string>>): Curriculum => readLayers([{ files: Object.entries(files).map(([file, body]) => ({ file, bytes: bytes(body) })) }])

function readLayers(layers: readonly Layer[]): Curriculum {
  const { value, findings } = readCurriculum(layers)
  assert.deepEqual(findings, [])
  return value ?? assert.fail()
}

/** The files with edits made in them. */
export function editedFiles(files: Readonly<Record<string, string>>, edits: readonly Edit[]): Record<string, string> {
  let now: Record<string, string> = { ...files }
  for (const { file, at, from, to } of edits) {
    const body = now[file] ?? ''
    if (to === undefined) now = Object.fromEntries(Object.entries(now).filter(([name]) => name !== file))
    else now[file] = from === undefined ? to : at === undefined ? edited(body, from, to) : after(body, at, from, to)
  }
  return now
}

/** A text with the first stretch after a mark replaced; the mark stands once. */
function after(body: string, at: string, from: string, to: string): string {
  const [head, tail, ...more] = body.split(at)
  assert.ok(head !== undefined && tail !== undefined && more.length === 0, `"${at}" does not stand there once`)
  assert.ok(tail.includes(from), `"${from}" does not stand after "${at}"`)
  return head + at + tail.replace(from, () => to)
}

/** True of what the demo says of one starter ladder: its amendment, and nothing that stands on other ladders. */
const isOfPressUp = ({ file }: SourceFile): boolean => ['handbook.yaml', 'logo.svg', 'ladders/press-up.md'].includes(file)

/** The demo handbook as far as it amends one starter ladder, with edits made in its own files. */
export function demoWith(edits: readonly Edit[] = []): MeasuredCurriculum {
  const [below, own] = demo.layers
  const files = editedFiles(Object.fromEntries((own?.files ?? []).filter(isOfPressUp).map((file) => [file.file, text(file)])), edits)
  return measure(readLayers([{ files: (below?.files ?? []).filter(({ file }) => file === 'handbook.yaml' || file === 'ladders/press-up.md') }, { files: Object.entries(files).map(([file, body]) => ({ file, bytes: bytes(body) })) }]))
}

/** The starter files that the edits name, before and after. */
export function before(edits: readonly Edit[]): Record<string, string> {
  return starterFiles(...edits.map(({ file }) => file))
}

/** A change as one line: "press-up/floor: set-up-raised, hand_height_cm". */
export const line = ({ kind, subject: { ladder, rung, page }, name }: Change): string => `${page ?? [ladder, rung].filter((part) => part !== undefined).join('/')}: ${kind}, ${name}`

/** Typed changes as lines, and the kinds that follow by rung. */
export function lines({ typed, followed }: Comparison): { typed: string[]; followed: Record<string, ChangeKind[]> } {
  const by: Record<string, ChangeKind[]> = {}
  for (const { kind, subject } of followed) (by[subject.rung ?? ''] ??= []).push(kind)
  return { typed: typed.map(line).toSorted(), followed: Object.fromEntries(Object.entries(by).map(([rung, kinds]) => [rung, kinds.toSorted()]).toSorted()) }
}

export const compared = (one: Readonly<Record<string, string>>, other: Readonly<Record<string, string>>): Comparison => compare(measured(one), measured(other))
