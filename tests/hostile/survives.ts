import assert from 'node:assert/strict'
import { parseFragment } from 'parse5'
import { check } from '../../src/check/index.ts'
import { measure } from '../../src/measure/measure.ts'
import { withDrawn } from '../../src/page/drawn.ts'
import { prose } from '../../src/page/prose.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { written } from '../../src/page/written.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { strangersIn } from './allowed.ts'
import { HANDBOOK } from './place.ts'

/** One reading takes no longer than this of one core, on a machine that does other things too. Units ms. */
const MOST_MS = 3000

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

/** Reads, measures and checks a workspace; fails where anything throws or stalls, or where a number is none. */
export function survivesReading(files: Readonly<Record<string, string | Uint8Array>>): void {
  const began = process.cpuUsage()
  const { value, findings } = readCurriculum([{ files: Object.entries({ 'handbook.yaml': HANDBOOK, ...files }).map(([file, body]) => ({ file, bytes: typeof body === 'string' ? bytes(body) : body })) }])
  const measured = value && measure(value)
  if (measured) {
    check(measured, '2026-11-25')
    JSON.stringify(measured.ladders, (key, part: unknown) => {
      assert.ok(typeof part !== 'number' || Number.isFinite(part), `${key} is ${String(part)}`)
      return part
    })
  } else assert.ok(findings.length > 0, 'neither a value nor a finding')
  for (const { message, line, column } of findings) assert.ok(message.length > 10 && line >= 1 && column >= 1)
  const { user, system } = process.cpuUsage(began)
  assert.ok((user + system) / 1000 < MOST_MS, `${(user + system) / 1000} ms`)
}

/** Prose as a page shows it. Fails where the markup of a page would be left, or hold a stranger. */
export function survivesShowing(markdown: string): void {
  const shown = withDrawn(written(prose(markdown, { from: '/page/', first_heading: 2, file: () => 'content/page.md' }), ENGLISH), new Map(), '/page/')
  assert.deepEqual(strangersIn(`<!doctype html><html lang="en"><head><title>x</title></head><body><main>${shown}</main><footer>end</footer></body></html>`), [])
  const main = parseFragment(`<main>${shown}</main><footer>end</footer>`).childNodes
  assert.deepEqual(main.map(({ nodeName }) => nodeName), ['main', 'footer'], 'what follows stays outside')
}
