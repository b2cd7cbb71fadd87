import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'vitest'
import { askDrawn } from '../../src/load/drawn.ts'
import { leverHold } from '../../src/load/lever-hold.ts'
import { landing } from '../../src/load/landing.ts'
import { ask, type Inputs, type Point, type Pose } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { measure } from '../../src/measure/measure.ts'
import { inEnglish } from '../../src/page/html.ts'
import { poseFigure, poseFigures, poseInWords } from '../../src/page/pose-figure.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'

type Drawn = { readonly name: string; readonly pose: Pose; readonly svg: string }

/** Numbers are written to a tenth of a centimetre: half of that is lost on each of two axes. */
const ROUNDING = 0.08
/** A radius and two ends are rounded, each by half a tenth. */
const ARC_ROUNDING = 0.15

const { layers } = await readWorkspace(new URL('../..', import.meta.url).pathname)
const reading = readCurriculum(layers)
assert.ok('value' in reading && reading.value, 'the starter curriculum reads')
const ladders: Drawn[] = measure(reading.value).ladders.flatMap(({ id, rungs }) =>
  rungs.flatMap((rung) => (isMissing(rung.outcome) ? [] : drawnOf(`${id}/${rung.id}`, rung.outcome.poses))),
)

/** Set-ups the starter ladders do not hold: a bar, straps before the chest, bent and kneeling legs. */
const others: Drawn[] = Object.entries({
  'bar row': { facing: 'up', feet: 'heels', hands: 'bar', hand_height_cm: 95 },
  'bar row, knees bent': { facing: 'up', feet: 'flat', hands: 'bar', hand_height_cm: 95, knee_deg: 90 },
  'bar row, heels raised': { facing: 'up', feet: 'heels', hands: 'bar', hand_height_cm: 95, foot_height_cm: 40 },
  'press-up on a bar': { facing: 'down', feet: 'toes', hands: 'bar', hand_height_cm: 90 },
  'press-up on straps': { facing: 'down', feet: 'toes', hands: 'straps', hand_height_cm: 30, anchor_height_cm: 240 },
  'kneeling press-up': { facing: 'down', feet: 'knees', hands: 'surface', hand_height_cm: 0, knee_deg: 120, shanks: 'lifted' },
} satisfies Record<string, Inputs>).flatMap(([name, inputs]) => {
  const load = ask(supportedBody, inputs, { stature_m: 1.74, mass_kg: 67 })
  return isMissing(load) ? assert.fail(`${name}: ${load.missing}`) : drawnOf(name, load.poses)
})
const held: Drawn[] = Object.entries({
  'hollow hold': { hold: 'hollow' },
  'hollow hold, knees tucked': { hold: 'hollow', knees: 'tucked', arms: 'overhead' },
  'one-leg bridge': { hold: 'bridge', legs: 'one' },
  'bridge with the feet high': { hold: 'bridge', foot_height_cm: 60 },
} satisfies Record<string, Inputs>).flatMap(([name, inputs]) => {
  const load = ask(leverHold, inputs, { stature_m: 1.74, mass_kg: 67 })
  return isMissing(load) ? assert.fail(`${name}: ${load.missing}`) : drawnOf(name, load.poses)
})
const sloped: Drawn[] = ((load) => (isMissing(load) ? assert.fail(load.missing) : drawnOf('landing on a slope', load.poses)))(askDrawn(landing, { drop_height_cm: 60, slope_deg: 20, level_speed_m_s: 1 }, { stature_m: 1.74, mass_kg: 67 }))
const all = [...ladders, ...others, ...held, ...sloped]

function drawnOf(name: string, poses: readonly Pose[]): Drawn[] {
  return poses.map((pose) => ({ name: `${name}, ${pose.name}`, pose, svg: inEnglish(poseFigure(pose, name)) }))
}

const units = ({ x, y }: Point): Point => ({ x: 100 * x, y: -100 * y })
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
const attribute = (tag: string, name: string): string => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1] ?? ''
const tags = (svg: string, name: string): string[] => [...svg.matchAll(new RegExp(`<[a-z]+ class="${name}"[^>]*>`, 'g'))].map(([tag]) => tag)
const paths = (svg: string, name: string): string[] => tags(svg, name).map((tag) => attribute(tag, 'd'))
const texts = (svg: string): string[] => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((match) => match[1] ?? '')
const centres = (svg: string): Point[] => tags(svg, 'pose-joint').map((tag) => ({ x: Number(attribute(tag, 'cx')), y: Number(attribute(tag, 'cy')) }))
const viewBox = (svg: string): number[] => attribute(svg, 'viewBox').split(' ').map(Number)

/** Each letter of a path with its numbers, and where the pen then stands. Only letters our paths use. */
function pen(d: string): { letter: string; numbers: number[]; at: Point }[] {
  let at: Point = { x: 0, y: 0 }
  return [...d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)].map(([, letter = '', rest = '']) => {
    const numbers = [...rest.matchAll(/-?\d+(\.\d+)?/g)].map(([number]) => Number(number))
    const [x = at.x, y = at.y] = numbers.slice(-2)
    if (/[MLQCSA]/.test(letter)) at = { x, y }
    else if (letter === 'H') at = { x: numbers[0] ?? NaN, y: at.y }
    else if (letter === 'V') at = { x: at.x, y: numbers[0] ?? NaN }
    else if (letter === 'h') at = { x: at.x + (numbers[0] ?? NaN), y: at.y }
    else if (letter === 'v') at = { x: at.x, y: at.y + (numbers[0] ?? NaN) }
    else assert.equal(letter, 'Z')
    return { letter, numbers, at }
  })
}

/** The places the pen touches. */
const places = (d: string): Point[] => pen(d).map(({ at }) => at)

/** Whether an arc of this outline is drawn about a point: both its ends lie one radius away from it. */
const roundedAt = (d: string, centre: Point): boolean =>
  pen(d).some(({ letter, numbers, at }, index, steps) => {
    const from = steps[index - 1]?.at
    const radius = numbers[0] ?? NaN
    return letter === 'A' && from !== undefined && [from, at].every((end) => Math.abs(apart(end, centre) - radius) < ARC_ROUNDING)
  })

test('the starter ladders give poses to draw', () => assert.ok(ladders.length > 40, `${ladders.length}`))

for (const { name, pose, svg } of all) {
  const { joints } = pose
  const at = (joint: keyof Pose['joints']): Point => units(joints[joint] ?? assert.fail(`${joint} is not given`))

  test(`${name}: joints are marked where the computation had them`, () => {
    const marked = centres(svg)
    for (const joint of ['ankle', 'knee', 'hip', 'shoulder', 'elbow', ...(pose.lies ? [] : (['head'] as const))] as const) {
      assert.ok(marked.some((centre) => apart(centre, at(joint)) < ROUNDING), `${joint} at ${at(joint).x}, ${at(joint).y}`)
    }
  })

  test(`${name}: limbs are capsules about those joints`, () => {
    const limbs = [...paths(svg, 'pose-body'), ...paths(svg, 'pose-arm')]
    for (const [from, to] of [['knee', 'ankle'], ['hip', 'knee'], ['shoulder', 'elbow'], ['elbow', 'wrist']] as const) {
      assert.ok(limbs.some((limb) => roundedAt(limb, at(from)) && roundedAt(limb, at(to))), `${from} to ${to}`)
    }
  })

  test(`${name}: the sole runs through heel and ball, and the toe unless it would be under what the ball stands on`, () => {
    if (apart(at('heel'), at('ball')) < ROUNDING) return assert.ok(paths(svg, 'pose-body').some((limb) => roundedAt(limb, at('heel')) && roundedAt(limb, at('ankle')))) // a foot seen from its end
    const sole = paths(svg, 'pose-body').map(places).find((touched) => apart(touched[0] ?? { x: NaN, y: NaN }, at('heel')) < ROUNDING)
    const [, ball, toe] = sole ?? []
    assert.ok(ball && toe && apart(ball, at('ball')) < ROUNDING)
    assert.ok(Math.abs(apart(ball, toe) - apart(at('ball'), at('toe'))) < 2 * ROUNDING)
    if (apart(toe, at('toe')) > ROUNDING) assert.ok(at('toe').y > at('ball').y && toe.y === ball.y)
  })

  test(`${name}: each force ends at its limb and is as long as it is large`, () => {
    const shafts = paths(svg, 'pose-force').map(places)
    const tips = paths(svg, 'pose-tip').map((d) => places(d)[0])
    for (const [index, force] of pose.forces.entries()) {
      const [tail, tip] = [shafts[index]?.[0], tips[index]]
      assert.ok(tail && tip)
      assert.ok(Math.min(apart(tail, units(force.at)), apart(tip, units(force.at))) < ROUNDING)
      const { x, y } = force.per_weight
      assert.ok(apart({ x: tail.x + 50 * x, y: tail.y - 50 * y }, tip) < 2 * ROUNDING, 'half a metre for a body weight, along the force')
    }
  })

  test(`${name}: the face looks to the side the toes point to`, () => {
    if (apart(at('heel'), at('toe')) < ROUNDING) return // seen from its end, it points to neither
    const head = paths(svg, 'pose-body').map(places).at(-1) ?? []
    const chin = head.reduce((far, place) => (apart(place, at('head')) > apart(far, at('head')) ? place : far), at('head')) // no other place of the outline is as far from its middle
    const side = (from: Point, to: Point, place: Point): number => Math.sign((to.x - from.x) * (place.y - from.y) - (to.y - from.y) * (place.x - from.x))
    const front = -side(at('knee'), at('ankle'), { x: at('ankle').x + at('toe').x - at('heel').x, y: at('ankle').y + at('toe').y - at('heel').y })
    assert.equal(side(at('shoulder'), at('head'), chin), front)
  })

  test(`${name}: labels carry units and are in the words; the words hold no other number but the slope from level`, () => {
    const words = poseInWords(pose)
    const labels = texts(svg)
    for (const label of labels) {
      assert.match(label, /^\d+( %| cm|°)$/)
      assert.ok(words.includes(label), `"${label}" is not in "${words}"`)
    }
    const spoken = words.match(/\d+( %| cm|°)/g) ?? []
    const silent = spoken.filter((figure) => !labels.includes(figure))
    assert.ok(silent.every((figure) => figure.endsWith('°') && /(from|below) level/.test(words)), silent.join())
    const lean = /leaning (\d+)° from upright \((?:level|(\d+)° (from|below) level)\)/.exec(words)
    if (lean) assert.equal(Number(lean[1]) + Number(lean[2] ?? 0) * (lean[3] === 'below' ? -1 : 1), 90)
  })

  test(`${name}: the drawing is well formed, under 4 KB, to the one scale and within its frame`, () => {
    wellFormed(svg)
    assert.doesNotMatch(svg, / (style|id|on[a-z]+)=|<script|<style|NaN|Infinity|undefined|-0[ "A-Z]/)
    assert.ok(Buffer.byteLength(svg) < 4096, `${Buffer.byteLength(svg)} bytes`)
    const [left = NaN, top = NaN, wide = NaN, high = NaN] = viewBox(svg)
    assert.ok(Math.abs(Number(attribute(svg, 'width')) - 1.2 * wide) < 0.06 && Math.abs(Number(attribute(svg, 'height')) - 1.2 * high) < 0.06)
    const seen = [...svg.matchAll(/<path class="(?!pose-ground)[^>]* d="([^"]*)"/g)].flatMap(([, d = '']) => places(d))
    for (const { x, y } of seen) assert.ok(x >= left && x <= left + wide && y >= top && y <= top + high, `${x}, ${y} is out of the frame`)
  })
}

/** Every tag closes, every attribute is quoted and stands once, every ampersand begins a reference. */
function wellFormed(markup: string): void {
  const open: string[] = []
  const rest = markup.replace(/<(\/?)([a-z]+)((?: [a-zA-Z-]+="[^"<]*")*)(\/?)>/g, (_, closing: string, name: string, attributes: string, empty: string) => {
    const named = [...attributes.matchAll(/ ([a-zA-Z-]+)="/g)].map((match) => match[1])
    assert.equal(new Set(named).size, named.length)
    if (closing) assert.equal(open.pop(), name)
    else if (!empty) open.push(name)
    return ''
  })
  assert.deepEqual(open, [])
  assert.doesNotMatch(rest, /[<>]/)
  assert.doesNotMatch(markup, /&(?!(amp|lt|gt|quot|#39);)/)
}

const floor = ladders.find(({ name }) => name === 'press-up/floor, end')?.pose ?? assert.fail('no press-up on the floor')

test('the same pose gives the same bytes, whatever was drawn before', () => {
  const again = all.map(({ pose, name }) => inEnglish(poseFigure(pose, name.replace(/, [a-z-]+$/, ''))))
  assert.deepEqual(again, all.map(({ svg }) => svg))
})

test('a press-up says where it is in one sentence', () => {
  const pose: Pose = {
    name: 'end',
    joints: { ...floor.joints, hip: { x: 0.6, y: 0.5 }, shoulder: { x: 1, y: 0.9 }, hand: { x: 1.3, y: 0.45 } },
    props: [{ kind: 'ground', y: 0 }, { kind: 'surface', at: { x: 1.3, y: 0.45 } }],
    forces: [
      { on: 'hands', at: { x: 1.3, y: 0.45 }, per_weight: { x: -0.3, y: 0.4 } },
      { on: 'feet', at: { x: 0, y: 0 }, per_weight: { x: 0.3, y: 0.6 } },
    ],
  }
  // by hand: atan2(0.4, 0.4) = 45°; √(0.09 + 0.16) = 0.5; √(0.09 + 0.36) = 0.6708
  assert.equal(
    poseInWords(pose),
    'End: face down, leaning 45° from upright (45° from level), hands 45 cm above the ground, feet on the ground; force on both hands 50 % of body weight, force on the feet 67 % of body weight.',
  )
  assert.deepEqual(texts(inEnglish(poseFigure(pose, ''))).toSorted(), ['45 cm', '45°', '50 %', '67 %'])
})

test('a row says that it faces up and hangs on straps, a kneeling press-up that it kneels', () => {
  const words = (name: string): string => poseInWords(all.find((drawn) => drawn.name === name)?.pose ?? assert.fail(name))
  assert.match(words('row-straps/lean-60, start'), /^Start: face up, leaning 60° from upright \(30° from level\), hands on straps 127 cm above the ground, feet on the ground; /)
  assert.match(words('row-straps/feet-raised, start'), /feet 40 cm above the ground/)
  assert.match(words('press-up/feet-raised, end'), /^End: face down, 6° below level, hands on the ground, feet 30 cm above the ground; /)
  assert.match(words('bar row, start'), /hands on a bar 95 cm above the ground/)
  assert.match(words('kneeling press-up, start'), /knees on the ground; .* force on the knees/)
})

test('a squat says its angles, its box and the force on its feet; a split squat both feet; a lift what pulls; a landing what it fell from', () => {
  const words = (name: string): string => poseInWords(all.find((drawn) => drawn.name === name)?.pose ?? assert.fail(name))
  assert.equal(words('squat-one-leg/knee-high-box, lowest'), 'Lowest point: knee at 71°, trunk leaning 32° from upright, hips touch a box 45 cm above the ground; force on the feet 100 % of body weight.')
  assert.equal(words('squat-one-leg/split, lowest'), 'Lowest point: knee at 84°, trunk leaning 5° from upright, rear knee on a mat; force on the front foot 60 % of body weight, force on the rear foot 40 % of body weight.')
  assert.match(words('hinge/floor-24, start'), /^Start: knee at 110°, trunk leaning \d+° from upright, hands 28 cm above the ground; force on the feet 136 % of body weight, the weight pulls with 36 % of body weight\.$/) // by hand: 24 / 67.45 = 35.6 %
  assert.equal(words('landing/drop-40, lowest'), 'Lowest point: knee at 69°, trunk leaning 35° from upright, fallen from a box 40 cm above the ground; mean force on the feet 200 % of body weight.')
  assert.equal(words('landing/drop-40, touch-down'), 'Touch-down: knee at 160°, trunk leaning 13° from upright, fallen from a box 40 cm above the ground. The bend of knees and ankles at touch-down is chosen for the drawing.')
})

test('a hang says what hands and feet hold, a pull-up what the band carries, a dip how far the trunk leans, and each what of it is chosen', () => {
  const words = (name: string): string => poseInWords(all.find((drawn) => drawn.name === name)?.pose ?? assert.fail(name))
  assert.equal(words('grip-hang/feet-45, hold'), 'Hold: hanging on straight arms, knee at 110°, trunk upright; force on both hands 55 % of body weight, force on the feet 45 % of body weight. The height of the bar and the bend of the knees are chosen for the drawing.')
  assert.match(words('grip-hang/feet-15, hold'), /, force on the toes 15 % of body weight\. /)
  assert.match(words('grip-hang/one-hand-50, hold'), /; force on the hand 50 % of body weight, force on the feet 50 % of body weight\. /)
  assert.match(words('pull-up/band-broad, start'), /^Start: hanging on straight arms, .*; force on both hands 41 % of body weight, the band carries 59 % of body weight\. The height of the bar is chosen for the drawing\.$/)
  assert.match(words('pull-up/counter-20, end'), /^End: chin over the bar, knee nearly straight, trunk leaning back 14° from upright; .*, the counterweight carries 20 % of body weight\. /)
  assert.match(words('pull-up/chest-high, end'), /^End: upper breastbone at the bar, /)
  assert.match(words('dip/added-10, lowest'), /^Lowest point: on two bars, upper arms level, .*, knees at the mats; force on both hands 110 % of body weight, the weight pulls with 10 % of body weight\. The height of the bars and the line of the legs are chosen for the drawing\.$/)
})

test('a heel raise says what a helping foot or hands take, and that two feet are seen as one; a suitcase that it is in one hand', () => {
  const words = (name: string): string => poseInWords(all.find((drawn) => drawn.name === name)?.pose ?? assert.fail(name))
  assert.match(words('calf-raise/shift, start'), /; force on the feet 100 % of body weight\. The feet stand side by side and are seen as one: the arrow is what both carry\.$/)
  assert.match(words('calf-raise/half-back, end'), /; force on the front foot 66 % of body weight, force on the rear foot 34 % of body weight\.$/)
  assert.match(words('calf-raise/hands-press, start'), /, hands on a bar 95 cm above the ground; force on the foot 87 % of body weight, force on both hands 13 % of body weight\.$/)
  assert.match(words('hinge/suitcase-12, start'), /, one hand 24 cm above the ground, the weight in one hand; /)
  assert.match(words('overhead-press/one-hand-6, end'), /, the weight in one hand; force on the feet 109 % of body weight, /)
})

test('a bridge says that the shoulders lie on the ground, and a free leg that it is in line; it is drawn so', () => {
  const pose = (name: string): Pose => all.find((drawn) => drawn.name === name)?.pose ?? assert.fail(name)
  assert.match(poseInWords(pose('bridge with the feet high, hold')), /^Hold: face up, \d+° below level, shoulders on the ground, feet 60 cm above the ground; force on the shoulders \d+ % of body weight, /)
  const one = pose('one-leg bridge, hold')
  assert.match(poseInWords(one), /, feet on the ground, one leg free, in line with the trunk; .*, force on the foot \d+ % of body weight\.$/)
  const { hip, knee, ankle } = one.other_leg ?? {}
  const { shoulder } = one.joints
  assert.ok(hip && knee && ankle && shoulder)
  const bearing = (from: Point, to: Point): number => Math.atan2(to.y - from.y, to.x - from.x)
  for (const way of [bearing(hip, knee), bearing(knee, ankle)]) assert.ok(Math.abs(way - bearing(shoulder, hip)) < 1e-6)
  assert.ok(all.some(({ name, svg }) => name === 'one-leg bridge, hold' && paths(svg, 'pose-far').some((limb) => roundedAt(limb, units(knee)) && roundedAt(limb, units(ankle)))))
})

test('a plank on one foot says so, and its other foot is off the ground', () => {
  const pose = all.find(({ name, pose: { other_leg } }) => name.startsWith('front-plank/') && other_leg)?.pose ?? assert.fail('no plank on one foot')
  assert.match(poseInWords(pose), /, feet on the ground, one foot lifted; .*, force on the foot \d+ % of body weight\.$/)
  assert.ok(Object.values(pose.other_leg ?? {}).every((at) => at.y > 0.05))
})

test('a head lies no lower than the shoulders it lies beside', () => {
  const { head, shoulder } = held.find(({ name }) => name === 'bridge with the feet high, hold')?.pose.joints ?? {}
  assert.ok(head && shoulder && head.y >= shoulder.y - 1e-9)
})

test('a landing on a slope says how far the ground falls away, and that what it fell from is left out', () => {
  const words = (name: string): string => poseInWords(all.find((drawn) => drawn.name === name)?.pose ?? assert.fail(name))
  assert.match(words('landing on a slope, lowest'), /, on ground that falls away by 20°, fallen from 60 cm; mean force on the feet \d+ % of body weight\. What it fell from is left out\.$/)
})

test('the figure of a weight keeps off the figure of a knee', () => {
  for (const { name, svg } of all) {
    const found = [...svg.matchAll(/<text x="([^"]*)" y="([^"]*)" text-anchor="([a-z]+)">([^<]*)<\/text>/g)].map(([, x, y, anchor = '', words = '']) => {
      const wide = words.length * 6
      const left = Number(x) - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0)
      return { words, left, right: left + wide, y: Number(y) }
    })
    for (const [index, one] of found.entries()) for (const other of found.slice(index + 1)) assert.ok(one.right <= other.left || other.right <= one.left || Math.abs(one.y - other.y) >= 8, `${name}: "${one.words}" lies on "${other.words}"`)
  }
})

test('a side plank says that it is seen from the front, and what one forearm and the side of one foot carry', () => {
  const words = (name: string): string => poseInWords(all.find((drawn) => drawn.name === `side-plank/${name}, hold`)?.pose ?? assert.fail(name))
  assert.equal(words('stacked'), 'Hold: on the side, seen from the front, 10° from level, one forearm on the ground, the side of the lower foot on the ground, legs together; force on the forearm 70 % of body weight, force on the lower foot 30 % of body weight.')
  assert.match(words('knees'), /, one forearm on the ground, the side of the lower knee on the ground, legs together; .*, force on the lower knee 30 % of body weight\.$/)
  assert.match(words('knees-top-leg'), /, top leg lifted; /)
  assert.match(words('staggered'), /, top foot ahead; /)
  assert.match(words('feet-raised'), / 2° below level, one forearm on the ground, the side of the lower foot 30 cm above the ground, /)
  assert.match(words('straight-arm'), /, one hand on the ground, .*; force on the hand 70 % of body weight, /)
})

/** Pairs of points of an outline that is the same on both sides of the line through two places: how far each pair's middle lies off that line. */
function offLine(d: string, [from, to]: readonly [Point, Point]): number[] {
  const points = places(d).slice(0, -2)
  const away = ({ x, y }: Point): number => ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / apart(from, to)
  return points.slice(0, points.length / 2).map((place, index) => (away(place) + away(points.at(-1 - index) ?? place)) / 2)
}

test('on its side a body is as broad above its spine as below, its head on the line of the spine, its upper leg above the lower', () => {
  for (const { name, pose, svg } of all.filter((drawn) => drawn.pose.lies)) {
    const body = paths(svg, 'pose-body')
    const [trunk, , head] = body.slice(-3)
    const middle = (d: string): Point => ({ x: (Math.min(...places(d).map(({ x }) => x)) + Math.max(...places(d).map(({ x }) => x))) / 2, y: 0 })
    assert.ok(trunk && head && middle(head).x > middle(trunk).x)
    const skull = centres(svg)[4] ?? assert.fail('no head')
    const hips = places(trunk)[0] ?? assert.fail('no hips')
    const other = places(trunk).at(-3) ?? assert.fail('no hips')
    const spine = [{ x: (hips.x + other.x) / 2, y: (hips.y + other.y) / 2 }, skull] as const
    for (const off of [...offLine(trunk, spine), ...offLine(head, spine)]) assert.ok(Math.abs(off) < 2 * ROUNDING, `${name}: ${off}`)
    const shoulder = units(pose.joints.shoulder ?? assert.fail('no shoulder'))
    assert.ok(skull.y < units(pose.joints.head ?? shoulder).y - 10, 'the head lies above the line of the lower joints')
    const arms = paths(svg, 'pose-arm')
    assert.equal(arms.length, 6)
    assert.ok(arms.slice(3).every((d) => places(d).every(({ y }) => y < shoulder.y + 12)), 'the upper arm stays above')
  }
})

test('start and end of a rung share one frame, and every figure holds its drawing and its words', () => {
  const poses = ladders.filter(({ name }) => name.startsWith('press-up/bench-hands')).map(({ pose }) => pose)
  const figures = inEnglish(poseFigures(poses, 'Press-up', 'Hands & <feet>'))
  wellFormed(figures)
  assert.equal(new Set([...figures.matchAll(/viewBox="([^"]*)"/g)].map((match) => match[1])).size, 1)
  assert.deepEqual([...figures.matchAll(/<figcaption>([^<]*)</g)].map((match) => match[1]), poses.map(poseInWords))
  assert.deepEqual([...figures.matchAll(/role="img" aria-label="([^"]*)"/g)].map((match) => match[1]), ['Press-up, Hands &amp; &lt;feet&gt;: start', 'Press-up, Hands &amp; &lt;feet&gt;: end'])
})

test('no poses, no figures; a pose without joints draws the ground and says no more than it knows', () => {
  assert.equal(inEnglish(poseFigures([], 'Hinge', 'Stick')), '')
  const bare: Pose = { name: 'hold', joints: {}, props: [{ kind: 'ground', y: 0 }], forces: [] }
  wellFormed(inEnglish(poseFigure(bare, 'bare')))
  assert.doesNotMatch(inEnglish(poseFigure(bare, 'bare')), /NaN|Infinity/)
  assert.equal(poseInWords(bare), 'Hold.')
})

test('a force that rounds to no percent is neither drawn nor said', () => {
  const pose: Pose = { ...floor, forces: floor.forces.map((force) => (force.on === 'feet' ? { ...force, per_weight: { x: 0, y: 0.004 } } : force)) }
  assert.equal(tags(inEnglish(poseFigure(pose, '')), 'pose-force').length, 1)
  assert.doesNotMatch(poseInWords(pose), /force on the feet/)
})

test('every class drawn has its looks, every look a class, and the sheet is small', () => {
  const css = readFileSync(new URL('../../src/page/pose.css', import.meta.url), 'utf8')
  const classes = new Set(all.flatMap(({ svg }) => [...svg.matchAll(/class="([^"]*)"/g)].map((match) => match[1] ?? '')))
  const styled = new Set([...css.matchAll(/\.(pose-[a-z]+)/g)].map((match) => match[1] ?? ''))
  assert.deepEqual([...classes].toSorted(), [...styled].toSorted())
  assert.ok(Buffer.byteLength(css) < 2000, `${Buffer.byteLength(css)} bytes`)
})
