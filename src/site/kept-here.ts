import { cacheFolder, cacheIn, type Kept } from './cache.ts'
import { toolDigest } from './tool-digest.ts'

/** What this tool has kept in this person's own cache folder. */
export const keptHere = async (): Promise<Kept> => ({ cache: cacheIn(cacheFolder()), tool: await toolDigest() })
