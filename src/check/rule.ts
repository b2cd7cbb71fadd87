import type { Path } from '../ladder/finding.ts'
import type { MeasuredLadder, MeasuredPage } from '../measure/measure.ts'

/** What a rule found: where in the ladder, and what to do. */
export type Found = {
  readonly path: Path
  readonly message: string
  /** The one change of the value at `path` that would put it right. */
  readonly edit?: { readonly old: string; readonly text: string }
}

/** One sentence that must be true of every ladder, and a way to find where it is not. */
export type Rule = {
  /** Kebab-case statement of the healthy state; also the fixture names and the page address. Never renamed. */
  readonly name: string
  readonly says: string
  readonly why: string
  check(ladder: MeasuredLadder): Found[]
  /** Where the rule cannot tell, and what is missing for it. Never fails a build. */
  readonly untold?: (ladder: MeasuredLadder) => Found[]
  /** The same sentence, said of a hand-written page. */
  readonly checkPage?: (page: MeasuredPage) => Found[]
}
