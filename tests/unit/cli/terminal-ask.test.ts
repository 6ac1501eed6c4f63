import { PassThrough } from 'node:stream'
import { askerOn } from 'ringproof/cli/terminal-ask'
import { expect, test } from 'vitest'

test('asks line by line, loses none that came early, and says when the input has ended', async () => {
  const [input, output] = [new PassThrough(), new PassThrough()]
  const { ask, close } = askerOn(input, output)
  input.write('first\r\nsecond\n')
  expect(await ask('one? ')).toBe('first')
  expect(await ask('two? ')).toBe('second')
  input.end('last')
  expect(await ask('three? ')).toBe('last')
  expect(await ask('four? ')).toBeUndefined()
  expect(output.read()?.toString()).toBe('one? two? three? four? ')
  close()
})

test('opens nothing before the first question, so that the process may end', () => {
  const input = new PassThrough()
  askerOn(input, new PassThrough()).close()
  expect(input.listenerCount('data') + input.listenerCount('readable')).toBe(0)
})
