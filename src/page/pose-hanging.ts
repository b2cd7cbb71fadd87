/** What a body hangs from, or presses itself up on, and the forces there. */
import type { Pose, Prop } from '../load/model.ts'
import { length, plus, point, times } from '../load/vector.ts'
import { amount, say, type Words } from './html.ts'
import { arrow, cm, CM_PER_WEIGHT, disc, haloed, label, line, type Mark } from './pose-marks.ts'

/** Behind the body: a rope to its pulley, a band, a bar with what it is fixed to, two bars seen from the side. */
export function hungBehind(prop: Prop): Mark[] {
  if (prop.kind === 'strap') return [line('pose-strap', cm(prop.from), cm(prop.to)), line('pose-beam', plus(cm(prop.from), point(-9, 4)), plus(cm(prop.from), point(9, 4))), disc('pose-ring', cm(prop.from), 3)]
  if (prop.kind === 'high bar') return [line('pose-post', cm(prop.at), plus(cm(prop.at), point(0, 14))), line('pose-beam', plus(cm(prop.at), point(-16, 15)), plus(cm(prop.at), point(16, 15)))]
  if (prop.kind === 'bar') return [line('pose-post', point(cm(prop.at).x, 0), cm(prop.at)), line('pose-post', point(cm(prop.at).x - 14, 1), point(cm(prop.at).x + 14, 1))]
  if (prop.kind !== 'rails') return []
  const at = cm(prop.at)
  return [-26, 26].map((x) => line('pose-post', point(at.x + x, 0), plus(at, point(x, 0)))).concat(line('pose-beam', plus(at, point(-34, 0)), plus(at, point(34, 0))))
}

/** Before the body: a band from the bar to the sole, and the end of a bar in the fist. */
export const hungBefore = (prop: Prop): Mark[] => (prop.kind === 'band' ? [line('pose-strap', cm(prop.from), cm(prop.to))] : prop.kind === 'high bar' || prop.kind === 'bar' ? [disc('pose-bar', cm(prop.at), 2)] : [])

/** A figure over a short arrow keeps clear of what the bar is fixed to. */
const ABOVE_BEAM = 26

type Force = Pose['forces'][number]

/** What holds or helps the body where there is no ground to push from: an arrow up from the place, its figure beside it. */
export function heldUp({ on, at, per_weight }: Force, words: Words): Mark[] {
  const tail = cm(at)
  const tip = plus(tail, times(per_weight, CM_PER_WEIGHT))
  if (on === 'hands') return [...arrow(tail, tip), label(words, point(tip.x, Math.max(tip.y + 9, tail.y + ABOVE_BEAM)), 'middle')]
  return [...haloed(tail, tip), label(words, plus(tail, point(17, 4)), 'start')]
}

/** Whether a force is held up from above, and not pushed from below. */
export const isHeldUp = ({ on }: Force, { standing }: Pose): boolean => standing?.holds !== undefined && (on === 'belt' || (on === 'hands' && !standing.holds.startsWith('on ')))

/** "force on both hands 80 % of body weight", "the counterweight carries 20 % of body weight". */
export function heldSays({ on, per_weight }: Force, { other_arm }: Pose): Words | undefined {
  const weight = amount(length(per_weight) * 100, '% of body weight')
  if (on === 'hands') return say`force on ${other_arm ? 'the hand' : 'both hands'} ${weight}`
  return on === 'belt' ? say`the counterweight carries ${weight}` : on === 'band' ? say`the band carries ${weight}` : undefined
}
