// The trial's tables as a page of the documentation.

const percent = (part, whole) => (whole === 0 ? '–' : `${Math.round((100 * part) / whole)} %`)
const row = (cells) => `| ${cells.join(' | ')} |`
const rule = (cells) => row(cells.map((_, k) => (k === 0 ? '---' : '---:')))
const mean = (numbers) =>
  numbers.length === 0 ? '–' : (numbers.reduce((sum, one) => sum + one, 0) / numbers.length).toFixed(1)

const at = (trial, readings) => trial.stages.find((stage) => stage.readings === readings)
const headOf = (laws) =>
  laws.readings.map((n) => (n === 0 ? 'symptoms alone' : `${n} reading${n === 1 ? '' : 's'}`))

/** Share and mean size of the first group, stage by stage. */
function shares(trials, laws, hit) {
  return laws.readings.map((n) => {
    const stages = trials.map((trial) => at(trial, n))
    return `${percent(stages.filter(hit).length, stages.length)} (${mean(stages.map(({ size }) => size))})`
  })
}

/** Answers held with more than the confidence of the laws that are wrong, after the last reading. */
function falselySure(trials, laws) {
  const last = trials.map((trial) => at(trial, Math.max(...laws.readings)))
  return percent(last.filter(({ sure, first }) => sure && !first).length, last.length)
}

function singlesTable(results, laws, wanted = () => true) {
  const head = ['set', 'drawn', 'move nothing', ...headOf(laws), 'wrong and over 95 %']
  const lines = [...results, { name: '**all**', singles: results.flatMap(({ singles }) => singles) }].map(
    ({ name, singles: all }) => {
      const singles = all.filter(wanted)
      const seen = singles.filter((trial) => !trial.unseen)
      const still = singles.length - seen.length
      return row([
        name,
        singles.length,
        still,
        ...shares(seen, laws, ({ first }) => first),
        falselySure(seen, laws),
      ])
    },
  )
  return [row(head), rule(head), ...lines].join('\n')
}

function pairsTable(results, laws) {
  const head = ['set', 'drawn', ...headOf(laws), 'wrong and over 95 %']
  const lines = [...results, { name: '**all**', pairs: results.flatMap(({ pairs }) => pairs) }].map(
    ({ name, pairs }) =>
      row([name, pairs.length, ...shares(pairs, laws, ({ among }) => among), falselySure(pairs, laws)]),
  )
  return [row(head), rule(head), ...lines].join('\n')
}

/** As in the book, or with a value that it does not hold. */
function oddTable(results, laws) {
  const all = results.flatMap(({ singles }) => singles).filter(({ unseen }) => !unseen)
  const head = ['values', 'drawn', ...headOf(laws), 'wrong and over 95 %']
  const lines = [
    ['as the book has them', false],
    ['others', true],
  ].map(([says, odd]) => {
    const those = all.filter((trial) => trial.odd === odd)
    return row([says, those.length, ...shares(those, laws, ({ first }) => first), falselySure(those, laws)])
  })
  return [row(head), rule(head), ...lines].join('\n')
}

/** What was not found after three readings, by what was believed instead. */
function lostTable(results) {
  const counts = new Map()
  for (const { singles } of results)
    for (const trial of singles) {
      const third = at(trial, 3)
      if (trial.unseen || third.first) continue
      const key = row([trial.truth, third.leading, trial.odd ? 'other' : 'as in the book'])
      counts.set(key, (counts.get(key) ?? 0) + 1)
    }
  const lines = [...counts].sort(([p, m], [q, n]) => n - m || (p < q ? -1 : 1)).slice(0, 40)
  const head = ['true', 'believed first', 'value']
  const more = counts.size - lines.length
  return [
    row(head),
    rule(head),
    ...lines.map(([line]) => line),
    ...(more > 0 ? [`\n${more} more.`] : []),
  ].join('\n')
}

/** The whole page. */
export function trialPage(results, laws) {
  return `# The trial

How often the diagnosis finds what is wrong. \`npm run trial\` draws a fault, every one of the book as often as any
other, puts it into a set whose parts lie within their tolerances, answers what the tool asks by solving that very set
afresh, and looks whether the first group of faults holds the true one. It writes this page. Seeds and laws are fixed in
\`tests/trial/laws.json\`:

\`\`\`json
${JSON.stringify(laws, null, 2)}
\`\`\`

- A match is the same part and the same family of fault. A group is what no test that may be asked for tells apart; the
  mean number of its faults stands in brackets beside each share.
- First all symptoms are answered, without mistakes; then the tool chooses each reading, and a meter shows it with its
  error. Where the tool asks nothing more, the later columns repeat what it had.
- Every other draw has a value that the book does not hold: partial shorts, odd resistances, values more or less drifted.
- A fault that moves no symptom and no reading is counted apart and is in no share.

## Single faults: the group that stands first

${singlesTable(results, laws)}

Aim: 95 % after three readings, and under 2 % wrong answers held with over 95 %.

## The same, those of which a person notices something

Whoever asks what is wrong has noticed something: at least one symptom is not as it should be.

${singlesTable(results, laws, ({ noticed }) => noticed)}

## Single faults by value

${oddTable(results, laws)}

## Two faults at once: among the first ${laws.first} groups

${pairsTable(results, laws)}

Aim: 85 % after five readings.

## Where single faults are lost after three readings

${lostTable(results)}`
}
