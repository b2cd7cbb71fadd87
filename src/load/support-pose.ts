/**
 * Where every joint of a body lies that leans on its feet and its hands.
 *
 * The pivot P (ball of the foot, heel, ankle or knee), the shoulder and the hands make a triangle.
 * Two of its sides are fixed by the body and the set-up; the third, shoulder to hands, is the arm:
 * straight at the start of the rep, bent at its end. Lengths are shares of stature throughout.
 */
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { Body } from './body.ts'
import { ankleFromHeel, chain, joined, laidDown, mapChain, pivotHeight, planted, type Chain, type Contact, type Facing } from './chain.ts'
import type { Point } from './model.ts'
import { angleOpposite, between, length, minus, plus, point, polar, turning } from './vector.ts'

/** What a coach declared, in shares of stature and radians. */
export type Setup = {
  readonly facing: Facing
  readonly feet: Contact
  readonly hands: 'surface' | 'bar' | 'straps'
  readonly foot_height: number
  readonly hand_height: number | undefined
  readonly lean: number | undefined
  readonly anchor_height: number | undefined
  readonly feet_from_anchor: number | undefined
  readonly strap: number | undefined
  readonly knee: number
  /** Kneeling: the shanks lie on the floor. */
  readonly shanks_rest: boolean
  readonly elbow: number
}

/** One still: the body's joints, the arm's, and where a strap is tied. */
export type Still = Chain & { readonly elbow: Point; readonly wrist: Point; readonly hand: Point; readonly anchor: Point | undefined; readonly pulls: boolean }
export type Stills = { readonly start: Outcome<Still>; readonly end: Outcome<Still> }

/** The arm as two links: shoulder to elbow, elbow to the middle of the palm or grip. */
function arm(body: Body, hands: Setup['hands']) {
  const palm = body.hand.length / 2
  const upper = body.upper_arm.length
  const palmDown = hands === 'surface'
  const fore = palmDown ? Math.hypot(body.forearm.length, palm) : body.forearm.length + palm
  const down = palmDown ? upper + body.forearm.length : upper + fore
  const ahead = palmDown ? palm : 0 // a flat hand carries under the middle of the palm, ahead of the wrist
  return { upper, fore, down, ahead }
}

/** A circle the shoulder is tied to: about the hand, the bar or the anchor, at one radius with straight arms and at another with bent. */
type Tie = { readonly centre: Point; readonly straight: number; readonly bent: number; readonly strap: number; readonly above: boolean }

const bentReach = (outer: number, upper: number, elbow: number): number =>
  Math.sqrt(outer * outer + upper * upper - 2 * outer * upper * Math.cos(elbow)) // law of cosines

const TOO_FAR = 'the hands cannot be reached from the feet: the height is more than the body spans'
const FOLDED = 'the arms cannot bend that far in this position'

/** Angle of the shoulder seen from the pivot, when the body leans by `lean` from upright. */
const shoulderAt = (lean: number, shoulder: Point): number => Math.PI / 2 - lean + Math.atan2(shoulder.y, shoulder.x)

/** Hands below the shoulders: they lie where they would on a level floor with the arms upright. */
function pushing(setup: Setup, body: Body, shoulder: Point, pivot_height: number): Outcome<Tie> {
  const { upper, fore, down, ahead } = arm(body, setup.hands)
  const radius = length(shoulder)
  const rise = down - pivot_height
  if (Math.abs(rise) >= radius) return missing('the arms are longer than the part of the body that leans')
  const span = Math.hypot(Math.sqrt(radius * radius - rise * rise) + ahead, pivot_height)
  const straight = Math.hypot(down, ahead)
  const opening = angleOpposite(straight, radius, span)
  if (opening === undefined) return missing(TOO_FAR)
  const bearing = heightBearing(setup, span, pivot_height, (lean) => shoulderAt(lean, shoulder) - opening)
  if (bearing === undefined) return missing(TOO_FAR)
  return { centre: polar(span, bearing), straight, bent: bentReach(fore, upper, setup.elbow), strap: 0, above: false }
}

/** Angle from the pivot to the hands: from their height, or from the lean. */
function heightBearing(setup: Setup, span: number, pivot_height: number, fromLean: (lean: number) => number): number | undefined {
  if (setup.lean !== undefined) return fromLean(setup.lean)
  const sine = ((setup.hand_height ?? 0) - setup.foot_height - pivot_height) / span
  return Math.abs(sine) <= 1 ? Math.asin(sine) : undefined
}

/** Hands on a fixed bar above: it lies where the straight arms stand square to the body. */
function hanging(setup: Setup, body: Body, shoulder: Point, pivot_height: number): Outcome<Tie> {
  const { upper, fore } = arm(body, 'bar')
  const straight = upper + fore
  const span = Math.hypot(length(shoulder), straight)
  const opening = Math.atan2(straight, length(shoulder))
  const bearing = heightBearing(setup, span, pivot_height, (lean) => shoulderAt(lean, shoulder) + opening)
  if (bearing === undefined) return missing(TOO_FAR)
  return { centre: polar(span, bearing), straight, bent: bentReach(fore, upper, setup.elbow), strap: 0, above: true }
}

/** Hands on straps from an anchor: the straight arm is the strap's continuation, the forearm stays so. */
function strapped(setup: Setup, body: Body, shoulder: Point, pivot: Point): Outcome<Tie> {
  const { upper, fore } = arm(body, 'straps')
  const centre = minus(point(setup.feet_from_anchor ?? 0, setup.anchor_height ?? 0), pivot)
  const leant = setup.lean === undefined ? undefined : polar(length(shoulder), shoulderAt(setup.lean, shoulder))
  const strap = leant ? length(minus(centre, leant)) - upper - fore : (setup.strap ?? 0)
  if (strap <= 0) return missing('the anchor is nearer than the arms are long, so no strap fits between')
  return { centre, straight: strap + upper + fore, bent: bentReach(strap + fore, upper, setup.elbow), strap, above: true }
}

/** What is the same in both stills of a rep: the body's joints, what it turns about, and what ties its shoulder to the hands. */
function tieOf(setup: Setup, body: Body): Outcome<{ readonly joints: Chain; readonly pivot: Point; readonly tie: Tie }> {
  const joints = chain(body, setup.feet, setup.facing, setup.knee)
  const pivot_height = pivotHeight(body, setup.feet)
  const heelward = setup.feet === 'flat' ? (setup.facing === 'down' ? 1 : -1) * ankleFromHeel(body) : 0
  const pivot = point(heelward, setup.foot_height + pivot_height)
  const tie =
    setup.facing === 'down'
      ? pushing(setup, body, joints.shoulder, pivot_height)
      : setup.hands === 'straps'
        ? strapped(setup, body, joints.shoulder, pivot)
        : hanging(setup, body, joints.shoulder, pivot_height)
  return isMissing(tie) ? tie : { joints, pivot, tie }
}

/** The body with its shoulder on the circle of straight arms, or of bent ones. */
function stillAt(setup: Setup, body: Body, { joints, pivot, tie }: { joints: Chain; pivot: Point; tie: Tie }, end: 'start' | 'end'): Outcome<Still> {
  const opening = angleOpposite(end === 'start' ? tie.straight : tie.bent, length(joints.shoulder), length(tie.centre))
  if (opening === undefined) return missing(end === 'start' ? TOO_FAR : FOLDED)
  const bearing = Math.atan2(tie.centre.y, tie.centre.x)
  const at = placed(setup, body, joints, pivot, tie, bearing + (tie.above ? -opening : opening))
  const lowest = setup.facing === 'down' ? at.hand.y : 0
  return at.shoulder.y > lowest ? at : missing('the shoulders would be below the hands or the floor')
}

/**
 * The start and the end of the rep.
 *
 * Shape   a set-up and a body to two stills, in shares of stature, the feet at x = 0 on the floor.
 * Missing when the triangle does not close, a strap has no length, or the shoulders would lie below hands or floor.
 */
export function supportStills(setup: Setup, body: Body): Outcome<Stills> {
  const tied = tieOf(setup, body)
  if (isMissing(tied)) return tied
  return { start: stillAt(setup, body, tied, 'start'), end: stillAt(setup, body, tied, 'end') }
}

/** One of the two stills. */
export function supportStill(setup: Setup, body: Body, end: 'start' | 'end'): Outcome<Still> {
  const tied = tieOf(setup, body)
  return isMissing(tied) ? tied : stillAt(setup, body, tied, end)
}

/** Turns the body so that its shoulder lies at `bearing` from the pivot, and joins the arm to the hands. */
function placed(setup: Setup, body: Body, joints: Chain, pivot: Point, tied: Tie, bearing: number): Still {
  const turn = bearing - Math.atan2(joints.shoulder.y, joints.shoulder.x)
  const set = mapChain(joints, turning(turn, pivot))
  const standing = setup.feet === 'flat' ? planted(set, body, setup.facing) : setup.shanks_rest ? laidDown(set, body, setup.facing) : set
  const centre = plus(pivot, tied.centre)
  const { upper, fore } = arm(body, setup.hands)
  const elbow = joined(centre, standing.shoulder, tied.strap + fore, upper, tied.above ? 'right' : 'left')
  const hand = tied.strap > 0 ? between(centre, elbow, tied.strap / (tied.strap + fore)) : centre
  const wrist = between(elbow, hand, body.forearm.length / fore)
  const { heel, ball, toe, ankle, knee, hip, shoulder, head } = standing
  return { heel, ball, toe, ankle, knee, hip, shoulder, head, elbow, wrist, hand, anchor: strapAnchor(setup, centre), pulls: tied.above } // written out: spread, it takes as long as all the rest of a pose
}

/** Where the strap is tied; facing down, straight above the hands unless the set-up says otherwise. */
function strapAnchor(setup: Setup, centre: Point): Point | undefined {
  if (setup.hands !== 'straps') return undefined
  if (setup.facing === 'up') return centre
  return point(setup.feet_from_anchor ?? centre.x, setup.anchor_height ?? centre.y + 1)
}
