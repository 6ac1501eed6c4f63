/** `ringproof bench`: the page in a browser, from a server of its own or as plain files. */
import { cautionText } from '../index.ts'
import type { Asked } from './command.ts'
import { EXIT } from './exit-code.ts'
import { requestWrong, widthOf } from './options.ts'
import { prose } from './prose.ts'

const HIGHEST = 65_535

/** A port; 0, any that is free, where none was asked. @throws ProblemError */
export function portOf(asked: string | undefined): number {
  if (asked === undefined) return 0
  const port = /^\d{1,5}$/.test(asked) ? Number(asked) : HIGHEST + 1
  if (port <= HIGHEST) return port
  return requestWrong(
    `the port \`${asked}\``,
    `a whole number from 0 to ${HIGHEST}`,
    'leave `--port` out: a free one is found',
  )
}

/** Opens the bench and stays until it is stopped; or writes the page. @throws ProblemError */
export async function benchCommand({ words, options, io }: Asked): Promise<number> {
  const [folder] = words
  const say = (text: string): void => io.err(prose(text, widthOf(options.width, io.columns)))
  if (options.write !== undefined) {
    if (folder !== undefined || options.port !== undefined)
      requestWrong(
        '`--write` beside a folder to open or a port',
        '`--write <folder>` alone: the page then holds the demo fleet',
        'sheets of your own are brought in on the page, under Files',
      )
    // the server and all that it stands on: read where it is asked for
    const { writePage } = await import('../serve/write-page.ts')
    const count = writePage(options.write)
    io.out(`${count} files in ${options.write}\n`)
    say(`Any static server can hand them out. ${cautionText()}`)
    return EXIT.answered
  }
  const port = portOf(options.port)
  const { openBench } = await import('../serve/bench-server.ts')
  const open = await openBench(folder, port)
  try {
    io.out(`${open.address}\n`)
    say(`Open this address in a browser on this machine; Ctrl-C closes the bench. ${cautionText()}`)
    await io.stopped?.()
  } finally {
    await open.close()
  }
  return EXIT.answered
}
