/** The picture that stands beside a link to a ladder: its loads as lengths, no letters, so that it is the same on every machine. */
import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import type { Handbook } from '../ladder/schema.ts'
import { accentOf, LIGHT_PAPER, STARTER_ACCENT } from './accent.ts'
import type { Address } from './address.ts'
import { iconShapes } from './icon.ts'
import { heaviest } from './rail.ts'
import type { Picture, Shape } from './shape.ts'

/** The size that readers of links ask for. Units px. */
export const SHARE = { wide: 1200, high: 630 } as const
const INK = '#1d1b18'
const SOFT = '#e2dccd'
const MARGIN = 70
/** Where rails begin and end. */
const FROM = 380
const TO = SHARE.wide - MARGIN
/** No rail is higher or further from the next than this. */
const PITCH = 54

/** Where the picture of a ladder is, or of the handbook. */
export const shareAddress = (ladder: string | undefined): Address => `/assets/share/${ladder ?? 'handbook'}.png`

const accentIn = (handbook: Handbook): string => accentOf(handbook.colours?.accent ?? STARTER_ACCENT).onLight

const picture = (accent: string, shapes: readonly Shape[]): Picture => ({ ...SHARE, ground: LIGHT_PAPER, shapes: [...iconShapes(accent, MARGIN, (SHARE.high - 240) / 2, 240), ...shapes] })

/** Rails one under the other, each with a bar from `low` to `high`, and a mark at the aim. */
function rails(rows: readonly { readonly low: number; readonly high: number; readonly known: boolean; readonly aim: boolean }[], accent: string): Shape[] {
  const pitch = Math.min(PITCH, (SHARE.high - 2 * MARGIN) / rows.length)
  const thick = pitch * 0.56
  const top = (SHARE.high - pitch * rows.length) / 2 + (pitch - thick) / 2
  return rows.flatMap(({ low, high, known, aim }, index): Shape[] => {
    const y = top + index * pitch
    const at = (share: number): number => FROM + share * (TO - FROM)
    const rail: Shape = { kind: 'box', at: [FROM, y + thick * 0.38], wide: TO - FROM, high: thick * 0.24, colour: SOFT }
    const bar: Shape[] = known ? [{ kind: 'box', at: [at(low), y], wide: Math.max(at(high) - at(low), 4), high: thick, colour: accent }] : []
    const mark: Shape[] = aim ? [{ kind: 'stroke', from: [FROM - 34, y + thick / 2], to: [FROM - 20, y + thick / 2], thick: thick * 0.7, colour: INK }] : []
    return [rail, ...bar, ...mark]
  })
}

/** A ladder: a bar a rung, as long as its load is, the aim marked; a rung without a load has its rail alone. */
export function ladderPicture(ladder: MeasuredLadder, handbook: Handbook): Picture {
  const accent = accentIn(handbook)
  const rows = ladder.rungs.map(({ id, outcome }) => {
    const end = isMissing(outcome) ? 0 : heaviest(ladder, outcome.quantity.name)
    return { low: 0, high: isMissing(outcome) || end === 0 ? 0 : outcome.load.mid / end, known: !isMissing(outcome) && end > 0, aim: id === ladder.aim }
  })
  return picture(accent, rails(rows, accent))
}

/** The handbook: a bar a ladder, from its lightest rung to its heaviest. */
export function handbookPicture(ladders: readonly MeasuredLadder[], handbook: Handbook): Picture {
  const accent = accentIn(handbook)
  const rows = ladders.map((ladder) => {
    const known = ladder.rungs.flatMap(({ outcome }) => (isMissing(outcome) ? [] : [{ mid: outcome.load.mid, end: heaviest(ladder, outcome.quantity.name) }]))
    const shares = known.flatMap(({ mid, end }) => (end === 0 ? [] : [mid / end]))
    return { low: Math.min(1, ...shares), high: Math.max(0, ...shares), known: shares.length > 0, aim: false }
  })
  return picture(accent, rails(rows, accent))
}
