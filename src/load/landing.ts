import { figureText } from '../quantity/figure.ts'
import { missing, type Outcome } from '../quantity/outcome.ts'
import { exactly } from '../quantity/spread.ts'
import { radians, STANDARD_GRAVITY } from '../quantity/unit.ts'
import { loadModel, type Asked, type Keys, type Load } from './model.ts'

const keys = {
  drop_height_cm: { unit: 'cm', min: 0, max: 150, instructs: 'a drop of about {}', says: 'height the feet fall from, above where they land' },
  travel_cm: { unit: 'cm', min: 5, max: 80, default: 35, says: 'how far the middle of the body sinks while it stops' },
  slope_deg: { unit: 'deg', min: 0, max: 45, default: 0, says: 'how far the landing falls away below level' },
  level_speed_m_s: { unit: 'm/s', min: 0, max: 8, default: 0, says: 'level speed at take-off, along the slope' },
  stance: { choices: ['two legs', 'one leg'], optional: true, says: 'what it lands on; two legs unless given' },
  from: { choices: ['box', 'ground'], optional: true, says: 'where the fall begins, for the picture: a step off a box, or a jump from the ground; a box unless given' },
  ahead_cm: { unit: 'cm', min: 0, max: 150, optional: true, says: 'how far ahead of the edge of the box the feet land, for the picture; 30 unless given' },
} as const satisfies Keys

/** What a landing is asked. */
export type AskedLanding = Asked<typeof keys>

/** Equivalent fall heights quoted in the design of jumps: a suggested value, and the most. Units m. Source minetti1998, levy2015. */
const SUGGESTED_M = 1
const MOST_M = 1.5
/** A drop of exactly 1 m comes back from root and square a hair short of it. Units m. */
const HAIR_M = 1e-9

/**
 * How hard a landing is: the fall onto level ground that would land as hard.
 *
 *     v² = 2 g h + u²                                                   (1)
 *     w = √(2 g h) cos β − u sin β                                      (2)
 *     h_eq = w² / 2 g                                                   (3)
 *     F / W = cos β + h_eq / s                                          (4)
 *
 * v is the landing speed, w its part into the surface, β the slope below level, u the level speed,
 * s how far the middle of the body sinks. With γ the angle of the path below level, w = v sin(γ − β),
 * so (3) is v² sin²(β − γ) / 2 g.
 *
 * Shape   a drop, and where wanted slope, level speed and travel, to the equivalent fall height.
 * Units   cm, deg, m/s in; cm for the load, m/s, J/kg and × body weight beside it.
 * Missing when the path is shallower than the slope, so that it never comes down on it.
 * Source  mechanics; the limits from minetti1998 and levy2015. The span to 150 cm is their upper limit, the others are chosen by us.
 * Assumes free fall without drag, and a constant stopping force.
 */
export const landing = loadModel({
  name: 'landing',
  says: 'how hard a landing is, as a fall onto level ground',
  keys,
  solves: ['drop_height_cm'],
  cites: [
    { source: 'mechanics', at: 'speed and energy of a fall; mean force over the stopping distance' },
    { source: 'minetti1998', at: 'equivalent fall height, as quoted in the design of jumps' },
    { source: 'levy2015', at: 'limits of equivalent fall height, as quoted in the design of jumps' },
  ],
  compute({ drop_height_cm, travel_cm, slope_deg, level_speed_m_s }): Outcome<Load> {
    const slope = radians(slope_deg)
    const down_m_s = Math.sqrt((2 * STANDARD_GRAVITY * drop_height_cm) / 100)
    const landing_m_s = Math.hypot(down_m_s, level_speed_m_s) // eq. 1
    const into_m_s = down_m_s * Math.cos(slope) - level_speed_m_s * Math.sin(slope) // eq. 2
    if (into_m_s < 0) return missing('the path is shallower than the slope, so it never comes down on it')
    const fall_m = into_m_s ** 2 / (2 * STANDARD_GRAVITY) // eq. 3
    const force = Math.cos(slope) + fall_m / (travel_cm / 100) // eq. 4
    return {
      quantity: { name: 'equivalent fall height', unit: 'cm', repeats: false },
      load: exactly(100 * fall_m),
      figures: [
        { name: 'landing speed', value: exactly(landing_m_s), unit: 'm/s' },
        { name: 'energy to absorb', value: exactly(into_m_s ** 2 / 2), unit: 'J/kg' },
        { name: 'mean stopping force', value: exactly(force), unit: '× body weight' },
      ],
      poses: [],
      working: [
        { says: 'Speed into the landing', formula: 'w = √(2 g h) cos β − u sin β', numbers: `${down_m_s.toFixed(3)} m/s × cos ${slope_deg}° − ${level_speed_m_s} m/s × sin ${slope_deg}° = ${into_m_s.toFixed(3)} m/s` },
        { says: 'Fall onto level ground that lands as hard', formula: 'h_eq = w² / 2 g', numbers: `${into_m_s.toFixed(3)}² / (2 × ${STANDARD_GRAVITY} m/s²) = ${figureText(100 * fall_m, 'cm')}` },
        { says: 'Mean stopping force over body weight', formula: 'F/W = cos β + h_eq / s', numbers: `${Math.cos(slope).toFixed(2)} + ${figureText(100 * fall_m, 'cm')} / ${figureText(travel_cm, 'cm')} = ${figureText(force, '× body weight')}` },
      ],
      assumes: ['Free fall, no drag; the stopping force is spread evenly over the travel, so its peak is higher.'],
      cautions: limits(fall_m),
    }
  },
})

function limits(fall_m: number): string[] {
  if (fall_m >= MOST_M - HAIR_M) return ['At or above 1.5 m, the absolute maximum quoted in the design of jumps (Minetti 1998, Levy 2015).']
  if (fall_m >= SUGGESTED_M - HAIR_M) return ['At or above 1 m, the suggested design value for jumps (Minetti 1998, Levy 2015).']
  return []
}
