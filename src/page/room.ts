/**
 * How much of a sheet words will take, before anybody has laid them out.
 *
 * Whatever belongs to the safety of a rung has to be on the sheet of the rung, so sheets are cut by us and not by the printer.
 * Letters are as wide as those of DejaVu Sans and Verdana, the widest in common use: too much room is better than too little.
 */

import { onceUnder } from '../quantity/once.ts'
import type { Part } from './html.ts'
import type { Tongue } from './tongue.ts'
import { spoken } from './written.ts'

/** Widths of letters as parts of the size of the type: the first kind that holds a letter counts. */
const WIDTHS: readonly (readonly [letters: RegExp, wide: number])[] = [
  [/[iljI'’.,:;|! ]/, 0.32],
  [/[tfr()[\]/-]/, 0.4],
  [/[mwMW@%▲–]/, 0.95],
  [/[\u2e80-\uffff]/, 1],
  [/[A-Z0-9_+=<>&#~≥≤×]/, 0.66],
]
const OTHER = 0.61
const MM_PER_PT = 25.4 / 72

/** A column of type, and the height of its lines as a part of the size of the type. Units mm, pt. */
export type Column = { readonly wide_mm: number; readonly size_pt: number; readonly line: number }

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** Widths by code point, each found when its letter first comes up. */
const widths: number[] = []

const widthOf = (letter: string): number => WIDTHS.find(([letters]) => letters.test(letter))?.[1] ?? OTHER

function wideOf(word: string): number {
  let wide = 0
  for (const letter of word) wide += widths[letter.codePointAt(0) ?? 0] ??= widthOf(letter)
  return wide
}

/** The same texts are set in columns of several widths: on each paper, on each kind of card. */
const KEPT_TEXTS = 5000
const kept = onceUnder<readonly number[]>(KEPT_TEXTS)

const SPACE = wideOf(' ')

/** Lines of a text whose words are set one after the other, none broken unless it is longer than a line. */
function linesOf(text: string, { wide_mm, size_pt }: Column): number {
  const room = wide_mm / (size_pt * MM_PER_PT)
  let [lines, used] = [1, 0]
  for (const wide of kept(text, () => text.split(' ').map(wideOf))) {
    const whole = used === 0 ? wide : used + SPACE + wide
    if (whole <= room) used = whole
    else {
      lines += (used === 0 ? 0 : 1) + Math.ceil(wide / room) - 1
      used = wide % room
    }
  }
  return lines
}

/** Height of texts set one below the other in a column, each beginning a line of its own. Units mm out. */
export const textHeight = (texts: readonly string[], column: Column): number => sum(texts.map((text) => linesOf(text, column))) * column.size_pt * column.line * MM_PER_PT

/** The same for words that are still to be written in a language. */
export const heightIn =
  (tongue: Tongue) =>
  (texts: readonly Part[], column: Column): number =>
    textHeight(texts.map((text) => spoken(text, tongue)), column)
