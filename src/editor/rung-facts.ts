import { figureText, intervalText } from '../quantity/figure.ts'
import { isMissing } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import { entryText } from '../measure/entry.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'

/** A coach's words inside Markdown, as they stand. */
const plain = (text: string): string => text.replace(/[\\`*_{}[\]<>#|]/g, '\\$&')

/** A rung in a few lines of Markdown: its load with the span over the bodies tried, how it follows, what it takes to enter it, and every line of the working. */
export function rungFacts(ladder: MeasuredLadder, rung: MeasuredRung): string {
  return [`**${plain(rung.title)}** (${ladder.id}/${rung.id})`, loadText(rung), ...stepTexts(rung), ...working(rung)].join('\n\n')
}

function loadText({ outcome, model }: MeasuredRung): string {
  if (isMissing(outcome)) return `load not computed: ${plain(outcome.missing)}`
  const { name, unit } = outcome.quantity
  return `${name}: **${figureText(outcome.load.mid, unit)}**, from ${intervalText(interval(outcome.load), unit)} (${model.name})`
}

const stepTexts = ({ steps }: MeasuredRung): string[] =>
  steps.map((step) => `from ${step.from}: ${isMissing(step.kind) ? `step not computed: ${plain(step.kind.missing)}` : step.kind}; entry ${plain(entryText(step.entry))}`)

const working = ({ outcome }: MeasuredRung): string[] => (isMissing(outcome) ? [] : outcome.working.map(({ says, formula, numbers }) => `${plain(says)}\n\n    ${formula}\n    ${numbers}`))

/** A ladder in a few lines of Markdown: each rung with its load. */
export function ladderFacts(ladder: MeasuredLadder): string {
  const rows = ladder.rungs.map(({ id, title, outcome }) => `- ${plain(title)} (${id}): ${isMissing(outcome) ? 'load not computed' : figureText(outcome.load.mid, outcome.quantity.unit)}`)
  return [`**${plain(ladder.title)}** (${ladder.id})`, rows.join('\n')].join('\n\n')
}
