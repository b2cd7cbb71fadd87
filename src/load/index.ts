import { assisted } from './assisted.ts'
import { landing } from './landing.ts'
import { legPressOfBody } from './leg-press-of-body.ts'
import { leverHold } from './lever-hold.ts'
import type { LoadModel } from './model.ts'
import { oneRepMax } from './one-rep-max.ts'
import { published } from './published.ts'
import { skill } from './skill.ts'
import { supportedBody } from './supported-body.ts'

/** Every load model, by the name a ladder file gives it. */
export const models = [supportedBody, leverHold, legPressOfBody, assisted, oneRepMax, landing, published, skill] as const

/** What a model may be called in a ladder file. */
export type ModelName = (typeof models)[number]['name']

/** The model of that name. */
export const modelNamed = (name: string): LoadModel | undefined => (models as readonly unknown[] as readonly LoadModel[]).find((model) => model.name === name)
