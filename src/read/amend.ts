import type { Ladder, Rung } from '../ladder/curriculum.ts'
import { placeOf, type Finding, type Place } from '../ladder/finding.ts'
import type { Entry } from '../ladder/schema.ts'
import { nearest } from './nearest.ts'
import type { LadderFile } from './read-ladder.ts'
import type { Reading } from './text.ts'

type Amendment = Extract<LadderFile, { kind: 'amendment' }>

const RULE = 'amendments-fit'

/** Leaves out what was not written, so that it does not overwrite what the layer below says. */
const written = <Fields extends object>(fields: Fields): { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> }

/** An amount in one unit takes the place of one in another: nobody is asked for both. */
function asked<Below extends Entry>(below: Below, above: Entry): Below {
  const amount = [above.reps, above.seconds, above.metres].some((value) => value !== undefined)
  return { ...below, ...(amount ? { reps: undefined, seconds: undefined, metres: undefined } : {}), ...written(above) }
}

/**
 * Lays an amendment over a ladder: its fields replace, its rungs match by id, its safety notes are added to those that stand.
 *
 * Shape   a ladder and an amendment to a ladder; a rung that is not there, or is named twice, is a finding.
 */
export function amended(ladder: Ladder, amendment: Amendment, by: string): Reading<Ladder> {
  const { amends: _, because, rungs = [], stop = [], ask_first = [], standard, ...fields } = amendment.fields
  const known = new Set(ladder.rungs.map(({ id }) => id))
  const findings: Finding[] = [...new Set([...rungs.map(({ id }) => id), ...amendment.words.keys()])]
    .filter((id) => !known.has(id))
    .map((id) => {
      const like = nearest(id, [...known])
      return { ...placeOf(amendment.places, ['rungs', id, 'section']), rule: RULE, message: `"${ladder.id}" has no rung "${id}" to amend. ${like ? `Did you mean ${like}?` : 'Name one of its rungs.'}` }
    })
  for (const [index, { id }] of rungs.entries()) {
    if (rungs.findIndex((other) => other.id === id) < index) findings.push({ ...placeOf(amendment.places, ['rungs', index]), rule: RULE, message: `The rung "${id}" is amended twice. Join the two.` })
  }
  const changed = ladder.rungs.map((rung) => amendedRung(rung, amendment))
  const what = [...Object.keys(written(fields)), ...(standard ? ['standard'] : []), ...(stop.length > 0 ? ['stop'] : []), ...(ask_first.length > 0 ? ['ask_first'] : []), ...rungs.map(({ id }) => `rung ${id}`)]
  const value: Ladder = {
    ...ladder,
    ...written(fields),
    standard: asked(ladder.standard, standard ?? {}),
    stop: [...new Set([...ladder.stop, ...stop])],
    ask_first: [...new Set([...ladder.ask_first, ...ask_first])],
    intro: amendment.intro === '' ? ladder.intro : amendment.intro,
    rungs: changed,
    amended: [...ladder.amended, { by, because, what }],
    places: laidOver(ladder, amendment.places),
  }
  return { value, findings }
}

function amendedRung(rung: Rung, amendment: Amendment): Rung {
  const fields = amendment.fields.rungs?.find(({ id }) => id === rung.id)
  const words = amendment.words.get(rung.id)
  if (!fields && !words) return rung
  const { entry, cautions = [], ...others } = fields ?? {}
  return {
    ...rung,
    ...written(others),
    entry: asked(rung.entry, entry ?? {}),
    cautions: [...new Set([...rung.cautions, ...cautions])],
    words: words ? { ...(rung.words ?? words), ...written({ ...words, intro: words.intro === '' ? undefined : words.intro, notes: words.notes.length > 0 ? words.notes : undefined }) } : rung.words,
  }
}

/** The amendment's keys stand in its own file, a rung's under its id and under its index in the ladder; everything else stays where it was. */
function laidOver(ladder: Ladder, above: ReadonlyMap<string, Place>): ReadonlyMap<string, Place> {
  const places = new Map(ladder.places)
  for (const [key, place] of above) {
    if (key === '' || key === 'rungs' || /^rungs\/\d/.test(key)) continue
    places.set(key, place)
    const [, id, rest = ''] = /^rungs\/([^/]+)(.*)$/s.exec(key) ?? []
    const index = ladder.rungs.findIndex((rung) => rung.id === id)
    if (index >= 0) places.set(`rungs/${index}${rest}`, place)
  }
  return places
}
