/** The body of a save. */

import { Refusal } from './refusal.ts'
import { LONGEST_TEXT } from './sheet-bytes.ts'

/** A byte of text may stand as six in JSON, as `\u000a` does; the rest is for keys and mark. */
export const LONGEST_BODY: number = 6 * LONGEST_TEXT + 1024

export interface SaveAsked {
  readonly text: string
  readonly mark: string | null
}

const WANTED = 'the JSON `{"text": "…", "mark": "…" or null}`'

/**
 * Reads it, counting while it comes in: what a request says of its own length is not believed.
 * @throws Refusal 415, 413, 400
 */
export async function saveAsked(request: Request): Promise<SaveAsked> {
  const type = request.headers.get('content-type') ?? ''
  if (!/^application\/json(?:\s*;\s*charset=utf-8)?$/i.test(type))
    throw new Refusal(415, { found: 'a body of another type', expected: 'application/json' })
  if ((request.headers.get('content-encoding') ?? 'identity') !== 'identity')
    throw new Refusal(415, { found: 'a body that was packed', expected: 'application/json as it is' })
  if (Number(request.headers.get('content-length') ?? 0) > LONGEST_BODY) throw tooBig()
  const wrong = new Refusal(400, { found: 'a body that cannot be read', expected: WANTED })
  let body: unknown
  try {
    body = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(await bytesOf(request)))
  } catch (error) {
    throw error instanceof Refusal ? error : wrong
  }
  if (typeof body !== 'object' || body === null || Array.isArray(body)) throw wrong
  const { text, mark, ...more } = body as Record<string, unknown>
  if (typeof text !== 'string' || Object.keys(more).length > 0) throw wrong
  if (mark !== null && (typeof mark !== 'string' || !/^[0-9a-f]{64}$/.test(mark))) throw wrong
  const bytes = Buffer.from(text, 'utf8')
  // halves of characters would come back as others
  if (bytes.toString('utf8') !== text) throw wrong
  if (bytes.byteLength > LONGEST_TEXT) throw tooBig()
  return { text, mark }
}

async function bytesOf(request: Request): Promise<Buffer> {
  const pieces: Uint8Array[] = []
  let length = 0
  for await (const piece of request.body ?? []) {
    length += piece.byteLength
    if (length > LONGEST_BODY) throw tooBig()
    pieces.push(piece)
  }
  return Buffer.concat(pieces)
}

const tooBig = (): Refusal =>
  new Refusal(413, { code: 'too-big', found: 'a longer text', expected: 'a sheet of at most 1 MiB' })
