import os from 'node:os'
import path from 'node:path'

/** Where one run of the tests keeps the demo handbook. Test files are processes of one parent. */
export const demoPlace = (parent: number): string => path.join(os.tmpdir(), `rungbook-demo-of-${parent}`)
