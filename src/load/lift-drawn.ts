/** The pictures of a lift: what is asked, turned into poses that balance with the mass in hand. */
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { men } from './body.ts'
import { liftPoses, type Lift } from './lift-pose.ts'
import type { Athlete, Load, Picture, Pose, Prop } from './model.ts'
import { middleOfFoot } from './standing-body.ts'
import { handleHeight, standingPose } from './standing-pose.ts'
import { point } from './vector.ts'

type AskedLift = { readonly lift: Lift['lift'] | undefined; readonly block_cm: number | undefined; readonly knee_deg: number | undefined }

const ASSUMES =
  'The picture is computed: the reference man stands in balance with the mass, drawn as one ball of cast iron, above the middle of his feet; his trunk leans as far as straight arms need. In a lift from below the knee angle is chosen unless it is given. A weight in one hand is drawn as seen from the side: how it pulls to that side is not shown.'

/** Knee angles of a lift from below. Chosen by us, after common practice. Units deg. */
const KNEE_DEG = { 'floor lift': 110, 'one-leg floor lift': 155, 'suitcase lift': 105, 'overhead press': 180, 'one-hand press': 180, carry: 180 } as const
/** A bar is held in the fist; a round weight hangs below it. */
const hangs = (lift: Lift['lift']): boolean => lift !== 'overhead press' && lift !== 'one-hand press'

/** The picture of a lift; none where no lift is named. */
export function liftDrawn({ lift, ...picture }: AskedLift, { load, quantity }: Load, athlete: Athlete): Picture | undefined {
  if (lift === undefined) return undefined
  return { poses: quantity.unit === 'kg' ? posesOf({ ...picture, lift }, load.mid, athlete) : missing('the mass is not known in kilograms'), assumes: ASSUMES }
}

/** Start and end of a lift, or the one pose of a carry; or why they are not drawn. */
function posesOf({ lift, block_cm = 0, knee_deg }: AskedLift & { readonly lift: Lift['lift'] }, kg: number, { stature_m, mass_kg }: Athlete): Outcome<Pose[]> {
  const block = block_cm / 100
  const found = liftPoses(men, { lift, mass: kg / mass_kg, handle: (handleHeight(kg) + block) / stature_m, knee: radians(knee_deg ?? KNEE_DEG[lift]) })
  if (isMissing(found)) return found
  const [first] = found
  const props: Prop[] = block > 0 && first ? [{ kind: 'block', at: point(first.hand.x * stature_m, block) }] : []
  const names = lift === 'carry' ? (['hold'] as const) : (['start', 'end'] as const)
  return found.map((pose, index) =>
    standingPose(pose, stature_m, {
      name: names[index] ?? 'end',
      props,
      mass: { kg, hangs: hangs(lift) },
      forces: [
        { on: 'feet', at: point(pose.leg.ankle.x + middleOfFoot(men), 0), share: 1 + kg / mass_kg },
        { on: 'weight', at: pose.carried.at, share: -kg / mass_kg },
      ],
    }),
  )
}
