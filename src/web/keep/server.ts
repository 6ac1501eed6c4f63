/** The user's folder behind the local server (docs/bench.md). */
import type { Problem } from '../../index.ts'
import { type Keep, KeepError, type Kept, type KeptAll, type Saved } from './keep.ts'

interface Refused {
  readonly problems?: readonly Problem[]
  readonly text?: string | null
  readonly mark?: string | null
}

const UNREACHED =
  'The local server does not answer. Look whether `ringproof bench` still runs. Your work stays in this browser.'

/** @param token the word of the page's fragment */
export function serverKeep(token: string): Keep {
  const ask = async (path: string, init: RequestInit = {}): Promise<{ status: number; body: unknown }> => {
    const headers = { 'x-ringproof-token': token, ...init.headers }
    let answer: Response
    try {
      answer = await fetch(path, { ...init, headers, cache: 'no-store' })
    } catch {
      throw new KeepError(UNREACHED)
    }
    const body: unknown = await answer.json().catch(() => ({}))
    if (answer.status === 401) {
      throw new KeepError(
        'The server does not know the word in this address. It was started anew: open the address that it prints now.',
      )
    }
    if (!answer.ok && answer.status !== 409) throw new KeepError(said(body as Refused, answer.status))
    return { status: answer.status, body }
  }
  return {
    sort: 'folder',
    async all(): Promise<KeptAll> {
      const { body } = await ask('./sheets')
      const { folder, sheets, problems } = body as {
        readonly folder: string | null
        readonly sheets: readonly Kept[]
        readonly problems: readonly Problem[]
      }
      return {
        where: folder === null ? '' : `the folder ${folder}`,
        sheets,
        words: problems.map(({ found, expected }) => `Passed over: ${found}; expected ${expected}.`),
      }
    },
    async save(file, text, mark): Promise<Saved> {
      const path = file.split('/').map(encodeURIComponent).join('/')
      const { status, body } = await ask(`./sheets/${path}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ text, mark }),
      })
      const came = body as Refused
      if (status !== 409) return { done: 'saved', mark: came.mark ?? '' }
      const now =
        came.text == null || came.mark == null ? undefined : { file, text: came.text, mark: came.mark }
      return { done: 'conflict', now }
    },
  }
}

function said({ problems = [] }: Refused, status: number): string {
  const words = problems.map(
    ({ found, expected, mend }) =>
      `Found ${found}, expected ${expected}.${mend === undefined ? '' : ` ${mend}.`}`,
  )
  return words.length === 0 ? `The local server refused it (${status}).` : words.join(' ')
}
