import type { Unit } from '../quantity/unit.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import type { Side } from './change.ts'
import { named } from './make.ts'

/** Words of a coach. */
export const words = (text: string): Side => ({ text })
/** A phrase of the program's own, or a name it knows. */
export const ours = (text: string): Side => ({ text, ours: true })
/** A list of a coach's words. */
export const list = (lines: readonly string[], separator: string): Side => ({ text: lines.join(separator), holds: lines.map((line) => ({ words: line })) })
/** Rungs by their ids, and by their titles for who reads. */
export const rungs = (ladder: MeasuredLadder, ids: readonly string[]): Side => ({ text: ids.join(', ') || 'nothing', holds: ids.map((id) => ({ rung: named(ladder, id) })) })
/** A number as it was typed, unrounded: two that differ must read otherwise. */
export const figure = (number: number, unit: Unit): Side => ({ text: unit === 'ratio' ? `${number}` : `${number} ${unit}`, number, unit })
