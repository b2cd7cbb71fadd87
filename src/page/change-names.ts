import { models } from '../load/index.ts'
import type { LoadModel } from '../load/model.ts'
import type { Words } from './html.ts'

/** What a reader is told changed, by the name it has in data; of a key a coach types, the words it is explained in. Nothing where its kind says it all. */
const NAMES: Readonly<Record<string, string>> = {
  title: 'title',
  'what it is for': 'what it is for',
  movement: 'movement',
  equipment: 'equipment',
  sources: 'sources',
  review: 'review',
  silence: 'rules kept quiet',
  retired: 'withdrawn rungs, and what takes their place',
  withdraw_notes: 'safety notes taken out, by whom and why',
  stop: 'stop signs',
  ask_first: 'ask first',
  cautions: 'cautions',
  first_reps: 'first repetitions wanted',
  first_side: 'which side first',
  sessions_per_week: 'sessions a week',
  'standard amount': 'the standard',
  'standard reps': 'standard reps',
  'standard seconds': 'standard seconds',
  'standard metres': 'standard metres',
  'standard sets': 'standard sets',
  'standard sessions': 'standard sessions',
  'standard rest_s': 'rest between sets',
  'standard reserve_reps': 'repetitions kept in reserve',
  'entry amount': 'the entry',
  'entry reps': 'entry reps',
  'entry seconds': 'entry seconds',
  'entry metres': 'entry metres',
  'entry sets': 'entry sets',
  'entry sessions': 'entry sessions',
  'entry reserve_reps': 'repetitions kept in reserve at entry',
  model: 'how the load is computed',
  'full rep': 'full rep',
  introduction: 'introduction',
  'set-up': 'set-up',
  cues: 'cues',
  faults: 'faults',
  notes: 'notes',
  'without an heir': 'without an heir',
  'at the start': 'at the start',
  'between others': 'between others',
  'at the end of a branch': 'at the end of a branch',
  organisation: 'organisation',
  languages: 'languages',
  units: 'units',
  contact: 'contact',
  address: 'address',
  logo: 'logo',
  offline: 'use without a signal',
  colours: 'colours',
  extends: 'the handbook it extends',
}

/** The name of what changed, in words for who reads; of what a load is computed from, as the rung's own model asks it, or the first that does. */
export function nameWords(name: string, model: LoadModel | undefined): Words | undefined {
  if (Object.hasOwn(NAMES, name)) return NAMES[name]
  return [model, ...(models as readonly unknown[] as readonly LoadModel[])].flatMap((one) => one?.keys[name]?.says ?? [])[0]
}
