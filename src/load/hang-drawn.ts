/** The pictures of a hang, a pull-up or a dip: what is asked, turned into poses that balance. */
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { helpOf, type AskedHelp } from './assisted.ts'
import { men } from './body.ts'
import { hangingPose, helpedAt, type Hanging, type Help } from './hanging-pose.ts'
import type { Athlete, Load, Picture, Point, Pose, Prop } from './model.ts'
import type { Standing } from './standing-body.ts'
import { ballRadius, standingPose } from './standing-pose.ts'
import { plus, point, times } from './vector.ts'

const ASSUMES =
  'The picture is computed: the reference man hangs or presses in balance, the middle of all masses where hands and help hold it. Elbows are drawn in the plane seen from the side. The arrow at the hands is all they hold: the forearms are in it, and not in the load.'

/** Room under the feet of a straight hang; two bars to dip on at the height of the hips. Shares of stature, chosen by us. */
const CLEAR = 0.2
const RAILS = 0.55
/** The mats end where a kneecap lies under the joint. Chosen by us. */
const KNEECAP = 0.032
/** A rope runs up to a pulley, clear of the head or of the arrow above a bar. Units m, chosen by us. */
const PULLEY_M = { bars: 0.32, bar: 0.66 } as const

type Name = 'start' | 'end' | 'hold' | 'lowest'
type Still = { readonly name: Name; readonly at: Hanging['at']; readonly help: number }

/** The stills of one rung, each with the help it gets. */
function stillsOf({ exercise, does, top }: AskedHelp, start: number, end: number): readonly Still[] {
  if (exercise === 'dip') return [{ name: 'start', at: 'support', help: end }, { name: 'lowest', at: 'level arms', help: start }]
  if (does === 'hold') return [{ name: 'hold', at: 'straight arms', help: start }]
  return [{ name: 'start', at: 'straight arms', help: start }, { name: 'end', at: top ?? 'chin', help: end }]
}

/** What of one picture is chosen. */
function chosenOf({ exercise, help_from }: AskedHelp): string {
  if (exercise === 'dip') return 'The height of the bars and the line of the legs are chosen for the drawing.'
  return help_from === 'feet' || help_from === 'toes' ? 'The height of the bar and the bend of the knees are chosen for the drawing.' : 'The height of the bar is chosen for the drawing.'
}

const SAYS = { 'straight arms': 'hanging on straight arms', chin: 'chin over the bar', chest: 'upper breastbone at the bar', support: 'on two bars, elbows straight', 'level arms': 'on two bars, upper arms level' } as const

/** The picture of what arms carry, less the help. */
export function hangDrawn(input: AskedHelp, _load: Load, athlete: Athlete): Picture {
  return { poses: posesOf(input, athlete), assumes: ASSUMES }
}

function posesOf(input: AskedHelp, { stature_m, mass_kg }: Athlete): Outcome<Pose[]> {
  const help = helpOf(input, mass_kg)
  if (isMissing(help)) return help
  if (input.exercise === 'dip' && input.band_points) return missing('a band under a dip is not drawn')
  const from: Help['from'] = input.band_points ? 'band' : (input.help_from ?? 'belt')
  const added = input.added_mass_percent / 100
  const stills = stillsOf(input, help.start, help.end)
  const found = stills.map(({ at, help: share }) => hangingPose(men, { at, added, help: share > 0 ? { share, from } : undefined, free_arm: input.working_side_percent === 100 }))
  const poses = found.flatMap((pose) => (pose ? [pose] : []))
  if (poses.length < stills.length) return missing('the body does not balance on what carries it')
  const around = { stature_m, mass_kg, from, added, ground: groundUnder(input, poses), chosen: chosenOf(input) }
  return poses.map((pose, index) => drawn(pose, stills[index] as Still, around)) // one still a pose
}

/** How far below the hands the ground lies. */
function groundUnder({ exercise }: AskedHelp, poses: readonly Standing[]): number {
  const { upper_arm, forearm, hand, trunk, thigh, shank, ankle_height } = men
  const straight = upper_arm.length + forearm.length + hand.length / 2 + trunk.length + thigh.length + shank.length + ankle_height
  return exercise === 'dip' ? Math.max(RAILS, ...poses.map(({ leg }) => KNEECAP - leg.knee.y)) : straight + CLEAR
}

type Around = { readonly stature_m: number; readonly mass_kg: number; readonly from: Help['from']; readonly added: number; readonly ground: number; readonly chosen: string }

function drawn(body: Standing, { name, at, help }: Still, { stature_m, mass_kg, from, added, ground, chosen }: Around): Pose {
  const raised = lifted(body, ground)
  const { leg, hand, carried } = raised
  const place = helpedAt(raised, from)
  const metres = (there: Point) => times(there, stature_m)
  const dips = at === 'support' || at === 'level arms'
  const grips: Prop[] = [{ kind: dips ? 'rails' : 'high bar', at: metres(hand) }]
  const mats: Prop[] = at === 'level arms' ? [{ kind: 'mat', at: metres(point(leg.knee.x, leg.knee.y - KNEECAP)) }] : []
  const helped: Prop[] =
    help === 0
      ? []
      : from === 'belt'
        ? [{ kind: 'strap', from: plus(metres(point(leg.hip.x, dips ? raised.head.y : hand.y)), point(0, dips ? PULLEY_M.bars : PULLEY_M.bar)), to: metres(leg.hip) }]
        : from === 'band'
          ? [{ kind: 'band', from: metres(hand), to: metres(place) }]
          : [{ kind: 'surface', at: metres(place) }]
  const weight: Prop[] = added > 0 ? [{ kind: 'mass', at: metres(carried.at), radius_m: ballRadius(added * mass_kg) }] : []
  const pose = standingPose(raised, stature_m, {
    name,
    chosen,
    props: [...helped, ...grips, ...mats, ...weight],
    forces: [
      { on: 'hands', at: hand, share: 1 + added - help },
      ...(help > 0 ? [{ on: from === 'belt' || from === 'band' ? from : 'feet', at: place, share: help } as const] : []),
      ...(added > 0 ? [{ on: 'weight', at: carried.at, share: -added } as const] : []),
    ],
  })
  return { ...pose, standing: { knee_deg: 180, trunk_deg: 0, ...pose.standing, holds: SAYS[at] } }
}

/** The whole body so much higher. */
function lifted(body: Standing, by: number): Standing {
  const up = (at: Point): Point => plus(at, point(0, by))
  const raise = <Joints extends Readonly<Record<string, Point>>>(joints: Joints): Joints => Object.fromEntries(Object.entries(joints).map(([joint, at]) => [joint, up(at)])) as Joints
  const { leg, other: _, carried, free, ...joints } = body
  const legs = raise(leg)
  return { ...raise(joints), leg: legs, other: legs, carried: { ...carried, at: up(carried.at) }, ...(free ? { free: raise(free) } : {}) }
}
