import type { MeasuredCurriculum, MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { nearest } from '../read/nearest.ts'
import { Misuse } from './verb.ts'

/** The ladder or rung that was named on the command line. A name that is not there is misuse, with the nearest that is. */
export function namedRungs({ ladders }: MeasuredCurriculum, rest: readonly string[], what: 'ladder or rung' | 'rung'): { ladder: MeasuredLadder; rungs: readonly MeasuredRung[] } {
  const [name, ...more] = rest
  if (name === undefined || more.length > 0) throw new Misuse(`Name one ${what}, such as press-up/floor.`)
  const [id, rungId] = name.split('/')
  const ladder = ladders.find((candidate) => candidate.id === id)
  const rungs = ladder?.rungs.filter((rung) => (rungId === undefined ? what !== 'rung' : rung.id === rungId)) ?? []
  if (ladder && rungs.length > 0) return { ladder, rungs }
  const known = ladders.flatMap(({ id: own, rungs: all }) => [own, ...all.map((rung) => `${own}/${rung.id}`)])
  const like = nearest(name, known)
  throw new Misuse(`There is no ${what} "${name}" here. ${like && like !== name ? `Did you mean ${like}?` : `The ladders are: ${ladders.map(({ id: own }) => own).join(', ')}.`}`)
}
