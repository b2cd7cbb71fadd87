/** The picture of a landing: what is asked, turned into the poses of touch-down and of the deepest point. */
import { onceUnder } from '../quantity/once.ts'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { men } from './body.ts'
import type { AskedLanding } from './landing.ts'
import { landingPoses } from './landing-pose.ts'
import type { Athlete, Joints, Load, Picture, Point, Pose, Prop } from './model.ts'
import { flatFoot, middleOfFoot } from './standing-body.ts'
import { standingPose } from './standing-pose.ts'
import { point, turned } from './vector.ts'

const ASSUMES = 'The picture is computed: the middle of the reference man sinks by the travel, in balance at both ends; the arms are chosen.'

/** However high they begin, most landings of a ladder sink alike: bodies in balance cost more than all else about them. */
const KEPT_LANDINGS = 50
const landed = onceUnder<ReturnType<typeof landingPoses>>(KEPT_LANDINGS)

/** Touch-down and deepest point, under the stopping force that was computed. */
export function landingDrawn(input: AskedLanding, { figures }: Load, { stature_m }: Athlete): Picture {
  const force = figures.find(({ unit }) => unit === '× body weight')?.value
  if (force === undefined || isMissing(force)) throw new Error('bug: a landing without a stopping force')
  return { poses: posesOf(input, force.mid, stature_m), assumes: ASSUMES }
}

/** Touch-down and deepest point: the box or the height the feet fell from, and the mean stopping force, square to the ground. */
function posesOf({ drop_height_cm, travel_cm, slope_deg, stance, from, ahead_cm }: AskedLanding, force: number, stature_m: number): Outcome<Pose[]> {
  const [travel, legs] = [travel_cm / 100 / stature_m, stance ?? 'two legs']
  const both = landed(`${legs}, ${travel}`, () => landingPoses(men, travel, legs))
  if (isMissing(both)) return both
  const { heel, ball } = flatFoot(men, 0)
  const height = drop_height_cm / 100
  const fall: Prop[] = height === 0 ? [] : from === 'ground' || slope_deg > 0 ? [{ kind: 'flight', at: point(ball.x * stature_m, height) }] : [{ kind: 'drop', at: point(heel.x * stature_m - (ahead_cm ?? USUALLY_AHEAD_CM) / 100, height) }]
  const [touch, deepest] = both
  const poses = [
    standingPose(touch, stature_m, { name: 'touch-down', props: fall, forces: [], chosen: 'The bend of knees and ankles at touch-down is chosen for the drawing.' }),
    standingPose(deepest, stature_m, { name: 'lowest', props: fall, force_is: 'mean', forces: [{ on: 'feet', at: point(middleOfFoot(men), 0), share: force }] }),
  ]
  return slope_deg === 0 ? poses : poses.map((pose) => onSlope(pose, slope_deg))
}

/** The same landing where the ground falls away: nothing pushes along it, so the body stands square to it as it would to level ground. */
function onSlope({ joints, other_leg, forces, props, standing, ...pose }: Pose, slope_deg: number): Pose {
  const turn = (at: Point): Point => turned(at, -radians(slope_deg))
  const all = (placed: Joints): Joints => Object.fromEntries(Object.entries(placed).map(([joint, at]) => [joint, turn(at)]))
  const { chosen } = standing ?? {}
  return {
    ...pose,
    joints: all(joints),
    ...(other_leg ? { other_leg: all(other_leg) } : {}),
    forces: forces.map(({ on, at, per_weight }) => ({ on, at: turn(at), per_weight: turn(per_weight) })),
    props: props.map((prop) => (prop.kind === 'ground' ? { ...prop, slope_deg } : prop)),
    ...(standing ? { standing: { ...standing, trunk_deg: standing.trunk_deg + slope_deg, chosen: chosen ?? 'What it fell from is left out.' } } : {}),
  }
}

/** Where feet that step off a box land, unless it is given. Chosen by us. */
const USUALLY_AHEAD_CM = 30
