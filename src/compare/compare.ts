import { placeOf } from '../ladder/finding.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import type { Change, Comparison, Held, Side, Subject, Weight } from './change.ts'
import { followedIn } from './followed.ts'
import { change } from './make.ts'
import { placementsFollow } from './placed.ts'
import { listChanges, spokenChanges, spokenFollows } from './spoken.ts'
import { paired, typedIn } from './typed.ts'

/**
 * What was typed between two states of a curriculum, and what follows from it.
 *
 * Shape   two measured curricula to two lists; what could hurt somebody first, then by ladder, rung and name. Nothing typed, nothing follows.
 */
export function compare(before: MeasuredCurriculum, after: MeasuredCurriculum): Comparison {
  const pages = pageChanges(before, after)
  const typed: Change[] = [...handbookChanges(before, after), ...listChanges(before.words, after.words), ...pages.typed]
  const followed: Change[] = [...pages.followed]
  const then = new Map(before.ladders.map((ladder) => [ladder.id, ladder]))
  const now = new Map(after.ladders.map((ladder) => [ladder.id, ladder]))
  for (const ladder of after.ladders) {
    const was = then.get(ladder.id)
    if (!was) {
      typed.push(whole('ladder-added', ladder, 'growth'))
      continue
    }
    const pair = paired(was, ladder)
    const own = was.rungs === ladder.rungs ? [] : typedIn(pair) // the very same value, read and measured once
    const spoken = spokenChanges(was, ladder, { ladder: ladder.id })
    typed.push(...own, ...spoken)
    if (own.length > 0) followed.push(...followedIn(pair, own), ...placementsFollow(pair, own))
    followed.push(...spokenFollows(was, ladder, { ladder: ladder.id }, [...own, ...spoken].map(({ fingerprint }) => fingerprint)))
  }
  for (const ladder of before.ladders) if (!now.has(ladder.id)) typed.push(whole('ladder-withdrawn', ladder, 're-placing'))
  const calls = callsIn(after, before)
  const called = (change: Change): Change => ({ ...change, called: calls(change.subject) })
  return { typed: weightiest(typed).map(called), followed: weightiest(followed).map(called) }
}

/** What a subject is called, or was called when it was last there. */
function callsIn(...states: readonly MeasuredCurriculum[]): (subject: Subject) => NonNullable<Change['called']> {
  const byId = <Of extends { readonly id: string }>(all: readonly Of[]): ReadonlyMap<string, Of> => new Map(all.map((one) => [one.id, one]))
  const told = states.map(({ ladders, pages }) => ({ ladders: byId(ladders), pages: byId(pages) }))
  return ({ ladder, rung, page }) => {
    const ladders = told.flatMap((state) => state.ladders.get(ladder ?? '') ?? [])
    const called = { ladder: ladders[0]?.title, rung: ladders.flatMap(({ rungs }) => rungs).find(({ id }) => id === rung)?.title, page: told.flatMap(({ pages }) => pages.get(page ?? '') ?? [])[0]?.title }
    return Object.fromEntries(Object.entries(called).filter(([, title]) => title !== undefined))
  }
}

const whole = (kind: 'ladder-added' | 'ladder-withdrawn', ladder: MeasuredLadder, weight: Weight): Change => {
  const side = { text: ladder.title }
  const at = placeOf(ladder.places, ['id'])
  return change({ kind, subject: { ladder: ladder.id }, name: 'ladder', weight, ...(kind === 'ladder-added' ? { after: side, is: at } : { before: side, was: at, unsafe: true }) })
}

/** What a key of handbook.yaml holds, one plain value after the other. */
function plainly(value: unknown): Held[] {
  if (value === undefined || value === null) return []
  return typeof value === 'object' ? Object.values(value).flatMap(plainly) : [{ words: String(value) }]
}

function handbookChanges({ handbook: before }: MeasuredCurriculum, { handbook: after }: MeasuredCurriculum): Change[] {
  const text = (value: unknown): string => (typeof value === 'object' ? JSON.stringify(value) : String(value ?? 'not given'))
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((key) => key !== 'edition' && key !== 'editions')
  return keys.flatMap((key) => {
    const [was, is] = [before, after].map((handbook) => handbook[key as keyof typeof handbook] as unknown)
    const side = (value: unknown): Side => ({ text: text(value), holds: plainly(value) })
    return text(was) === text(is) ? [] : [change({ kind: 'handbook-changed', subject: {}, name: key, weight: 'wording', before: side(was), after: side(is) })]
  })
}

function pageChanges({ pages: before }: MeasuredCurriculum, { pages: after }: MeasuredCurriculum): { typed: Change[]; followed: Change[] } {
  const followed: Change[] = []
  const then = new Map(before.map((page) => [page.id, page]))
  const now = new Map(after.map((page) => [page.id, page]))
  const came = after.flatMap((page) => {
    const was = then.get(page.id)
    const subject = { page: page.id }
    const is = placeOf(page.places, [])
    if (!was) return [change({ kind: 'page-added', subject, name: 'page', weight: 'growth', after: { text: page.title }, is })]
    const text = ({ title, summary, body }: typeof page): string => `${title}\n${summary}\n${body}`
    const own = text(was) === text(page) ? [] : [change({ kind: 'page-reworded', subject, name: 'page', weight: 'to judge', before: { text: was.title }, after: { text: page.title }, was: placeOf(was.places, []), is })]
    const typed = [...own, ...spokenChanges(was, page, subject)]
    followed.push(...spokenFollows(was, page, subject, typed.map(({ fingerprint }) => fingerprint)))
    return typed
  })
  const went = before.filter((page) => !now.has(page.id)).map((page) => change({ kind: 'page-withdrawn', subject: { page: page.id }, name: 'page', weight: 're-placing', before: { text: page.title }, was: placeOf(page.places, []), unsafe: true }))
  return { typed: [...came, ...went], followed }
}

const HEAVY: Record<Weight, number> = { 're-placing': 0, 'to judge': 1, growth: 2, wording: 3 }

/** What could hurt somebody first, then by weight; the order of the handbook within. */
const weightiest = (changes: readonly Change[]): Change[] => changes.toSorted((a, b) => Number(b.unsafe) - Number(a.unsafe) || HEAVY[a.weight] - HEAVY[b.weight])

/** What the next edition is, by the weightiest change in it. */
export function editionKind({ typed, followed }: Comparison): Weight | 'no change' {
  const [heaviest] = [...typed, ...followed].map(({ weight }) => weight).toSorted((a, b) => HEAVY[a] - HEAVY[b])
  return heaviest ?? 'no change'
}
