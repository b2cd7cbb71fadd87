import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { CONTENT, docsNow } from './docs-files.ts'

/** Writes the pages of the documentation that are made from schemas and load models. `npm run docs:keys`. */
for (const [name, text] of docsNow()) writeFileSync(path.join(CONTENT, name), text)
