import { type Mark, mark } from 'ringproof'
import { nextSpot, roving } from 'ringproof/web/views/bench/pictures/rove'
import { describe, expect, it } from 'vitest'

const thing = (name: string): Mark => mark('g', { 'data-thing': name, tabindex: 0 })
const stops = (whole: Mark): readonly unknown[] =>
  whole.children.flatMap((one) => (typeof one === 'string' ? [] : [one.attributes.tabindex]))

describe('roving', () => {
  const whole = mark(
    'svg',
    {},
    mark('title', {}, 'all'),
    thing('terminal:A1'),
    thing('terminal:A2'),
    thing('core:x.y'),
  )

  it('leaves one stop: the thing that last had the focus', () => {
    expect(stops(roving(whole, 'terminal:A2'))).toEqual([undefined, -1, 0, -1])
  })
  it('stops at the first where that thing is not in the picture, or none has had it', () => {
    expect(stops(roving(whole, 'terminal:Z9'))).toEqual([undefined, 0, -1, -1])
    expect(stops(roving(whole, undefined))).toEqual([undefined, 0, -1, -1])
  })
  it('leaves its argument as it is', () => {
    roving(whole, 'terminal:A2')
    expect(stops(whole)).toEqual([undefined, 0, 0, 0])
  })
})

describe('nextSpot', () => {
  const from = { x: 100, y: 100 }
  it('goes to what lies straight ahead before what lies nearer but aside', () => {
    const spots = [
      { x: 110, y: 140 },
      { x: 170, y: 100 },
    ]
    expect(nextSpot(from, spots, 'ArrowRight')).toBe(1)
    expect(nextSpot(from, spots, 'ArrowDown')).toBe(0)
  })
  it('goes nowhere where nothing lies that way', () => {
    expect(nextSpot(from, [{ x: 170, y: 100 }], 'ArrowLeft')).toBeUndefined()
    expect(nextSpot(from, [{ x: 100, y: 100 }], 'ArrowUp')).toBeUndefined()
  })
})
