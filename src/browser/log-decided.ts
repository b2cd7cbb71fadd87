import { isMissing } from '../quantity/outcome.ts'
import type { Decision } from '../measure/decide.ts'
import { entryText } from '../measure/entry.ts'
import { element, linkElement } from './element.ts'
import { chiefVerdict, type Entry, type Ladder, type LadderRung, type Verdict } from './log-decisions.ts'
import { amountsText, besidesText, sourceText } from './log-words.ts'
import { said } from './said.ts'

const HEADINGS: Readonly<Record<Decision, string>> = { 'move on': 'Move on', hold: 'Hold', 'step back': 'Step back', stop: 'Stop' }

const titleOf = ({ rungs }: Ladder, rung: string): string => rungs.find(({ id }) => id === rung)?.title ?? rung

/** A link to a rung's page, from the root of the handbook. */
const rungLink = (root: string, { address, title }: LadderRung): HTMLAnchorElement => linkElement('', root + address.slice(1), title)

const between = (links: readonly Node[]): (Node | string)[] => links.flatMap((link, index) => (index === 0 ? [link] : [' or ', link]))

/** Where a decision leads: the rungs to move on to, those to step back to, or what a stop asks for. */
function leads(decision: Decision, ladder: Ladder, entry: Entry, root: string): (Node | string)[] {
  const here = ladder.rungs.find(({ id }) => id === entry.rung)
  if (decision === 'move on') {
    const onward = entry.verdicts.flatMap(({ to, decided }) => (to && !isMissing(decided) && decided.decision === 'move on' ? [rungLink(root, to)] : []))
    return onward.length > 0 ? ['To ', ...between(onward), '.'] : ['This rung is the end of its branch: keep it, or add sessions.']
  }
  if (decision === 'step back') {
    const below = here?.steps.flatMap(({ from }) => ladder.rungs.filter(({ id }) => id === from)) ?? []
    return below.length > 0 ? ['To ', ...between(below.map((rung) => rungLink(root, rung))), '.'] : ['There is no easier rung here: shorten the set, rest longer, and ask a coach.']
  }
  if (decision === 'hold') return [`On “${titleOf(ladder, entry.rung)}”, next time as well.`]
  return ['End the session. ', linkElement('', `${root}${ladder.id}/#safety`, 'When to stop, and who asks a clinician first'), '.']
}

/** The other ways onward, where the rules decide otherwise for them. */
function otherways(verdicts: readonly Verdict[], chief: Verdict): HTMLElement[] {
  if (isMissing(chief.decided)) return []
  const { decision } = chief.decided
  return verdicts.flatMap(({ to, entry, decided }) => (to && !isMissing(decided) && decided.decision !== decision ? [element('li', '', `“${to.title}” asks for ${entryText(entry)}: ${decided.decision}, because ${decided.because}.`)] : []))
}

/** A session's decision with its reason, its rule and where that comes from. */
export function decidedNodes(ladder: Ladder, entry: Entry, root: string): Node[] {
  const { session, rung, verdicts } = entry
  const done = element('p', 'about', document.createTextNode(`${said(session.on)}, ${titleOf(ladder, rung)}: ${said(amountsText(session))}, ${besidesText(session)}`))
  const chief = chiefVerdict(verdicts)
  const heading = (text: string): HTMLHeadingElement => Object.assign(element('h2', '', text), { id: 'log-decision', tabIndex: -1 })
  if (!chief) return [heading('Not decided'), done]
  const { decided } = chief
  if (isMissing(decided)) return [heading('Not decided'), done, element('p', '', `Not decided: ${decided.missing}.`)]
  const others = otherways(verdicts, chief)
  return [
    heading(HEADINGS[decided.decision]),
    element('p', 'log-leads', ...leads(decided.decision, ladder, entry, root)),
    element('p', '', `Because ${decided.because}.`),
    ...(others.length > 0 ? [element('ul', '', ...others)] : []),
    element('p', 'log-rule', `The rule: ${decided.rule} `, element('span', 'source', sourceText(decided))),
    done,
  ]
}
