// A telephone set's size, 40 unknowns: factoring anew and one solution, beside general libraries.
import { library } from './built.mjs'
import { inTurns } from './clock.mjs'
import { filled, judge, local, rightSide } from './matrices.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { faster, skipped, within } from './table.mjs'

const matrix = local(40, 20261125)
const processes = 5

/** In one process: ours and the libraries that are JavaScript. */
export async function measure() {
  const { createSparse } = await library('algebra/sparse')
  const mathjs = await import('mathjs')
  const found = {}
  let consumed = 0
  for (const complex of [true, false]) {
    const engine = filled(createSparse, matrix, complex)
    if (!engine.factor().ok) throw new Error('the matrix is singular')
    const b = rightSide(matrix, complex)
    const x = b.slice()
    const things = {
      ours: () => {
        x.set(b)
        engine.refactor()
        engine.solve(x, 1)
        consumed += x[0]
      },
    }
    things.ours()
    judge('ours', engine, x, b)
    const value = (re, im) => (complex ? mathjs.complex(re, im) : re)
    const full = Array.from({ length: 40 }, () => Array.from({ length: 40 }, () => value(0, 0)))
    matrix.re.forEach((re, k) => {
      full[matrix.rows[k]][matrix.columns[k]] = value(re, matrix.im[k])
    })
    const right = full.map((_, k) => value(matrix.b[2 * k], matrix.b[2 * k + 1]))
    const dense = mathjs.matrix(full)
    const sparse = mathjs.sparse(full)
    things.dense = () => mathjs.lusolve(dense, right)
    things.slu = () => mathjs.lusolve(mathjs.slu(sparse, 1, 0.1), right)
    if (!complex) {
      const ml = await import('ml-matrix').catch(() => undefined)
      if (ml) {
        const a = new ml.Matrix(full)
        const column = ml.Matrix.columnVector(right)
        things.ml = () => new ml.LuDecomposition(a).solve(column).to2DArray()
      }
    }
    for (const name of ['dense', 'slu', 'ml']) {
      const solution = things[name]?.()
      if (solution) judge(name, engine, flat(solution.toArray?.() ?? solution, complex), b)
    }
    for (const [name, took] of Object.entries(inTurns(things)))
      found[`${complex ? 'complex' : 'real'} ${name}`] = took
  }
  if (!Number.isFinite(consumed)) throw new Error('no solution')
  return found
}

function flat(rows, complex) {
  const values = rows.map((row) => (Array.isArray(row) ? row[0] : row))
  return Float64Array.from(values.flatMap((v) => (complex ? [v.re ?? v, v.im ?? 0] : [v])))
}

/** All rows of this subject. */
export function rows(outside) {
  const file = outside.write('small', matrix)
  const both = (run) => (kind) => (run ? () => run(file, kind) : undefined)
  const klu = both(outside.klu)
  const splu = both(outside.splu)
  const best = bestOf(processes, {
    ours: () => inFreshNode('small'),
    klu: klu('complex'),
    kluReal: klu('real'),
    splu: splu('complex'),
  })
  const ours = best.ours['complex ours']
  const real = best.ours['real ours']
  const what = (other, kind = 'complex') => `40 unknowns, ${kind}, refactor + solve / ${other}`
  return [
    faster(what('mathjs lusolve, dense'), ours, best.ours['complex dense'], 1000),
    faster(what('mathjs slu + lusolve, sparse'), ours, best.ours['complex slu'], 80),
    best.splu
      ? faster(what(`scipy ${outside.version} splu + solve`), ours, best.splu.microseconds, 8)
      : skipped(what('scipy splu + solve'), '>= 8 x', outside.spluMissing),
    ...(best.klu
      ? [
          within(what('KLU in C, as it comes'), ours, best.klu.scaled, 1.5),
          within(what('KLU in C, without scaling'), ours, best.klu.plain),
          within(what('KLU in C, as it comes', 'real'), real, best.kluReal.scaled),
        ]
      : [skipped(what('KLU in C'), '<= 1.5 x', outside.kluMissing)]),
    faster(what('mathjs lusolve, dense', 'real'), real, best.ours['real dense'], 40),
    best.ours['real ml']
      ? faster(what('ml-matrix LU, dense', 'real'), real, best.ours['real ml'], 40)
      : skipped(what('ml-matrix LU, dense', 'real'), '>= 40 x', 'not installed'),
  ]
}
