// The browser and the built bench for scripts that plain node runs.
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import executable from '@sparticuz/chromium'
import { chromium } from 'playwright-core'

const COMMAND =
  process.env.RINGPROOF_COMMAND ?? fileURLToPath(new URL('../../../dist/cli/ringproof.js', import.meta.url))

/** A browser as the tests start it, with flags besides. */
export async function launched(...more) {
  const flags = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run']
  const quiet = ['--disable-background-networking', '--disable-component-update', '--disable-sync']
  return chromium.launch({
    executablePath: await executable.executablePath(),
    args: [...flags, ...quiet, ...more],
  })
}

/** `ringproof bench` without a folder: its address, and how it is closed. */
export async function servedBench() {
  const child = spawn(process.execPath, [COMMAND, 'bench'], { stdio: ['ignore', 'pipe', 'inherit'] })
  const address = await new Promise((resolve, reject) => {
    child.stdout.once('data', (piece) => resolve(String(piece).trim()))
    child.once('exit', (code) => reject(new Error(`the bench ended with ${code}`)))
  })
  const ended = new Promise((resolve) => {
    child.once('exit', resolve)
  })
  return {
    address,
    close: async () => {
      child.kill('SIGINT')
      await ended
    },
  }
}
