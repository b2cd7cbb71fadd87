/** The pictures of a squat, a split squat, a step-up or a heel raise: what is asked, turned into poses that balance. */
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { men, REFERENCE_MASS_KG, women } from './body.ts'
import { heelRaisePoses, type Helper } from './heel-raise-pose.ts'
import type { AskedPicture } from './leg-press-keys.ts'
import type { Athlete, Load, Picture, Pose, Prop } from './model.ts'
import { frontShare, MAT, squatPoses, type Squat } from './squat-pose.ts'
import { middleOfFoot, type Standing } from './standing-body.ts'
import { standingPose, type Around } from './standing-pose.ts'
import { point, times } from './vector.ts'


const STANCES_CM = { split: 80, 'step-up': 20 } as const

/** Mass of one foot and shank over body mass, mean of the two reference bodies. */
const BELOW_KNEE = (men.shank.mass + men.foot.mass + women.shank.mass + women.foot.mass) / 2

/** Share of the force on the ground under the working foot: its share of what is above the knees, and its own lower leg. */
function frontOf({ stance, front_leg_percent, added_mass_percent }: AskedPicture): number {
  const added = added_mass_percent / 100
  if (stance === 'two legs' || stance === 'one leg') return 1
  return ((front_leg_percent / 100) * (1 + added - 2 * BELOW_KNEE) + BELOW_KNEE) / (1 + added)
}

function squatOf(input: AskedPicture, stature_m: number): Squat {
  const share = (height_cm: number) => height_cm / 100 / stature_m
  const { stance, knee_deg, seat_height_cm } = input
  return {
    stance,
    foot: share(input.foot_height_cm ?? 0),
    rear_foot: share(input.rear_foot_height_cm ?? 0),
    apart: share(input.stance_cm ?? STANCES_CM[stance === 'step-up' ? 'step-up' : 'split']),
    other_foot: input.other_foot ?? 'toes',
    seat: seat_height_cm === undefined ? undefined : share(seat_height_cm),
    knee: knee_deg === undefined ? undefined : radians(knee_deg),
    front: frontOf(input),
    held: { mass: input.added_mass_percent / 100, at: input.added_mass_at ?? 'chest' },
  }
}

/** Whether nothing that is given says how deep the way down goes. */
const depthChosen = ({ stance, knee_deg, seat_height_cm, foot_height_cm = 0 }: AskedPicture): boolean =>
  knee_deg === undefined && seat_height_cm === undefined && (stance === 'two legs' || (stance === 'one leg' && foot_height_cm === 0))

/** What helps the working foot of a heel raise, if anything does. */
function helperOf({ stance, stance_cm, other_foot, bar_height_cm }: AskedPicture, stature_m: number): Helper | undefined {
  if (stance !== 'split') return undefined
  if (bar_height_cm !== undefined) return { on: 'hands', height: bar_height_cm / 100 / stature_m }
  if (stance_cm === undefined) return { on: 'feet', behind: 0 }
  return { on: other_foot === 'toes' ? 'toes' : 'feet', behind: men.foot.length + stance_cm / 100 / stature_m }
}

function around(input: AskedPicture, squat: Squat, pose: Standing, name: Pose['name'], props: readonly Prop[]): Around {
  const whole = 1 + input.added_mass_percent / 100
  const helped = input.rise === 'heels' && input.stance === 'split'
  const beside = helped && pose.other === pose.leg
  const front = beside ? 1 : helped ? squat.front : input.rise === 'heels' ? 1 : frontShare(men, squat, pose)
  const barred = input.bar_height_cm !== undefined
  const foot = input.rise === 'heels' ? pose.leg.ball : point(pose.leg.ankle.x + middleOfFoot(men), pose.leg.ball.y)
  const rear = squat.other_foot === 'heel' ? pose.other.heel : pose.other.ball
  const { mass, at } = squat.held
  return {
    name,
    props,
    forces: [{ on: 'feet', at: foot, share: whole * front }, ...(front < 1 ? [{ on: barred ? 'hands' : 'rear foot', at: barred ? pose.hand : rear, share: whole * (1 - front) } as const] : []), ...(mass > 0 ? [{ on: 'weight', at: pose.carried.at, share: -mass } as const] : [])],
    ...(mass > 0 ? { mass: { kg: mass * REFERENCE_MASS_KG, hangs: at === 'hands' } } : {}),
    chosen: beside ? 'The feet stand side by side and are seen as one: the arrow is what both carry.' : input.rise !== 'heels' && depthChosen(input) ? 'The depth is chosen for the drawing: the ladder gives none.' : undefined,
  }
}

/** The edge of a step lies just behind the ball of the foot. Share of stature, chosen by us. */
const UNDER_BALL = 0.1

/** What stands around a squat: the boxes under its feet and hips, the mat its rear knee comes down to. */
function propsOf(input: AskedPicture, squat: Squat, [, lowest]: readonly [Standing, Standing], stature_m: number): Prop[] {
  const at = (x: number, y: number) => times(point(x, y), stature_m)
  const onMat = input.rise !== 'heels' && squat.stance === 'split' && squat.seat === undefined && squat.knee === undefined && squat.rear_foot === 0
  return [
    ...(squat.foot > 0 ? [{ kind: 'surface', at: at(input.rise === 'heels' ? UNDER_BALL : middleOfFoot(men), squat.foot) } as const] : []),
    ...(squat.seat === undefined ? [] : [{ kind: 'seat', at: at(lowest.leg.hip.x, squat.seat) } as const]),
    ...(squat.rear_foot > 0 ? [{ kind: 'rear surface', at: at(lowest.other.ball.x, squat.rear_foot) } as const] : []),
    ...(onMat ? [{ kind: 'mat', at: at(lowest.other.knee.x, MAT) } as const] : []),
  ]
}

/** Start and lowest point of a squat, the push and the top of a step-up, heels down and up; or why they are not drawn. */
function legPoses(input: AskedPicture, stature_m: number): Outcome<Pose[]> {
  const squat = squatOf(input, stature_m)
  const { stance } = input
  if (input.rise === 'heels' && stance === 'step-up') return missing('a heel raise in a step-up is not drawn')
  const found = input.rise === 'heels' ? heelRaisePoses(men, { step: squat.foot, legs: stance === 'one leg' ? 'one leg' : 'two legs', held: squat.held, helper: helperOf(input, stature_m), front: squat.front }) : squatPoses(men, squat)
  if (isMissing(found)) return found
  const props: readonly Prop[] = [...propsOf(input, squat, found, stature_m), ...(input.bar_height_cm === undefined ? [] : [{ kind: 'bar', at: times(found[0].hand, stature_m) } as const])]
  const second = input.rise === 'heels' || stance === 'step-up' ? 'end' : 'lowest'
  return found.map((pose, index) => standingPose(pose, stature_m, around(input, squat, pose, index === 0 ? 'start' : second, props)))
}

const ASSUMES =
  'The picture is computed: the reference man stands in balance, the middle of all masses above the middle of the working foot or, on two places, where their shares put it. Trunk and working shin lean alike; past 35° the shin stops and the trunk leans on. The arms are chosen, and hands or bars that help are left out unless they carry a share.'

/** The picture of what one leg carries. */
export const legsDrawn = (input: AskedPicture, _load: Load, { stature_m }: Athlete): Picture => ({ poses: legPoses(input, stature_m), assumes: ASSUMES })
