/** The layout library behind a worker. */
import type { Engine } from './place-with.ts'

/** The library's near half, which talks to a worker that is the library's own; made when it is first asked. */
export function engineBehind(make: () => unknown): Engine {
  let made: Promise<Engine> | undefined
  const start = async (): Promise<Engine> => {
    const { default: Elk } = await import('elkjs/lib/elk-api.js')
    return new Elk({ workerFactory: make })
  }
  return {
    async layout(graph) {
      made ??= start()
      return (await made).layout(graph)
    },
  }
}
