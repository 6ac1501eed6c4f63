/** Who is let in: the right address, the right page, the right token. */
import { createHash, timingSafeEqual } from 'node:crypto'
import { quoted, Refusal } from './refusal.ts'

/** The header that carries the token. */
export const TOKEN_HEADER = 'x-ringproof-token'

/**
 * Refuses a request that does not name this server, or that another page makes. A name that leads to this machine
 * but is not its own, as an attacker's may, is none of these.
 * @throws Refusal 421, 403
 */
export function checkFrom(headers: Headers, port: number): void {
  // browsers leave the usual port out
  const own = ['127.0.0.1', 'localhost'].map((name) => (port === 80 ? name : `${name}:${port}`))
  const host = headers.get('host') ?? ''
  if (!own.includes(host))
    throw new Refusal(421, {
      found: `a request to ${quoted(host)}`,
      expected: `one to ${own.join(' or ')}`,
      mend: 'open the address that `ringproof bench` printed',
    })
  const origin = headers.get('origin')
  if (origin !== null && origin !== `http://${host}`) foreign(quoted(origin))
  const site = headers.get('sec-fetch-site')
  if (site === null || site === 'same-origin' || site === 'none') return
  // a person who follows a link from elsewhere gets the page, which can do nothing without the token
  const opens = headers.get('sec-fetch-mode') === 'navigate' && headers.get('sec-fetch-dest') === 'document'
  if (!opens) foreign('another site')
}

function foreign(from: string): never {
  throw new Refusal(403, {
    found: `a request from ${from}`,
    expected: 'one from the page of this server',
    mend: 'open the address that `ringproof bench` printed',
  })
}

/**
 * Refuses a request without the token. The comparison takes the same time wherever the two differ.
 * @throws Refusal 401
 */
export function checkToken(headers: Headers, token: string): void {
  const given = headers.get(TOKEN_HEADER)
  if (given !== null && timingSafeEqual(digest(given), digest(token))) return
  throw new Refusal(401, {
    found: given === null ? 'no token' : 'another token',
    expected: `the token of this run in \`${TOKEN_HEADER}\``,
    mend: 'open the address that `ringproof bench` printed last',
  })
}

/** Digests are of one length, whatever was given. */
const digest = (text: string): Buffer => createHash('sha256').update(text).digest()
