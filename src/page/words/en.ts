import type { Catalogue } from '../tongue.ts'

/** English phrases that want another form for some number. All others are said as they stand in the pages. */
export const en: Catalogue = {
  '{1} rungs, aim: {2}': { one: '{1} rung, aim: {2}', other: '{1} rungs, aim: {2}' },
  '{1} at {2} sessions a week': { of: 2, one: '{1} at {2} session a week', other: '{1} at {2} sessions a week' },
  '{1} sessions a week': { one: '{1} session a week', other: '{1} sessions a week' },
  'repetitions in {1} sets': { one: 'repetitions in {1} set', other: 'repetitions in {1} sets' },
  '{1} translations are new, gone or said otherwise.': { one: '{1} translation is new, gone or said otherwise.', other: '{1} translations are new, gone or said otherwise.' },
}
