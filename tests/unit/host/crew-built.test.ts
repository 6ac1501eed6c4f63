import { fileURLToPath } from 'node:url'
import { crewHere, stretchMaker } from 'ringproof'
import { layOut } from 'ringproof/answer/book-order'
import { stretchesOf } from 'ringproof/book/crew'
import { threadCrew } from 'ringproof/host/crew'
import { expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const { order } = layOut({ target: 'sedge', on: 'none' }, DEMO)
const stretches = stretchesOf('pairs', 40, 20)

/** The thread that the command brings along, and the one of the library, which is found without being named. */
const entries = [fileURLToPath(new URL('../../../dist/cli/crew-worker.js', import.meta.url)), undefined]

test.each(entries)(
  'the built thread %s makes what is made in none',
  async (entry) => {
    const sound: string[] = []
    for await (const { from, bytes } of crewHere(1, stretchMaker).run(order, stretches))
      sound.push(`${from} ${bytes}`)
    const made: string[] = []
    for await (const { from, bytes } of threadCrew(2, entry).run(order, stretches))
      made.push(`${from} ${bytes}`)
    expect(made.sort()).toEqual(sound.sort())
  },
  60_000,
)
