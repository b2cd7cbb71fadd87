import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { bodyFrom, bodyIn, bodyText, CM_PER_IN, heightCm, KG_PER_LB, numberIn, type Body, type Height } from './body.ts'
import { BODY, forget, keep, kept } from './keep.ts'
import { hasRackFields, rackFields, rackTyped } from './rack-fields.ts'
import { said } from './said.ts'

/** What is kept of the reader; nothing where nothing is, or the reason it is not used. */
function keptBody(): Outcome<Body | undefined> {
  const found = kept(BODY)
  if (isMissing(found)) return found
  return found.value === undefined ? undefined : bodyIn(found.value)
}

const NOTHING = ''
const short = (value: number): string => String(Number(value.toFixed(1)))

/** The fields of the form by their names, without the start they share. */
const field = (form: HTMLFormElement, name: string): HTMLInputElement | HTMLSelectElement | null => form.querySelector(`#own-${name}`)
const typed = (form: HTMLFormElement, name: string): string => field(form, name)?.value ?? NOTHING
const put = (form: HTMLFormElement, name: string, text: string): void => {
  const input = field(form, name)
  if (input) input.value = text
}

/** Shows the fields of the chosen unit of height. */
function showHeight(form: HTMLFormElement): void {
  const cm = typed(form, 'height-unit') === 'cm'
  for (const part of form.querySelectorAll<HTMLElement>('[data-height]')) part.hidden = (part.dataset.height === 'cm') !== cm
}

function putHeight(form: HTMLFormElement, height: Height | undefined): void {
  put(form, 'cm', height?.unit === 'cm' ? String(height.value) : NOTHING)
  put(form, 'feet', height?.unit === 'ft-in' ? String(height.feet) : NOTHING)
  put(form, 'inches', height?.unit === 'ft-in' ? String(height.inches) : NOTHING)
}

function fill(form: HTMLFormElement, body: Body | undefined): void {
  put(form, 'mass', body?.mass ? String(body.mass.value) : NOTHING)
  if (body?.mass) put(form, 'mass-unit', body.mass.unit)
  if (body?.height) put(form, 'height-unit', body.height.unit)
  putHeight(form, body?.height)
  rackFields(form, body?.rack)
  showHeight(form)
}

/** Another unit: what stands there is said in it. */
function convertMass(form: HTMLFormElement): void {
  const value = numberIn(typed(form, 'mass'))
  if (!Number.isNaN(value)) put(form, 'mass', short(typed(form, 'mass-unit') === 'lb' ? value / KG_PER_LB : value * KG_PER_LB))
}

function convertHeight(form: HTMLFormElement): void {
  const [cm, feet, inches] = [numberIn(typed(form, 'cm')), numberIn(typed(form, 'feet')), numberIn(typed(form, 'inches') || '0')]
  if (typed(form, 'height-unit') === 'cm') {
    if (!Number.isNaN(feet + inches)) putHeight(form, { unit: 'cm', value: Number(short(heightCm({ unit: 'ft-in', feet, inches }))) })
  } else if (!Number.isNaN(cm)) {
    const tenths = Math.round((cm / CM_PER_IN) * 10)
    putHeight(form, { unit: 'ft-in', feet: Math.floor(tenths / 120), inches: (tenths % 120) / 10 })
  }
  showHeight(form)
}

function bodyTyped(form: HTMLFormElement, before: Body | undefined): Outcome<Body> {
  const rack = rackTyped(form, before?.rack)
  if (isMissing(rack)) return rack
  return bodyFrom({ mass: typed(form, 'mass'), mass_unit: typed(form, 'mass-unit'), cm: typed(form, 'cm'), feet: typed(form, 'feet'), inches: typed(form, 'inches'), height_unit: typed(form, 'height-unit') }, rack)
}

/**
 * Shows the form that stands hidden on the page, fills it from what this device keeps, and tells `told` whose numbers to show: at once, and at each change.
 * What is typed is used even where it cannot be kept; the page says so.
 */
export function startOwnForm(section: HTMLElement, told: (body: Body | undefined) => void): void {
  const form = section.querySelector('form')
  const says = section.querySelector('#own-says')
  const summary = section.querySelector('summary')
  const fold = section.querySelector('details')
  if (!form || !says || !summary || !fold) return
  const blank = hasRackFields(form) ? 'Give your bar and plates, and your body' : 'Give your body mass and height'
  let body: Body | undefined
  const show = (now: Body | undefined): void => {
    body = now
    const whose = now ? bodyText(now) : NOTHING
    summary.textContent = said(whose === NOTHING ? blank : `For ${whose}: change it`)
    told(now)
  }
  const read = (): void => {
    const found = keptBody()
    says.textContent = said(isMissing(found) ? `Nothing is used of what was kept here: ${found.missing}.` : NOTHING)
    const now = isMissing(found) ? undefined : found
    fill(form, now)
    show(now)
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault()
    const given = bodyTyped(form, body)
    if (isMissing(given)) return void (says.textContent = said(`Not taken: ${given.missing}.`))
    const stored = keep(BODY, given)
    fold.open = false
    says.textContent = said(isMissing(stored) ? `Shown here, but not kept for the next page: ${stored.missing}.` : 'Kept on this device, for every page of this handbook.')
    show(given)
  })
  section.querySelector('#own-forget')?.addEventListener('click', () => {
    const gone = forget(BODY)
    fill(form, undefined)
    show(undefined)
    says.textContent = said(isMissing(gone) ? `Gone from this page; ${gone.missing}.` : 'Forgotten: nothing of your body is kept on this device.')
  })
  field(form, 'mass-unit')?.addEventListener('change', () => convertMass(form))
  field(form, 'height-unit')?.addEventListener('change', () => convertHeight(form))
  window.addEventListener('storage', ({ key }) => key === BODY && read())
  section.hidden = false
  read()
}
