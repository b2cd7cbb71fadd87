import { inOrder, placeOf, type Finding, type Place } from '../ladder/finding.ts'
import type { MeasuredCurriculum, MeasuredPage } from '../measure/measure.ts'
import { aimExists } from './aim-exists.ts'
import { anchoredRungsAskForARatedAnchor } from './anchored-rungs-ask-for-a-rated-anchor.ts'
import { cuesAreShort } from './cues-are-short.ts'
import { entryCanBeMet } from './entry-can-be-met.ts'
import { everyRungIsDescribed } from './every-rung-is-described.ts'
import { everyRungIsReachable } from './every-rung-is-reachable.ts'
import { faultsHaveRemedies } from './faults-have-remedies.ts'
import { fullRepsHaveAStartAndAnEnd } from './full-reps-have-a-start-and-an-end.ts'
import { idsAreUnique } from './ids-are-unique.ts'
import { levelStepsNameADemand } from './level-steps-name-a-demand.ts'
import { linksResolve } from './links-resolve.ts'
import { loadsAreComputed } from './loads-are-computed.ts'
import { oneLimbRungsSayWhichSide } from './one-limb-rungs-say-which-side.ts'
import type { Rule } from './rule.ts'
import { rungsRise } from './rungs-rise.ts'
import { sourcesAreCited } from './sources-are-cited.ts'
import { stepsAreClimbable } from './steps-are-climbable.ts'
import { stopSignsAreGiven } from './stop-signs-are-given.ts'

/** Every rule, in the order its page lists them. */
export const rules: readonly Rule[] = [
  idsAreUnique,
  aimExists,
  everyRungIsReachable,
  everyRungIsDescribed,
  stopSignsAreGiven,
  loadsAreComputed,
  rungsRise,
  levelStepsNameADemand,
  stepsAreClimbable,
  entryCanBeMet,
  fullRepsHaveAStartAndAnEnd,
  cuesAreShort,
  faultsHaveRemedies,
  oneLimbRungsSayWhichSide,
  anchoredRungsAskForARatedAnchor,
  sourcesAreCited,
  linksResolve,
]

/** Every finding on every ladder and page, in file order. */
export function check({ ladders, pages }: MeasuredCurriculum): Finding[] {
  const ofLadders = ladders.flatMap((ladder) => rules.flatMap((rule) => rule.check(ladder).map(({ path, message }) => ({ ...placeOf(ladder.places, path), rule: rule.name, message }))))
  const ofPages = pages.flatMap((page) => rules.flatMap((rule) => (rule.checkPage?.(page) ?? []).map(({ path, message }) => ({ ...placeOfLine(page, path), rule: rule.name, message }))))
  return inOrder([...ofLadders, ...ofPages])
}

/** A page's path may end in a line of its body, counted from 0. */
function placeOfLine({ places }: MeasuredPage, path: readonly (string | number)[]): Place {
  const [part, line] = path
  const place = placeOf(places, path)
  return part === 'body' && typeof line === 'number' ? { ...place, line: place.line + line } : place
}
