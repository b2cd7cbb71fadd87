import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { LadderData } from '../page/data.ts'
import type { Placeable } from '../measure/place.ts'
import { athleteOf, type Body } from './body.ts'
import { element } from './element.ts'
import { foundNodes } from './found.ts'
import { ladderDataAt } from './ladder-data.ts'
import { startOwnForm } from './own-form.ts'
import { loadsOf, placeableWith } from './own-loads.ts'
import { breath, paced } from './paced.ts'
import { said } from './said.ts'

/** More than anybody is asked here for. */
const MOST_TYPED = 200

type Fields = { readonly ladder: HTMLSelectElement; readonly rung: HTMLSelectElement; readonly reps: HTMLInputElement; readonly reserve: HTMLSelectElement }

function fieldsOf(form: HTMLFormElement): Fields | undefined {
  const [ladder, rung, reserve] = ['ladder', 'rung', 'reserve'].map((name) => form.querySelector<HTMLSelectElement>(`#find-${name}`))
  const reps = form.querySelector<HTMLInputElement>('#find-reps')
  return ladder && rung && reserve && reps ? { ladder, rung, reps, reserve } : undefined
}

/** Chooses what a link asks for, where there is such a choice. */
function choose(select: HTMLSelectElement, wanted: string | null): void {
  if ([...select.options].some(({ value }) => value === wanted)) select.value = wanted ?? ''
}

/** Lists the rungs of a ladder, easiest first, and chooses the one wanted or its heir; false where there is neither. */
function listRungs(select: HTMLSelectElement, { rungs, retired }: LadderData, wanted: string | null): boolean {
  select.replaceChildren(...rungs.map(({ id, title }) => {
    const option = element('option', '', title)
    option.value = id
    return option
  }))
  const heir = retired.find(({ id }) => id === wanted)?.heir ?? wanted
  choose(select, heir)
  return heir === null || select.value === heir
}

const repsIn = (text: string): number | undefined => {
  const reps = /^\d{1,3}$/.test(text.trim()) ? Number(text) : NaN
  return reps >= 1 && reps <= MOST_TYPED ? reps : undefined
}

/** Runs the page: a link's ladder, rung and set are taken up, and what is found has such a link of its own. The body is in no link. */
export function startFindYourRung(form: HTMLFormElement, page: Document): void {
  const fields = fieldsOf(form)
  const [says, place, own] = [page.querySelector('#find-says'), page.querySelector('#find-found'), page.querySelector<HTMLElement>('#own-numbers')]
  if (!fields || !says || !place || !own) return
  const root = form.dataset.root ?? '../'
  const asked = new URLSearchParams(window.location.search)
  let body: Body | undefined
  let ladder: Outcome<LadderData> | undefined
  let placeable: Placeable | undefined
  let asks = false

  let shown = {}
  /** Says something in place of a table. */
  const sayAlone = (text: string): void => {
    shown = {}
    place.replaceChildren()
    says.textContent = said(text)
  }
  /** The rung to work on is said at once; the table of all rungs comes when the page has drawn that. */
  const show = async (): Promise<void> => {
    const now = (shown = {})
    const reps = repsIn(fields.reps.value)
    if (ladder === undefined) return
    if (isMissing(ladder)) return sayAlone(`Not computed: ${ladder.missing}.`)
    if (reps === undefined) return sayAlone(fields.reps.value.trim() === '' ? '' : `Reps must be a whole number from 1 to ${MOST_TYPED}.`)
    const set = { on: fields.rung.value, reps, reserve_reps: Number(fields.reserve.value) }
    asks = placeable === undefined
    if (!placeable) return place.replaceChildren()
    const { verdict, nodes } = foundNodes(ladder, placeable, set, body, root)
    says.replaceChildren(...verdict)
    const link = new URLSearchParams({ ladder: ladder.id, rung: set.on, reps: String(reps), reserve: String(set.reserve_reps) })
    await breath()
    if (now !== shown) return
    place.replaceChildren(...nodes())
    window.history.replaceState(null, '', `?${link}`)
  }
  /** Loads are computed ahead, while the set is typed; what was asked for meanwhile is shown then. */
  const compute = async (): Promise<void> => {
    placeable = undefined
    const [of, whose] = [ladder, body]
    if (of === undefined || isMissing(of)) return
    const loads = await paced(loadsOf(of.rungs, athleteOf(whose)))
    if (of !== ladder || whose !== body) return
    placeable = placeableWith(of, loads)
    if (asks) await show()
  }
  const load = async (rung: string | null): Promise<void> => {
    const wanted = fields.ladder.value
    const loaded = await ladderDataAt(`${root}data/ladders/${wanted}.json`)
    if (fields.ladder.value !== wanted) return
    ladder = loaded
    const computed = compute()
    if (isMissing(loaded) || listRungs(fields.rung, loaded, rung)) void show()
    else sayAlone('The rung of this link is not on the ladder any more; choose another.')
    await computed
  }

  choose(fields.ladder, asked.get('ladder'))
  choose(fields.reserve, asked.get('reserve'))
  if (repsIn(asked.get('reps') ?? '') !== undefined) fields.reps.value = asked.get('reps') ?? ''
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    if (fields.reps.value.trim() === '') says.textContent = said('Give the repetitions of your best strict set.')
    else void show()
  })
  fields.ladder.addEventListener('change', () => void load(null))
  for (const field of [fields.rung, fields.reps, fields.reserve]) field.addEventListener('change', () => void show())
  startOwnForm(own, (now) => {
    body = now
    void compute()
    void show()
  })
  form.hidden = false
  own.hidden = repsIn(fields.reps.value) !== undefined // what a link asks for comes above it, and moves nobody's eyes
  void load(asked.get('rung')).then(() => (own.hidden = false))
}

