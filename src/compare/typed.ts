import type { Unit } from '../quantity/unit.ts'
import { isNumberKey } from '../load/model.ts'
import { placeOf, type Path } from '../ladder/finding.ts'
import { SUPERVISION, type Supervision } from '../ladder/schema.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import type { Change, ChangeKind, Side, Subject, Weight } from './change.ts'
import { change, named } from './make.ts'
import { figure, list, ours, rungs, words } from './side.ts'
import { signed } from './signed.ts'

/** Two versions of a ladder, and which rung became which. */
export type Pair = { readonly before: MeasuredLadder; readonly after: MeasuredLadder; readonly rungs: readonly (readonly [before: MeasuredRung, after: MeasuredRung])[] }

/** Rungs by id; one that was withdrawn follows its heir, if that is new. */
export function paired(before: MeasuredLadder, after: MeasuredLadder): Pair {
  const now = new Map(after.rungs.map((rung) => [rung.id, rung]))
  const then = new Set(before.rungs.map(({ id }) => id))
  const heirs = new Map((after.retired ?? []).map(({ id, heir }) => [id, heir]))
  const rungs = before.rungs.flatMap((rung) => {
    const heir = heirs.get(rung.id)
    const same = now.get(rung.id) ?? (heir !== undefined && !then.has(heir) ? now.get(heir) : undefined)
    return same ? [[rung, same] as const] : []
  })
  return { before, after, rungs }
}

/** Adds what differs between two plain values under one name. */
export type Add = (kind: ChangeKind, name: string, weight: Weight, sides: { before?: Side | undefined; after?: Side | undefined }, path: Path, unsafe?: boolean) => void

/** Every change somebody typed in a ladder that is in both. */
export function typedIn(pair: Pair): Change[] {
  const { before, after } = pair
  const found: Change[] = []
  const adder =
    (subject: Subject): Add =>
    (kind, name, weight, sides, path, unsafe = false) =>
      void found.push(change({ kind, subject, name, weight, ...sides, unsafe, was: sides.before && placeOf(before.places, path), is: placeOf(after.places, path) }))
  const add = adder({ ladder: after.id })
  reworded(add, 'title', before.title, after.title, ['title'])
  reworded(add, 'what it is for', before.intro, after.intro, [])
  if (before.movement !== after.movement) add('wording-changed', 'movement', 'wording', { before: words(before.movement), after: words(after.movement) }, ['movement'])
  if (before.aim !== after.aim && !pair.rungs.some(([was, is]) => was.id === before.aim && is.id === after.aim)) add('aim-moved', 'aim', 're-placing', { before: rungs(before, [before.aim]), after: rungs(after, [after.aim]) }, ['aim'])
  criteria(add, 'standard', before.standard, after.standard, ['standard'])
  number(add, 'first_reps', before.first_reps, after.first_reps, 'reps', ['first_reps'], 're-placing')
  number(add, 'sessions_per_week', before.sessions_per_week, after.sessions_per_week, 'ratio', ['sessions_per_week'], 'wording')
  watched(add, before.supervision, after.supervision, ['supervision'])
  notes(add, 'stop', before.stop, after.stop, ['stop'])
  notes(add, 'ask_first', before.ask_first, after.ask_first, ['ask_first'])
  formPoints(add, before.form, after.form, ['form'])
  if (before.equipment.join() !== after.equipment.join()) add('list-changed', 'equipment', 'wording', { before: list(before.equipment, ', '), after: list(after.equipment, ', ') }, ['equipment'])
  const cited = (ladder: MeasuredLadder): Side => list((ladder.sources ?? []).map(({ cite }) => cite), '; ')
  if (cited(before).text !== cited(after).text) add('list-changed', 'sources', 'wording', { before: cited(before), after: cited(after) }, ['sources'])
  signed(add, before, after)
  comings(pair, found)
  for (const [was, is] of pair.rungs) rungChanges(was, is, adder({ ladder: after.id, rung: is.id }), pair)
  return found
}

function reworded(add: Add, name: string, before: string, after: string, path: Path): void {
  if (before !== after) add('wording-changed', name, 'wording', { before: words(before), after: words(after) }, path)
}

/** A number that rose, fell, came or went. */
function number(add: Add, name: string, before: number | undefined, after: number | undefined, unit: Unit, path: Path, weight: Weight): void {
  if (before === after) return
  const sides = { before: before === undefined ? undefined : figure(before, unit), after: after === undefined ? undefined : figure(after, unit) }
  const kind = before === undefined ? 'criterion-given' : after === undefined ? 'criterion-taken-out' : after > before ? 'criterion-raised' : 'criterion-lowered'
  add(kind, name, weight, sides, path)
}

type Criteria = Readonly<Record<string, number | undefined>>

const AMOUNTS: Record<string, Unit> = { reps: 'reps', seconds: 's', metres: 'm' }
const OTHERS: Record<string, Unit> = { sets: 'ratio', sessions: 'ratio', rest_s: 's', reserve_reps: 'reps' }

/** Sets, amounts and sessions, of a standard or of an entry. An amount that changed its unit is one change. */
function criteria(add: Add, name: string, before: Criteria, after: Criteria, path: Path): void {
  const amount = (of: Criteria): string | undefined => Object.keys(AMOUNTS).find((key) => of[key] !== undefined)
  const [was, is] = [amount(before), amount(after)]
  const side = (of: Criteria, key: string | undefined): Side | undefined => (key === undefined ? undefined : figure(of[key] ?? 0, AMOUNTS[key] ?? 'ratio'))
  if (was !== undefined && is !== undefined && was !== is) add('criterion-unit-changed', `${name} amount`, 're-placing', { before: side(before, was), after: side(after, is) }, path, before[was] === after[is])
  else for (const [key, unit] of Object.entries(AMOUNTS)) number(add, `${name} ${key}`, before[key], after[key], unit, path, 're-placing')
  for (const [key, unit] of Object.entries(OTHERS)) number(add, `${name} ${key}`, before[key], after[key], unit, path, key === 'rest_s' ? 'wording' : 're-placing')
}

function watched(add: Add, before: Supervision | undefined, after: Supervision | undefined, path: Path): void {
  if (before === after) return
  const rank = (supervision: Supervision | undefined): number => (supervision === undefined ? -1 : SUPERVISION.indexOf(supervision))
  const raised = rank(after) > rank(before)
  add(raised ? 'supervision-raised' : 'supervision-lowered', 'supervision', raised ? 'growth' : 're-placing', { before: ours(before ?? 'as the ladder says'), after: ours(after ?? 'as the ladder says') }, path, !raised)
}

/** Words two sentences share, over all they have. A note that keeps half of its words was reworded, not removed. */
function likeness(one: string, other: string): number {
  const [a, b] = [one, other].map((text) => new Set(text.toLowerCase().match(/\p{Letter}{3,}/gu) ?? [])) as [Set<string>, Set<string>]
  const shared = [...a].filter((word) => b.has(word)).length
  return shared / Math.max(1, a.size + b.size - shared)
}

/** Half. Taste: below it a reader would not call it the same note. */
const ALIKE = 0.5

/** Safety notes that came, went, or were said otherwise. */
function notes(add: Add, name: string, before: readonly string[], after: readonly string[], path: Path): void {
  const gone = before.filter((note) => !after.includes(note))
  const come = after.filter((note) => !before.includes(note))
  for (const note of gone) {
    const now = come.toSorted((a, b) => likeness(note, b) - likeness(note, a))[0]
    if (now !== undefined && likeness(note, now) >= ALIKE) {
      come.splice(come.indexOf(now), 1)
      add('note-reworded', name, 'to judge', { before: words(note), after: words(now) }, path)
    } else add('note-removed', name, 're-placing', { before: words(note) }, path, true)
  }
  for (const note of come) add('note-added', name, 'growth', { after: words(note) }, path)
}

function formPoints(add: Add, before: readonly string[], after: readonly string[], path: Path): void {
  for (const point of before) if (!after.includes(point)) add('form-point-removed', 'form', 're-placing', { before: words(point) }, path)
  for (const point of after) if (!before.includes(point)) add('form-point-added', 'form', 're-placing', { after: words(point) }, path)
}

/** Rungs that came, went, or took another's place. */
function comings({ before, after, rungs }: Pair, found: Change[]): void {
  const [was, is] = [new Set(rungs.map(([rung]) => rung.id)), new Set(rungs.map(([, rung]) => rung.id))]
  const heirs = new Map((after.retired ?? []).map(({ id, heir }) => [id, heir]))
  for (const rung of before.rungs) {
    if (was.has(rung.id)) continue
    const heir = heirs.get(rung.id)
    found.push(change({ kind: 'rung-withdrawn', subject: { ladder: after.id, rung: rung.id }, ...(heir === undefined ? { name: 'without an heir' } : { name: 'heir:', of: named(after, heir) }), weight: 're-placing', before: words(rung.title), unsafe: heir === undefined, was: placeOf(before.places, ['rungs', rung.id]), is: placeOf(after.places, ['rungs']) }))
  }
  for (const rung of after.rungs) {
    if (is.has(rung.id)) continue
    const followed = after.rungs.some(({ after: below }) => below.includes(rung.id))
    const where = rung.after.length === 0 ? 'at the start' : followed ? 'between others' : 'at the end of a branch'
    found.push(change({ kind: 'rung-added', subject: { ladder: after.id, rung: rung.id }, name: where, weight: 'growth', after: words(rung.title), is: placeOf(after.places, ['rungs', rung.id]) }))
  }
}

function rungChanges(was: MeasuredRung, is: MeasuredRung, add: Add, pair: Pair): void {
  const path = (...steps: Path): Path => ['rungs', is.id, ...steps]
  if (was.id !== is.id) add('rung-renamed', 'id', 'wording', { before: ours(was.id), after: ours(is.id) }, path('id'))
  reworded(add, 'title', was.title, is.title, path('title'))
  criteria(add, 'entry', was.entry, is.entry, path('entry'))
  watched(add, was.supervision, is.supervision, path('supervision'))
  notes(add, 'cautions', was.cautions, is.cautions, path('cautions'))
  for (const demand of was.demand) if (!is.demand.includes(demand)) add('demand-dropped', 'demand', 're-placing', { before: ours(demand) }, path('demand'))
  for (const demand of is.demand) if (!was.demand.includes(demand)) add('demand-added', 'demand', 're-placing', { after: ours(demand) }, path('demand'))
  formPoints(add, was.form, is.form, path('form'))
  const renamed = new Map(pair.rungs.map(([before, after]) => [before.id, after.id]))
  const follows = was.after.map((id) => renamed.get(id) ?? id)
  if (follows.join() !== is.after.join()) add('order-changed', 'after', 're-placing', { before: rungs(pair.before, was.after), after: rungs(pair.after, is.after) }, path('after'))
  setUps(was, is, add, path('load'))
  prose(was, is, add, is.id)
}

/** What the load is computed from. */
function setUps(was: MeasuredRung, is: MeasuredRung, add: Add, path: Path): void {
  if (was.model !== is.model) {
    add('set-up-changed', 'model', 're-placing', { before: ours(was.model.name), after: ours(is.model.name) }, path)
    return
  }
  const shown = (value: unknown): string => (typeof value === 'object' ? JSON.stringify(value) : String(value))
  for (const [key, spec] of Object.entries(is.model.keys)) {
    const [before, after] = [was.inputs[key], is.inputs[key]]
    if (shown(before) === shown(after)) continue
    const at = [...path, key]
    const side = (value: typeof before): Side | undefined => (value === undefined ? undefined : typeof value === 'number' && isNumberKey(spec) ? figure(value, spec.unit) : 'words' in spec ? words(shown(value)) : ours(shown(value)))
    const sides = { before: side(before), after: side(after) }
    if (before === undefined || after === undefined) add(before === undefined ? 'set-up-given' : 'set-up-taken-out', key, 're-placing', sides, at)
    else if (typeof before === 'number' && typeof after === 'number') add(after > before ? 'set-up-raised' : 'set-up-lowered', key, 're-placing', sides, at)
    else add('set-up-changed', key, 're-placing', sides, at)
  }
}

/** Prose: cues, faults and set-up are wording; what a full rep is decides who counts, and nothing but a reader can judge it. */
function prose(was: MeasuredRung, is: MeasuredRung, add: Add, id: string): void {
  const [before, after] = [was.words, is.words]
  const joined = (lines: readonly string[] | undefined): string => (lines ?? []).join('\n')
  const path = (part: string): Path => ['rungs', id, part]
  if (joined(before?.full_rep) !== joined(after?.full_rep)) add('criterion-reworded', 'full rep', 'to judge', { before: words(joined(before?.full_rep)), after: words(joined(after?.full_rep)) }, path('full-rep'))
  reworded(add, 'introduction', before?.intro ?? '', after?.intro ?? '', path('section'))
  reworded(add, 'set-up', before?.set_up ?? '', after?.set_up ?? '', path('set-up'))
  reworded(add, 'cues', joined(before?.cues), joined(after?.cues), path('cues'))
  const faults = (rung: MeasuredRung): string => (rung.words?.faults ?? []).map(({ seen, cause, say, remedy }) => [seen, cause, say, remedy].join(' | ')).join('\n')
  reworded(add, 'faults', faults(was), faults(is), path('faults'))
  const noted = (rung: MeasuredRung): string => (rung.words?.notes ?? []).map(({ body }) => body).join('\n')
  reworded(add, 'notes', noted(was), noted(is), path('notes'))
  reworded(add, 'first_side', was.first_side ?? '', is.first_side ?? '', path('first_side'))
  if (was.equipment.join() !== is.equipment.join()) add('wording-changed', 'equipment', 'wording', { before: list(was.equipment, ', '), after: list(is.equipment, ', ') }, path('equipment'))
}
