import type { Catalogue } from '../tongue.ts'
import { cards } from './es/cards.ts'
import { changes } from './es/changes.ts'
import { checks } from './es/checks.ts'
import { figures } from './es/figures.ts'
import { ladders } from './es/ladders.ts'
import { loads } from './es/loads.ts'
import { log } from './es/log.ts'
import { own } from './es/own.ts'
import { pages } from './es/pages.ts'
import { poses } from './es/poses.ts'
import { reasons } from './es/reasons.ts'
import { scripts } from './es/scripts.ts'
import { sources } from './es/sources.ts'

/** The interface in Spanish. */
export const es: Catalogue = { ...figures, ...pages, ...ladders, ...cards, ...loads, ...reasons, ...own, ...sources, ...checks, ...poses, ...scripts, ...log, ...changes }
