import type { Catalogue } from '../tongue.ts'

/** The interface in Spanish. */
export const es: Catalogue = {
}
