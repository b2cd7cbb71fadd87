import { missing, type Outcome } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { besideStandard, cardCautions, cardEntry, cardLoad, cardWatch, commonQuantity, plainLine } from './card-words.ts'
import { joined, say } from './html.ts'
import { heightIn, sum, type Column } from './room.ts'
import type { Tongue } from './tongue.ts'

/** Type of a wall card at A4 and Letter; on A3 the same card is larger. Units pt. */
const TEXT = { size_pt: 9, line: 1.3 }
const TITLE = { size_pt: 10.5, line: 1.3 }
/** Columns that are alike on every paper, the room between rows, and that of a note's heading. Units mm. */
const LOAD: Column = { wide_mm: 35, ...TEXT }
const ENTRY: Column = { wide_mm: 28, ...TEXT }
const ROW_MM = 1.9
const HEADING_MM = 7

/** Room for rungs on one paper: its height, and the widths of a title and of a caution. Units mm. */
type Paper = { readonly high_mm: number; readonly title_mm: number; readonly caution_mm: number }

/** Room beside a column of notes, on A4 and Letter lying; the notes' own width and height are those of the narrower and the lower. Units mm. */
const LYING = {
  usual: { papers: [{ high_mm: 155, title_mm: 69, caution_mm: 143 }, { high_mm: 161, title_mm: 61, caution_mm: 131 }], note_mm: 75, notes_mm: 130 },
  long: { papers: [{ high_mm: 155, title_mm: 58, caution_mm: 127 }, { high_mm: 161, title_mm: 51, caution_mm: 116 }], note_mm: 90, notes_mm: 135 },
} as const
/** Room above three columns of notes on standing paper: as wide as A4, as high as Letter. Units mm. */
const STANDING = { high_mm: 207, title_mm: 73, caution_mm: 150, note_mm: 56 }

/** The sheets of a wall card. `notes` says how wide the column of notes has to be on lying paper. */
export type WallSheets = { readonly notes: keyof typeof LYING; readonly sheets: readonly (readonly MeasuredRung[])[] }

const noteHeights = ({ form, stop, ask_first }: MeasuredLadder, wide_mm: number, tongue: Tongue): number[] => [form, stop, ask_first].map((texts) => HEADING_MM + heightIn(tongue)(texts.map(plainLine), { wide_mm, ...TEXT }))

function rowHeight(rung: MeasuredRung, ladder: MeasuredLadder, { title_mm, caution_mm }: Paper, tongue: Tongue): number {
  const textHeight = heightIn(tongue)
  const demand = rung.demand.length > 0 ? [say`also: ${joined(rung.demand, ', ')}`] : []
  const title = textHeight([[rung.title, rung.id === ladder.aim && [' ', 'the aim']], ...demand], { wide_mm: title_mm, ...TITLE })
  const load = textHeight([cardLoad(rung, commonQuantity(ladder))], LOAD)
  const care = textHeight([...cardWatch(rung, ladder), ...cardCautions(rung)], { wide_mm: caution_mm, ...TEXT })
  return ROW_MM + Math.max(Math.max(title, load) + care, textHeight(cardEntry(rung, ladder, besideStandard(ladder)), ENTRY))
}

/**
 * The rungs of a wall card, sheet by sheet, so that every sheet fits A4 and Letter, standing and lying: as few as do, each about as full as the others.
 *
 * Shape   n rungs to sheets of n rungs together, same order; each sheet carries the ladder's notes as well.
 * Missing when the notes leave no room for a rung.
 */
export function wallSheets(ladder: MeasuredLadder, tongue: Tongue): Outcome<WallSheets> {
  const notes = (['usual', 'long'] as const).find((kind) => sum(noteHeights(ladder, LYING[kind].note_mm, tongue)) <= LYING[kind].notes_mm)
  const standing = { ...STANDING, high_mm: STANDING.high_mm - Math.max(...noteHeights(ladder, STANDING.note_mm, tongue)) }
  const papers: Paper[] = [standing, ...LYING[notes ?? 'long'].papers]
  const rows = ladder.rungs.map((rung) => ({ rung, parts: papers.map((paper) => rowHeight(rung, ladder, paper, tongue) / paper.high_mm) }))
  const highest = Math.max(...rows.flatMap(({ parts }) => parts))
  if (notes === undefined || standing.high_mm <= 0 || highest > 1) return missing('its form points, stop signs and ask-first list leave no room for a rung on the same sheet')
  const full = filled(rows, 1)
  const even = full.length === 1 ? full : Array.from({ length: 100 }, (_, percent) => filled(rows, Math.max(percent / 100, highest))).find((sheets) => sheets.length === full.length)
  return { notes, sheets: (even ?? full).map((sheet) => sheet.map(({ rung }) => rung)) }
}

/** Rows laid on sheets one after the other, each filled to a part of its height on every paper. */
function filled<Row extends { readonly parts: readonly number[] }>(rows: readonly Row[], most: number): Row[][] {
  const sheets: Row[][] = []
  let used: number[] = []
  for (const row of rows) {
    const together = row.parts.map((part, paper) => part + (used[paper] ?? 0))
    const fits = sheets.length > 0 && together.every((part) => part <= most)
    if (fits) sheets.at(-1)?.push(row)
    else sheets.push([row])
    used = fits ? together : [...row.parts]
  }
  return sheets
}
