import assert from 'node:assert/strict'
import { test } from 'vitest'
import { linksIn, targetOf } from '../../src/read/links.ts'
import { headingParts } from '../../src/read/markdown.ts'

test('links and pictures are found in order, each on its own line, pictures with their text', () => {
  assert.deepEqual(linksIn('[a](/a/) and\n![of b](b.png)\n\n- c\n\n  > [d][ref]\n\n| e |\n|---|\n| f |\n| [![](g.png)](/g/) |\n\n[ref]: /d/\n'), [
    { href: '/a/', line: 0 },
    { href: 'b.png', line: 1, alt: 'of b' },
    { href: '/d/', line: 5 },
    { href: '/g/', line: 10 },
    { href: 'g.png', line: 10, alt: '' },
  ])
})

test('what stands in code, or would run a script, is no link', () => {
  assert.deepEqual(linksIn('`[a](/a/)`\n\n    [b](/b/)\n\n[c](javascript:x) [d](vbscript:x) [e](file:///etc/passwd) [f](data:text/html,x)\n'), [])
})

const targets = [
  { href: 'rung:press-up/bench-hands', target: { kind: 'rung', name: 'press-up/bench-hands' } },
  { href: 'rung:press-up', target: { kind: 'rung', name: 'press-up' } },
  { href: '/safety/', target: { kind: 'page', id: 'safety', fragment: undefined } },
  { href: 'safety.md', target: { kind: 'page', id: 'safety', fragment: undefined } },
  { href: './safety.md#Pain-2', target: { kind: 'page', id: 'safety', fragment: 'Pain-2' } },
  { href: 'https://club.example/a?b#c', target: { kind: 'outside' } },
  { href: 'HTTPS://club.example', target: { kind: 'outside' } },
  { href: 'mailto:coach@club.example', target: { kind: 'outside' } },
  { href: 'tel:112', target: { kind: 'outside' } },
] as const

for (const { href, target } of targets) test(`${href} leads to ${target.kind === 'outside' ? 'outside' : `a ${target.kind}`}`, () => assert.deepEqual(targetOf(href), target))

const WHY = 'links lead to rung:ladder/rung, to a page such as /safety/, or out by https, mailto or tel'

for (const href of [
  '',
  '#top',
  '/',
  '//evil.example/',
  '\\\\evil.example',
  '/\\evil.example/',
  '../safety.md',
  '/../etc/passwd/',
  '/%2e%2e/',
  '/a/b/',
  '/safety',
  '/Safety/',
  '/safety/?q',
  '/safety/#a b',
  'http://club.example',
  'https:/club.example',
  'https:club.example',
  ' https://club.example',
  'javascript:alert(1)',
  'java\nscript:alert(1)',
  'data:text/html,x',
  'data:image/svg+xml,x',
  'blob:x',
  'file:///etc/passwd',
  'ftp://club.example',
  'rung:',
  'rung:a/b/c',
  'rung:../x',
  'rung:A',
  'C:/x.md',
]) {
  test(`${JSON.stringify(href)} leads nowhere`, () => assert.deepEqual(targetOf(href), { kind: 'refused', why: WHY }))
}

const headings = [
  { content: 'Hands on a bench {#bench-hands}', title: 'Hands on a bench', id: 'bench-hands' },
  { content: 'Hands on a bench{#bench-hands}  ', title: 'Hands on a bench', id: 'bench-hands' },
  { content: '{#floor}', title: '', id: 'floor' },
  { content: 'Set {#a} of {#b}', title: 'Set {#a} of', id: 'b' },
  { content: 'Set {#a} of', title: 'Set {#a} of', id: undefined },
  { content: 'Set {#A}', title: 'Set {#A}', id: undefined },
  { content: 'Set {#}', title: 'Set {#}', id: undefined },
  { content: `Set {#${'a'.repeat(81)}}`, title: `Set {#${'a'.repeat(81)}}`, id: undefined },
] as const

for (const { content, title, id } of headings) test(`the heading ${JSON.stringify(content.slice(0, 40))} is ${title === '' ? 'only an id' : JSON.stringify(title.slice(0, 40))}${id ? ` of ${id}` : ''}`, () => assert.deepEqual(headingParts(content), { title, id }))
