#!/usr/bin/env node
import { existsSync } from 'node:fs'

// The repository runs its source as it is; the package carries it compiled.
if (existsSync(new URL('./bin.ts', import.meta.url))) {
  const { register } = await import('tsx/esm/api')
  register()
  await import('./bin.ts')
} else await import('../../dist/command/bin.js')
