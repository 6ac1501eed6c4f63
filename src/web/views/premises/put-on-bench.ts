/** Opens a sheet for the bench and goes there. */
import type { Problem } from '../../../index.ts'
import { go } from '../../shell/route.ts'
import { openSheet } from '../../state/shelf.ts'

/** A set, a rewire, or a set that stands in premises; what is wrong with its sheet where it cannot be opened. */
export async function putOnBench(
  sheet: 'set' | 'rewire' | 'premises',
  name: string,
  at?: string,
): Promise<readonly Problem[]> {
  const problems = await openSheet(sheet, name, at)
  if (problems.length === 0) go('bench')
  return problems
}
