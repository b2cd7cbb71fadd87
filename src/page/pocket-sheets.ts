import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { rungAddress } from './address.ts'
import { cardCautions, cardEntry, cardLoad, footText, placeText, plainLine, plainLines, type Imprint } from './card-words.ts'
import { asIs, joined, say, type Part } from './html.ts'
import { heightIn, sum, type Column } from './room.ts'
import { supervisionText } from './safety.ts'
import type { Tongue } from './tongue.ts'

/** How many places of A6 a card takes on its A4 sheet: one, two side by side, or the whole sheet. */
export type Places = 1 | 2 | 4

/** A rung's card: its size, as much of its set-up as there is room for, and whether its safety fits on any card at all. */
export type PocketPlan = { readonly rung: MeasuredRung; readonly places: Places; readonly set_up: readonly string[]; readonly whole: boolean; readonly safe: boolean }

/** What an A6 card holds inside its margins, and the width beside its code. Units mm, pt. */
const HIGH_MM = 134
const TEXT: Column = { wide_mm: 90, size_pt: 7.5, line: 1.25 }
const BESIDE: Column = { wide_mm: 61, size_pt: 7.5, line: 1.25 }
const TITLE: Column = { wide_mm: 61, size_pt: 12, line: 1.2 }
const CUES: Column = { wide_mm: 90, size_pt: 9, line: 1.25 }
/** The code, the pictures beside it, and the room between two paragraphs. Units mm. */
const CODE_MM = 25
const PICTURES_MM = 21
const BETWEEN_MM = 1.1
/** Less set-up than this is no help. */
const LEAST_LINES = 2

const hasPicture = ({ outcome }: MeasuredRung): boolean => !('missing' in outcome) && outcome.poses.length > 0

/** What a card has to hold whatever else it leaves out, from top to bottom. */
function heldHeight(rung: MeasuredRung, ladder: MeasuredLadder, imprint: Imprint, tongue: Tongue): number {
  const textHeight = heightIn(tongue)
  const run = (heading: string, texts: readonly Part[]): number => (texts.length === 0 ? 0 : BETWEEN_MM + textHeight([[heading, ' ', joined(texts, '; ')]], TEXT))
  const title = textHeight([placeText(rung, ladder)], BESIDE) + textHeight([rung.title], TITLE)
  const facts: Part[] = [[cardLoad(rung), say`; also: ${joined(rung.demand, ', ')}`], ...cardEntry(rung, ladder).map((line) => ['Before this rung:', ' ', line])]
  return sum([
    Math.max(CODE_MM, title + (hasPicture(rung) ? PICTURES_MM : textHeight(facts, BESIDE))),
    hasPicture(rung) ? BETWEEN_MM + textHeight(facts, TEXT) : 0,
    BETWEEN_MM + textHeight((rung.words?.cues ?? []).map(plainLine), CUES),
    run('Watching', [supervisionText(rung.supervision ?? ladder.supervision)]),
    run('Take care', cardCautions(rung)),
    run('Stop when', ladder.stop.map(plainLine)),
    run('Ask a clinician first', ladder.ask_first.map(plainLine)),
    BETWEEN_MM + textHeight([footText(imprint, rungAddress(ladder.id, rung.id))], TEXT),
  ])
}

/** How large a rung's card has to be so that all of its safety stands on it, and how much set-up fits besides. */
export function pocketPlan(rung: MeasuredRung, ladder: MeasuredLadder, imprint: Imprint, tongue: Tongue): PocketPlan {
  const textHeight = heightIn(tongue)
  const lines = plainLines(rung.words?.set_up ?? '')
  const held = heldHeight(rung, ladder, imprint, tongue)
  const least = textHeight(['Set up', ...lines.map(asIs)].slice(0, LEAST_LINES), TEXT)
  const places = ([1, 2, 4] as const).find((count) => held + least <= roomOf(count))
  if (places === undefined) return { rung, places: 1, set_up: [], whole: false, safe: false }
  const fits = lines.filter((_, index) => held + BETWEEN_MM + textHeight([['Set up', ' ', asIs(lines.slice(0, index + 1).join(' ')), ' ', 'More by the code.']], TEXT) <= roomOf(places))
  return { rung, places, set_up: fits, whole: fits.length === lines.length, safe: true }
}

/** A larger card sets its text in two columns, whose ends do not meet exactly. */
const roomOf = (places: Places): number => HIGH_MM * places * (places === 1 ? 1 : 0.92)

/** Cards laid on sheets of four places in order; a wide card begins a row. */
export function pocketSheets(plans: readonly PocketPlan[]): PocketPlan[][] {
  const sheets: PocketPlan[][] = [[]]
  let used = 0
  for (const plan of plans) {
    const at = plan.places === 2 ? used + (used % 2) : used
    if (at + plan.places > 4) {
      sheets.push([])
      used = plan.places
    } else used = at + plan.places
    sheets.at(-1)?.push(plan)
  }
  return sheets
}
