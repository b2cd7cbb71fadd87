import { rmSync } from 'node:fs'
import { demoPlace } from './site/demo-place.ts'

/** Runs around all tests: the demo that they built together goes when they are done. */
export default function setup(): () => void {
  rmSync(demoPlace(process.pid), { recursive: true, force: true })
  return () => rmSync(demoPlace(process.pid), { recursive: true, force: true })
}
