/** Contrast of the tokens, by the definitions of WCAG 2.2: relative luminance and contrast ratio (section 5.3, "terms"). */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const css = readFileSync(new URL('../../../../src/web/look/tokens.css', import.meta.url), 'utf8')

type Tokens = Readonly<Record<string, string>>

function tokensOf(block: string): Tokens {
  return Object.fromEntries(
    [...block.matchAll(/(--[a-z-]+):\s*(#[0-9a-f]{6});/g)].map(([, name, value]) => [name, value]),
  )
}

/** The body behind a selector, up to its closing brace. */
function body(selector: string): string {
  const from = css.indexOf(`${selector} {`)
  expect(from, selector).toBeGreaterThanOrEqual(0)
  return css.slice(from, css.indexOf('}', from))
}

const light = tokensOf(body(':root'))
const bySystem = tokensOf(body(':root:not([data-theme="light"])'))
const byChoice = tokensOf(css.slice(css.lastIndexOf(':root[data-theme="dark"] {')).split('}')[0] ?? '')

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: string | undefined, other: string | undefined): number {
  const [a, b] = [luminance(one ?? '#000000'), luminance(other ?? '#000000')].sort((x, y) => y - x)
  return (a! + 0.05) / (b! + 0.05)
}

test('black on white is 21:1, the largest there is', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
})

test('dark is the same whether the system or the reader wants it, and lacks no colour', () => {
  expect(byChoice).toEqual(bySystem)
  expect(Object.keys(bySystem)).toEqual(Object.keys(light))
})

const GROUNDS = ['--paper', '--sheet', '--sunk']
const TEXTS = [
  '--ink',
  '--ink-soft',
  '--accent',
  '--holds',
  '--marginal',
  '--fails',
  '--unknown',
  '--caution',
]
const PAIRS: readonly (readonly [string, string])[] = [
  ...TEXTS.flatMap((text) => GROUNDS.map((ground) => [text, ground] as const)),
  ['--ink', '--accent-soft'],
  ['--accent', '--accent-soft'],
  ['--accent-ink', '--accent'],
  ['--caution', '--caution-soft'],
  ['--ink', '--caution-soft'],
]
const EDGES = ['--edge', '--focus', '--accent', '--holds', '--marginal', '--fails', '--caution']

describe.each([
  ['light', light],
  ['dark', bySystem],
])('in %s', (_, tokens) => {
  test.each(PAIRS)('text %s on %s has 7:1 (1.4.6)', (text, ground) => {
    expect(contrast(tokens[text], tokens[ground])).toBeGreaterThanOrEqual(7)
  })
  test.each(EDGES.flatMap((edge) => GROUNDS.map((ground) => [edge, ground] as const)))(
    'edge %s on %s has 3:1 (1.4.11)',
    (edge, ground) => {
      expect(contrast(tokens[edge], tokens[ground])).toBeGreaterThanOrEqual(3)
    },
  )
})
