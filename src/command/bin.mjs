#!/usr/bin/env node
import { existsSync } from 'node:fs'

// The repository runs its source as it is; the package carries it compiled.
const source = new URL('./bin.ts', import.meta.url)
const compiled = new URL('../../dist/command/bin.js', import.meta.url)
const isSource = existsSync(source)
if (isSource) (await import('tsx/esm/api')).register()
await import(String(isSource ? source : compiled))
