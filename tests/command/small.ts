/** A handbook of a club, with nothing wrong in it. */
export const HANDBOOK = 'title: Club handbook\norganisation: Tarnwick Gym Club\nedition: "2026.1"\ncontact: The club\n'

/** A ladder of these weights, which nothing follows from but arithmetic. */
export function ladder({ id = 'bench-press', title = 'Bench press', weights = [20, 22], stop = 'pain in a shoulder', more = '' }: { id?: string; title?: string; weights?: readonly number[]; stop?: string; more?: string } = {}): string {
  return `---
id: ${id}
title: ${JSON.stringify(title)}
movement: horizontal press
aim: kg-2
equipment: [bench]
standard: { sets: 3, reps: 10, sessions: 2 }
first_reps: 3
form: [feet stay down]
rungs:
${weights.map((kg, index) => `  - { id: kg-${index + 1}, title: Rung ${index + 1}, load: { model: one-rep-max, load_kg: ${kg} } }\n`).join('')}stop: [${JSON.stringify(stop)}]
ask_first: [a shoulder operated on in the last year]
${more}---
`
}

/** A file as it is in the middle of a merge. */
export const CONFLICT = `<<<<<<< HEAD\n${ladder()}=======\n${ladder({ weights: [20, 23] })}>>>>>>> other\n`
