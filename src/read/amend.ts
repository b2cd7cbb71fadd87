import { once } from '../quantity/once.ts'
import type { Did, Ladder, Rung, WithdrawnNote } from '../ladder/curriculum.ts'
import { criteriaDigest, digestOf } from '../ladder/digest.ts'
import { placeOf, type Finding, type Path, type Place } from '../ladder/finding.ts'
import { SUPERVISION, type Entry, type RungFields, type Supervision } from '../ladder/schema.ts'
import { nearest } from './nearest.ts'
import { rungOf, type LadderFile } from './read-ladder.ts'
import type { Reading } from './text.ts'

type Amendment = Extract<LadderFile, { kind: 'amendment' }>

const RULE = 'amendments-fit'

/** Leaves out what was not written, so that it does not overwrite what the layer below says. */
const written = <Fields extends object>(fields: Fields): { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> }

/** An amount in one unit takes the place of one in another: nobody is asked for both. */
function asked<Below extends Entry>(below: Below, above: Entry): Below {
  const amount = [above.reps, above.seconds, above.metres].some((value) => value !== undefined)
  return { ...below, ...(amount ? { reps: undefined, seconds: undefined, metres: undefined } : {}), ...written(above) }
}

/** A finding about something in the amendment. */
const wrong = (amendment: Amendment, path: Path, message: string): Finding => ({ ...placeOf(amendment.places, path), rule: RULE, message })

/**
 * Lays an amendment over a ladder: its fields replace, its rungs match by id and may be added or withdrawn; safety notes are added,
 * and taken out only with a reason and a name.
 *
 * Shape   a ladder and an amendment to a ladder, and findings: what it names is not there, says nothing new, or stands on a base that has moved.
 */
export function amended(ladder: Ladder, amendment: Amendment, by: string): Reading<Ladder> {
  const { amends: _, because, base, rungs = [], stop = [], ask_first = [], standard, withdraw = [], withdraw_notes = [], ...fields } = amendment.fields
  const findings = [...moved(ladder, amendment, base), ...misnamed(ladder, amendment), ...repeated(ladder, amendment, by), ...lowered(ladder, amendment)]
  const notes = withdrawnNotes(ladder, amendment, by, findings)
  const kept = (list: readonly string[]): string[] => list.filter((note) => !notes.some((withdrawn) => withdrawn.note === note))
  const added = rungs.filter(isNew(ladder))
  const titleOf = (id: string): string => ladder.rungs.find((rung) => rung.id === id)?.title ?? id
  const keys = [...Object.keys(written(fields)), ...(standard ? ['standard'] : []), ...(stop.length > 0 ? ['stop'] : []), ...(ask_first.length > 0 ? ['ask_first'] : [])]
  const what: Did[] = [
    ...keys.map((key) => ({ key })),
    ...rungs.map((rung) => (added.includes(rung) ? { added: rung.id, title: rung.title ?? rung.id } : { changed: rung.id, title: rung.title ?? titleOf(rung.id) })),
    ...withdraw.map(({ id, heir }) => ({ withdrawn: id, title: titleOf(id), heir })),
    ...notes.map(({ note }) => ({ note })),
  ]
  const value: Ladder = {
    ...ladder,
    ...written(fields),
    standard: asked(ladder.standard, standard ?? {}),
    stop: [...new Set([...kept(ladder.stop), ...stop])],
    ask_first: [...new Set([...kept(ladder.ask_first), ...ask_first])],
    intro: amendment.intro === '' ? ladder.intro : amendment.intro,
    rungs: without(withNew(ladder.rungs.map((rung) => ({ ...amendedRung(rung, amendment), cautions: [...new Set([...kept(rung.cautions), ...(rungs.find(({ id }) => id === rung.id)?.cautions ?? [])])] })), added, amendment), withdraw),
    retired: [...(ladder.retired ?? []), ...withdraw],
    silence: [...(ladder.silence ?? []), ...(fields.silence ?? [])],
    withdrawn_notes: [...ladder.withdrawn_notes, ...notes],
    amended: [...ladder.amended, { by, because, what }],
    places: ladder.places,
  }
  return { value: { ...value, places: once(() => laidOver(value, ladder.places(), amendment.places(), (ladder.retired ?? []).length)) }, findings }
}

/** The base an amendment was written for, against the one it now stands on. */
function moved(ladder: Ladder, amendment: Amendment, base: string | undefined): Finding[] {
  const digest = criteriaDigest(ladder)
  if (base === undefined || base === digest) return []
  return [wrong(amendment, ['base'], `The ladder "${ladder.id}" has changed since this amendment was written for ${base.slice(0, 40)}. Look at what changed, then write base: ${digest}.`)]
}

/** A rung that brings a title and a load, and says where it goes, is a new one. */
const isNew =
  (ladder: Ladder) =>
  ({ id, title, load, after, before }: NonNullable<Amendment['fields']['rungs']>[number]): boolean =>
    !ladder.rungs.some((rung) => rung.id === id) && title !== undefined && load !== undefined && (after !== undefined || before !== undefined)

/** Supervision a layer takes away: it may ask for more, not for less. */
function lowered(ladder: Ladder, amendment: Amendment): Finding[] {
  const rank = (supervision: Supervision | undefined): number => SUPERVISION.indexOf(supervision ?? ladder.supervision)
  const { supervision, rungs = [] } = amendment.fields
  const says = (what: string, was: Supervision, path: Path): Finding => wrong(amendment, path, `${what} asks for less supervision than the curriculum below (${was}). A layer may ask for more, not for less.`)
  const whole = supervision !== undefined && rank(supervision) < rank(undefined) ? [says(`"${ladder.id}"`, ladder.supervision, ['supervision'])] : []
  const each = rungs.flatMap(({ id, supervision: own }, index) => {
    const was = ladder.rungs.find((rung) => rung.id === id)?.supervision ?? ladder.supervision
    return own !== undefined && rank(own) < rank(was) ? [says(`"${id}"`, was, ['rungs', index, 'supervision'])] : []
  })
  return [...whole, ...each]
}

/** Names that lead to no rung, and rungs named twice. */
function misnamed(ladder: Ladder, amendment: Amendment): Finding[] {
  const { rungs = [], withdraw = [] } = amendment.fields
  const known = new Set(ladder.rungs.map(({ id }) => id))
  const isAdded = isNew(ladder)
  const added = new Set(rungs.filter(isAdded).map(({ id }) => id))
  const unknown = (id: string): string => {
    const like = nearest(id, [...known])
    return `"${ladder.id}" has no rung "${id}" to amend. ${like ? `Did you mean ${like}?` : 'Name one of its rungs.'}`
  }
  const absent = [...new Set([...rungs.map(({ id }) => id), ...amendment.words.keys()])].filter((id) => !known.has(id) && !added.has(id)).map((id) => wrong(amendment, ['rungs', id, 'section'], unknown(id)))
  const gone = withdraw.flatMap(({ id }, index) => (known.has(id) ? [] : [wrong(amendment, ['withdraw', index], unknown(id))]))
  const twice = rungs.flatMap(({ id }, index) => (rungs.findIndex((other) => other.id === id) < index ? [wrong(amendment, ['rungs', index], `The rung "${id}" is amended twice. Join the two.`)] : []))
  const astray = rungs.flatMap(({ id, before }, index) => {
    if (before === undefined) return []
    if (known.has(id)) return [wrong(amendment, ['rungs', index, 'before'], `"${id}" is already a rung of "${ladder.id}". before is for new rungs; use after to move this one.`)]
    return known.has(before) ? [] : [wrong(amendment, ['rungs', index, 'before'], unknown(before))]
  })
  return [...absent, ...gone, ...twice, ...astray]
}

/** What an amendment says that the ladder below says already: a layer between may have said it, and would hide a change there. */
function repeated(ladder: Ladder, amendment: Amendment, by: string): Finding[] {
  const said = [ladder.layer, ...ladder.amended.map(({ by: layer }) => layer)].filter((layer) => layer !== by).at(-1) ?? ladder.layer
  return (amendment.fields.rungs ?? []).flatMap(({ id, before: _, entry, ...fields }, index) => {
    const rung = ladder.rungs.find((candidate) => candidate.id === id)
    if (!rung) return []
    const own = [...Object.entries(written(fields)), ...Object.entries(written(entry ?? {})).map(([key, value]) => [`entry ${key}`, value] as const)]
    const same = own.filter(([key, value]) => digestOf(key.startsWith('entry ') ? rung.entry[key.slice(6) as keyof Entry] : rung[key as keyof Rung]) === digestOf(value))
    return own.length > 0 && same.length === own.length ? [wrong(amendment, ['rungs', index], `"${id}" is amended to what ${said} says already (${same.map(([key]) => key).join(', ')}). Take it out.`)] : []
  })
}

/** Notes that are withdrawn, each by its exact words, so that nothing is dropped by a slip. */
function withdrawnNotes(ladder: Ladder, amendment: Amendment, layer: string, findings: Finding[]): WithdrawnNote[] {
  const standing = new Set([...ladder.stop, ...ladder.ask_first, ...ladder.rungs.flatMap(({ cautions }) => cautions)])
  return (amendment.fields.withdraw_notes ?? []).flatMap((withdrawn, index) => {
    if (standing.has(withdrawn.note)) return [{ ...withdrawn, layer }]
    findings.push(wrong(amendment, ['withdraw_notes', index], `"${ladder.id}" has no safety note "${withdrawn.note}" to withdraw. Copy its exact words.`))
    return []
  })
}

/** Puts new rungs in: after the rung they follow, or before another, which then follows them. */
function withNew(rungs: readonly Rung[], added: NonNullable<Amendment['fields']['rungs']>, amendment: Amendment): Rung[] {
  return added.reduce<Rung[]>((all, { before, ...fields }) => {
    const next = all.findIndex(({ id }) => id === before)
    const below = fields.after ?? all[next]?.after ?? []
    const rung = rungOf({ ...(fields as RungFields), after: [...below] }, undefined, amendment.words.get(fields.id))
    const at = next >= 0 ? next : Math.max(...below.map((id) => all.findIndex((other) => other.id === id)), -1) + 1
    const later = next >= 0 ? all.map((other, index) => (index === next ? { ...other, after: [rung.id] } : other)) : all
    return later.toSpliced(at, 0, rung)
  }, [...rungs])
}

/** Takes withdrawn rungs out; what came after one of them comes after what that one came after. */
function without(rungs: readonly Rung[], withdraw: readonly { readonly id: string }[]): Rung[] {
  return withdraw.reduce<Rung[]>((all, { id }) => {
    const gone = all.find((rung) => rung.id === id)
    if (!gone) return all
    return all.filter((rung) => rung !== gone).map((rung) => (rung.after.includes(id) ? { ...rung, after: [...new Set(rung.after.flatMap((below) => (below === id ? gone.after : [below])))] } : rung))
  }, [...rungs])
}

function amendedRung(rung: Rung, amendment: Amendment): Rung {
  const fields = amendment.fields.rungs?.find(({ id }) => id === rung.id)
  const words = amendment.words.get(rung.id)
  if (!fields && !words) return rung
  const { entry, cautions: _, before: __, ...others } = fields ?? {}
  return {
    ...rung,
    ...written(others),
    entry: asked(rung.entry, entry ?? {}),
    words: words ? { ...(rung.words ?? words), ...written({ ...words, intro: words.intro === '' ? undefined : words.intro, notes: words.notes.length > 0 ? words.notes : undefined }) } : rung.words,
  }
}

/** Places by name stay where they were, the amendment's keys stand in its own file; those by index are made anew for the rungs as they now are. */
function laidOver(ladder: Ladder, below: ReadonlyMap<string, Place>, above: ReadonlyMap<string, Place>, retired: number): ReadonlyMap<string, Place> {
  const places = new Map([...below].filter(([key]) => !/^rungs\/\d/.test(key)))
  for (const [key, place] of above) {
    if (key === '' || key === 'rungs' || /^rungs\/\d/.test(key)) continue
    places.set(key.replace(/^withdraw\/(\d+)/, (_, index: string) => `retired/${retired + Number(index)}`), place)
  }
  const index = new Map(ladder.rungs.map(({ id }, nth) => [id, nth]))
  for (const [key, place] of places) {
    const [, id = '', rest = ''] = /^rungs\/([^/]+)(.*)$/s.exec(key) ?? []
    const nth = index.get(id)
    if (nth !== undefined) places.set(`rungs/${nth}${rest}`, place)
  }
  return places
}
