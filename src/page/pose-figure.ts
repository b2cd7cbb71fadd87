/**
 * A pose drawn to scale: the body, what it holds and stands on, and the forces on hands and feet.
 *
 * One unit of the drawing is a centimetre, y down, the ground at 0. Every figure has one scale, so that the rungs of a ladder compare.
 */
import { onceOfEach } from '../quantity/once.ts'
import type { Pose } from '../load/model.ts'
import { html, joined, say, type Html, type Part } from './html.ts'
import { bodyMarks, leaningFacts, leaningMarks } from './pose-leaning.ts'
import { lyingBody, lyingFacts, lyingMarks } from './pose-lying.ts'
import { asOne, BELOW_GROUND, drawn, frameOf, MARGIN, type Mark } from './pose-marks.ts'
import { standingBody, standingFacts, standingMarks } from './pose-standing.ts'
import { ENGLISH, type Tongue } from './tongue.ts'
import { spoken } from './written.ts'

/** Room under the ground: none is needed for forces where a bar holds the body. */
const below = (poses: readonly Pose[]): number => (poses.every(({ standing }) => standing?.holds !== undefined) ? MARGIN : BELOW_GROUND)

/** Everything of a pose in the order it is painted, labels last; drawn once for all languages. */
const marksOf = onceOfEach((pose: Pose): readonly Mark[] => {
  const marks = pose.standing ? standingMarks(pose) : pose.lies ? lyingMarks(pose) : leaningMarks(pose)
  return [asOne(marks.filter(({ words }) => !words)), ...marks.filter(({ words }) => words)]
})

/** A pose without forces, sizes or letters. */
const bodyOf = (pose: Pose): readonly Mark[] => (pose.standing ? standingBody(pose) : pose.lies ? lyingBody(pose) : bodyMarks(pose))

/**
 * One pose as an SVG.
 *
 * Shape   a pose and a name for it to one drawing; the same bytes for the same pose.
 * Units   1 unit of the drawing is 1 cm; 120 px a metre; 50 cm of arrow for a body weight.
 */
export function poseFigure(pose: Pose, title: string): Html {
  const marks = marksOf(pose)
  return drawn(marks, frameOf(marks, below([pose])), title)
}

const NAMES = { start: 'Start', end: 'End', hold: 'Hold', lowest: 'Lowest point', 'touch-down': 'Touch-down' } as const

/**
 * The facts of the drawing in a sentence: how the body leans or stands, heights and angles, the forces on it.
 *
 * Units   deg, cm, % of body weight; the hands' force is that on both.
 */
function poseSays(pose: Pose): Part {
  const facts = (pose.standing ? standingFacts(pose) : pose.lies ? lyingFacts(pose) : leaningFacts(pose)).filter((part) => part.length > 0)
  const said = joined(facts.map((part) => joined(part, ', ')), '; ')
  return facts.length === 0 ? say`${NAMES[pose.name]}.` : [NAMES[pose.name], ': ', said, '.', pose.standing?.chosen !== undefined && [' ', pose.standing.chosen]]
}

/** The same in English. */
export const poseInWords = (pose: Pose): string => spoken(poseSays(pose), ENGLISH)

/** Every pose of a rung, each with its facts in words below it, in one frame so that start and end lie alike. */
export function poseFigures(poses: readonly Pose[], ladderTitle: string, rungTitle: string): Html {
  const marks = poses.map(marksOf)
  return html`${(tongue: Tongue) => {
    const frame = frameOf(marks.flat(), below(poses), tongue)
    return poses.map(
      (pose, index) => html`<figure class="pose">${drawn(marks[index] ?? [], frame, say`${ladderTitle}, ${rungTitle}: ${pose.name}`)}<figcaption>${poseSays(pose)}</figcaption></figure>
`,
    )
  }}`
}

/** Every pose of a rung as a picture alone, in one frame: no forces, sizes or letters, for a card too small to print them on. */
export function posePictures(poses: readonly Pose[], rungTitle: string): Html {
  const bodies = poses.map(bodyOf)
  const frame = frameOf(bodies.flat(), MARGIN)
  return html`${poses.map((pose, index) => html`<figure class="pose">${drawn(bodies[index] ?? [], frame, say`${rungTitle}: ${pose.name}`)}<figcaption>${NAMES[pose.name]}</figcaption></figure>`)}`
}
