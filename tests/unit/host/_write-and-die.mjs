// A writer that is killed when its file is written and before it stands in its place: `rename` never returns.
import fs from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'

fs.renameSync = () => {
  fs.writeSync(1, 'written')
  for (;;) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1000)
}
syncBuiltinESMExports()
const [store, folder] = process.argv.slice(2)
const { bookStore } = await import(store)
bookStore(folder).write('key', new Uint8Array(100_000).fill(7))
