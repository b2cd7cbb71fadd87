import path from 'node:path'
import { isMissing } from '../../src/quantity/outcome.ts'
import { measure } from '../../src/measure/measure.ts'
import { entryText } from '../../src/measure/entry.ts'
import { repsText } from '../../src/measure/predict.ts'
import { loadText, spanText } from '../../src/page/figures.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { spoken } from '../../src/page/written.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { REPOSITORY } from './demo.ts'

export const GOLDEN = path.join(REPOSITORY, 'tests/site/numbers.golden.txt')

/** Every number the demo handbook publishes of its rungs and steps, as a reader sees it: a line each. */
export async function publishedNumbers(): Promise<string> {
  const { layers } = await readWorkspace(path.join(REPOSITORY, 'site-demo'))
  const { value } = readCurriculum(layers)
  if (!value) throw new Error('bug: the demo does not read')
  const lines = measure(value).ladders.flatMap((ladder) =>
    ladder.rungs.flatMap((rung) => [
      `${ladder.id}/${rung.id}  ${isMissing(rung.outcome) ? 'not computed' : `${spoken(loadText(rung), ENGLISH)} (${spoken(spanText(rung.outcome.load, rung.outcome.quantity.unit) ?? 'the same for everybody', ENGLISH)})`}`,
      ...rung.steps.map(
        ({ from, entry, kind, predicted, computed_entry, block }) =>
          `  from ${from}: ${entryText(entry)}; ${isMissing(kind) ? 'kind not told' : kind}; first reps ${isMissing(predicted) ? '–' : repsText(predicted)}; least entry ${isMissing(computed_entry) ? '–' : computed_entry}; weeks ${isMissing(block) ? '–' : block.weeks.join(' to ')}`,
      ),
    ]),
  )
  return `${lines.join('\n')}\n`
}
