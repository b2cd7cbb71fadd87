import assert from 'node:assert/strict'
import { test } from 'vitest'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readLogo } from '../../src/read/read-logo.ts'
import { HANDBOOK, inFiles, layer } from './layers.ts'
import { bytes, said } from './said.ts'

const read = (text: string) => readLogo('logo.svg', bytes(text))
const inside = (shapes: string): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32" fill="none">\n${shapes}\n</svg>\n`

test('a logo of a few shapes is written anew, in the colour of the text around it', () => {
  assert.deepEqual(read(inside('<g stroke="currentColor" stroke-width="2.5"><path d="M2 16 L30 16"/><circle cx="16" cy="16" r="4"></circle></g>')), {
    value: '<svg class="logo" aria-hidden="true" viewBox="0 0 32 32" fill="none"><g stroke="currentColor" stroke-width="2.5"><path d="M2 16 L30 16"/><circle cx="16" cy="16" r="4"></circle></g></svg>',
    findings: [],
  })
})

/** What a logo may not hold, and what a coach is told. */
const REFUSED: readonly (readonly [string, string])[] = [
  [inside('<script>alert(1)</script>'), '2:1 A logo may not hold <script>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg. (logo-is-plain)'],
  [inside('<foreignObject></foreignObject>'), '2:1 A logo may not hold <foreignObject>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg. (logo-is-plain)'],
  [inside('<circle r="4"/>\n<path style="fill:red" d="M0 0"/>'), '3:1 <path> of a logo may not have style. Take it out; a shape takes the colour of the text by fill="currentColor". (logo-is-plain)'],
  [inside('<path onclick="go" d="M0 0"/>'), '2:1 <path> of a logo may not have onclick. Take it out; a shape takes the colour of the text by fill="currentColor". (logo-is-plain)'],
  [inside('<path id="one" d="M0 0"/>'), '2:1 <path> of a logo may not have id. Take it out; a shape takes the colour of the text by fill="currentColor". (logo-is-plain)'],
  [inside('<g constructor="1"/>'), '2:1 <g> of a logo may not have constructor. Take it out; a shape takes the colour of the text by fill="currentColor". (logo-is-plain)'],
  [inside('<path fill="url(https://x.example/)" d="M0 0"/>'), '2:1 fill of <path> must be currentColor or none. (logo-is-plain)'],
  [inside('<path fill="#ff0000" d="M0 0"/>'), '2:1 fill of <path> must be currentColor or none. (logo-is-plain)'],
  [inside('<path d="javascript:go"/>'), '2:1 d of <path> must be a path. (logo-is-plain)'],
  [inside('<circle r="calc(1)"/>'), '2:1 r of <circle> must be a number. (logo-is-plain)'],
  [inside('<circle r="1" r="2"/>'), '2:1 <circle> has r twice. Take one out. (logo-is-plain)'],
  [inside('<!-- drawn by hand --><circle r="4"/>'), '2:1 Only tags with attributes in double quotes may stand in a logo. Take out text, comments and what a drawing program added. (logo-is-plain)'],
  [inside('<circle r=\'4\'/>'), '2:1 Only tags with attributes in double quotes may stand in a logo. Take out text, comments and what a drawing program added. (logo-is-plain)'],
  ['<?xml version="1.0"?><svg viewBox="0 0 32 32"></svg>', '1:1 Only tags with attributes in double quotes may stand in a logo. Take out text, comments and what a drawing program added. (logo-is-plain)'],
  ['<svg><circle r="4"/></svg>', '1:1 The <svg> of a logo needs a viewBox such as "0 0 32 32". (logo-is-plain)'],
  ['<g><circle r="4"/></g>', '1:1 A logo begins with <svg>. Take out what stands before it. (logo-is-plain)'],
  [inside('<svg viewBox="0 0 4 4"></svg>'), '2:1 A logo holds one <svg>. Take out the one inside. (logo-is-plain)'],
  [inside('<g></path>'), '2:4 </path> closes nothing here. Close each tag in the order it was opened. (logo-is-plain)'],
  ['<svg viewBox="0 0 32 32"><g>', '1:29 <g> is not closed. Close it. (logo-is-plain)'],
  [`${inside('<circle r="4"/>')}<g/>`, '4:1 Something stands after the logo has ended. Take it out. (logo-is-plain)'],
  [inside(`<path d="${'M0 0'.repeat(1100)}"/>`), '1:1 The logo is larger than 4 KiB, and every page carries it. Draw it with fewer points. (logo-is-plain)'],
]

for (const [text, says] of REFUSED) test(`refused: ${text.slice(0, 60)}`, () => assert.deepEqual(said(read(text).findings), [says]))

test('the logo of a handbook is the one its own handbook.yaml names, not that of what it extends', () => {
  const drawn = inside('<circle r="4" fill="currentColor"/>')
  const below = layer('below/', { 'handbook.yaml': `${HANDBOOK}logo: club.svg\n`, 'club.svg': drawn })
  assert.match(readCurriculum([below]).value?.logo ?? '', /^<svg class="logo"/)
  assert.equal(readCurriculum([below, layer('', {})]).value?.logo, undefined)
})

test('a logo that is named but not there is a finding, and so is a name that leads elsewhere', () => {
  assert.deepEqual(inFiles(readCurriculum([layer('', { 'handbook.yaml': `${HANDBOOK}logo: club.svg\n` })]).findings), ['handbook.yaml:1:1 There is no file "club.svg" beside handbook.yaml. Put the logo there, or take out logo. (logo-is-plain)'])
  assert.deepEqual(inFiles(readCurriculum([layer('', { 'handbook.yaml': `${HANDBOOK}logo: ../club.svg\n` })]).findings), ['handbook.yaml:5:1 logo must be the name of an SVG file beside handbook.yaml, such as logo.svg. (values-fit)'])
})
