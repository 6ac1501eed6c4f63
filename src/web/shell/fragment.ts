/** The fragment of the address as data: which view, and the word that lets the page ask its local server. */
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

/** A link of the page names the view alone: the token stays. */
export function followed(before: Route, hash: string): Route {
  const next = readRoute(hash)
  const { token } = before
  return next.token === undefined && token !== undefined ? { ...next, token } : next
}
