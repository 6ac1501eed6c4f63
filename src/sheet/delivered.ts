/** Tables that come with the program: limits, odds, ageing. */
import { parseDocument } from 'yaml'
import * as z from 'zod/mini'
import { refuse } from '../problem.ts'

/**
 * Reads a delivered table by its schema; a broken one is a mistake of the installation, not of a sheet.
 *
 * @param noun what it is a table of: "limits"
 * @throws ProblemError `syntax`
 */
export function readDelivered<T>(schema: z.ZodMiniType<T>, text: string, file: string, noun: string): T {
  const document = parseDocument(text, { version: '1.2', schema: 'core' })
  const read =
    document.errors.length > 0 ? undefined : z.safeParse(schema, document.toJS({ maxAliasCount: 0 }))
  if (read?.success === true) return read.data
  const [issue] = read?.error?.issues ?? []
  refuse({
    code: 'syntax',
    found: `${file}: ${issue === undefined ? 'no YAML' : issue.path.join('.')}`,
    expected: `the table of ${noun} as it was delivered`,
    mend: 'install the package again',
  })
}
