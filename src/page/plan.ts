import { escaped } from './escaped.ts'
import { piecesOf, type Context, type Hole, type Piece } from './template.ts'
import type { Entry, Tongue } from './tongue.ts'

type Sentence = Extract<Piece, { kind: 'sentence' }>

/** A sentence with a form for each kind of number in it, by what is said. */
export type Plural = { readonly sentence: Sentence; readonly entry: Exclude<Entry, string>; readonly forms: ReadonlyMap<string, Plan> }
/** A sentence that a language has no words for. */
export type Unsaid = { readonly sentence: Sentence; readonly plain: Plan }

/** A template as one language writes it: markup as it stands, holes to be filled, and sentences that are not settled until they are. */
export type Plan = readonly (string | Hole | Plural | Unsaid)[]

export const isHole = (step: Exclude<Plan[number], string>): step is Hole => 'index' in step
export const isPlural = (step: Plural | Unsaid): step is Plural => 'forms' in step

/** The plan of a template that stands in a context; worked out once in each language. */
export function planOf(strings: readonly string[], context: Context, tongue: Tongue): Plan {
  const kept = tongue.plans.get(strings)
  const before = kept?.get(context)
  if (before) return before
  const plan = planned(piecesOf(strings, context), tongue)
  if (kept) kept.set(context, plan)
  else tongue.plans.set(strings, new Map([[context, plan]]))
  return plan
}

const planned = (pieces: readonly Piece[], tongue: Tongue): Plan => merged(pieces.flatMap((piece): Plan => (piece.kind === 'markup' ? [piece.text] : piece.kind === 'hole' ? [piece] : settled(piece, tongue))))

/** Markup side by side as one. */
function merged(plan: Plan): Plan {
  const whole: Plan[number][] = []
  for (const step of plan) {
    const last = whole.at(-1)
    if (typeof step === 'string' && typeof last === 'string') whole[whole.length - 1] = last + step
    else whole.push(step)
  }
  return whole
}

/** A sentence as it stands where its language is English, or the language's own. */
function settled(sentence: Sentence, tongue: Tongue): Plan {
  const entry = tongue.entry(sentence.key)
  if (typeof entry === 'string') return said(entry, sentence, tongue)
  if (entry) return [{ sentence, entry, forms: new Map(Object.values(entry).flatMap((form) => (typeof form === 'string' ? [[form, said(form, sentence, tongue)] as const] : []))) }]
  const plain = planned(sentence.pieces, tongue)
  return tongue.foreign ? [{ sentence, plain }] : plain
}

/** What is said for a sentence, its holes and elements put where the language wants them. */
function said(form: string, { holes, tags, before, after }: Sentence, tongue: Tongue): Plan {
  const placed = (token: string): Plan => {
    const hole = holes[Number(/^\{(\d+)\}$/.exec(token)?.[1] ?? 0) - 1]
    if (hole) return [hole]
    const nth = /^<(\/?)(\d+)\/?>$/.exec(token)
    const tag = nth && tags[Number(nth[2]) - 1]
    if (!nth || !tag) return [escaped(token)]
    return nth[1] === '/' ? [tag.close] : planned(tag.open, tongue)
  }
  return merged([before, ...form.split(/(\{\d+\}|<\/?\d+\/?>)/).flatMap(placed), after])
}
