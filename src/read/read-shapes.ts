import { atTop, textOf, type Reading } from './text.ts'

/** A value an attribute may have, and in words what that is. */
type Allowed = { readonly fits: RegExp; readonly says: string }

const NUMBER: Allowed = { fits: /^-?\d{1,4}(\.\d{1,4})?$/, says: 'a number' }
const NUMBERS: Allowed = { fits: /^[-+0-9., ]{1,2000}$/, says: 'numbers' }
const COLOUR: Allowed = { fits: /^(currentColor|none)$/, says: 'currentColor or none' }
const RULES: Allowed = { fits: /^(evenodd|nonzero)$/, says: 'evenodd or nonzero' }

/** Attributes any element may have. */
const COMMON: Readonly<Record<string, Allowed>> = {
  fill: COLOUR,
  stroke: COLOUR,
  'fill-rule': RULES,
  'stroke-width': NUMBER,
  'stroke-linecap': { fits: /^(butt|round|square)$/, says: 'butt, round or square' },
  'stroke-dasharray': NUMBERS,
  'stroke-opacity': NUMBER,
  'fill-opacity': NUMBER,
  'stroke-linejoin': { fits: /^(miter|round|bevel)$/, says: 'miter, round or bevel' },
}

/** The attributes of these names, each a number. */
const numbered = (...names: readonly string[]): Readonly<Record<string, Allowed>> => Object.fromEntries(names.map((name) => [name, NUMBER]))

/** What may stand in a drawing: elements, and their own attributes. Nothing here can load, link, run or style. */
const ELEMENTS: ReadonlyMap<string, Readonly<Record<string, Allowed>>> = new Map([
  ['svg', { xmlns: { fits: /^http:\/\/www\.w3\.org\/2000\/svg$/, says: 'http://www.w3.org/2000/svg' }, viewBox: { fits: /^0 0 \d{1,4} \d{1,4}$/, says: 'such as 0 0 32 32' } }],
  ['g', {}],
  ['path', { d: { fits: /^[MmLlHhVvCcSsQqTtAaZz0-9., +-]{1,3000}$/, says: 'a path' } }],
  ['circle', numbered('cx', 'cy', 'r')],
  ['ellipse', numbered('cx', 'cy', 'rx', 'ry')],
  ['rect', numbered('x', 'y', 'width', 'height', 'rx')],
  ['line', numbered('x1', 'y1', 'x2', 'y2')],
  ['polyline', { points: NUMBERS }],
  ['polygon', { points: NUMBERS }],
])

const TAG = /<(\/?)([A-Za-z][A-Za-z0-9:]*)((?:\s+[A-Za-z][A-Za-z0-9:-]*="[^"<>&]*")*)\s*(\/?)>\s*/y

/** How deep shapes may stand in groups. Chosen by us: what reads a page goes one call deeper for each. */
const MOST_DEPTH = 20

/** What a drawing is for: by what rule and name it is found, how much it may weigh in bytes, and what its svg says in a page. */
export type DrawingUse = { readonly rule: string; readonly name: string; readonly most_bytes: number; readonly heavy: string; readonly head: string }

/**
 * A drawing, written anew from what was understood of it: a few shapes in the colour of the text around them.
 *
 * Shape   the bytes of an SVG file to an SVG that may stand in a page, or findings: what it holds beyond shapes.
 */
export function readShapes(file: string, bytes: Uint8Array, { rule, name: called, most_bytes, heavy, head }: DrawingUse): Reading<string> {
  if (bytes.length > most_bytes) return { findings: [atTop(file, rule, `The ${called} is larger than ${most_bytes / 1024} KiB${heavy}`)] }
  const text = textOf(file, bytes)
  if (text.value === undefined) return { findings: text.findings }
  const whole = text.value.trim()
  const wrong = (at: number, message: string): Reading<string> => ({ findings: [atTop(file, rule, message, whole.slice(0, at).split('\n').length, at - whole.lastIndexOf('\n', at - 1))] })
  const open: string[] = []
  let written = ''
  for (let at = 0; at < whole.length; ) {
    TAG.lastIndex = at
    const [tag, closing = '', name = '', attributes = '', alone = ''] = TAG.exec(whole) ?? []
    if (tag === undefined) return wrong(at, `Only tags with attributes in double quotes may stand in a ${called}. Take out text, comments and what a drawing program added.`)
    if (written !== '' && open.length === 0) return wrong(at, `Something stands after the ${called} has ended. Take it out.`)
    if (closing !== '') {
      if (open.pop() !== name) return wrong(at, `</${name}> closes nothing here. Close each tag in the order it was opened.`)
      written += `</${name}>`
    } else {
      if ((written === '') !== (name === 'svg')) return wrong(at, name === 'svg' ? `A ${called} holds one <svg>. Take out the one inside.` : `A ${called} begins with <svg>. Take out what stands before it.`)
      const kept = attributesOf(name, attributes, called)
      if (typeof kept !== 'string') return wrong(at, kept.wrong)
      written += `<${name}${name === 'svg' ? head : ''}${kept}${alone}>`
      if (alone === '') open.push(name)
      if (open.length > MOST_DEPTH) return wrong(at, `More than ${MOST_DEPTH} groups of a ${called} stand in one another. Take some of them apart.`)
    }
    at += tag.length
  }
  return open.length > 0 || written === '' ? wrong(whole.length, `<${open.at(-1) ?? 'svg'}> is not closed. Close it.`) : { value: written, findings: [] }
}

/** The attributes of an element as they may be written, or what is wrong with them. */
function attributesOf(name: string, written: string, called: string): string | { readonly wrong: string } {
  const own = ELEMENTS.get(name)
  if (!own) return { wrong: `A ${called} may not hold <${name}>. Keep to ${[...ELEMENTS.keys()].slice(1).join(', ')} inside one svg.` }
  const pairs = [...written.matchAll(/([A-Za-z][A-Za-z0-9:-]*)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value] as const)
  for (const [key, value] of pairs) {
    const allowed = Object.hasOwn(own, key) ? own[key] : Object.hasOwn(COMMON, key) ? COMMON[key] : undefined
    if (!allowed) return { wrong: `<${name}> of a ${called} may not have ${key}. Take it out; a shape takes the colour of the text by fill="currentColor".` }
    if (!allowed.fits.test(value)) return { wrong: `${key} of <${name}> must be ${allowed.says}.` }
  }
  const twice = pairs.find(([key], index) => pairs.findIndex(([other]) => other === key) < index)
  if (twice) return { wrong: `<${name}> has ${twice[0]} twice. Take one out.` }
  if (name === 'svg' && !pairs.some(([key]) => key === 'viewBox')) return { wrong: `The <svg> of a ${called} needs a viewBox such as "0 0 32 32".` }
  return pairs.filter(([key]) => key !== 'xmlns').map(([key, value]) => ` ${key}="${value}"`).join('')
}
