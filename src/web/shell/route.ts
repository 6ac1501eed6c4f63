/** The fragment of the address: which view, and the word that lets the page ask its local server. */
import { type Signal, signal } from '@preact/signals'

export interface Route {
  readonly view: string
  /** The server's token; absent on a static page. */
  readonly token?: string
  /** Whatever else a view keeps there. */
  readonly more: Readonly<Record<string, string>>
}

/** Reads `#view=lesson&token=…&step=2`. */
export function readRoute(hash: string): Route {
  const { view = 'bench', token, ...more } = Object.fromEntries(new URLSearchParams(hash.replace(/^#/, '')))
  return { view, ...(token === undefined ? {} : { token }), more }
}

/** Writes a route as a fragment. */
export function routeHash({ view, token, more }: Route): string {
  const words = new URLSearchParams({ view, ...(token === undefined ? {} : { token }), ...more })
  return `#${words}`
}

export const route: Signal<Route> = signal(readRoute(location.hash))

addEventListener('hashchange', () => {
  const next = readRoute(location.hash)
  const { token } = route.value
  // a link of the page names the view alone: the token stays
  route.value = next.token === undefined && token !== undefined ? { ...next, token } : next
})

/** Goes to a view. */
export function go(view: string, more: Readonly<Record<string, string>> = {}): void {
  const { token } = route.value
  location.hash = routeHash({ view, ...(token === undefined ? {} : { token }), more })
}
