import { intervalText } from '../src/quantity/figure.ts'
import { isMissing } from '../src/quantity/outcome.ts'
import { interval } from '../src/quantity/spread.ts'
import { models } from '../src/load/index.ts'
import { agreement, differences, heldOut, publishedValues } from '../src/load/measured-bodies.ts'
import { isChoiceKey, isListKey, isNumberKey, type Key } from '../src/load/model.ts'
import { sources } from '../src/load/sources.ts'
import { jsonSchemaOf, type FileKind, type JsonSchema } from '../src/ladder/json-schema.ts'
import { measureLadder, type MeasuredLadder, type MeasuredRung } from '../src/measure/measure.ts'
import { readLadderFile } from '../src/read/read-ladder.ts'

/** The pages of the documentation that are made from the program itself, so that they cannot say anything else. Text in, text out. */

/** What each kind of file is for, where it lies, and the smallest that reads. */
const KINDS: Readonly<Record<FileKind, { readonly title: string; readonly summary: string; readonly order: number; readonly says: string }>> = {
  ladder: { title: 'A ladder file', summary: 'Every key of the head of a ladder, with its span, what holds unless it is given, and an example.', order: 20, says: 'A ladder is one Markdown file anywhere below `ladders/`. These keys stand in its head, between two lines of `---`; [your first ladder](/first-ladder/) shows one whole.' },
  amendment: { title: 'An amendment', summary: 'Every key of a file that changes a ladder of the handbook below.', order: 21, says: 'An amendment is a Markdown file below `ladders/` that changes a ladder of the handbook it [extends](/layers/). Only `amends` and `because` must be there.' },
  page: { title: 'A page file', summary: 'Every key of the head of a page.', order: 22, says: 'A page is a Markdown file below `content/`. The name of its file is its address.' },
  handbook: { title: 'handbook.yaml', summary: 'Every key of the file that makes a folder a workspace.', order: 23, says: 'A folder with this file is a workspace.' },
  translation: { title: 'A ladder in another language', summary: 'Every key of a file that says a ladder in another language.', order: 24, says: 'It lies beside the original: `press-up.es.md` beside `press-up.md`. See [languages](/languages/).' },
  'page-translation': { title: 'A page in another language', summary: 'Every key of a file that says a page in another language.', order: 25, says: 'It lies beside the original: `safety.es.md` beside `safety.md`. See [languages](/languages/).' },
}

type Bounds = JsonSchema & { readonly minLength?: number; readonly maxLength?: number; readonly minItems?: number; readonly maxItems?: number; readonly pattern?: string }

const head = (title: string, order: number, summary: string): string => `---\ntitle: ${title}\norder: ${order}\nsummary: ${summary}\n---\n\n`

/** Words of a key or a unit, safe within a Markdown line. */
const plain = (text: string): string => text.replace(/([|*<>[\]])/g, '\\$1')

/** The unit that a key of a schema is in: its name ends in it. */
const unitOf = (name: string): string => (name.endsWith('_s') || name === 'seconds' ? ' seconds' : name === 'metres' ? ' metres' : '')

const PATTERNS: Readonly<Record<string, string>> = {
  '^\\d{4}-\\d{2}-\\d{2}$': 'a day, as 2026-10-03',
  '^[a-z][a-z0-9]*(-[a-z0-9]+)*$': 'small letters, digits and single hyphens, a letter first',
  '^#[0-9a-f]{6}$': 'a colour, as "#0b5563"',
}

/** What may stand under a key: its kind and its span. */
function holds(name: string, schema: Bounds): string {
  const { type, enum: choices, minimum, maximum, maxLength, minItems, maxItems, pattern, items, properties } = schema
  if (choices) return `One of: ${choices.map((choice) => `\`${String(choice)}\``).join(', ')}.`
  if (type === 'array' && items && !Array.isArray(items)) return `A list of ${minItems ? `${minItems} to ` : 'at most '}${maxItems}. Each: ${lower(holds(name, items as Bounds))}`
  if (type === 'integer' || type === 'number') return `A ${type === 'integer' ? 'whole ' : ''}number from ${minimum} to ${maximum}${unitOf(name)}.`
  if (type === 'boolean') return 'True or false.'
  if (properties || type === 'object' || schema.oneOf) return 'Keys of its own, below.'
  const written = pattern === undefined ? 'Words on one line' : upper(PATTERNS[pattern] ?? 'A name')
  return `${written}${maxLength === undefined ? '' : `, at most ${maxLength} characters`}.`
}

const lower = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1)
const upper = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

/** A value as it may be written on one line of YAML. */
function written(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`
  if (typeof value === 'object' && value !== null) return `{ ${Object.entries(value).map(([key, entry]) => `${key}: ${written(entry)}`).join(', ')} }`
  if (typeof value !== 'string') return String(value)
  return /^[A-Za-zÀ-ÿ][^:#,[\]{}"]*$/.test(value) && !/^(true|false|null|yes|no)$/i.test(value) ? value : /^\d{4}-\d{2}-\d{2}$/.test(value) ? value : JSON.stringify(value)
}

/** One key as an entry of a definition list, and after it those within. */
function entries(schema: Bounds, path: readonly string[]): string[] {
  const inner = (schema.items && !Array.isArray(schema.items) ? schema.items : schema) as Bounds
  return Object.entries(inner.properties ?? {}).flatMap(([name, key]) => {
    const own = [...path, name]
    const must = inner.required?.includes(name) ? 'must be there' : key.default === undefined ? 'may be left out' : `\`${written(key.default)}\` unless given`
    if (name === 'load') return [`\`${own.join('.')}\`\n: ${key.description}\n: The name of a model and the keys it asks, ${must}: ${models.map((model) => `[${model.name}](/${pageOf(model.name)}/)`).join(', ')}.\n: \`${name}: ${written(key.examples?.[0])}\`\n`]
    return [`\`${own.join('.')}\`\n: ${plain(key.description ?? '')}\n: ${holds(name, key)} It ${must}.\n: \`${name}: ${written(key.examples?.[0])}\`\n`.replace(/It (`.*`) unless given\./, '$1 unless given.'), ...entries(key, own)]
  })
}

const pageOf = (model: string): string => `model-${model}`

/** The page of one kind of file. */
const filePage = (kind: FileKind): string => `${head(KINDS[kind].title, KINDS[kind].order, KINDS[kind].summary)}${KINDS[kind].says}\nA key that is not here is a finding, with the nearest that is.\n\n\`\`\`sh\nnpx rungbook schema ${kind}\n\`\`\`\n\nwrites the same for programs, as JSON Schema.\n\n## Keys\n\n${entries(jsonSchemaOf(kind), []).join('\n')}`

/** A key of a model: what it asks, its span and unit, and what holds unless it is given. */
function modelKey([name, key]: readonly [string, Key]): string {
  const span = isNumberKey(key) ? `A number from ${key.min} to ${key.max} ${key.unit}.` : isChoiceKey(key) ? `One of: ${key.choices.map((choice) => `\`${choice}\``).join(', ')}.` : isListKey(key) ? `A list of 1 to ${key.most} ${key.list === 'pairs' ? `pairs, in ${key.units.join(' and ')}` : 'numbers'}, each number from ${key.min} to ${key.max}.` : 'Words on one line.'
  const unless = 'default' in key && key.default !== undefined ? `\`${key.default}\` unless given.` : 'optional' in key ? 'It may be left out.' : 'It must be there.'
  return `\`${name}\`\n: ${plain(upper(key.says))}.\n: ${plain(span)} ${unless}\n`
}

type Example = { readonly ladder: MeasuredLadder; readonly rung: MeasuredRung }

/** One rung worked out, as its page shows it. */
function worked({ ladder, rung }: Example): string {
  const yaml = `load:\n${Object.entries({ model: rung.model.name, ...rung.inputs }).map(([key, value]) => `  ${key}: ${written(value)}`).join('\n')}`
  const link = `[${rung.title}](rung:${ladder.id}/${rung.id})`
  if (isMissing(rung.outcome)) return `${link}\n\n\`\`\`yaml\n${yaml}\n\`\`\`\n\nNot computed: ${rung.outcome.missing}.\n`
  const { quantity, load, working, assumes, poses } = rung.outcome
  return `${link}${poses.length > 0 ? ', drawn from the same numbers on its page' : ''}\n\n\`\`\`yaml\n${yaml}\n\`\`\`\n\n${upper(quantity.name)}${load.points.length > 1 ? ', over everything tried' : ''}: ${plain(intervalText(interval(load), quantity.unit))}.\n\n${working.map(({ formula, numbers, says }) => `${plain(says)}\n: \`${formula}\`\n: \`${numbers}\`\n`).join('\n')}\nIt assumes:\n\n${assumes.map((one) => `- ${plain(one)}`).join('\n')}\n`
}

/** The first of the rungs worked out, and the way to the others. */
function workedOut([first, ...others]: readonly Example[]): string {
  if (!first) throw new Error('bug: a load model has no rung in the documentation')
  return `${worked(first)}${others.length === 0 ? '' : `\nOthers: ${others.map(({ ladder, rung }) => `[${rung.title}](rung:${ladder.id}/${rung.id})`).join(', ')}.\n`}`
}

/** What laboratories measured beside what the model gives. */
function agreementText(model: string): string {
  if (model !== 'supported-body') return 'No comparison with measured bodies is kept for this model.\n'
  const row = (name: string, rows: typeof publishedValues): string => {
    const { mean, worst } = differences(agreement(rows))
    return `| ${name} | ${rows.length} | ${mean.toFixed(1)} % of body weight | ${worst.toFixed(1)} % of body weight |`
  }
  return `| values | conditions | mean difference | largest |\n|---|---|---|---|\n${row('the model was built beside', publishedValues)}\n${row('looked at only afterwards', heldOut)}\n\nEach condition stands on the page of [sources](/sources/).\n`
}

/** The page of one load model: what it gives, how, from where, and what it asks. `equation` is written by hand. */
function modelPage(model: (typeof models)[number], order: number, equation: string, examples: readonly Example[]): string {
  const cited = model.cites.map(({ source, at }) => `- ${plain(sources[source].cite)}; ${plain(at)} (${sources[source].seen}).`)
  const keys = Object.entries<Key>(model.keys).map(modelKey)
  const solves: readonly string[] = model.solves
  return `${head(`The ${model.name} model`, order, `What ${model.name} asks and gives, its equation, sources and assumptions.`)}It gives ${plain(model.says)}.

## Equation

${equation.trim()}

## Worked out

${workedOut(examples.filter(({ rung }) => rung.model.name === model.name))}
## Keys

${keys.length === 0 ? 'It asks nothing.\n' : keys.join('\n')}
${solves.length === 0 ? '' : `\`fit\` can look for ${solves.map((key) => `\`${key}\``).join(', ')}.\n\n`}## Agreement with measured bodies

${agreementText(model.name)}
## Sources

${cited.join('\n')}
`
}

/** The generated pages, by the name of their file; from the ladders of the documentation and the equations written by hand. */
export function docsText(ladders: readonly string[], equations: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  const measured = ladders.map((text, index) => {
    const { value } = readLadderFile(`ladders/${index}.md`, new TextEncoder().encode(text), 'Rungbook')
    if (value?.kind !== 'ladder') throw new Error('bug: a ladder of the documentation does not read')
    return measureLadder(value.ladder, { rungs: new Set(), pages: new Set() })
  })
  const examples = measured.flatMap((ladder) => ladder.rungs.map((rung) => ({ ladder, rung })))
  const kinds = (Object.keys(KINDS) as FileKind[]).map((kind) => [`file-${kind}.md`, filePage(kind)] as const)
  return new Map([...kinds, ...models.map((model, index) => [`${pageOf(model.name)}.md`, modelPage(model, 40 + index, equations[model.name] ?? '', examples)] as const)])
}
