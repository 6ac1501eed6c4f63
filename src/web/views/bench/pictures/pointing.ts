/** Mouse, pen, finger and keys on a picture of things. */
import { type Signal, signal } from '@preact/signals'
import { type Thing, thingParts } from '../../../../index.ts'
import { side } from '../../../state/work.ts'
import { hand, landOn, offered, pickUp, pointAtThing, putDown } from '../state/hand.ts'
import { nextSpot, type Spot } from './rove.ts'

/** A line from where a drag began to where the pointer is, in pixels of the window. */
export const ghost: Signal<{ readonly from: Spot; readonly to: Spot } | undefined> = signal(undefined)
/** The thing that last had the focus in a picture: its stop for the Tab key. */
export const stop: Signal<Thing | undefined> = signal(undefined)

/** So far a pointer may tremble before a press is a drag, px. */
const TREMBLE = 6
/** So near to a thing it may be let go, px: half the size of a target. */
const REACH = 32

function thingElement(target: EventTarget | null): Element | null {
  return target instanceof Element ? target.closest('[data-thing]') : null
}

function thingOf(element: Element | null): Thing | undefined {
  return (element?.getAttribute('data-thing') ?? undefined) as Thing | undefined
}

function middleOf(element: Element): Spot {
  const { left, top, width, height } = element.getBoundingClientRect()
  return { x: left + width / 2, y: top + height / 2 }
}

/** What may be landed on nearest to a spot. */
function offeredNear(root: Element, spot: Spot): Thing | undefined {
  let best: Thing | undefined
  let least = REACH
  for (const element of root.querySelectorAll('[data-thing]')) {
    const thing = thingOf(element)
    if (thing === undefined || !offered.peek().has(thing)) continue
    const { left, right, top, bottom } = element.getBoundingClientRect()
    const away = Math.hypot(
      Math.max(left - spot.x, 0, spot.x - right),
      Math.max(top - spot.y, 0, spot.y - bottom),
    )
    if (away < least) {
      least = away
      best = thing
    }
  }
  return best
}

interface Drag {
  readonly pointer: number
  readonly thing: Thing
  readonly from: Spot
  moving: boolean
}

let drag: Drag | undefined
/** A drag ends in a click of its own, which shall do nothing more. */
let dragged = false

export function onPointerDown(event: PointerEvent): void {
  dragged = false
  const element = thingElement(event.target)
  const thing = thingOf(element)
  if (element === null || thing === undefined || event.button !== 0 || side.peek() !== 'proposed') return
  const { sort } = thingParts(thing)
  if (sort !== 'core' && sort !== 'terminal') return
  // a finger on a terminal scrolls the page; only tags hold it
  if (sort === 'terminal' && event.pointerType === 'touch') return
  drag = { pointer: event.pointerId, thing, from: { x: event.clientX, y: event.clientY }, moving: false }
}

export function onPointerMove(event: PointerEvent): void {
  if (drag === undefined || event.pointerId !== drag.pointer) return
  const to = { x: event.clientX, y: event.clientY }
  if (!drag.moving) {
    if (Math.hypot(to.x - drag.from.x, to.y - drag.from.y) < TREMBLE) return
    drag.moving = true
    const { sort, name } = thingParts(drag.thing)
    pickUp(sort === 'core' ? { what: 'core', core: name } : { what: 'strap', from: name })
    if (event.currentTarget instanceof Element) event.currentTarget.setPointerCapture(event.pointerId)
  }
  ghost.value = { from: drag.from, to }
}

export function onPointerUp(event: PointerEvent): void {
  if (drag === undefined || event.pointerId !== drag.pointer) return
  const { moving } = drag
  drag = undefined
  ghost.value = undefined
  if (!moving || !(event.currentTarget instanceof Element)) return
  dragged = true
  const onto = offeredNear(event.currentTarget, { x: event.clientX, y: event.clientY })
  if (onto === undefined || !landOn(onto)) putDown()
}

export function onPointerCancel(): void {
  if (drag?.moving === true) putDown()
  drag = undefined
  ghost.value = undefined
}

export function onClick(event: MouseEvent): void {
  if (dragged) {
    dragged = false
    return
  }
  const thing = thingOf(thingElement(event.target))
  if (thing !== undefined) pointAtThing(thing)
}

/** The stop moves with the focus, by hand: to draw both pictures again for it would cost more than a frame. */
export function onFocus(event: FocusEvent): void {
  const element = thingElement(event.target)
  const thing = thingOf(element)
  if (element === null || thing === undefined || !(event.currentTarget instanceof Element)) return
  for (const one of event.currentTarget.querySelectorAll('[data-thing][tabindex="0"]')) {
    one.setAttribute('tabindex', '-1')
  }
  element.setAttribute('tabindex', '0')
  stop.value = thing
}

const ARROWS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] as const

export function onKeyDown(event: KeyboardEvent): void {
  const element = thingElement(event.target)
  const thing = thingOf(element)
  if (event.key === 'Escape' && hand.peek() !== undefined) {
    event.preventDefault()
    putDown()
    return
  }
  if (element === null || thing === undefined || event.ctrlKey || event.metaKey || event.altKey) return
  if (event.key === 'Enter' || event.key === ' ') {
    event.preventDefault()
    pointAtThing(thing)
    return
  }
  const way = ARROWS.find((one) => one === event.key)
  if (way === undefined || !(event.currentTarget instanceof Element)) return
  event.preventDefault()
  const others = [...event.currentTarget.querySelectorAll('[data-thing][tabindex]')].filter((one) => {
    if (one === element) return false
    const there = thingOf(one)
    // with something in the hand the arrows go where it may land
    return hand.peek() === undefined || (there !== undefined && offered.peek().has(there))
  })
  const next = nextSpot(middleOf(element), others.map(middleOf), way)
  const goal = next === undefined ? undefined : others[next]
  if (goal instanceof SVGElement) goal.focus()
}
