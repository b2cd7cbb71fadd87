/** How often the span is looked at for a change of sign, and how often that stretch is then halved: a degree ends below a millionth. */
const LOOKS = 18
const HALVINGS = 32

/**
 * Where a function first changes its sign between two values, or undefined where it never does.
 *
 * Shape   a function of one number, which may be undefined in places, and a span to the lowest root in it.
 */
export function root(of: (value: number) => number | undefined, low: number, high: number): number | undefined {
  let before: { readonly at: number; readonly gives: number } | undefined
  for (let look = 0; look <= LOOKS; look += 1) {
    const at = low + ((high - low) * look) / LOOKS
    const gives = of(at)
    if (gives !== undefined && before && gives * before.gives <= 0) return halved(of, before.at, at, before.gives)
    before = gives === undefined ? undefined : { at, gives }
  }
  return undefined
}

function halved(of: (value: number) => number | undefined, from: number, to: number, atFrom: number): number | undefined {
  let [near, far] = [from, to]
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (near + far) / 2
    const gives = of(middle)
    if (gives === undefined) return undefined
    if (gives * atFrom > 0) near = middle
    else far = middle
  }
  return (near + far) / 2
}
