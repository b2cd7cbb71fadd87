import { figureText } from '../quantity/figure.ts'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { mapSpread, type Spread } from '../quantity/spread.ts'
import { STANDARD_GRAVITY } from '../quantity/unit.ts'
import { bandCurve, type Band } from './band.ts'
import { bodies, men, women, type Body } from './body.ts'
import { loadModel, type Asked, type Figure, type Keys, type Line, type Load } from './model.ts'

const keys = {
  exercise: { choices: ['hang', 'dip', 'grip'], says: 'hang and dip: what shoulders and elbows carry, without the forearms and hands that work; grip: what the hands carry, all but themselves' },
  counterweight_percent: { unit: '% of body mass', min: 0, max: 90, optional: true, instructs: 'a counterweight of about {}', says: 'mass of the counterweight, or what a scale under the feet shows' },
  band_points: { list: 'pairs', units: ['cm', 'N'], min: 0, max: 2000, most: 30, optional: true, says: 'measured points of the band: stretch in cm, force in N' },
  stretch_start_cm: { unit: 'cm', min: 0, max: 400, optional: true, says: 'stretch of the band at the start of the rep, where it is longest' },
  stretch_end_cm: { unit: 'cm', min: 0, max: 400, optional: true, instructs: 'the band stretched about {} at the end of the rep', says: 'stretch of the band at the end of the rep' },
  added_mass_percent: { unit: '% of body mass', min: 0, max: 150, default: 0, instructs: 'about {} added', says: 'mass hung on the athlete' },
  working_side_percent: { unit: '%', min: 50, max: 100, default: 50, says: 'share that one arm takes' },
  does: { choices: ['rep', 'hold'], optional: true, says: 'hang and grip, for the picture: pulled up and let down, or only held; pulled up unless given' },
  help_from: { choices: ['belt', 'feet', 'toes'], optional: true, says: 'for the picture: where a counterweight helps, at a belt or as what feet or toes leave on a scale; at a belt unless given' },
  top: { choices: ['chin', 'chest'], optional: true, says: 'for the picture: what comes to the bar at the end of a pull-up; the chin over it unless given' },
} as const satisfies Keys

/** What a hang or a dip is asked. */
export type AskedHelp = Asked<typeof keys>
type Input = AskedHelp

/** What of the picture does not fit, as a phrase after "not computed:". */
function unfit({ exercise, does, top, help_from, counterweight_percent }: Input): string | undefined {
  if (exercise === 'dip' && (does !== undefined || top !== undefined)) return `${does === undefined ? 'top' : 'does'} is given, but the exercise is dip`
  if (exercise === 'dip' && help_from !== undefined && help_from !== 'belt') return `help_from is ${help_from}, but the exercise is dip`
  if (does === 'hold' && top !== undefined) return 'top is given, but the hang is only held'
  if (help_from !== undefined && counterweight_percent === undefined) return 'help_from is given, but no counterweight_percent'
  return does !== 'hold' && help_from !== undefined && help_from !== 'belt' ? `help_from is ${help_from}, but the hang is pulled up` : undefined
}

/** What help there is at the start and the end of the rep, as a share of body weight. */
type Help = { readonly start: number; readonly end: number; readonly lines: readonly Line[] }

/** How much help there is at both ends of the rep; or why that is not known. */
export function helpOf(input: Input, mass_kg: number): Outcome<Help> {
  const { counterweight_percent, band_points, stretch_start_cm, stretch_end_cm } = input
  if (counterweight_percent !== undefined && band_points !== undefined) return missing('counterweight_percent and band_points are both given; give one')
  if (band_points === undefined) {
    if (stretch_start_cm !== undefined || stretch_end_cm !== undefined) return missing('a stretch is given, but no band_points')
    const share = (counterweight_percent ?? 0) / 100
    return { start: share, end: share, lines: [] }
  }
  if (stretch_start_cm === undefined || stretch_end_cm === undefined) return missing('stretch_start_cm and stretch_end_cm are needed with band_points')
  if (stretch_end_cm > stretch_start_cm) return missing('the band is longer at the end of the rep than at its start, so it would not help')
  const band = bandCurve(band_points)
  if (isMissing(band)) return band
  if (stretch_end_cm < band.from_cm || stretch_start_cm > band.to_cm) return missing(`the band was measured from ${band.from_cm} to ${band.to_cm} cm; the rep stretches it from ${stretch_end_cm} to ${stretch_start_cm} cm`)
  const weight_n = mass_kg * STANDARD_GRAVITY
  const [start_n, end_n] = [band.force_n(stretch_start_cm), band.force_n(stretch_end_cm)]
  if (start_n > weight_n) return missing('the band pulls more than the body weighs')
  return { start: start_n / weight_n, end: end_n / weight_n, lines: [bandLine(band, stretch_start_cm, start_n), bandLine(band, stretch_end_cm, end_n)] }
}

const bandLine = ({ a, b, c }: Band, stretch_cm: number, force_n: number): Line => ({
  says: 'Force of the band, by least squares through the measured points',
  formula: 'f = a + b x + c x²',
  numbers: `${a.toFixed(2)} + ${b.toFixed(4)} × ${stretch_cm} + ${c.toFixed(6)} × ${stretch_cm}² = ${figureText(force_n, 'N')}`,
})

/** What the arms carry without help: all but the working hands, and for shoulders and elbows all but the working forearms too. */
function carried({ exercise, working_side_percent }: Input, body: Body): number {
  const arms = working_side_percent === 100 ? 1 : 2
  return 1 - arms * (body.hand.mass + (exercise === 'grip' ? 0 : body.forearm.mass))
}

/**
 * A pull-up or dip with help: a counterweight, or a band whose pull was measured.
 *
 *     q = s (1 + a − n m − h)
 *
 * m is the mass of one forearm and hand (of the hand alone for grip), n the arms that work, a what is hung on, h the help, over body mass; s the working arm's share.
 *
 * Shape   the help at both ends of the rep to the load on one arm, hardest where the band is shortest.
 * Units   % of body mass, cm, N in; % of body weight out.
 * Missing when the band was not measured over the stretch used, falls, or helps more than the body weighs.
 * Source  deLeva1996, winter2009: masses of forearm and hand; mcMaster2010: the shape of a band; mechanics.
 * Assumes slow movement, the band pulling straight up, a body of the stated mass.
 */
export const assisted = loadModel({
  name: 'assisted',
  says: 'what one arm pulls or presses in a hang or a dip, less the help it gets',
  keys,
  solves: ['counterweight_percent', 'stretch_end_cm', 'added_mass_percent', 'working_side_percent'],
  cites: [
    { source: 'deLeva1996', at: 'Table 4: masses of forearm and hand' },
    { source: 'winter2009', at: 'Table 4.1: the second set of segments' },
    { source: 'mcMaster2010', at: 'second-order fit of tension against stretch; spread between bands' },
    { source: 'mechanics', at: 'weight less help' },
  ],
  compute(input, { mass_kg }): Outcome<Load> {
    const why = unfit(input)
    if (why) return missing(why)
    const help = helpOf(input, mass_kg)
    if (isMissing(help)) return help
    const added = input.added_mass_percent / 100
    const both = (share: number): Spread => {
      const of = (body: Body): number => 100 * (carried(input, body) + added - share)
      return { mid: (of(women) + of(men)) / 2, points: bodies.map(of), over: 'body tables' }
    }
    const [start, end] = [both(help.start), both(help.end)]
    if (Math.min(...end.points, ...start.points) <= 0) return missing('the help is more than the arms would carry')
    const load = mapSpread(end, (percent) => (percent * input.working_side_percent) / 100)
    const figures: Figure[] = [
      { name: 'on both arms at the start of the rep', value: start, unit: '% of body weight' },
      { name: 'on both arms at the end of the rep', value: end, unit: '% of body weight' },
    ]
    return {
      quantity: { name: 'force on one working arm', unit: '% of body weight', repeats: true },
      load,
      figures,
      poses: [],
      working: [
        ...help.lines,
        {
          says: 'Load on one working arm at the end of the rep, mean of the reference woman and man',
          formula: 'q = s (1 + a − n m − h)',
          numbers: `${input.working_side_percent} % × (1 + ${added} − ${((2 - carried(input, women) - carried(input, men)) / 2).toFixed(4)} − ${help.end.toFixed(4)}) = ${figureText(load.mid, '% of body weight')}`,
        },
      ],
      assumes: [
        input.exercise === 'hang' ? 'Slow movement: a brisk pull-up peaks at about one and a half times this (Emerson 2014: 1.51 times body weight at the bar).' : 'Slow movement or none.',
        ...(input.band_points ? [`The band pulls straight up on a body of ${figureText(mass_kg, 'kg')}; a heavier body gets less help from it.`] : []),
      ],
      cautions: input.band_points ? ['A band that slips or snaps strikes: check it before every set, and stand clear of its line.'] : [],
    }
  },
})
