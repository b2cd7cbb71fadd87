import { z } from 'zod'
import { isChoiceKey, isListKey, isNumberKey, type Key, type Keys, type ListKey } from '../load/model.ts'
import { models } from '../load/index.ts'
import { count, day, id, list, measured, oneOf, words } from './words.ts'

/** What makes a rung harder besides load. Named, never scored. */
export const DEMANDS = ['balance', 'one side', 'longer range', 'speed', 'grip'] as const
/** Who has to be there, in rising order. */
export const SUPERVISION = ['none', 'partner', 'coach', 'qualified coach'] as const

/** The amount that has to be shown, in one of three units. */
const amount = {
  reps: count(1, 200).optional(),
  seconds: measured(1, 1800, 's').optional(),
  metres: measured(1, 5000, 'm').optional(),
}

const standard = z.strictObject(
  {
    sets: count(1, 10),
    ...amount,
    sessions: count(1, 10).default(2),
    rest_s: measured(0, 900, 's').default(90),
    reserve_reps: count(0, 5).default(0),
  },
  '{key} must hold keys such as sets and reps.',
)

/** What a layer changes of a standard: what it leaves out stays as it was, so nothing here has a default. */
const changedStandard = z.strictObject(
  { sets: count(1, 10).optional(), ...amount, sessions: count(1, 10).optional(), rest_s: measured(0, 900, 's').optional(), reserve_reps: count(0, 5).optional() },
  '{key} must hold keys such as sets and reps.',
)

/** A rung's own standard for entering it; what it leaves out comes from the ladder's. */
const entry = z.strictObject(
  { sets: count(1, 10).optional(), ...amount, sessions: count(1, 10).optional(), reserve_reps: count(0, 5).optional() },
  '{key} must hold keys such as reps.',
)

/** A list of numbers or of pairs, each in the span of the key. */
function listOf({ list: kind, min, max, most, units }: ListKey) {
  const says = kind === 'pairs' ? `{key} must be a list of at most ${most} pairs such as [[10, 40], [20, 70]], in ${units.join(' and ')}.` : `{key} must be a list of at most ${most} numbers from ${min} to ${max} ${units[0]}.`
  const number = z.number(says).min(min, says).max(max, says)
  return kind === 'pairs' ? z.array(z.tuple([number, number], says), says).max(most, says) : z.array(number, says).max(most, says)
}

const loadKey = (key: Key): z.ZodType => {
  const value = isListKey(key) ? listOf(key) : isNumberKey(key) ? measured(key.min, key.max, key.unit) : isChoiceKey(key) ? oneOf(key.choices as [string, ...string[]]) : words(300)
  return 'default' in key || 'optional' in key ? value.optional() : value
}

const loadSchema = (name: string, keys: Keys) =>
  z.strictObject({ model: z.literal(name), ...Object.fromEntries(Object.entries(keys).map(([key, spec]) => [key, loadKey(spec)])) })

const [firstModel, ...otherModels] = models.map(({ name, keys }) => loadSchema(name, keys))
if (!firstModel) throw new Error('bug: no load model')

/** What a coach writes under `load`: a model's name, and what that model asks. Its keys and spans come from the model itself. */
const load = z.discriminatedUnion('model', [firstModel, ...otherModels], `model must be one of: ${models.map(({ name }) => name).join(', ')}.`)

const rung = z.strictObject(
  {
    id,
    title: words(80),
    after: list(10, id).optional(),
    demand: list(5, oneOf(DEMANDS)).optional(),
    entry: entry.optional(),
    load,
    supervision: oneOf(SUPERVISION).optional(),
    equipment: list(20).optional(),
    form: list(10).optional(),
    cautions: list(10, words(300)).optional(),
    first_side: words().optional(),
  },
  'each rung must hold keys such as id, title and load.',
)

const review = z.strictObject({ by: words(80), on: day, seal: words(80).optional() }, '{key} must hold by and on.')
const source = z.strictObject({ id: words(40), cite: words(400), doi: words(120).optional() }, 'each source must hold id and cite.')

/** A rule silenced in one place, for a reason, until a day. */
const silence = z.strictObject({ rule: words(80), rung: id.optional(), because: words(300), until: day }, 'each silence must hold rule, because and until.')

const fields = {
  title: words(80),
  movement: words(60),
  aim: id,
  equipment: list(30),
  standard,
  first_reps: count(1, 50).optional(),
  sessions_per_week: measured(0.5, 14, '').default(2),
  form: list(10),
  supervision: oneOf(SUPERVISION).default('none'),
  review: review.optional(),
  sources: z.array(source, '{key} must be a list.').max(60, '{key} must be a list of at most 60.').optional(),
  retired: z.array(z.strictObject({ id, heir: id, because: words(300) }, 'each withdrawn rung must hold id, heir and because.'), '{key} must be a list.').max(100, '{key} must be a list of at most 100.').optional(),
  silence: z.array(silence, '{key} must be a list.').max(50, '{key} must be a list of at most 50.').optional(),
  stop: list(20, words(300)),
  ask_first: list(20, words(300)),
}

/** The front matter of a ladder file. */
export const ladderSchema = z.strictObject(
  { id, ...fields, rungs: z.array(rung, '{key} must be a list of rungs.').min(1, '{key} must hold at least one rung.').max(500, '{key} must be a list of at most 500.') },
  'The front matter must hold keys such as id, title and rungs.',
)

/** The front matter of a file that amends a ladder of the curriculum below: what it names replaces, safety notes are added. */
export const amendmentSchema = z.strictObject({
  amends: id,
  because: words(300),
  base: words(40).optional(),
  title: fields.title.optional(),
  equipment: fields.equipment.optional(),
  standard: changedStandard.optional(),
  first_reps: fields.first_reps,
  sessions_per_week: measured(0.5, 14, '').optional(),
  form: fields.form.optional(),
  supervision: oneOf(SUPERVISION).optional(),
  review: review.optional(),
  silence: fields.silence,
  stop: fields.stop.optional(),
  ask_first: fields.ask_first.optional(),
  withdraw: z.array(z.strictObject({ id, heir: id, because: words(300) }, 'each withdrawn rung must hold id, heir and because.'), '{key} must be a list.').max(100, '{key} must be a list of at most 100.').optional(),
  withdraw_notes: z.array(z.strictObject({ note: words(300), because: words(300), by: words(80) }, 'each withdrawn note must hold note, because and by.'), '{key} must be a list.').max(20, '{key} must be a list of at most 20.').optional(),
  rungs: z.array(rung.partial().extend({ id, before: id.optional() }), '{key} must be a list of rungs.').max(500, '{key} must be a list of at most 500.').optional(),
})

/** The front matter of a page of the handbook. */
export const pageSchema = z.strictObject({
  title: words(80),
  order: measured(0, 1000, '').default(100),
  summary: words(300),
})

/** Other languages say the same at more length; half as much again holds what we tried. */
const longer = { title: words(120), line: words(300), note: words(450) }

/** A digest of each part of the original that was translated, by the part's name. */
const of = z.record(z.string(), words(40), '{key} must hold the digests that rungbook translate LANG --seal writes.').optional()

/** The front matter of a ladder in another language: words only. */
export const ladderTranslationSchema = z.strictObject(
  {
    translates: id,
    title: longer.title.optional(),
    because: longer.note.optional(),
    form: list(10, longer.line).optional(),
    stop: list(20, longer.note).optional(),
    ask_first: list(20, longer.note).optional(),
    rungs: z
      .array(
        z.strictObject(
          { id, title: longer.title.optional(), cautions: list(10, longer.note).optional(), form: list(10, longer.line).optional(), first_side: longer.line.optional() },
          'each rung must hold id and title.',
        ),
        '{key} must be a list of rungs.',
      )
      .max(500, '{key} must be a list of at most 500.')
      .optional(),
    of,
  },
  'The front matter must hold keys such as translates and title.',
)

/** The front matter of a page in another language. */
export const pageTranslationSchema = z.strictObject({ translates: id, title: longer.title.optional(), summary: longer.note.optional(), of }, 'The front matter must hold keys such as translates and title.')

/** words.LANG.yaml: a phrase as it stands in the files or the interface, and the phrase to show. */
export const wordListSchema = z.record(z.string(), longer.note, 'The file must hold phrases such as bench: banco.')

const language = z.string('Each language must be a code such as en or pt-BR.').regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, 'Each language must be a code such as en or pt-BR.')

/** What an edition is called: it becomes an address. */
const editionName = z.string('{key} must be words in quotes, such as "2026.2".').regex(/^[0-9A-Za-z][0-9A-Za-z.-]{0,30}$/, '{key} must be letters, digits, dots and hyphens, such as "2026.2".')

/** An edition that was published: its name, its day, and the revision it was made from (a tag edition/NAME unless given). */
const edition = z.strictObject(
  { edition: editionName, on: day, revision: words(100).optional(), keep: z.boolean('{key} must be true or false.').default(false), note: words(300).optional() },
  'Each edition must hold edition and on.',
)

/** Where the handbook is published: what a card's code leads to. No query and no fragment, so that an address can be put behind it. */
const ADDRESS = '{key} must be the https address at which the handbook is published, such as https://handbook.example, at most 200 characters.'
const address = z
  .string(ADDRESS)
  .regex(/^https:\/\/[A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?(?::\d{1,5})?(?:\/[A-Za-z0-9._~-]+)*\/?$/, ADDRESS)
  .max(200, ADDRESS)

const LOGO = '{key} must be the name of an SVG file beside handbook.yaml, such as logo.svg.'

/** handbook.yaml. */
export const handbookSchema = z.strictObject({
  title: words(80),
  organisation: words(120),
  edition: editionName,
  languages: z.array(language, '{key} must be a list such as [en, es].').min(1, '{key} must name at least one language.').max(20, '{key} must be a list of at most 20.').default(['en']),
  units: oneOf(['metric', 'imperial']).default('metric'),
  extends: words(300).optional(),
  contact: words(200),
  address: address.optional(),
  logo: z.string(LOGO).regex(/^[a-z0-9]+(-[a-z0-9]+)*\.svg$/, LOGO).max(60, LOGO).optional(),
  offline: z.boolean('{key} must be true or false.').optional(),
  editions: z.array(edition, '{key} must be a list.').max(100, '{key} must be a list of at most 100.').optional(),
  colours: z.strictObject({ accent: z.string('{key} must be a colour such as "#0b5563".').regex(/^#[0-9a-f]{6}$/i, '{key} must be a colour such as "#0b5563".') }, '{key} must hold accent.').optional(),
})

/** The front matter of a ladder, its defaults filled in. */
export type LadderFields = z.infer<typeof ladderSchema>
/** One rung as it is written. */
export type RungFields = z.infer<typeof rung>
/** The front matter of a file that amends a ladder. */
export type AmendmentFields = z.infer<typeof amendmentSchema>
/** The front matter of a ladder in another language. */
export type LadderTranslationFields = z.infer<typeof ladderTranslationSchema>
/** The front matter of a page in another language. */
/** The front matter of a page. */
export type PageFields = z.infer<typeof pageSchema>
/** What handbook.yaml holds, its defaults filled in. */
export type Handbook = z.infer<typeof handbookSchema>
/** What has to be shown on every rung before the next. */
export type Standard = z.infer<typeof standard>
/** What a rung asks of the one before it, where that differs from the ladder's standard. */
export type Entry = z.infer<typeof entry>
/** What makes a rung harder besides load. */
export type Demand = (typeof DEMANDS)[number]
/** Who has to be there. */
export type Supervision = (typeof SUPERVISION)[number]
