import { element } from './element.ts'
import { waysOn, type Ladder } from './log-decisions.ts'
import { LIMITS, type LoggedSession, type LogUnit } from './log-record.ts'
import { amountsText, asksText } from './log-words.ts'
import { said } from './said.ts'

const UNIT_WORDS: Readonly<Record<LogUnit, string>> = { reps: 'repetitions in each', seconds: 'seconds in each', metres: 'metres in each' }
const PAIN = Array.from({ length: 11 }, (_, pain) => pain)

/** The form of one session. */
export type LogForm = {
  /** Makes it ready for a new session on a rung; `last` is the latest one there, to be repeated with a tap. */
  fresh(ladder: Ladder, rung: string, last: LoggedSession | undefined): void
  /** Puts a session into it, to be changed. */
  load(ladder: Ladder, rung: string, session: LoggedSession): void
  /** What stands in it, whatever it is; nothing is believed before it is read. */
  typed(ladder: string, edition: string): unknown
}

const option = (value: string, text: string): HTMLOptionElement => {
  const made = element('option', '', text)
  made.value = value
  return made
}

/** Fills a choice, and chooses. */
export function fillSelect(select: HTMLSelectElement, options: readonly (readonly [value: string, text: string])[], chosen: string): void {
  select.replaceChildren(...options.map(([value, text]) => option(value, text)))
  select.value = chosen
}

/** One choice out of a few numbers, each a target of its own. */
function fillChips(place: Element, name: string, numbers: readonly number[]): void {
  place.replaceChildren(
    ...numbers.map((number) => {
      const input = element('input', '')
      Object.assign(input, { type: 'radio', name, value: String(number), required: true })
      return element('label', 'log-chip', input, element('span', '', String(number)))
    }),
  )
}

/** Chooses one of them, or none. */
function check(place: Element, chosen: string): void {
  for (const input of place.querySelectorAll('input')) input.checked = input.value === chosen
}

const checked = (place: Element): string => place.querySelector<HTMLInputElement>('input:checked')?.value ?? ''
const numberOf = (text: string): number | undefined => (text.trim() === '' ? undefined : Number(text))

/** The form over the fields that stand in the page. `find` gives a field by its id. */
export function logForm(find: <Kind extends HTMLElement>(id: string) => Kind, today: () => string): LogForm {
  const [amounts, lost, pain] = [find('log-amounts'), find('log-out-of-form'), find('log-pain')]
  const [morning, usual, on, note] = [find<HTMLSelectElement>('log-morning'), find<HTMLSelectElement>('log-usual'), find<HTMLInputElement>('log-on'), find<HTMLInputElement>('log-note')]
  const same = find<HTMLButtonElement>('log-same')
  let unit: LogUnit = 'reps'
  let last: LoggedSession | undefined

  const values = (): string[] => [...amounts.querySelectorAll('input')].map(({ value }) => value)

  function showSets(wanted: readonly string[]): void {
    const before = checked(lost)
    amounts.replaceChildren(...wanted.map((value, index) => setField(value, index, unit)))
    fillChips(lost, 'log-out-of-form', [0, ...wanted.map((_, index) => index + 1)])
    check(lost, before)
  }

  function set(ladder: Ladder, rung: string, session: LoggedSession | undefined): void {
    const ways = waysOn(ladder, rung)
    const [way] = ways
    unit = session?.unit ?? way?.entry.amount?.unit ?? 'reps'
    find('log-asks').textContent = said(asksText(ladder, ways))
    find('log-sets').querySelector('legend')?.replaceChildren(said(`Sets, ${UNIT_WORDS[unit]}`))
    showSets(session ? session.amounts.map(String) : Array.from({ length: way?.entry.sets ?? 1 }, () => ''))
    check(lost, session ? String(session.sets_out_of_form) : '')
    check(pain, session ? String(session.pain_during) : '')
    for (const [select, value] of [[morning, session?.pain_next_morning], [usual, session?.pain_usual]] as const) select.value = value === undefined ? '' : String(value)
    on.max = today()
    on.value = session?.on ?? today()
    note.value = session?.note ?? ''
  }

  fillChips(pain, 'log-pain', PAIN)
  for (const select of [morning, usual]) fillSelect(select, [['', 'not known'], ...PAIN.map((each) => [String(each), `${each} of 10`] as const)], '')
  find('log-more').addEventListener('click', () => {
    if (values().length >= LIMITS.sets) return
    showSets([...values(), ''])
    amounts.querySelector<HTMLInputElement>('label:last-child input')?.focus()
  })
  find('log-fewer').addEventListener('click', () => values().length > 1 && showSets(values().slice(0, -1)))
  same.addEventListener('click', () => last && showSets(last.amounts.map(String)))

  return {
    fresh(ladder, rung, latest) {
      set(ladder, rung, undefined)
      last = latest?.unit === unit ? latest : undefined
      same.hidden = last === undefined
      find<HTMLDetailsElement>('log-besides').open = false
      same.textContent = said(last ? `As last time: ${amountsText(last)}` : '')
    },
    load(ladder, rung, session) {
      set(ladder, rung, session)
      same.hidden = true
      find<HTMLDetailsElement>('log-besides').open = true
    },
    typed: (ladder, edition) => ({
      ladder,
      rung: find<HTMLSelectElement>('log-rung').value,
      on: on.value,
      unit,
      amounts: values().flatMap((value) => numberOf(value) ?? []),
      sets_out_of_form: numberOf(checked(lost)),
      pain_during: numberOf(checked(pain)),
      pain_next_morning: numberOf(morning.value),
      pain_usual: numberOf(usual.value),
      note: note.value.replace(/\s+/gu, ' ').trim() || undefined,
      edition,
    }),
  }
}

function setField(value: string, index: number, unit: LogUnit): HTMLElement {
  const input = element('input', '')
  Object.assign(input, { type: 'number', min: '0', step: unit === 'reps' ? '1' : 'any', inputMode: unit === 'reps' ? 'numeric' : 'decimal', required: index === 0, value })
  return element('label', '', `Set ${index + 1} `, input)
}
