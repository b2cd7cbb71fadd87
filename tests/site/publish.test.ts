import assert from 'node:assert/strict'
import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { publish } from '../../src/site/publish.ts'
import { scratch } from './demo.ts'

const folder = await scratch()
const filled = (words: string) => async (place: string) => writeFileSync(path.join(place, 'index.html'), words)

test('a new handbook takes the place of the old one, whole', async () => {
  const out = path.join(folder, 'swapped')
  await publish(out, filled('first'))
  await publish(out, filled('second'))
  assert.equal(readFileSync(path.join(out, 'index.html'), 'utf8'), 'second')
  assert.equal(existsSync(`${out}.next`) || existsSync(`${out}.last`), false)
})

test('when writing fails half-way the old handbook stays, and nothing is left beside it', async () => {
  const out = path.join(folder, 'failed')
  await publish(out, filled('first'))
  const half = async (place: string): Promise<void> => {
    writeFileSync(path.join(place, 'index.html'), 'half')
    throw new Error('the disk is full')
  }
  await assert.rejects(publish(out, half), /the disk is full/)
  assert.equal(readFileSync(path.join(out, 'index.html'), 'utf8'), 'first')
  assert.equal(existsSync(`${out}.next`), false)
})

test('what an interrupted build left behind is cleared away by the next', async () => {
  const out = path.join(folder, 'healed')
  await publish(`${out}.next`, filled('left over'))
  await publish(out, filled('whole'))
  assert.equal(readFileSync(path.join(out, 'index.html'), 'utf8'), 'whole')
  assert.equal(existsSync(`${out}.next`), false)
})

test('a link in the place of what is cleared away is taken away itself, and what it leads to stays', async () => {
  const [out, other] = ['linked', 'other'].map((name) => path.join(folder, name)) as [string, string]
  mkdirSync(path.join(other, 'below'), { recursive: true })
  writeFileSync(path.join(other, 'below/kept.txt'), 'kept')
  await publish(out, filled('first'))
  symlinkSync(other, `${out}.next`)
  symlinkSync(path.join(folder, 'nowhere'), `${out}.last`)
  await publish(out, async (place) => {
    mkdirSync(path.join(place, 'below'))
    symlinkSync(other, path.join(place, 'below/link'))
    await filled('second')(place)
  })
  await publish(out, filled('third'))
  assert.equal(readFileSync(path.join(out, 'index.html'), 'utf8'), 'third')
  assert.equal(existsSync(`${out}.next`) || existsSync(`${out}.last`), false)
  assert.equal(readFileSync(path.join(other, 'below/kept.txt'), 'utf8'), 'kept')
})
