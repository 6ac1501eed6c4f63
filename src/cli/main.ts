/** The command `ringproof`: the only file that touches the process. */
import { statSync } from 'node:fs'
import { isAbsolute, relative } from 'node:path'
import { bookMeans } from '../host/book-means.ts'
import { readSheetFile } from '../host/files.ts'
import { packagedFolder } from '../host/packaged.ts'
import { folderShelf } from '../host/shelf.ts'
import { EXIT } from './exit-code.ts'
import type { Io } from './io.ts'
import { run } from './run.ts'
import { askerOn } from './terminal-ask.ts'

const { stdout, stderr } = process

/** Colour is for people: on terminals, unless NO_COLOR says otherwise. */
const wantsColour = (process.env.NO_COLOR ?? '') === ''

/** The sheets of the program, named from the working folder where they lie below it: shorter, and the same everywhere. */
function delivered(): string {
  const whole = packagedFolder()
  const near = relative(process.cwd(), whole)
  return near.startsWith('..') || isAbsolute(near) ? whole : near || '.'
}

/** A line that the next one, or nothing, takes the place of; one that went over the edge would stay. */
function showStatus(text: string): void {
  stderr.write(`\r\u001b[2K${text.slice(0, Math.max(0, (stderr.columns ?? 80) - 1))}`)
}

const asker = askerOn(process.stdin, stderr)

const io: Io = {
  out: (text) => {
    stdout.write(text)
  },
  err: (text) => {
    stderr.write(text)
  },
  ...(stderr.isTTY ? { status: showStatus } : {}),
  columns: stdout.isTTY ? stdout.columns : undefined,
  colour: { out: wantsColour && stdout.isTTY === true, err: wantsColour && stderr.isTTY === true },
  shelf: (folders) => folderShelf(folders, delivered()),
  books: (keeps) => bookMeans(process.env, keeps),
  ask: (prompt) => asker.ask(prompt),
  person: process.stdin.isTTY === true && stdout.isTTY === true,
  stopped: () =>
    new Promise((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve())
      // after the other listens: at no time does a signal find nobody
      process.off('SIGINT', stop)
    }),
  isFile: (path) => statSync(path, { throwIfNoEntry: false })?.isFile() ?? false,
  readSheet: readSheetFile,
}

// A reader that has seen enough, such as `head`, closes the pipe: nothing is wrong.
for (const stream of [stdout, stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
}
const stop = (): never => process.exit(EXIT.stopped)
process.on('SIGINT', stop)

process.exitCode = await run(process.argv.slice(2), io)
asker.close()
