import { said } from './said.ts'

/** Whole seconds left, never below nothing. */
export const left = (until_ms: number, now_ms: number): number => Math.max(0, Math.ceil((until_ms - now_ms) / 1000))

/** "1:30", or "45". */
export const clock = (seconds: number): string => (seconds < 60 ? String(seconds) : `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`)

/** Keeps the screen awake, where the browser lets us and as soon as it does, until the answer is called. */
function awake(): () => void {
  const lock = navigator.wakeLock?.request('screen').catch(() => undefined)
  return () => void lock?.then((held) => held?.release())
}

/** Two short tones and a shake, where the device has them and the reader wants them. */
function signal(loud: boolean): void {
  if (!loud) return
  navigator.vibrate?.([200, 100, 200])
  const sound = new AudioContext()
  for (const at of [0, 0.35]) {
    const tone = sound.createOscillator()
    const volume = sound.createGain()
    volume.gain.setValueAtTime(0.2, sound.currentTime + at)
    tone.frequency.value = 880
    tone.connect(volume).connect(sound.destination)
    tone.start(sound.currentTime + at)
    tone.stop(sound.currentTime + at + 0.2)
  }
}

/**
 * Puts a timer where the page asks for one: the rest between sets, and the hold where the standard is one.
 * It counts by the clock of the device, so a screen that slept shows the right time when it wakes.
 */
export function startTimer(page: Document, place: HTMLElement): void {
  const shown = page.createElement('output')
  shown.setAttribute('aria-live', 'off')
  const status = page.createElement('p')
  status.setAttribute('role', 'status')
  const loud = page.createElement('input')
  loud.type = 'checkbox'
  loud.checked = true
  const label = page.createElement('label')
  label.append(loud, said(' sound and shake'))
  let running: { until_ms: number; tick: number; release: () => void } | undefined
  const end = (words: string): void => {
    if (!running) return
    clearInterval(running.tick)
    running.release()
    running = undefined
    status.textContent = said(words)
  }
  const begin = (name: string, seconds: number): void => {
    end('')
    const until_ms = Date.now() + seconds * 1000
    status.textContent = said(`${name} of ${seconds} s has begun.`)
    const show = (): void => {
      const seconds_left = left(until_ms, Date.now())
      shown.textContent = clock(seconds_left)
      if (seconds_left > 0) return
      signal(loud.checked)
      end(`${name} is over.`)
    }
    running = { until_ms, tick: window.setInterval(show, 200), release: awake() }
    show()
  }
  const button = (words: string, act: () => void): HTMLButtonElement => {
    const made = page.createElement('button')
    made.type = 'button'
    made.textContent = said(words)
    made.addEventListener('click', act)
    return made
  }
  const times = [
    ['Rest', Number(place.dataset.rest)],
    ['Hold', Number(place.dataset.hold)],
  ] as const
  const kinds = times.filter(([, seconds]) => seconds > 0)
  const buttons = page.createElement('div')
  buttons.append(...kinds.map(([name, seconds]) => button(`${name} ${seconds} s`, () => begin(name, seconds))), button('Stop', () => end('Stopped.')))
  shown.textContent = clock(kinds[0]?.[1] ?? 0)
  place.append(shown, label, buttons, status)
  place.hidden = false
}
