import { handbookSchema, ladderSchema } from '../../src/ladder/schema.ts'
import { held, heldTogether } from './held.ts'
import { changed, HANDBOOK, head, LADDER, LADDER_FILE, ladder, lines } from './place.ts'

/** What a finding lists as known, wherever a key is not. */
const listed = (schema: { readonly shape: object }): string => Object.keys(schema.shape).join(', ')
const KEYS = { handbook: listed(handbookSchema), ladder: listed(ladderSchema), standard: listed(ladderSchema.shape.standard), rung: listed(ladderSchema.shape.rungs.element) }

/** Adds lines at the end of the front matter. */
const added = (yaml: string) => ladder(['ask_first:', `${yaml}\nask_first:`])

/** Deep, many, or referring to itself: what has ended or stalled the parsers of others. */
held([
  { says: '900 open brackets as the handbook', files: { 'handbook.yaml': '['.repeat(900) }, finds: ['handbook.yaml:1:13  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '900 open brackets as a ladder', files: head('['.repeat(900)), finds: ['ladders/a.md:2:13  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '1,200 dashes as the handbook', files: { 'handbook.yaml': '- '.repeat(1200) }, finds: ['handbook.yaml:1:25  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '1,200 dashes as a ladder', files: head('- '.repeat(1200)), finds: ['ladders/a.md:2:25  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '900 open brackets as a page', files: { 'content/a.md': `---\n${'['.repeat(900)}\n---\n` }, finds: ['content/a.md:2:13  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '20,000 open braces with keys', files: head('{a:'.repeat(20_000)), finds: ['ladders/a.md:2:37  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '350 levels of block maps', files: head(lines(350, (level) => `${' '.repeat(level)}a:`)), finds: ['ladders/a.md:14:13  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '3,000 levels of block maps', files: head(lines(3000, (level) => `${' '.repeat(level)}a:`)), finds: ['ladders/a.md:1:1  This file cannot be read: it is larger than 1024 KiB. Mend it or take it away.  (files-are-text)'] },
  { says: '20,000 dashes', files: head('- '.repeat(20_000)), finds: ['ladders/a.md:2:25  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '20,000 question marks', files: head('? '.repeat(20_000)), finds: ['ladders/a.md:2:25  The front matter is nested more than 12 levels deep. A ladder needs no more than five.  (front-matter-is-plain)'] },
  { says: '2,000 flat keys', files: head(lines(2000, (index) => `k${index}: 1`)), finds: ['ladders/a.md:2:1  The front matter holds too many entries: at most 500 keys together, 8000 in all.  (front-matter-is-plain)'] },
  { says: '50,000 flat keys', files: head(lines(50_000, (index) => `k${index}: 1`)), finds: ['ladders/a.md:1:1  The file is larger than 256 KiB. Split it, or take out what was pasted in by mistake.  (files-are-text)'] },
  { says: '15,000 empty flow maps', files: head(`a: [${'{},'.repeat(15_000)}]`), finds: ['ladders/a.md:2:4  The front matter holds too many entries: at most 500 keys together, 8000 in all.  (front-matter-is-plain)'] },
  { says: '64,000 characters of comment', files: { [LADDER_FILE]: added(`# ${'x'.repeat(64_000)}`) }, finds: [] },
  { says: 'a key of 60,000 letters', files: { [LADDER_FILE]: added(`${'k'.repeat(60_000)}: 1`) }, finds: ['ladders/a.md:17:1  This cannot be read as YAML. Look for a missing quotation mark, bracket or space near here.  (front-matter-is-plain)'] },
  { says: 'a quotation mark that is never closed', files: changed(['title: Hollow hold', `title: "${'a '.repeat(20_000)}`]), finds: ['ladders/a.md:17:56  A closing bracket, brace or quotation mark is missing, or a space after a colon or before a #.  (front-matter-is-plain)'] },
  { says: '30,000 lines in a block of text', files: changed(['title: Hollow hold', `title: |\n${'  a\n'.repeat(15_000)}`]), finds: ['ladders/a.md:3:1  title must be words on one line, at most 80 characters.  (values-fit)'] },
  { says: 'nine levels of nine aliases', files: head(lines(9, (level) => `a${level}: &a${level} [${Array.from({ length: 9 }, () => (level === 0 ? 'x' : `*a${level - 1}`)).join(', ')}]`)), finds: ['ladders/a.md:2:5  The front matter holds an anchor (&). Write the value out in full; put quotes around words that begin with & * or !.  (front-matter-is-plain)'] },
  { says: 'an alias to what it stands in', files: head('a: &a [*a]'), finds: ['ladders/a.md:2:4  The front matter holds an anchor (&). Write the value out in full; put quotes around words that begin with & * or !.  (front-matter-is-plain)'] },
  { says: 'an anchor named __proto__', files: head('a: &__proto__ x\nb: *__proto__'), finds: ['ladders/a.md:2:4  The front matter holds an anchor (&). Write the value out in full; put quotes around words that begin with & * or !.  (front-matter-is-plain)'] },
  { says: 'a merge key', files: { [LADDER_FILE]: added('<<: { id: other }') }, finds: ['ladders/a.md:17:1  A key must be a plain word. Write the keys out in full.  (front-matter-is-plain)', `ladders/a.md:17:1  There is no key "<<" here. Known keys: ${KEYS.ladder}.  (keys-are-known)`] },
  { says: 'a key that is a map', files: { [LADDER_FILE]: added('? { a: 1 }\n: 2') }, finds: ['ladders/a.md:17:3  A key must be a plain word. Write the keys out in full.  (front-matter-is-plain)', `ladders/a.md:17:3  There is no key "{ a: 1 }" here. Known keys: ${KEYS.ladder}.  (keys-are-known)`] },
  { says: 'a directive of another YAML', files: head('%YAML 1.1\n---\nid: a'), finds: ['ladders/a.md:2:10  A closing bracket, brace or quotation mark is missing, or a space after a colon or before a #.  (front-matter-is-plain)'] },
  { says: 'a key __proto__ in the handbook', files: { 'handbook.yaml': `${HANDBOOK}__proto__: { title: x }\n` }, finds: [`handbook.yaml:5:1  There is no key "__proto__" here. Known keys: ${KEYS.handbook}.  (keys-are-known)`] },
])

/** Names that mean something to the language this is written in, at every depth. */
heldTogether('names that mean something to the language', [
  { says: 'a key __proto__ at the top', body: added('__proto__: { supervision: none }'), finds: [`17:1  There is no key "__proto__" here. Known keys: ${KEYS.ladder}.  (keys-are-known)`] },
  { says: 'a key constructor at the top', body: added('constructor: { prototype: { polluted: yes } }'), finds: [`17:1  There is no key "constructor" here. Known keys: ${KEYS.ladder}.  (keys-are-known)`] },
  { says: 'a key prototype in a standard', body: ladder(['seconds: 30,', 'seconds: 30, prototype: 1,']), finds: [`7:35  There is no key "prototype" here. Known keys: ${KEYS.standard}.  (keys-are-known)`] },
  { says: 'a key __proto__ in a standard', body: ladder(['seconds: 30,', 'seconds: 30, __proto__: { sets: 9 },']), finds: [`7:35  There is no key "__proto__" here. Known keys: ${KEYS.standard}.  (keys-are-known)`] },
  { says: 'a key __proto__ in a rung', body: ladder(['title: Tucked hold\n', 'title: Tucked hold\n    __proto__: { id: x }\n']), finds: [`12:5  There is no key "__proto__" here. Known keys: ${KEYS.rung}.  (keys-are-known)`] },
  { says: 'a key __proto__ in a load', body: ladder(['load: { model: skill }', 'load: { __proto__: { model: skill } }']), finds: ['12:5  model is not given here. Add it.  (keys-are-given)'] },
  { says: 'a model named constructor', body: ladder(['model: skill', 'model: constructor']), finds: ['12:13  model must be one of: supported-body, lever-hold, leg-press-of-body, assisted, one-rep-max, landing, published, skill.  (values-fit)'] },
  { says: 'a model named __proto__', body: ladder(['model: skill', 'model: __proto__']), finds: ['12:13  model must be one of: supported-body, lever-hold, leg-press-of-body, assisted, one-rep-max, landing, published, skill.  (values-fit)'] },
  { says: 'a rung that comes after toString', body: ladder(['title: Hollow hold\n    load', 'title: Hollow hold\n    after: [toString]\n    load']), finds: ['15:13  after must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'] },
  { says: 'a rule silenced by the name of a method', body: added('silence: [{ rule: constructor, because: we try, until: 2099-01-01 }]'), finds: ['17:11  The silence of constructor keeps nothing quiet. Take it out.  (silences-are-used)'] },
])

/** Values that people and programs read differently. */
const seconds = (value: string) => ladder(['seconds: 30', `seconds: ${value}`])
heldTogether('values that are read differently', [
  { says: 'a key that stands twice', body: seconds('10, seconds: 12'), finds: ['7:35  This key stands twice. Keep one of the two.  (front-matter-is-plain)'] },
  { says: 'a tag of a function', body: seconds('!!js/function "function () { return 1 }"'), finds: ['7:31  The front matter holds a tag (!). Write the value out in full; put quotes around words that begin with & * or !.  (front-matter-is-plain)'] },
  { says: 'a tag of our own making', body: seconds('!thing 30'), finds: ['7:31  The front matter holds a tag (!). Write the value out in full; put quotes around words that begin with & * or !.  (front-matter-is-plain)'] },
  { says: 'a tag of binary', body: seconds('!!binary aGVsbG8='), finds: ['7:31  The front matter holds a tag (!). Write the value out in full; put quotes around words that begin with & * or !.  (front-matter-is-plain)'] },
  ...(
    [
      ['1e400', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)', '7:31  "1e400" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['.inf', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)', '7:31  ".inf" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['-.INF', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)', '7:31  "-.INF" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['.nan', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)', '7:31  ".nan" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['-0', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['123456789012345678901234567890', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['010', '7:31  "010" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['0o17', '7:31  "0o17" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['0x1F', '7:31  "0x1F" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['1_000', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['1:30', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['3x10', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['½', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['55%', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['5,5', '7:33  A number stands here where a key should. Write decimals with a point, such as 5.5.  (front-matter-is-plain)', `7:33  There is no key "5" here. Known keys: ${KEYS.standard}.  (keys-are-known)`],
      ['٣', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['3 0', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['true', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['~', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['[]', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['{}', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['""', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['-1', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['0', '7:22  seconds must be a number from 1 to 1800 s.  (values-fit)'],
      ['1e3', '7:1  The standard asks for 3000 s in all, more than 1800 s. Ask for less, or for a harder rung.  (entry-can-be-met)', '7:31  "1e3" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['30.0000000000000001'],
    ] as const
  ).map(([value, ...finds]) => ({ says: `${value} for a number`, body: seconds(value), finds })),
  ...(
    [
      ['no'],
      ['on'],
      ['y'],
      ['2026-11-25', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['null', '2:1  id must be a short name such as bench-hands.  (values-fit)'],
      ['true', '2:1  id must be a short name such as bench-hands.  (values-fit)'],
      ['1e3', '2:1  id must be a short name such as bench-hands.  (values-fit)', '2:5  "1e3" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
      ['0x1F', '2:1  id must be a short name such as bench-hands.  (values-fit)', '2:5  "0x1F" is not a plain number. Write it as 12 or 12.5.  (front-matter-is-plain)'],
    ] as const
  ).map(([value, ...finds]) => ({ says: `${value} for an id`, body: ladder(['id: hollow-hold', `id: ${value}`]), finds })),
])

/** What is around the front matter, and what bytes it is made of. */
const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array => Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part) : Buffer.from(part))))
heldTogether('what is around the front matter', [
  ...(
    [
      ['---js', '1:1  The file begins with "---js". Begin it with a line of three hyphens, ---, and write the front matter as YAML.  (front-matter-is-there)'],
      ['+++', '1:1  The file begins with "+++". Begin it with a line of three hyphens, ---, and write the front matter as YAML.  (front-matter-is-there)'],
      [';;;', '1:1  The file begins with ";;;". Begin it with a line of three hyphens, ---, and write the front matter as YAML.  (front-matter-is-there)'],
      ['---yaml', '1:1  The file begins with "---yaml". Begin it with a line of three hyphens, ---, and write the front matter as YAML.  (front-matter-is-there)'],
      ['--- !!js/function', '1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'],
      ['<?php', '1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'],
      ['#!/bin/sh', '1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'],
    ] as const
  ).map(([fence, ...finds]) => ({ says: `a file that begins with ${fence}`, body: LADDER.replace('---', fence), finds })),
  { says: 'a second document', body: ladder(['aim: hollow', '...\naim: hollow']), finds: ['6:1  The front matter holds a second document. Remove the line of --- or ... inside it.  (front-matter-is-plain)'] },
  { says: 'no closing line', body: LADDER.replaceAll('\n---\n', '\n'), finds: ['1:1  The front matter is not closed. Put a line of three hyphens, ---, after its last key.  (front-matter-is-there)'] },
  { says: 'a blank line before the front matter', body: `\n${LADDER}`, finds: ['1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
  { says: 'line ends of another system', body: LADDER.replaceAll('\n', '\r\n'), finds: [] },
  { says: 'line ends of an old system', body: LADDER.replaceAll('\n', '\r'), finds: [] },
  { says: 'a mark of byte order', body: `\ufeff${LADDER}`, finds: [] },
  { says: 'two marks of byte order', body: `\ufeff\ufeff${LADDER}`, finds: ['1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
  { says: 'tabs that indent', body: LADDER.replaceAll('    ', '\t'), finds: ['11:1  A tab is used to indent. Use spaces.  (front-matter-is-plain)', '11:2  This key stands twice. Keep one of the two.  (front-matter-is-plain)'], of: 7 },
  { says: 'a NUL in a title', body: ladder(['title: Hollow hold', 'title: Hollow\0 hold']), finds: ['3:14  The file holds a NUL character, so it is not plain text. Write it again in a text editor.  (files-are-text)'] },
  { says: 'a NUL written as an escape', body: ladder(['title: Hollow hold', 'title: "Hollow\\0 hold"']), finds: ['3:1  title holds a hidden or direction-changing character; type it again by hand.  (values-fit)'] },
  { says: 'UTF-16', body: Buffer.from(`\ufeff${LADDER}`, 'utf16le'), finds: ['1:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'an old Western encoding', body: bytes(LADDER, [0xe9, 0x0a]), finds: ['63:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'half a pair as bytes', body: bytes(LADDER, [0xed, 0xa0, 0x80]), finds: ['63:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'half a pair as an escape', body: ladder(['title: Hollow hold', 'title: "Hollow \\ud800 hold"']), finds: ['3:8  This holds half a character, written as \\u and a number. Type the character itself.  (front-matter-is-plain)'] },
  { says: 'an overlong slash', body: bytes(LADDER, [0xc0, 0xaf]), finds: ['63:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'a character past the last', body: bytes(LADDER, [0xf4, 0x90, 0x80, 0x80]), finds: ['63:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'a file cut off in the middle of a character', body: bytes(LADDER, [0xe2, 0x82]), finds: ['63:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'a picture named as a ladder', body: bytes([0x89], 'PNG\r\n', [0x1a, 0x0a, 0, 0, 0, 13], 'IHDR'), finds: ['1:1  The file is not UTF-8 text. Save it again as UTF-8.  (files-are-text)'] },
  { says: 'a merge that was never finished', body: ladder(['title: Hollow hold', '<<<<<<< HEAD\ntitle: Hollow hold\n=======\ntitle: Hollow\n>>>>>>> other']), finds: ['3:1  The file is in the middle of a merge: two versions of it stand here. Keep one of each pair, and delete the lines that begin with <<<<<<<, ======= and >>>>>>>.  (files-are-text)'] },
  { says: 'an override of direction in an id', body: ladder(['id: hollow-hold', 'id: hollow\u202ehold']), finds: ['2:11  A character here cannot be seen and changes how the text around it is read. Type the line again by hand.  (files-are-text)'] },
  { says: 'an override of direction in a title', body: ladder(['title: Hollow hold', 'title: Hollow\u202e hold']), finds: ['3:14  A character here cannot be seen and changes how the text around it is read. Type the line again by hand.  (files-are-text)'] },
  { says: 'an override of direction in a cue', body: ladder(['Breathe out long', 'Breathe \u2066out long']), finds: ['36:11  A character here cannot be seen and changes how the text around it is read. Type the line again by hand.  (files-are-text)'] },
  { says: 'a space of no width in an id', body: ladder(['id: hollow-hold', 'id: hollow\u200bhold']), finds: ['2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'] },
  { says: 'a space of no width in a title', body: ladder(['title: Hollow hold', 'title: Hollow\u200b hold']), finds: ['3:1  title holds a hidden or direction-changing character; type it again by hand.  (values-fit)'] },
  { says: 'a joiner of no width in a rung', body: ladder(['id: tucked', 'id: tuc\u200dked']), finds: ['10:5  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'] },
  { says: 'a bell in a title', body: ladder(['title: Hollow hold', 'title: Hollow\u0007 hold']), finds: ['3:14  A character here cannot be seen and changes how the text around it is read. Type the line again by hand.  (files-are-text)'] },
  { says: 'an escape of a terminal, escaped', body: ladder(['title: Hollow hold', 'title: "Hollow\\e[31m hold"']), finds: ['3:1  title holds a hidden or direction-changing character; type it again by hand.  (values-fit)'] },
  { says: 'a line separator in a title', body: ladder(['title: Hollow hold', 'title: "Hollow\\L hold"']), finds: ['3:1  title holds a hidden or direction-changing character; type it again by hand.  (values-fit)'] },
  { says: 'a title of two lines', body: ladder(['title: Hollow hold', 'title: "Hollow\\nhold"']), finds: ['3:1  title must be words on one line, at most 80 characters.  (values-fit)'] },
  { says: 'a title of 5,000 letters', body: ladder(['title: Hollow hold', `title: ${'a'.repeat(5000)}`]), finds: ['3:1  title must be words on one line, at most 80 characters.  (values-fit)'] },
  { says: 'letters that look alike in an id', body: ladder(['id: hollow-hold', 'id: hоllow-hold']), finds: ['2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'] },
])
