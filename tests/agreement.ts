import { isMissing } from '../src/quantity/outcome.ts'
import { agreement, differences, heldOut, publishedValues, widthOf } from '../src/load/measured-bodies.ts'

/** Prints the comparison with measured bodies, as the handbook's page on sources shows it. `npm run agreement`. */
for (const [title, rows] of [
  ['published values', publishedValues],
  ['held out', heldOut],
] as const) {
  const compared = agreement(rows)
  const { mean, worst } = differences(compared)
  process.stdout.write(`${title}: mean absolute difference ${mean.toFixed(2)}, worst ${worst.toFixed(1)} % of body weight\n`)
  for (const { measured, computed, difference } of compared) {
    const figures = isMissing(computed) || isMissing(difference) ? `not computed` : `${computed.toFixed(1)}  ${difference >= 0 ? '+' : '−'}${Math.abs(difference).toFixed(1)}`
    process.stdout.write(`  ${measured.percent.toFixed(1).padStart(5)} ± ${widthOf(measured).toFixed(1)}  ${figures.padEnd(14)} ${measured.source} (${measured.mark}): ${measured.condition}\n`)
  }
}
