import assert from 'node:assert/strict'
import { parseHTML } from 'linkedom'
import { afterEach, test, vi } from 'vitest'
import { clock, left, startTimer } from '../../src/browser/timer.ts'

test('a timer shows whole seconds, and never less than nothing', () => {
  assert.deepEqual([left(90_000, 0), left(90_000, 1), left(90_000, 89_001), left(90_000, 90_000), left(90_000, 200_000)], [90, 90, 1, 0, 0])
})

test('from a minute on a timer shows minutes and seconds', () => {
  assert.deepEqual([clock(0), clock(59), clock(60), clock(90), clock(605)], ['0', '59', '1:00', '1:30', '10:05'])
})

afterEach(() => {
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

/** A page with a timer, whose device lets the screen be kept awake only when it is told to. */
function timerPage(): { press(words: RegExp): void; says(): string | undefined; shows(): string | undefined; grant(): Promise<void>; readonly screen: { locks: number } } {
  vi.useFakeTimers()
  const { document } = parseHTML('<html lang="en"><body></body></html>')
  const place = document.createElement('section')
  place.dataset.rest = '90'
  const screen = { locks: 0 }
  const granted: (() => void)[] = []
  const request = (): Promise<{ release(): void }> => new Promise((resolve) => granted.push(() => resolve({ release: () => void (screen.locks -= 1) })))
  vi.stubGlobal('window', globalThis)
  vi.stubGlobal('navigator', { wakeLock: { request } })
  startTimer(document as unknown as Document, place as unknown as HTMLElement)
  return {
    screen,
    press: (words) => [...place.querySelectorAll('button')].find(({ textContent }) => words.test(textContent))?.click(),
    says: () => place.querySelector('[role=status]')?.textContent,
    shows: () => place.querySelector('output')?.textContent,
    async grant() {
      for (const give of granted.splice(0)) {
        screen.locks += 1
        give()
      }
      await vi.advanceTimersByTimeAsync(0)
    },
  }
}

test('a timer stops at once, also before the device has answered whether the screen stays awake, and then lets it sleep', async () => {
  const page = timerPage()
  page.press(/Rest/)
  assert.equal(page.says(), 'Rest of 90 s has begun.')
  page.press(/Stop/)
  assert.equal(page.says(), 'Stopped.')
  await page.grant()
  await vi.advanceTimersByTimeAsync(5000)
  assert.deepEqual([page.says(), page.shows(), page.screen.locks], ['Stopped.', '1:30', 0])
})

test('a rest begun twice runs once, from the second press', async () => {
  const page = timerPage()
  page.press(/Rest/)
  await vi.advanceTimersByTimeAsync(2000)
  assert.equal(page.shows(), '1:28')
  page.press(/Rest/)
  await page.grant()
  assert.deepEqual([page.shows(), page.screen.locks, vi.getTimerCount()], ['1:30', 1, 1])
})
