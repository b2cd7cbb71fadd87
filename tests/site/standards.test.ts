import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { HtmlValidate, StaticConfigLoader } from 'html-validate'
import { beforeAll, test } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { builtDemo } from './demo.ts'

/** Pages held to the standard of HTML, and what they say of themselves to the vocabulary of schema.org, both as others have written them down. */
const htmlValidate = new HtmlValidate(
  new StaticConfigLoader({
    root: true,
    extends: ['html-validate:standard', 'html-validate:a11y', 'html-validate:document'],
    rules: {
      'no-implicit-button-type': 'off', // the standard's own default, submit, is what a button of a form is meant to do
      'prefer-native-element': 'off', // a frame that scrolls takes the focus and a name, and is no section of the text
      'wcag/h32': 'off', // the choice of paper is read by the stylesheet, and sends nothing
      'require-sri': 'off', // every script and style comes from the host of the page itself
    },
  }),
)

let folder: string
let files: string[]

beforeAll(async () => {
  folder = await builtDemo()
  files = await filesBelow(folder)
}, 120_000)

const read = (file: string): string => readFileSync(path.join(folder, file), 'utf8')

/** What kind of page a file is: its address with the names of ladders, rungs, rules and pages left out. */
function kindOf(file: string): string {
  const ladders = new Set(files.flatMap((each) => /^data\/ladders\/(.+)\.json$/.exec(each)?.[1] ?? []))
  return file.split('/').map((part, at, parts) => (ladders.has(part) ? 'LADDER' : at > 0 && ladders.has(parts[at - 1] ?? '') && part !== 'index.html' && !['pocket', 'booklet'].includes(part) ? 'RUNG' : parts[at - 1] === 'checks' && part !== 'index.html' ? 'RULE' : part)).join('/')
}

/** Three pages of each kind in each language; of hand-written pages, each. */
function ofEachKind(): string[] {
  const kinds = new Map<string, string[]>()
  for (const file of files.filter((each) => each.endsWith('.html') && !each.startsWith('editions/'))) kinds.set(kindOf(file), [...(kinds.get(kindOf(file)) ?? []), file])
  return [...kinds.values()].flatMap((all) => [all[0], all[Math.floor(all.length / 2)], all.at(-1)]).filter((file, at, all): file is string => file !== undefined && all.indexOf(file) === at)
}

const faultsOf = (markup: string): string[] => htmlValidate.validateStringSync(markup).results.flatMap(({ messages }) => messages.map(({ ruleId, message, line }) => `${line}: ${message} (${ruleId})`))

test('every kind of page, in both languages, is HTML as the standard has it', () => {
  const pages = ofEachKind()
  assert.ok(pages.length > 80 && pages.some((page) => page.startsWith('es/cards/')), `${pages.length}`)
  assert.deepEqual(pages.flatMap((page) => faultsOf(read(page)).map((fault) => `${page}:${fault}`)), [])
}, 60_000)

test('a page that breaks the standard is found out', () => {
  const page = read('press-up/floor/index.html')
  const broken = (from: string | RegExp, to: string): string[] => faultsOf(page.replace(from, to)).map((fault) => /\(([^)]+)\)$/.exec(fault)?.[1] ?? '')
  assert.deepEqual(broken('<h1>', '<h1><p>in a heading</p>'), ['element-permitted-content'])
  assert.deepEqual(broken('id="decide"', 'id="load"'), ['no-dup-id'])
  assert.deepEqual(broken(' aria-label="Timer"', ''), [])
  assert.deepEqual(broken('<nav class="languages" aria-label="Languages">', '<nav class="languages">'), ['unique-landmark'])
})

/** The vocabulary as schema.org publishes it: each term with what it stands in relation to. */
const triples = readFileSync(createRequire(import.meta.url).resolve('@vocabulary/schema/schema.nq'), 'utf8').matchAll(/^<https?:\/\/schema\.org\/(\w+)> <[^>]*?[/#](\w+)> <[^>]*?[/#](\w+)>/gm)
const told = new Map<string, string[]>()
for (const [, subject = '', relation = '', object = ''] of triples) told.set(`${subject} ${relation}`, [...(told.get(`${subject} ${relation}`) ?? []), object])
const of = (subject: string, relation: string): readonly string[] => told.get(`${subject} ${relation}`) ?? []

/** A class and all it is a kind of. */
const kindsOf = (type: string): string[] => [type, ...of(type, 'subClassOf').flatMap(kindsOf)]

/** Plain values each datatype of the vocabulary takes. */
const PLAIN: Readonly<Record<string, (value: unknown) => boolean>> = {
  Text: (value) => typeof value === 'string',
  URL: (value) => typeof value === 'string' && URL.canParse(value),
  Number: (value) => typeof value === 'number',
  Integer: Number.isInteger,
}

/** What in a thing the vocabulary does not know, or does not allow there. */
function strangeIn(thing: unknown, at: string): string[] {
  if (Array.isArray(thing)) return thing.flatMap((each: unknown) => strangeIn(each, at))
  const { '@type': type = '', '@context': _, ...properties } = thing as Readonly<Record<string, unknown>>
  if (typeof type !== 'string' || !of(type, 'type').includes('Class')) return [`${at}: no class ${String(type)}`]
  const kinds = kindsOf(type)
  return Object.entries(properties).flatMap(([property, value]) => {
    const where = `${at} ${type}.${property}`
    if (!of(property, 'domainIncludes').some((domain) => kinds.includes(domain))) return [`${where}: not of this class`]
    const range = of(property, 'rangeIncludes')
    return [value].flat().flatMap((each: unknown) => {
      if (typeof each !== 'object' || each === null) return range.some((one) => kindsOf(one).some((kind) => PLAIN[kind]?.(each)) || (typeof each === 'string' && of(each.replace('https://schema.org/', ''), 'type').includes(one))) || (property === 'item' && PLAIN['URL']?.(each)) ? [] : [`${where}: ${JSON.stringify(each)} is none of ${range.join(', ')}`]
      const inner = (each as { readonly '@type'?: string })['@type'] ?? ''
      return [...(range.some((one) => kindsOf(inner).includes(one)) ? [] : [`${where}: a ${inner} is none of ${range.join(', ')}`]), ...strangeIn(each, where)]
    })
  })
}

const BLOCK = /<script type="application\/ld\+json">(.*?)<\/script>/s

test('what every page says of itself is said in words of the vocabulary, where it allows them', () => {
  assert.ok(of('ExercisePlan', 'subClassOf').includes('PhysicalActivity'))
  let things = 0
  const strange = files.filter((file) => file.endsWith('.html')).flatMap((file) => {
    const block = BLOCK.exec(read(file))?.[1]
    const { '@graph': graph = [] } = block === undefined ? {} : (JSON.parse(block) as { readonly '@graph'?: readonly unknown[] })
    things += graph.length
    return graph.flatMap((thing) => strangeIn(thing, file))
  })
  assert.deepEqual([...new Set(strange.map((fault) => fault.replace(/^\S+ /, '')))], [])
  assert.ok(things > 1000, `${things}`)
})

test('a word the vocabulary does not have, or not there, is found out', () => {
  assert.deepEqual(strangeIn({ '@type': 'ExercisePlan', name: 'x', restPeriod: 'x' }, 'p'), ['p ExercisePlan.restPeriod: not of this class'])
  assert.deepEqual(strangeIn({ '@type': 'ItemList', name: 'x', numberOfItems: 'three' }, 'p'), ['p ItemList.numberOfItems: "three" is none of Integer'])
  assert.deepEqual(strangeIn({ '@type': 'WebSite', publisher: { '@type': 'ItemList', name: 'x' } }, 'p'), ['p WebSite.publisher: a ItemList is none of Organization, Person'])
  assert.deepEqual(strangeIn({ '@type': 'Handbook' }, 'p'), ['p: no class Handbook'])
})
