/** Where the page is, as a signal, and how it goes elsewhere. */
import { type Signal, signal } from '@preact/signals'
import { followed, type Route, readRoute, routeHash } from './fragment.ts'

export type { Route }
export { readRoute, routeHash }

export const route: Signal<Route> = signal(readRoute(location.hash))

addEventListener('hashchange', () => {
  const next = followed(route.value, location.hash)
  // with the token in the address a reload finds the server again
  if (location.hash !== routeHash(next)) history.replaceState(history.state, '', routeHash(next))
  route.value = next
})

/** Goes to a view. */
export function go(view: string, more: Readonly<Record<string, string>> = {}): void {
  const { token } = route.value
  location.hash = routeHash({ view, ...(token === undefined ? {} : { token }), more })
}
