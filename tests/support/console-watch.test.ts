import { describe, expect, test } from 'vitest'
import { watchConsole } from './console-watch.ts'

/** A console that keeps what it was told. */
function quietConsole(): { target: Console; heard: string[] } {
  const heard: string[] = []
  return { target: { ...console, log: (word: string) => heard.push(word) } as Console, heard }
}

describe('a console under watch', () => {
  test('throws at the call', () => {
    const watch = watchConsole(quietConsole().target)
    expect(() => watch.check()).not.toThrow()
    const { target } = quietConsole()
    watchConsole(target)
    expect(() => target.log('a')).toThrow('console.log(a)')
  })

  test('throws again at the check when the first refusal was swallowed, and only once', () => {
    const { target } = quietConsole()
    const watch = watchConsole(target)
    try {
      target.warn('b')
    } catch {}
    expect(() => watch.check()).toThrow('console.warn(b)')
    expect(() => watch.check()).not.toThrow()
  })

  test('prints again once restored', () => {
    const { target, heard } = quietConsole()
    watchConsole(target).restore()
    target.log('c')
    expect(heard).toEqual(['c'])
  })

  test('is the console of this very test', () => {
    expect(console.log.toString()).toContain('printed')
  })
})
