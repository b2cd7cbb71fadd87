import type { Interval } from '../quantity/spread.ts'
import type { Unit } from '../quantity/unit.ts'
import type { Place } from '../ladder/finding.ts'

/** Every kind of change, with the kind that undoes it. What is its own opposite changes one way as well as the other. */
export const OPPOSITE = {
  'ladder-added': 'ladder-withdrawn',
  'ladder-withdrawn': 'ladder-added',
  'rung-added': 'rung-withdrawn',
  'rung-withdrawn': 'rung-added',
  'rung-renamed': 'rung-renamed',
  'note-added': 'note-removed',
  'note-removed': 'note-added',
  'note-reworded': 'note-reworded',
  'supervision-raised': 'supervision-lowered',
  'supervision-lowered': 'supervision-raised',
  'criterion-raised': 'criterion-lowered',
  'criterion-lowered': 'criterion-raised',
  'criterion-given': 'criterion-taken-out',
  'criterion-taken-out': 'criterion-given',
  'criterion-unit-changed': 'criterion-unit-changed',
  'criterion-reworded': 'criterion-reworded',
  'form-point-added': 'form-point-removed',
  'form-point-removed': 'form-point-added',
  'demand-added': 'demand-dropped',
  'demand-dropped': 'demand-added',
  'set-up-raised': 'set-up-lowered',
  'set-up-lowered': 'set-up-raised',
  'set-up-changed': 'set-up-changed',
  'set-up-given': 'set-up-taken-out',
  'set-up-taken-out': 'set-up-given',
  'order-changed': 'order-changed',
  'aim-moved': 'aim-moved',
  'wording-changed': 'wording-changed',
  'list-changed': 'list-changed',
  'page-added': 'page-withdrawn',
  'page-withdrawn': 'page-added',
  'page-reworded': 'page-reworded',
  'handbook-changed': 'handbook-changed',
  'translation-added': 'translation-withdrawn',
  'translation-withdrawn': 'translation-added',
  'translation-reworded': 'translation-reworded',
  'translation-no-longer-stands': 'translation-stands-again',
  'translation-stands-again': 'translation-no-longer-stands',
  'load-rises': 'load-falls',
  'load-falls': 'load-rises',
  'load-now-computed': 'load-no-longer-computed',
  'load-no-longer-computed': 'load-now-computed',
  'step-steepens': 'step-eases',
  'step-eases': 'step-steepens',
  'steep-step-comes': 'steep-step-goes',
  'steep-step-goes': 'steep-step-comes',
  'step-now-told': 'step-no-longer-told',
  'step-no-longer-told': 'step-now-told',
  'first-reps-rise': 'first-reps-fall',
  'first-reps-fall': 'first-reps-rise',
  'least-entry-rises': 'least-entry-falls',
  'least-entry-falls': 'least-entry-rises',
  'block-lengthens': 'block-shortens',
  'block-shortens': 'block-lengthens',
  'placement-rises': 'placement-falls',
  'placement-falls': 'placement-rises',
  'seal-broken': 'seal-mended',
  'seal-mended': 'seal-broken',
} as const

/** What sort of change it is. */
export type ChangeKind = keyof typeof OPPOSITE

/** What a change is about. `rung` is the id it has now, or had if it is gone. */
export type Subject = { readonly ladder?: string; readonly rung?: string; readonly page?: string }

/** A rung by the id one types and the title one reads, as it was called in the state it is named from. */
export type Named = { readonly id: string; readonly title: string }

/** One thing a side holds, in parts, so that a page can say it in its own words: a rung, a silenced rule, a withdrawn rung's heir, a note taken out, a review, or words of a coach. */
export type Held =
  | { readonly rung: Named }
  | { readonly rule: string; readonly on?: Named; readonly until: string; readonly because: string }
  | { readonly gone: Named; readonly heir: Named }
  | { readonly note: string; readonly by: string; readonly because: string }
  | { readonly reviewer: string; readonly on: string }
  | { readonly words: string }

/**
 * A value before or after: as it is printed where ids are typed, and where it is a number, the number.
 *
 * ours    the text is a phrase of the program's own, or a name it knows, and no coach's words
 * holds   what the text names, for a place where titles are read
 */
export type Side = { readonly text: string; readonly number?: number; readonly unit?: Unit; readonly interval?: Interval; readonly ours?: true; readonly holds?: readonly Held[] }

/**
 * How much a change weighs for those the curriculum is for.
 *
 * wording      nobody is placed otherwise than before
 * growth       there is more to choose from, and nobody is placed otherwise
 * re-placing   an athlete placed correctly before may now be placed wrongly or unsafely
 * to judge     nothing in the data says which: somebody has to read it
 */
export type Weight = 'wording' | 'growth' | 're-placing' | 'to judge'

/** One change: what was typed, or what follows from it. */
export type Change = {
  readonly kind: ChangeKind
  readonly subject: Subject
  /** What of the subject changed: "entry reps", "hand_height_cm", "stop". */
  readonly name: string
  /** The rung whose id the name ends in: an heir, or where a step comes from. */
  readonly of?: Named
  /** What its subject is called, or was when it was last there. */
  readonly called?: { readonly ladder?: string; readonly rung?: string; readonly page?: string }
  readonly before?: Side
  readonly after?: Side
  readonly weight: Weight
  /** Somebody could be hurt: these come first. */
  readonly unsafe: boolean
  readonly was?: Place
  readonly is?: Place
  /** For what follows: the fingerprints of the typed changes it follows from. */
  readonly causes: readonly string[]
  /** For a placement: an athlete who stood there, and stands elsewhere now. */
  readonly example?: Example
  readonly fingerprint: string
}

/** An athlete of the average body, with one strict set, placed before and after. */
export type Example = { readonly ladder: string; readonly on: string; readonly reps: number; readonly reserve_reps: number; readonly stood: string; readonly stands: string; readonly titles: { readonly on: string; readonly stood: string; readonly stands: string } }

/** What was typed, and what follows; never mixed. */
export type Comparison = { readonly typed: readonly Change[]; readonly followed: readonly Change[] }
