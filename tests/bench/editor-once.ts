import { editorOn, folderOf, positionAfter } from '../editor/client.ts'
import { generatedLayer } from './generated.ts'

/** Serves a generated workspace of so many ladders to an editor, types in one of them, and says how long each answer took. Units ms. */
const ladders = Number(process.argv[2] ?? 100)
const { folder, remove } = folderOf(Object.fromEntries(generatedLayer(ladders).files.map(({ file, bytes }) => [file, new TextDecoder().decode(bytes)])))
const [name, bytes] = generatedLayer(ladders).files.filter(({ file }) => file.startsWith('ladders/')).map(({ file, bytes: own }) => [file, own] as const)[0] ?? ['', new Uint8Array()]
const text = new TextDecoder().decode(bytes)

const editor = await editorOn(folder)
const timed = async (what: () => Promise<unknown>): Promise<number> => {
  const began = performance.now()
  await what()
  return performance.now() - began
}
const median = (times: readonly number[]): number => times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0

await editor.open(name, text)
const first_ms = await timed(() => editor.ask('hover', name, positionAfter(text, 'aim: r')))
const whole_ms = await timed(async () => {
  await editor.change(name, `${text}\n## Astray\n`)
  await editor.findings(name, (list) => list.some(({ message }) => String(message).includes('Astray')), 600_000)
})
const [typed, completed, hovered]: [number[], number[], number[]] = [[], [], []]
for (let round = 0; round < 9; round += 1) {
  const changed = text.replace(/^stop: .*$/m, `stop: [${'x'.repeat(round + 1)}${round % 2 ? '' : ', '}]\nnokey${round}: 1`)
  typed.push(await timed(async () => {
    await editor.change(name, changed)
    await editor.findings(name, (list) => list.some(({ message }) => String(message).includes(`nokey${round}`)))
  }))
  await editor.change(name, text.replace('Words about', `Words ${round} about`))
  hovered.push(await timed(() => editor.ask('hover', name, positionAfter(text, 'aim: r'))))
  completed.push(await timed(() => editor.ask('completion', name, positionAfter(text, 'aim: r'))))
}
const rename_ms = await timed(() => editor.ask('rename', name, positionAfter(text, 'aim: r'), { newName: 'another-name' }))
process.stdout.write(JSON.stringify({ ladders, first_ms, whole_ms, findings_ms: median(typed), hover_ms: median(hovered), completion_ms: median(completed), rename_ms }))
await editor.end()
remove()
