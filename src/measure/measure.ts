import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { once, onceInUse } from '../quantity/once.ts'
import { interval } from '../quantity/spread.ts'
import { REFERENCE_MASS_KG, REFERENCE_STATURE_M } from '../load/body.ts'
import { modelNamed } from '../load/index.ts'
import { askDrawn } from '../load/drawn.ts'
import type { Athlete, Inputs, Load, LoadModel } from '../load/model.ts'
import type { Curriculum, Ladder, Page, Rung } from '../ladder/curriculum.ts'
import { placeOf, type Path, type Place } from '../ladder/finding.ts'
import { criteriaDigest } from '../ladder/digest.ts'
import type { WordLists } from '../ladder/translation.ts'
import { GENERATED_PAGES } from '../ladder/words.ts'
import { fullEntry, type FullEntry } from './entry.ts'
import { stepOf, type Step } from './step.ts'

/** A rung with its load, and the steps that lead to it. */
export type MeasuredRung = Rung & {
  readonly model: LoadModel
  /** What the coach wrote under `load`, less the model's name. */
  readonly inputs: Inputs
  readonly outcome: Outcome<Load>
  /** What must be shown on this rung before the next, by the ladder's standard. */
  readonly standard: FullEntry
  /** One step from each rung it follows. */
  readonly steps: readonly Step[]
}

/** What a ladder may point at: addresses of rungs, ladders and pages of the same handbook. */
export type Known = { readonly rungs: ReadonlySet<string>; readonly pages: ReadonlySet<string> }

/** A ladder with its rungs measured, and what its prose may point at. */
export type MeasuredLadder = Omit<Ladder, 'rungs'> & {
  readonly rungs: readonly MeasuredRung[]
  readonly known: Known
  /** Digest of criteria, loads and safety: what a reviewer signs. */
  readonly digest: string
  /** Whether the review's seal matches; undefined where there is none. */
  readonly sealed: boolean | undefined
}

/** A page of the handbook, and what it may point at. */
export type MeasuredPage = Page & { readonly known: Known }

/** A curriculum with a number, or a reason, on every rung and step. */
export type MeasuredCurriculum = { readonly handbook: Curriculum['handbook']; readonly logo?: string; readonly ladders: readonly MeasuredLadder[]; readonly pages: readonly MeasuredPage[]; readonly words?: WordLists }

/** The body a handbook's figures are for, until a reader gives their own. */
export const AVERAGE: Athlete = { stature_m: REFERENCE_STATURE_M, mass_kg: REFERENCE_MASS_KG }

/**
 * Puts a number, or a reason, on every rung and every step.
 *
 * Shape   n ladders to n ladders, their rungs in the same order.
 */
export function measure(curriculum: Curriculum, athlete: Athlete = AVERAGE, memory: Memory = new WeakMap()): MeasuredCurriculum {
  const fresh = knownIn(curriculum)
  const known = knownBefore(curriculum, memory, fresh) ?? fresh
  return {
    handbook: curriculum.handbook,
    ...(curriculum.logo === undefined ? {} : { logo: curriculum.logo }),
    ...(curriculum.words ? { words: curriculum.words } : {}),
    ladders: curriculum.ladders.map((ladder) => remembered(ladder, known, athlete, memory)),
    pages: curriculum.pages.map((page) => ({ ...page, known })),
  }
}

/** What a check goes through, ladder by ladder. */
export type InTurn = { readonly ladders: Iterable<MeasuredLadder>; readonly pages: readonly MeasuredPage[] }

/**
 * The same for who looks at each ladder once, of a part of a curriculum or of all: it is measured when its turn comes and held by nobody after it,
 * so that ten thousand take little more room than what was read.
 */
export const measureInTurn = ({ ladders, pages }: Pick<Curriculum, 'ladders' | 'pages'>, known: Known): InTurn => ({ ladders: eachMeasured(ladders, known), pages: pages.map((page) => ({ ...page, known })) })

function* eachMeasured(ladders: readonly Ladder[], known: Known): Generator<MeasuredLadder> {
  for (const ladder of ladders) yield measureLadder(ladder, known)
}

/** Everything in a curriculum that may be pointed at. */
export const knownIn = ({ ladders, pages }: Curriculum): Known => ({
  rungs: new Set(ladders.flatMap(({ id, rungs }) => [id, ...rungs.map((rung) => `${id}/${rung.id}`)])),
  pages: new Set([...GENERATED_PAGES, ...pages.map(({ id }) => id)]),
})

/** Ladders that were measured before, by the very rungs that were read; so that two states of a curriculum share what did not change. */
export type Memory = WeakMap<Ladder['rungs'], { readonly from: Ladder; readonly measured: MeasuredLadder }>

/** The very same value where neither the ladder nor what it may point at is another. */
function remembered(ladder: Ladder, known: Known, athlete: Athlete, memory: Memory): MeasuredLadder {
  const before = memory.get(ladder.rungs)
  if (before?.from === ladder && before.measured.known === known) return before.measured
  const { rungs, digest, sealed } = before?.measured ?? measureLadder(ladder, known, athlete)
  const measured = { ...ladder, rungs, digest, sealed, known }
  memory.set(ladder.rungs, { from: ladder, measured })
  return measured
}

/** What was known before, where it is what is known now: then a ladder that did not change is the very same value. */
function knownBefore({ ladders }: Curriculum, memory: Memory, fresh: Known): Known | undefined {
  const before = new Set(ladders.map((ladder) => memory.get(ladder.rungs)?.measured.known))
  return [...before].find((known) => known && same(known.rungs, fresh.rungs) && same(known.pages, fresh.pages))
}

const same = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean => one.size === other.size && [...one].every((name) => other.has(name))

/** Measures one ladder. */
export function measureLadder(ladder: Ladder, known: Known, athlete: Athlete = AVERAGE): MeasuredLadder {
  const loads = ladder.rungs.map((rung) => {
    const { model: name, ...inputs } = rung.load
    const model = modelNamed(name)
    if (!model) throw new Error(`bug: no load model is named ${name}`)
    const asked = (): Outcome<Load> => askDrawn(model, inputs as Inputs, athlete)
    return { ...rung, model, inputs: inputs as Inputs, outcome: light(asked(), onceInUse(asked)) }
  })
  const byId = new Map(loads.map((rung) => [rung.id, rung]))
  const standard = fullEntry(ladder.standard, {})
  const rungs = loads.map((rung): MeasuredRung => {
    const entry = fullEntry(ladder.standard, rung.entry)
    const steps = rung.after.flatMap((below) => {
      const from = byId.get(below)
      return from && from !== rung ? [stepOf({ from, to: rung, athlete, entry, standard, first_reps: ladder.first_reps, sessions_per_week: ladder.sessions_per_week })] : []
    })
    return { ...rung, standard, steps }
  })
  const digest = once(() => criteriaDigest(ladder))
  const seal = ladder.review?.seal
  return {
    ...ladder,
    rungs,
    known,
    get digest() {
      return digest()
    },
    sealed: seal === undefined ? undefined : seal === digest(),
  }
}

/** Keeps of each figure beside the load only its middle and ends: a curriculum holds thousands, and nothing divides them body by body. What is drawn is asked for again. */
function light(outcome: Outcome<Load>, again: () => Outcome<Load>): Outcome<Load> {
  if (isMissing(outcome)) return outcome
  const figures = outcome.figures.map((figure) => {
    if (isMissing(figure.value)) return figure
    const { low, mid, high } = interval(figure.value)
    return { ...figure, value: { mid, points: [low, high], over: 'ends' } }
  })
  const { quantity, load, working, cautions } = outcome
  return {
    quantity,
    load,
    figures,
    working,
    cautions,
    get poses() {
      return drawnIn(again()).poses
    },
    get assumes() {
      return drawnIn(again()).assumes
    },
  }
}

function drawnIn(outcome: Outcome<Load>): Load {
  if (isMissing(outcome)) throw new Error('bug: a load that was told is not told again')
  return outcome
}

/** The line a finding about this ladder or page should point at. */
export const placeIn = ({ places }: { readonly places: Ladder['places'] }, path: Path): Place => placeOf(places, path)
