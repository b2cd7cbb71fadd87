import type { Entry } from '../page/tongue.ts'
import { learn } from './said.ts'

/** What models, decisions and the log say in the page's language; fetched with them. */
declare const MORE_WORDS: string | undefined

if (typeof MORE_WORDS !== 'undefined') learn(JSON.parse(MORE_WORDS) as Readonly<Record<string, Entry>>)
