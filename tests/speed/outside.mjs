// Libraries of this machine to compare with, where it has them: KLU in C and scipy. General-purpose linear algebra.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { json } from './processes.mjs'

const here = (name) => fileURLToPath(new URL(name, import.meta.url))

/** A temporary folder, and runners of what this machine has; what it has not says why. */
export function openOutside() {
  const folder = mkdtempSync(join(tmpdir(), 'ringproof-speed-'))
  const program = join(folder, 'klu')
  const compiler = process.env.CC ?? 'gcc'
  const compiled = spawnSync(compiler, ['-O2', '-o', program, here('klu.c'), '-lklu', '-lm'])
  const python = spawnSync('python3', ['-c', 'import scipy.sparse.linalg; print(scipy.__version__)'], {
    encoding: 'utf8',
  })
  const version = python.status === 0 ? python.stdout.trim() : undefined
  return {
    klu: compiled.status === 0 ? (file, kind) => json(program, [file, kind, '30', '9']) : undefined,
    kluMissing: compiled.status === 0 ? undefined : `no ${compiler} with suitesparse/klu.h and -lklu`,
    splu: version ? (file, kind) => json('python3', [here('splu.py'), file, kind, '30', '5']) : undefined,
    spluMissing: version ? undefined : 'no python3 with scipy',
    version,
    /** Writes a matrix where both can read it. */
    write(name, matrix) {
      const file = join(folder, name)
      writeFileSync(file, packed(matrix))
      return file
    },
    close() {
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** The format of klu.c: order and entries, starts and rows by columns, values, right side. */
function packed({ order, rows, columns, re, im, b }) {
  const sorted = [...rows.keys()].sort((p, q) => columns[p] - columns[q] || rows[p] - rows[q])
  const starts = new Int32Array(order + 1)
  for (const k of sorted) starts[columns[k] + 1]++
  for (let j = 0; j < order; j++) starts[j + 1] += starts[j]
  const parts = [
    Int32Array.of(order, sorted.length),
    starts,
    Int32Array.from(sorted, (k) => rows[k]),
    Float64Array.from(sorted.flatMap((k) => [re[k], im[k]])),
    b,
  ]
  return Buffer.concat(parts.map((part) => Buffer.from(part.buffer, part.byteOffset, part.byteLength)))
}
