import { inOrder, pathKey, placeOf, VALUE, type Finding, type Path, type Place, type Places } from '../ladder/finding.ts'
import type { InTurn, MeasuredLadder } from '../measure/measure.ts'
import { aimExists } from './aim-exists.ts'
import { anchoredRungsAskForARatedAnchor } from './anchored-rungs-ask-for-a-rated-anchor.ts'
import { bandedRungsCarryACaution } from './banded-rungs-carry-a-caution.ts'
import { cuesAreFew } from './cues-are-few.ts'
import { cuesAreShort } from './cues-are-short.ts'
import { diagramsCanBeDrawn } from './diagrams-can-be-drawn.ts'
import { entriesDifferFromTheStandard } from './entries-differ-from-the-standard.ts'
import { entryCanBeMet } from './entry-can-be-met.ts'
import { equipmentIsListed } from './equipment-is-listed.ts'
import { equipmentIsUsed } from './equipment-is-used.ts'
import { everyRungIsDescribed } from './every-rung-is-described.ts'
import { everyRungIsReachable } from './every-rung-is-reachable.ts'
import { faultsHaveRemedies } from './faults-have-remedies.ts'
import { firstRepsLeaveRoom } from './first-reps-leave-room.ts'
import { footnotesAreWhole } from './footnotes-are-whole.ts'
import { formPointsAreObservable } from './form-points-are-observable.ts'
import { fullRepsHaveAStartAndAnEnd } from './full-reps-have-a-start-and-an-end.ts'
import { idsAreUnique } from './ids-are-unique.ts'
import { landingsStayWithinLimits } from './landings-stay-within-limits.ts'
import { levelStepsNameADemand } from './level-steps-name-a-demand.ts'
import { linksResolve } from './links-resolve.ts'
import { loadsAreComputed } from './loads-are-computed.ts'
import { measurementsArePlausible } from './measurements-are-plausible.ts'
import { oneLimbRungsSayWhichSide } from './one-limb-rungs-say-which-side.ts'
import { picturesHaveText } from './pictures-have-text.ts'
import { picturesLieInTheWorkspace } from './pictures-lie-in-the-workspace.ts'
import { retiredRungsNameAnHeir } from './retired-rungs-name-an-heir.ts'
import type { Rule } from './rule.ts'
import { rungsDiffer } from './rungs-differ.ts'
import { rungsRise } from './rungs-rise.ts'
import { sealsMatch } from './seals-match.ts'
import { sharedWordsAreTranslated } from './shared-words-are-translated.ts'
import { silenced, type Named } from './silence.ts'
import { sourcesAreCited } from './sources-are-cited.ts'
import { standardsSuitTheLoad } from './standards-suit-the-load.ts'
import { stepsAreClimbable } from './steps-are-climbable.ts'
import { stopSignsAreGiven } from './stop-signs-are-given.ts'
import { supervisionRisesWithRisk } from './supervision-rises-with-risk.ts'
import { theAimHasAWayUp } from './the-aim-has-a-way-up.ts'
import { titlesAgreeWithLoads } from './titles-agree-with-loads.ts'
import { titlesAreUnique } from './titles-are-unique.ts'
import { translatedSafetyNotesStand } from './translated-safety-notes-stand.ts'
import { translationsAreComplete } from './translations-are-complete.ts'
import { translationsAreCurrent } from './translations-are-current.ts'
import { translationsAreThere } from './translations-are-there.ts'
import { translationsHaveAnOriginal } from './translations-have-an-original.ts'
import { translationsKeepLinksAndNumbers } from './translations-keep-links-and-numbers.ts'
import { translationsKeepTheirShape } from './translations-keep-their-shape.ts'

/** Every rule, in the order its page lists them: what makes a ladder unsafe or unreadable first. */
export const rules: readonly Rule[] = [
  idsAreUnique,
  titlesAreUnique,
  aimExists,
  theAimHasAWayUp,
  everyRungIsReachable,
  retiredRungsNameAnHeir,
  everyRungIsDescribed,
  stopSignsAreGiven,
  translatedSafetyNotesStand,
  supervisionRisesWithRisk,
  landingsStayWithinLimits,
  anchoredRungsAskForARatedAnchor,
  bandedRungsCarryACaution,
  oneLimbRungsSayWhichSide,
  loadsAreComputed,
  measurementsArePlausible,
  titlesAgreeWithLoads,
  rungsRise,
  rungsDiffer,
  levelStepsNameADemand,
  stepsAreClimbable,
  firstRepsLeaveRoom,
  entryCanBeMet,
  entriesDifferFromTheStandard,
  standardsSuitTheLoad,
  formPointsAreObservable,
  fullRepsHaveAStartAndAnEnd,
  cuesAreShort,
  cuesAreFew,
  faultsHaveRemedies,
  equipmentIsListed,
  equipmentIsUsed,
  sourcesAreCited,
  sealsMatch,
  picturesHaveText,
  picturesLieInTheWorkspace,
  footnotesAreWhole,
  diagramsCanBeDrawn,
  linksResolve,
  translationsAreThere,
  translationsAreComplete,
  translationsAreCurrent,
  translationsKeepTheirShape,
  translationsKeepLinksAndNumbers,
  translationsHaveAnOriginal,
  sharedWordsAreTranslated,
]

/** What a check came to: what is to be put right, and what could not be told and why. */
export type Checked = { readonly findings: readonly Finding[]; readonly untold: readonly Finding[] }

/** What was found on ladders before, by the very value that was measured and the day; so that of a thousand only the changed one is checked again. */
export type CheckMemory = WeakMap<MeasuredLadder, { readonly today: string; readonly told: Checked }>

/**
 * Every finding on every ladder and page, in file order; silences that stand are kept, those that do not are found.
 *
 * Shape   measured ladders, which may come one by one, and the day it is (2026-10-03) to findings. A function of these two alone; `memory` only saves work, and so does asking for findings alone.
 */
export function check({ ladders, pages }: InTurn, today: string, memory?: CheckMemory, asked: 'everything' | 'findings' = 'everything'): Checked {
  const told: Checked[] = []
  for (const ladder of ladders) {
    const before = memory?.get(ladder)
    const now = before?.today === today ? before.told : checkLadder(ladder, today, asked)
    memory?.set(ladder, { today, told: now })
    told.push(now)
  }
  const ofPages = pages.flatMap((page) =>
    rules.flatMap((rule) => (rule.checkPage?.(page) ?? []).map((finding) => ({ ...placeOfLine(page, finding.path), ...placedEdit({ ...finding, rule: rule.name }, page.places), subject: `page ${page.id}:${finding.path.join('/')}` }))),
  )
  return { findings: inOrder([...told.flatMap(({ findings }) => findings), ...ofPages]), untold: inOrder(told.flatMap(({ untold }) => untold)) }
}

function checkLadder(ladder: MeasuredLadder, today: string, asked: 'everything' | 'findings'): Checked {
  const found = rules.flatMap((rule) => rule.check(ladder).map((finding) => ({ ...finding, rule: rule.name })))
  const untold = asked === 'findings' ? [] : rules.flatMap((rule) => (rule.untold?.(ladder) ?? []).map((finding) => ({ ...finding, rule: rule.name })))
  const placed = (finding: Named): Finding => ({ ...placeOfLine(ladder, finding.path), ...placedEdit(finding, ladder.places), subject: `${ladder.id}:${subjectOf(finding.path, ladder)}` })
  return { findings: silenced(found, ladder, today).map(placed), untold: untold.map(placed) }
}

/** The finding without its path; its edit with the place where the value stands, or without one where that is not known. */
function placedEdit({ path, edit, ...finding }: Named, places: Places): Omit<Finding, keyof Place> {
  const at = edit && places().get(pathKey([...path, VALUE]))
  return at && edit ? { ...finding, edit: { line: at.line, column: at.column, ...edit } } : finding
}

/** A path that does not change when rungs are reordered: a rung's index becomes its id. */
const subjectOf = (path: Path, { rungs }: MeasuredLadder): string => {
  const [first, second, ...rest] = path.at(-2) === 'text' ? path.slice(0, -2) : path
  return [first, typeof second === 'number' && first === 'rungs' ? rungs[second]?.id : second, ...rest].filter((step) => step !== undefined).join('/')
}

/** A path may end in a line of a page's body, or of a rung's text, counted from 0. */
function placeOfLine({ places }: { readonly places: Places }, path: Path): Place {
  const [part, line] = path.slice(-2)
  const place = placeOf(places, path)
  return (part === 'body' || part === 'text') && typeof line === 'number' ? { ...place, line: place.line + line } : place
}
