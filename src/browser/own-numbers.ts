import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { LadderData } from '../page/data.ts'
import type { Body } from './body.ts'
import { ladderDataAt } from './ladder-data.ts'
import { startOwnForm } from './own-form.ts'
import { showRackFields } from './rack-fields.ts'

/**
 * Runs the reader's own numbers on a rung's or a ladder's page.
 * The models and the ladder's data are fetched only once there is something to show; no request holds anything of the reader.
 */
export function startOwnNumbers(section: HTMLElement): void {
  const place = section.querySelector('#own-figures')
  const form = section.querySelector('form')
  const { file, rung, lifted } = section.dataset
  if (!place || !form || file === undefined) return
  let fetched: Promise<Outcome<LadderData>> | undefined
  let latest: Body | undefined
  const show = async (body: Body | undefined): Promise<void> => {
    latest = body
    if (body === undefined) delete section.dataset.kept // no room for numbers that will not come
    if (body === undefined && lifted === undefined) return place.replaceChildren()
    fetched ??= ladderDataAt(file)
    const [{ figuresOn }, ladder] = await Promise.all([import('./own-figures.ts'), fetched])
    if (isMissing(ladder)) fetched = undefined // asked again at the next change: the signal may be back
    const figures = await figuresOn(ladder, rung, body)
    if (latest === body) place.replaceChildren(...figures)
  }
  if (lifted !== undefined) showRackFields(form)
  startOwnForm(section, (body) => void show(body))
}
