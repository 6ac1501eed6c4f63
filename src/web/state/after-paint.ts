/** Pictures are drawn after what is urgent is on the screen: a verdict shall not wait for a thousand marks. */
import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'

/** How many answers are on their way that will change a picture anyway. */
const awaited: Signal<number> = signal(0)

/** So long a picture waits for such an answer, ms: whoever looks must not see an old one for longer. */
const PATIENCE = 100

/** Keeps pictures back while an answer is on its way. */
export async function holding<Value>(answer: Promise<Value>): Promise<Value> {
  awaited.value += 1
  try {
    return await answer
  } finally {
    awaited.value -= 1
  }
}

/** Runs something in a task of its own behind the next paint; at once where the page is not shown. */
function behindPaint(run: () => void): void {
  if (document.visibilityState === 'hidden') {
    setTimeout(run)
    return
  }
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = run
    port2.postMessage(null)
  })
}

/**
 * What is drawn from inputs, once for all changes between two paints. The first is drawn at once.
 *
 * @param inputs read on every change; cheap
 * @param draw the work that waits
 */
export function drawnLater<Inputs, Value>(
  inputs: () => Inputs,
  draw: (inputs: Inputs) => Value,
): { readonly drawn: ReadonlySignal<Value | undefined>; watch(): () => void } {
  const drawn = signal<Value | undefined>(undefined)
  const newest = computed(inputs)
  let isDue = false
  let since = 0
  const drawNow = (): void => {
    if (awaited.peek() > 0 && performance.now() - since < PATIENCE) {
      behindPaint(drawNow)
      return
    }
    isDue = false
    drawn.value = draw(newest.peek())
  }
  return {
    drawn,
    watch: () =>
      effect(() => {
        const now = newest.value
        if (drawn.peek() === undefined) {
          drawn.value = draw(now)
          return
        }
        if (isDue) return
        isDue = true
        since = performance.now()
        behindPaint(drawNow)
      }),
  }
}
