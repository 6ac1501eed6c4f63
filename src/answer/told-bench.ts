/** A bench of readings that someone may have to wait for. */
import type { Bench } from '../meter/bench.ts'
import type { Tell } from './tell.ts'

/** A bench that tells how far it is with the ends of the parts' tolerances, which is what takes time. */
export function toldOf(bench: Bench, tell: Tell): Bench {
  let count = 0
  return {
    ...bench,
    at: (choice) => {
      count += 1
      tell(`reading with parts at the ends of their tolerances: ${count}`)
      return bench.at(choice)
    },
  }
}
