import { execFile, spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, test } from 'vitest'

const COMMAND = fileURLToPath(new URL('../../dist/cli/ringproof.js', import.meta.url))
const shell = promisify(execFile)

/** The built command is proved once, together with the built library. */
describe.runIf(process.env.RINGPROOF_BUILD === '1')('the built command', () => {
  test('ends with the exit code of its answer', async () => {
    await expect(shell(process.execPath, [COMMAND, 'check', 'fescue-unit-left-out'])).rejects.toMatchObject({
      code: 1,
      stderr: '',
    })
    await expect(shell(process.execPath, [COMMAND, 'chek'])).rejects.toMatchObject({ code: 2, stdout: '' })
    await expect(shell(process.execPath, [COMMAND, 'solve', 'two-meshes'])).resolves.toMatchObject({
      stderr: '',
    })
  })

  test('takes a reader that leaves early for no error', async () => {
    const line = 'set -o pipefail; "$0" "$1" schema check | head -1'
    await expect(shell('bash', ['-c', line, process.execPath, COMMAND])).resolves.toMatchObject({
      stdout: '{\n',
      stderr: '',
    })
  })

  test('ends with 130 when it is stopped by hand', async () => {
    const lingering = 'data:text/javascript,setInterval(()=>{},1000)'
    const child = spawn(process.execPath, ['--import', lingering, COMMAND, '--version'])
    child.stdout.once('data', () => child.kill('SIGINT'))
    const code = await new Promise((done) => child.once('exit', done))
    expect(code).toBe(130)
  })
})
