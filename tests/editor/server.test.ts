import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { test } from 'vitest'
import { HANDBOOK, ladder } from '../command/small.ts'
import { REPOSITORY } from '../site/demo.ts'
import { editorOn, folderOf, positionAfter } from './client.ts'

test('an editor that goes away without a word takes the server with it', async () => {
  const server = spawn(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), 'editor', '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] })
  server.stdin.end()
  const [code] = (await once(server, 'exit')) as [number]
  assert.equal(code, 1, 'no shutdown was asked for')
})

test('a workspace whose handbook.yaml is broken from the start says so, and is helped once it is mended', async () => {
  const { folder, write, remove } = folderOf({ 'handbook.yaml': 'title: [Club\n', 'ladders/bench-press.md': ladder() })
  const editor = await editorOn(folder)
  await editor.open('ladders/bench-press.md', ladder())
  const [broken] = await editor.findings('handbook.yaml', (list) => list.length > 0)
  assert.equal(broken?.message, 'A bracket or brace that was opened before this is not closed. Close it with ] or }.')
  assert.equal(await editor.ask('hover', 'ladders/bench-press.md', positionAfter(ladder(), 'aim: k')), null)
  write('handbook.yaml', HANDBOOK)
  await editor.findings('handbook.yaml', (list) => list.length === 0)
  assert.ok(await editor.ask('hover', 'ladders/bench-press.md', positionAfter(ladder(), 'aim: k')))
  assert.equal(await editor.end(), 0)
  remove()
})

test('a ladder that is not saved yet is read, named in links, and gone when it is closed', async () => {
  const { folder, remove } = folderOf({ 'handbook.yaml': HANDBOOK, 'content/safety.md': '---\ntitle: Safety\nsummary: Stop.\n---\n\n[it](rung:press-up)\n' })
  const editor = await editorOn(folder)
  await editor.open('ladders/press-up.md', ladder({ id: 'press-up', title: 'Press-up' }))
  await editor.findings('ladders/press-up.md', (list) => list.length > 0)
  await editor.open('content/safety.md', '---\ntitle: Safety\nsummary: Stop.\n---\n\n[it](rung:press-up) [no](rung:sit-up)\n')
  const found = await editor.findings('content/safety.md', (list) => list.length > 0)
  assert.deepEqual(found.map(({ message }) => message), ['The link "rung:sit-up" leads to no rung. Mend it or take it out.'])
  await editor.close('ladders/press-up.md')
  await editor.findings('content/safety.md', (list) => list.length === 2)
  assert.equal(await editor.end(), 0)
  remove()
})

test('--workspace takes the place of the folders an editor names', async () => {
  const { folder, remove } = folderOf({ 'club/handbook.yaml': HANDBOOK, 'club/ladders/bench-press.md': ladder(), 'other/handbook.yaml': HANDBOOK })
  const editor = await editorOn(folder, '--workspace', 'club')
  await editor.open('club/ladders/bench-press.md', ladder())
  assert.ok(await editor.ask('hover', 'club/ladders/bench-press.md', positionAfter(ladder(), 'aim: k')))
  assert.equal(await editor.ask('hover', 'other/handbook.yaml', { line: 0, character: 1 }), null)
  assert.equal(await editor.end(), 0)
  remove()
})
