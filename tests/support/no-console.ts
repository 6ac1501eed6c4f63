import { afterAll, afterEach } from 'vitest'
import { watchConsole } from './console-watch.ts'

// Set up before a test file is read, so that printing while a module loads is caught as well.
const watch = watchConsole(console)

afterEach(() => watch.check())
afterAll(() => {
  watch.restore()
  watch.check()
})
