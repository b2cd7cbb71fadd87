import assert from 'node:assert/strict'
import { test } from 'vitest'
import { MOST_BYTES, textOf } from '../../src/read/text.ts'
import { bytes, said } from './said.ts'

const NOT_UTF8 = 'The file is not UTF-8 text. Save it again as UTF-8. (files-are-text)'
const EMPTY = '1:1 The file is empty. Write in it, or delete it. (files-are-text)'
const NUL = 'The file holds a NUL character, so it is not plain text. Write it again in a text editor. (files-are-text)'
const UNSEEN = 'A character here cannot be seen and changes how the text around it is read. Type the line again by hand. (files-are-text)'

const refused = [
  { says: 'an empty file', bytes: [], finds: EMPTY },
  { says: 'a file of blanks', bytes: [...bytes(' \r\n\t\n')], finds: EMPTY },
  { says: 'a file that is only a byte order mark', bytes: [0xef, 0xbb, 0xbf], finds: EMPTY },
  { says: 'UTF-16 with its mark', bytes: [0xff, 0xfe, 0x2d, 0x00], finds: `1:1 ${NOT_UTF8}` },
  { says: 'UTF-16 without a mark', bytes: [0x2d, 0x00, 0x2d, 0x00], finds: `1:2 ${NUL}` },
  { says: 'Latin-1', bytes: [0x66, 0xfc, 0x72], finds: `1:2 ${NOT_UTF8}` },
  { says: 'an overlong slash', bytes: [0xc0, 0xaf], finds: `1:1 ${NOT_UTF8}` },
  { says: 'half a surrogate pair', bytes: [0xed, 0xa0, 0x80], finds: `1:1 ${NOT_UTF8}` },
  { says: 'a character cut off at the end', bytes: [0x61, 0xe2, 0x82], finds: `1:2 ${NOT_UTF8}` },
  { says: 'a NUL, on its line and column', bytes: [...bytes('one\r\ntwo\rth\0ree')], finds: `3:3 ${NUL}` },
  { says: 'a bell', bytes: [...bytes('one\n\u0007')], finds: `2:1 ${UNSEEN}` },
  { says: 'an escape sequence of a terminal', bytes: [...bytes('a\u001b[31m')], finds: `1:2 ${UNSEEN}` },
  { says: 'a turn of direction', bytes: [...bytes('Long \u202enek')], finds: `1:6 ${UNSEEN}` },
  { says: 'a stretch set apart in direction', bytes: [...bytes('a\n\nb \u2066c\u2069')], finds: `3:3 ${UNSEEN}` },
  { says: 'what is no character at all', bytes: [...bytes('a\uffff')], finds: `1:2 ${UNSEEN}` },
]

for (const { says, bytes: given, finds } of refused) {
  test(`${says} is refused`, () => {
    const { value, findings } = textOf('a.md', new Uint8Array(given))
    assert.equal(value, undefined)
    assert.deepEqual(said(findings), [finds])
  })
}

test('a file may weigh as much as the limit and no more', () => {
  assert.equal(textOf('a.md', bytes('x'.repeat(MOST_BYTES))).value?.length, 262_144)
  assert.deepEqual(said(textOf('a.md', bytes('x'.repeat(MOST_BYTES + 1))).findings), [
    '1:1 The file is larger than 256 KiB. Split it, or take out what was pasted in by mistake. (files-are-text)',
  ])
})

test('a byte order mark is taken off, and every kind of line end becomes one', () => {
  assert.deepEqual(textOf('a.md', bytes('\ufeffone\r\ntwo\rthree\n\r\n')), { value: 'one\ntwo\nthree\n\n', findings: [] })
})

test('other scripts, accents, joined emoji and a replacement character somebody typed are text', () => {
  const text = '引体 ǎ é 👩🏽‍🤝‍👩🏻 نیم‌فاصله \ufffd 3\u202f×\u202f8'
  assert.deepEqual(textOf('a.md', bytes(text)), { value: text, findings: [] })
})
