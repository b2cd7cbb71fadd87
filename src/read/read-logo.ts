import { readShapes } from './read-shapes.ts'
import type { Reading } from './text.ts'

/** The most a logo may weigh: it stands in the head of every page. Units bytes. Chosen by us. */
const MOST_BYTES = 4096

/** A logo as it may stand in the head of a page, where the title beside it says whose it is. */
export const readLogo = (file: string, bytes: Uint8Array): Reading<string> =>
  readShapes(file, bytes, { rule: 'logo-is-plain', name: 'logo', most_bytes: MOST_BYTES, heavy: ', and every page carries it. Draw it with fewer points.', head: ' class="logo" aria-hidden="true"' })
