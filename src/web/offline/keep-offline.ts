/** A page from a static server is kept in the browser, and can be installed; one from the local server is not. */
import { type Signal, signal } from '@preact/signals'

/** Whether the page will be there without its server: not known yet, kept, or not possible here. */
export const keptOffline: Signal<'unknown' | 'kept' | 'not-here'> = signal('unknown')

const WORKER = './service-worker.js'

/** Starts once the page has been loaded, so that the first view waits for nothing. */
export function keepOffline(hasServer: boolean): void {
  const workers: ServiceWorkerContainer | undefined = navigator.serviceWorker
  if (workers === undefined) {
    keptOffline.value = 'not-here'
    return
  }
  const start = (): void => void (hasServer ? forget(workers) : keep(workers))
  if (document.readyState === 'complete') start()
  else addEventListener('load', start, { once: true })
}

async function keep(workers: ServiceWorkerContainer): Promise<void> {
  try {
    await workers.register(WORKER)
    // the local server's policy knows no manifest: it is named only where the page is kept
    const link = document.createElement('link')
    link.rel = 'manifest'
    link.href = './manifest.webmanifest'
    document.head.append(link)
    await workers.ready
    keptOffline.value = 'kept'
  } catch {
    keptOffline.value = 'not-here'
  }
}

/** A worker that a static page left at this very port would hand out that page instead of this server's. */
async function forget(workers: ServiceWorkerContainer): Promise<void> {
  keptOffline.value = 'not-here'
  for (const one of await workers.getRegistrations()) await one.unregister()
}
