/** Where this user's kept books lie. */
import { homedir } from 'node:os'
import { isAbsolute, join } from 'node:path'

/** `RINGPROOF_CACHE=off` keeps nothing. */
const OFF = 'off'

/**
 * The folder for kept books: what `RINGPROOF_CACHE` says, else `ringproof` in `$XDG_CACHE_HOME` or in `~/.cache`.
 * Undefined where nothing is to be kept, or where there is no home.
 * @source XDG Base Directory Specification: a path there that is not absolute is to be ignored; from memory
 */
export function cacheFolder(environment: Readonly<Record<string, string | undefined>>): string | undefined {
  const own = environment.RINGPROOF_CACHE ?? ''
  if (own === OFF) return undefined
  if (own !== '') return isAbsolute(own) ? own : undefined
  const shared = environment.XDG_CACHE_HOME ?? ''
  if (isAbsolute(shared)) return join(shared, 'ringproof')
  const home = environment.HOME ?? homedir()
  return isAbsolute(home) ? join(home, '.cache', 'ringproof') : undefined
}
