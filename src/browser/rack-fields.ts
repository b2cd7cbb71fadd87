import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { Rack } from '../load/plates.ts'
import { numberIn } from './body.ts'
import { RACK, rackIn } from './rack.ts'

const input = (form: HTMLFormElement, name: string): HTMLInputElement | null => form.querySelector(`#own-${name}`)
const fields = (form: HTMLFormElement): HTMLElement | null => form.querySelector('#own-rack')

/** Shows what there is to load, where a page has something to load. */
export function showRackFields(form: HTMLFormElement): void {
  const part = fields(form)
  if (part) part.hidden = false
}

/** True where the form asks what there is to load. */
export const hasRackFields = (form: HTMLFormElement): boolean => fields(form)?.hidden === false

/** Puts a rack, or the default one, into the fields. */
export function rackFields(form: HTMLFormElement, { bar_kg, plates_kg, pairs }: Rack = RACK): void {
  const put = (name: string, text: string): void => {
    const field = input(form, name)
    if (field) field.value = text
  }
  put('bar', String(bar_kg))
  put('plates', plates_kg.join('; '))
  put('pairs', String(pairs))
}

/** The rack in the fields, or what is wrong with it; the one before where no fields are shown, and nothing where it is the default. */
export function rackTyped(form: HTMLFormElement, before: Rack | undefined): Outcome<Rack | undefined> {
  if (!hasRackFields(form)) return before
  const text = (name: string): string => input(form, name)?.value ?? ''
  const plates_kg = text('plates').split(/[;\s]+|,\s+/).filter((part) => part !== '').map(numberIn)
  const rack = rackIn({ bar_kg: numberIn(text('bar')), plates_kg, pairs: numberIn(text('pairs')) })
  return !isMissing(rack) && JSON.stringify(rack) === JSON.stringify(RACK) ? undefined : rack
}
