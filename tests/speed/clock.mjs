// How long things take: median of batches after a warm-up, several things in turns. Microseconds of processor time,
// those of the compiler and the collector among them, so that a busy machine disturbs little.

const warmUp = 90_000
const batch = 30_000
const batches = 9

/**
 * Medians of several things, batch by batch in turns, so that a busy moment of the machine falls on all of them.
 * @param {Record<string, () => unknown>} things
 * @returns {Record<string, number>} microseconds of one call
 */
export function inTurns(things, rounds = batches) {
  const names = Object.keys(things)
  const repeats = names.map((name) => calibrate(things[name]))
  const times = names.map(() => [])
  for (let round = 0; round < rounds; round++) {
    names.forEach((name, k) => {
      times[k].push(timed(things[name], repeats[k]))
    })
  }
  return Object.fromEntries(names.map((name, k) => [name, median(times[k])]))
}

/** Processor time of this process in microseconds. */
export function processorTime() {
  const { user, system } = process.cpuUsage()
  return user + system
}

/** Warms up and returns how many calls fill a batch. */
function calibrate(thing) {
  const start = processorTime()
  let calls = 0
  let used = 0
  for (let next = 2; used < warmUp; next *= 2) {
    for (; calls < next; calls++) thing()
    used = processorTime() - start
  }
  return Math.max(1, Math.round((calls * batch) / used))
}

function timed(thing, repeats) {
  const start = processorTime()
  for (let k = 0; k < repeats; k++) thing()
  return (processorTime() - start) / repeats
}

export function median(values) {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]
}
