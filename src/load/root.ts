/** How often the span is looked at for a change of sign. */
const LOOKS = 18
/** How narrow the place of a root is made, over the span. Chosen by us: a degree ends below a millionth. */
const NARROW = 1e-12

/** A function of one number, which may be undefined in places. */
type Asked = (value: number) => number | undefined
/** A place, and what the function gives there. */
export type Known = { readonly at: number; readonly gives: number }

/**
 * Where a function first changes its sign between two values, or undefined where it never does.
 *
 * Shape   a function of one number, which may be undefined in places, and a span to the lowest root in it.
 */
export function root(of: Asked, low: number, high: number): number | undefined {
  let before: Known | undefined
  for (let look = 0; look <= LOOKS; look += 1) {
    const at = low + ((high - low) * look) / LOOKS
    const gives = of(at)
    if (gives !== undefined && before && gives * before.gives <= 0) return rootWithin(of, before, { at, gives }, NARROW * (high - low))
    before = gives === undefined ? undefined : { at, gives }
  }
  return undefined
}

/**
 * The root between two places where a function has different signs, to a width; undefined where the function is so on the way.
 *
 *     x = m + (m − a) sign(f_a − f_b) f_m / √(f_m² − f_a f_b)           with m half-way from a to b
 *
 * Source  Ridders 1979, "A new algorithm for computing a single root of a real continuous function"; formula from memory.
 *         Each round at least halves the stretch, whatever the function; on a smooth one each doubles the digits.
 */
export function rootWithin(of: Asked, a: Known, b: Known, width: number): number | undefined {
  let [near, far, last] = [a, b, Number.NaN]
  while (near.gives !== 0 && far.gives !== 0 && Math.abs(far.at - near.at) > width) {
    const middle = known(of, (near.at + far.at) / 2)
    if (!middle || middle.gives === 0) return middle?.at
    const way = Math.sign(near.gives - far.gives) * middle.gives / Math.sqrt(middle.gives ** 2 - near.gives * far.gives)
    const next = known(of, middle.at + (middle.at - near.at) * way)
    if (!next || Math.abs(next.at - last) <= width) return next?.at
    if (next.gives * middle.gives < 0) [near, far] = [middle, next]
    else if (next.gives * near.gives < 0) far = next
    else near = next
    last = next.at
  }
  return near.gives === 0 ? near.at : far.gives === 0 ? far.at : (near.at + far.at) / 2
}

function known(of: Asked, at: number): Known | undefined {
  const gives = of(at)
  return gives === undefined ? undefined : { at, gives }
}
