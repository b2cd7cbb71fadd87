import { figureText, intervalText } from '../quantity/figure.ts'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import type { Load } from '../load/model.ts'
import { MOST_REPS } from '../load/repetitions.ts'
import { placeOf } from '../ladder/finding.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { repsText, type Prediction, type Reps } from '../measure/predict.ts'
import type { Step, StepKind } from '../measure/step.ts'
import type { Change, ChangeKind, Named, Side, Subject } from './change.ts'
import { change, named } from './make.ts'
import type { Pair } from './typed.ts'

/** Typed changes of a ladder that touch any of these rungs, or the whole ladder under one of these names. */
export function causesOf(typed: readonly Change[], rungs: readonly string[], names: RegExp): string[] {
  return typed.filter(({ subject, name }) => (subject.rung === undefined ? names.test(name) : rungs.includes(subject.rung) && TOUCHES.test(name))).map(({ fingerprint }) => fingerprint)
}

/** What on a rung decides its numbers: everything but its wording. */
const TOUCHES = /^(?!(title|introduction|set-up|cues|faults|notes|first_side|equipment|cautions|form|full rep|supervision)$)/
const STANDARD = /^(standard|first_reps|sessions_per_week)/

/** Loads closer than a hundredth of a percent are the same digits in other clothes. */
const SAME = 1e-4

const loadSide = (outcome: Outcome<Load>): Side | undefined => {
  if (isMissing(outcome)) return undefined
  const { unit } = outcome.quantity
  const ends = interval(outcome.load)
  return { text: `${figureText(outcome.load.mid, unit)} (${intervalText(ends, unit)})`, number: outcome.load.mid, unit, interval: ends }
}

/** What a load is a load of, and in which unit. */
const quantityOf = (outcome: Outcome<Load>): string | undefined => (isMissing(outcome) ? undefined : `${outcome.quantity.name}, ${outcome.quantity.unit}`)

/** Everything that follows in one ladder from what was typed in it. Each follow-on names its causes. */
export function followedIn(pair: Pair, typed: readonly Change[]): Change[] {
  return [...pair.rungs.flatMap(([was, is]) => loadFollows(was, is, pair, typed)), ...stepsFollow(pair, typed), ...steepStepsFollow(pair, typed), ...sealFollows(pair, typed)]
}

function loadFollows(was: MeasuredRung, is: MeasuredRung, pair: Pair, typed: readonly Change[]): Change[] {
  const [before, after] = [loadSide(was.outcome), loadSide(is.outcome)]
  const make = (kind: ChangeKind): Change[] => [
    change({ kind, subject: { ladder: pair.after.id, rung: is.id }, name: 'load', weight: 're-placing', before, after, causes: causesOf(typed, [is.id], /^$/), ...placesOf(pair, is.id) }),
  ]
  if (before === undefined && after === undefined) return []
  if (before === undefined) return make('load-now-computed')
  if (after === undefined) return make('load-no-longer-computed')
  const [a, b] = [before.number ?? 0, after.number ?? 0]
  if (quantityOf(was.outcome) !== quantityOf(is.outcome)) return [] // of two different things neither is more
  if (Math.abs(b - a) <= SAME * Math.max(1, Math.abs(a))) return []
  return make(b > a ? 'load-rises' : 'load-falls')
}

const placesOf = ({ before, after }: Pair, rung: string) => ({ was: placeOf(before.places, ['rungs', rung]), is: placeOf(after.places, ['rungs', rung]) })

/** Steps that are in both, by the rungs they join. */
function stepsFollow(pair: Pair, typed: readonly Change[]): Change[] {
  const renamed = new Map(pair.rungs.map(([was, is]) => [was.id, is.id]))
  return pair.rungs.flatMap(([was, is]) =>
    is.steps.flatMap((after) => {
      const before = was.steps.find(({ from }) => (renamed.get(from) ?? from) === after.from)
      if (!before) return []
      const causes = causesOf(typed, [after.from, after.to], STANDARD)
      const subject = { ladder: pair.after.id, rung: is.id }
      const common = { causes, from: named(pair.after, after.from), ...placesOf(pair, is.id) }
      return [...kindFollows(before, after, subject, common), ...figuresFollow(before, after, subject, common)]
    }),
  )
}

/** Steps that are in one version only and too steep there; what else came or went is in what was typed. */
function steepStepsFollow({ before, after, rungs }: Pair, typed: readonly Change[]): Change[] {
  const renamed = new Map(rungs.map(([was, is]) => [was.id, is.id]))
  const now = (id: string): string => renamed.get(id) ?? id
  const steep = (ladder: MeasuredLadder): Step[] => ladder.rungs.flatMap(({ steps }) => steps.filter(({ kind }) => kind === 'too steep'))
  const joins = (ladder: MeasuredLadder, name: (id: string) => string): Set<string> => new Set(ladder.rungs.flatMap(({ steps }) => steps.map(({ from, to }) => `${name(from)} ${name(to)}`)))
  const [then, today] = [joins(before, now), joins(after, (id) => id)]
  const make = (kind: ChangeKind, { from, to }: Step, sides: Pick<Change, 'before' | 'after'>, place: Pick<Change, 'was' | 'is'>): Change =>
    change({ kind, subject: { ladder: after.id, rung: to }, name: 'step from', of: rungs.some(([, is]) => is.id === from) ? named(after, from) : named(before, from), weight: 're-placing', ...sides, unsafe: kind === 'steep-step-comes', causes: causesOf(typed, [from, to], /^(standard|first_reps)/), ...place })
  return [
    ...steep(after).filter(({ from, to }) => !then.has(`${from} ${to}`)).map((step) => make('steep-step-comes', step, { after: { text: 'too steep', ours: true } }, { is: placeOf(after.places, ['rungs', step.to]) })),
    ...steep(before).filter(({ from, to }) => !today.has(`${now(from)} ${now(to)}`)).map((step) => make('steep-step-goes', { ...step, from: now(step.from), to: now(step.to) }, { before: { text: 'too steep', ours: true } }, { was: placeOf(before.places, ['rungs', step.to]) })),
  ]
}

/** Of what steps have in common, all but the rung they come from, which stands in the name. */
const placed = ({ from: _, ...others }: Common): Omit<Common, 'from'> => others

type Common = Pick<Change, 'causes' | 'was' | 'is'> & { readonly from: Named }

/** How steep each kind of step is; where one cannot be told there is no order. */
const STEEP: Record<StepKind, number> = { backwards: 0, level: 1, comfortable: 2, uncertain: 3, 'too steep': 4 }

function kindFollows(before: Step, after: Step, subject: Subject, common: Common): Change[] {
  const [was, is] = [before.kind, after.kind]
  const side = (kind: Outcome<StepKind>): Side | undefined => (isMissing(kind) ? undefined : { text: kind, ours: true })
  const make = (kind: ChangeKind, unsafe = false): Change[] => [change({ kind, subject, name: 'step from', of: common.from, weight: 're-placing', before: side(was), after: side(is), unsafe, ...placed(common) })]
  if (isMissing(was) && isMissing(is)) return []
  if (isMissing(was)) return make('step-now-told', is === 'too steep')
  if (isMissing(is)) return make('step-no-longer-told')
  return was === is ? [] : make(STEEP[is] > STEEP[was] ? 'step-steepens' : 'step-eases', is === 'too steep')
}

const count = (reps: Reps): number => (reps === 'beyond' ? MOST_REPS + 1 : reps)

/** Whether an interval lies higher than before: by its middle, or where that stays by its lower end. Never so both ways. */
const rises = ([a = 0, b = 0]: readonly number[], [c = 0, d = 0]: readonly number[]): boolean => (c + d === a + b ? c > a : c + d > a + b)

function figuresFollow(before: Step, after: Step, subject: Subject, common: Common): Change[] {
  const found: Change[] = []
  const add = (up: ChangeKind, down: ChangeKind, name: string, was: Side, is: Side, rises: boolean): void =>
    void found.push(change({ kind: rises ? up : down, subject, name: `${name} from`, of: common.from, weight: 're-placing', before: was, after: is, ...placed(common) }))
  const [p, q] = [before.predicted, after.predicted]
  if (!isMissing(p) && !isMissing(q) && repsText(p) !== repsText(q)) {
    const side = (prediction: Prediction): Side => ({ text: `${repsText(prediction)} reps`, number: count(prediction.low), unit: 'reps' })
    add('first-reps-rise', 'first-reps-fall', 'first reps', side(p), side(q), rises([p.low, p.high].map(count), [q.low, q.high].map(count)))
  }
  const [m, n] = [before.computed_entry, after.computed_entry]
  if (!isMissing(m) && !isMissing(n) && m !== n) add('least-entry-rises', 'least-entry-falls', 'least entry', { text: figureText(m, 'reps'), number: m, unit: 'reps' }, { text: figureText(n, 'reps'), number: n, unit: 'reps' }, n > m)
  const [b, c] = [before.block, after.block]
  if (!isMissing(b) && !isMissing(c) && b.weeks.join() !== c.weeks.join()) {
    const side = (weeks: readonly [number, number]): Side => ({ text: intervalText({ low: weeks[0], high: weeks[1] }, 'weeks'), number: weeks[1], unit: 'weeks' })
    add('block-lengthens', 'block-shortens', 'time on the rung', side(b.weeks), side(c.weeks), rises(b.weeks, c.weeks))
  }
  return found
}

/** What a reviewer signs though nobody is placed otherwise by it: a rung's id, and the rest between sets. */
const SIGNED_WORDING = /^(id|standard rest_s)$/

/** A seal that matched what it signs and no longer does, or the other way round. A review that came or went is neither. */
function sealFollows({ before, after }: Pair, typed: readonly Change[]): Change[] {
  if (before.sealed === undefined || after.sealed === undefined || before.sealed === after.sealed) return []
  const broken = before.sealed
  return [
    change({
      kind: broken ? 'seal-broken' : 'seal-mended',
      subject: { ladder: after.id },
      name: 'review',
      weight: 'to judge',
      before: { text: before.review ? `${before.review.by}, ${before.review.on}` : 'none' },
      after: { text: after.review ? `${after.review.by}, ${after.review.on}` : 'none' },
      causes: typed.filter(({ weight, name }) => weight !== 'wording' || SIGNED_WORDING.test(name)).map(({ fingerprint }) => fingerprint),
      is: placeOf(after.places, ['review']),
    }),
  ]
}
