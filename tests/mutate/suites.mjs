/** Folders that are mutated, and the tests that judge each: those that start programs notice little of arithmetic. */
const SUITES = {
  algebra: ['tests/unit/algebra', 'tests/contracts/engines.test.ts', 'tests/library/algebra.test.ts'],
  solver: ['tests/unit/solver', 'tests/laws', 'tests/library', 'tests/oracles', 'tests/regression'],
  figures: ['tests/unit/figures', 'tests/oracles', 'tests/scenario', 'tests/unit/checks'],
  checks: ['tests/unit/checks', 'tests/scenario'],
}

export const FOLDERS = Object.keys(SUITES)

/** The test files for a folder below `src`, or for a file of one, as patterns. */
export function suitesOf(folderOrFile) {
  const folder = folderOrFile.replace(/^src\//, '').split('/')[0]
  return (SUITES[folder] ?? ['tests/unit']).map((one) => (one.endsWith('.ts') ? one : `${one}/**/*.test.ts`))
}
