import { imperialText } from '../quantity/imperial.ts'
import type { Unit } from '../quantity/unit.ts'
import { entryText, type FullEntry } from '../measure/entry.ts'
import { asIs, type Part } from './html.ts'
import { spoken } from './written.ts'

/** A length, mass, force or speed in a finished sentence, or two ends of one; no part of a longer unit such as N·m/kg. */
const MEASURED = /([−-]?\d+(?:[.,]\d+)?)(?: (to|a|y|and|or|o) ([−-]?\d+(?:[.,]\d+)?))? (cm|m|kg|N|m\/s)(?![\p{L}·/²])/gu

const number = (text: string): number => Number(text.replace('−', '-').replace(',', '.'))

/** "about 40 cm (15½ in)": each metric figure of a sentence with the same in feet, inches, pounds or pounds-force behind it. */
export const withImperial = (sentence: string): string =>
  sentence.replace(MEASURED, (found, one: string, between: string | undefined, other: string | undefined, unit: Unit) => {
    const said = [one, ...(other === undefined ? [] : [other])].map((each) => imperialText(number(each), unit))
    return said.every((each) => each !== undefined) ? `${found} (${said.join(` ${between ?? ''} `)})` : found
  })

/** A sentence that comes finished, in metric: in an imperial handbook it says both. */
export const inBoth =
  (sentence: string): Part =>
  (tongue) =>
    tongue.units === 'imperial' ? asIs(withImperial(spoken(sentence, tongue))) : sentence

/** "3 sets of 30 m, 2 sessions running": what has to be shown. */
export const entryWords = (entry: FullEntry): Part => inBoth(entryText(entry))
