/**
 * Keeps the files of the build in the browser, and hands them out first; of anything else it knows nothing. The build
 * puts the list of files before this text and makes it a file of its own.
 */

/** Every file by its path, with its hash as fetch takes it. */
declare const KEPT: Readonly<Record<string, string>>
/** Changes with any of them. */
declare const BUILD: string

/** What such a worker is given; the types of pages know only pages. */
interface Scope {
  readonly registration: { readonly scope: string }
  readonly clients: { claim(): Promise<void> }
  addEventListener(what: 'install' | 'activate', hear: (event: Lasting) => void): void
  addEventListener(what: 'fetch', hear: (event: Fetching) => void): void
}
interface Lasting {
  waitUntil(work: Promise<unknown>): void
}
interface Fetching {
  readonly request: Request
  respondWith(answer: Promise<Response>): void
}

const here = globalThis as unknown as Scope
const { scope } = here.registration
/** Stores belong to the whole address: pages in other folders of it have stores of their own. */
const OURS = `ringproof ${scope} `
const STORE = OURS + BUILD

const addressOf = (path: string): string => new URL(path, scope).href
const kept = new Set([scope, ...Object.keys(KEPT).map(addressOf)])

/** All of them or none: a file that is not the build's spoils it, and the browser tries again another day. */
async function fill(): Promise<void> {
  const store = await caches.open(STORE)
  await Promise.all(
    Object.entries(KEPT).map(async ([path, integrity]) => {
      const response = await fetch(addressOf(path), { cache: 'no-cache', integrity })
      if (!response.ok) throw new Error(`${path}: ${response.status}`)
      // a redirected answer may not open a page, which some servers make of `index.html`
      const { headers } = response
      const plain = response.redirected ? new Response(await response.blob(), { headers }) : response
      if (path === 'index.html') await store.put(scope, plain.clone())
      await store.put(addressOf(path), plain)
    }),
  )
}

/** Takes earlier builds away; no window of theirs is open any more. */
async function tidy(): Promise<void> {
  const names = await caches.keys()
  await Promise.all(
    names.filter((name) => name.startsWith(OURS) && name !== STORE).map((name) => caches.delete(name)),
  )
  await here.clients.claim()
}

async function answer(request: Request, address: string): Promise<Response> {
  const store = await caches.open(STORE)
  return (await store.match(address)) ?? fetch(request)
}

here.addEventListener('install', (event) => event.waitUntil(fill()))
here.addEventListener('activate', (event) => event.waitUntil(tidy()))
here.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  const address = origin + pathname
  if (request.method === 'GET' && kept.has(address)) event.respondWith(answer(request, address))
})

export {}
