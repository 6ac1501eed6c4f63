// Rows of the table of `npm run speed`.
import { cpus, loadavg, totalmem } from 'node:os'

/** Microseconds as a person reads them. */
export function time(us) {
  if (us < 1000) return `${us.toPrecision(3)} us`
  return us < 1e6 ? `${(us / 1000).toPrecision(3)} ms` : `${(us / 1e6).toPrecision(3)} s`
}

/** Ours is to be faster than the other by a factor; without `goal` the row only informs. */
export function faster(what, ours, other, goal) {
  const ratio = other / ours
  return {
    what,
    ours: time(ours),
    other: time(other),
    ratio: `${ratio.toPrecision(3)} x faster`,
    goal: goal === undefined ? '' : `>= ${goal} x`,
    met: goal === undefined ? undefined : ratio >= goal,
  }
}

/** Ours is to take no more than so many times the other; without `goal` the row only informs. */
export function within(what, ours, other, goal, as = time) {
  const ratio = ours / other
  return {
    what,
    ours: as(ours),
    other: as(other),
    ratio: `${ratio.toPrecision(3)} x`,
    goal: goal === undefined ? '' : `<= ${goal} x`,
    met: goal === undefined ? undefined : ratio <= goal,
  }
}

/** A row that this machine cannot measure. */
export function skipped(what, goal, why) {
  return { what, ours: '', other: '', ratio: `skipped: ${why}`, goal, met: undefined }
}

export function machine() {
  const [cpu] = cpus()
  const load = loadavg()
    .map((value) => value.toFixed(2))
    .join(', ')
  const memory = `${Math.round(totalmem() / 2 ** 30)} GiB`
  return `${cpus().length} x ${cpu?.model.trim()}, ${memory}, node ${process.version}, V8 ${process.versions.v8}, load ${load}; processor times`
}

/** The table as text, columns as wide as they must be. */
export function table(rows) {
  const head = { what: 'what', ours: 'ours', other: 'the other', ratio: 'ratio', goal: 'goal', met: 'met' }
  const cells = [head, ...rows.map((row) => ({ ...row, met: verdict(row) }))].map((row) =>
    ['what', 'ours', 'other', 'ratio', 'goal', 'met'].map((key) => row[key]),
  )
  const widths = cells[0].map((_, column) => Math.max(...cells.map((row) => row[column].length)))
  return cells
    .map((row) =>
      row
        .map((cell, k) => cell.padEnd(widths[k]))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')
}

function verdict({ met }) {
  if (met === undefined) return '-'
  return met ? 'met' : 'NOT MET'
}
