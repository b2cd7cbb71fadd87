import { writeFileSync } from 'node:fs'
import { GOLDEN, publishedNumbers } from './site/numbers.ts'

/** Writes the numbers of the demo handbook as they are now; what moved belongs into CHANGELOG.md. `npm run golden`. */
writeFileSync(GOLDEN, await publishedNumbers())
process.stdout.write('Look at what changed in tests/site/numbers.golden.txt, and say it under "Numbers that moved" in CHANGELOG.md.\n')
