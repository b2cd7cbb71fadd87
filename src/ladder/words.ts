import { z } from 'zod'
import type { Unit } from '../quantity/unit.ts'

/**
 * Building blocks of the schemas. Each carries one sentence a coach can act on;
 * `{key}` stands for the key it is said of, and is filled in when the file is read.
 */

/** Letters that write backwards, hide or join: they make two names look alike. */
const HIDDEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/

/** One line of plain words. */
export const words = (most = 200) => {
  const says = `{key} must be words on one line, at most ${most} characters.`
  return z
    .string(says)
    .trim()
    .min(1, '{key} is empty; write something or leave the key out.')
    .max(most, says)
    .refine((text) => !text.includes('\n'), says)
    .refine((text) => !HIDDEN.test(text), '{key} holds a hidden or direction-changing character; type it again by hand.')
}

/** A list of lines. */
export const list = <Each extends z.ZodType = ReturnType<typeof words>>(most: number, each: Each = words() as unknown as Each) =>
  z.array(each, `{key} must be a list of at most ${most}.`).max(most, `{key} must be a list of at most ${most}.`)

/** Addresses the handbook keeps for itself, and names some systems cannot store. */
export const RESERVED = new Set(
  'index 404 assets data pagefind sources checks search feed sitemap manifest service-worker cards pdf changes editions equipment movement-map find-your-rung my-ladders con prn aux nul com1 com2 com3 com4 com5 com6 com7 com8 com9 lpt1 lpt2 lpt3 lpt4 lpt5 lpt6 lpt7 lpt8 lpt9'.split(' '),
)

const ID = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/

/** Pages the handbook writes by itself, which prose may link to. */
export const GENERATED_PAGES = ['sources', 'checks', 'changes', 'equipment', 'movement-map', 'cards', 'find-your-rung', 'my-ladders'] as const

/** A short name that becomes an address. */
export const id = z
  .string('{key} must be a short name such as bench-hands.')
  .max(60, '{key} must have at most 60 characters.')
  .regex(ID, '{key} must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.')
  .refine((name) => !RESERVED.has(name), '{key} is a name the handbook keeps for itself; choose another.')

/** A number with its unit and span. */
export const measured = (min: number, max: number, unit: Unit | '') => {
  const says = `{key} must be a number from ${min} to ${max}${unit === '' ? '' : ` ${unit}`}.`
  return z.number(says).min(min, says).max(max, says)
}

/** A whole number with its span. */
export const count = (min: number, max: number) => {
  const says = `{key} must be a whole number from ${min} to ${max}.`
  return z.int(says).min(min, says).max(max, says)
}

/** One of a few names. */
export const oneOf = <const Choice extends readonly [string, ...string[]]>(choices: Choice) => z.enum(choices, `{key} must be one of: ${choices.join(', ')}.`)

/** A day, as 2026-10-03. */
export const day = z
  .string('{key} must be a day such as 2026-10-03.')
  .regex(/^\d{4}-\d{2}-\d{2}$/, '{key} must be a day such as 2026-10-03.')
  .refine((text) => {
    const date = new Date(`${text}T00:00:00Z`)
    return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text)
  }, '{key} is not a day in the calendar.')
