/** A picture in a frame that scrolls: at first as large as it is read with ease, then larger, smaller or whole. */
import './pictures.css'
import type { ComponentChildren, VNode } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { announce, Button } from '../../../kit/index.ts'
import { selected } from '../../../state/work.ts'
import { shownPath } from '../state/shown-path.ts'
import { LEAST_STEP, MOST_STEP, type Size, shownWidth } from './picture-size.ts'

export interface SizedProps {
  /** What is shown: `Circuit`. */
  readonly says: string
  /** Its smallest letters, in the picture's own units. */
  readonly letters: number
  readonly children: ComponentChildren
}

export function Sized({ says, letters, children }: SizedProps): VNode {
  const [size, setSize] = useState<Size>(0)
  const frame = useRef<HTMLElement>(null)
  useFitting(frame, letters, size)
  useInSight(frame)
  const step = size === 'whole' ? LEAST_STEP : size
  const choose = (next: Size, word: string): void => {
    setSize(next)
    announce(`${says}: ${word}.`)
  }
  return (
    <div class="bench-sized">
      <div class="bench-sized-head">
        <h2>{says}</h2>
        <fieldset class="bench-sizes buttons" aria-label={`Size of the picture: ${says}`}>
          <Button
            says="Smaller"
            label={`Smaller: ${says}`}
            disabledBecause={step <= LEAST_STEP ? 'It is as small as it gets.' : undefined}
            onPress={() => choose(step - 1, 'smaller')}
          />
          <Button
            says="Larger"
            label={`Larger: ${says}`}
            disabledBecause={step >= MOST_STEP ? 'It is as large as it gets.' : undefined}
            onPress={() => choose(size === 'whole' ? 0 : step + 1, 'larger')}
          />
          <Button
            says="Whole"
            label={`Whole: ${says}`}
            pressed={size === 'whole'}
            onPress={() =>
              choose(size === 'whole' ? 0 : 'whole', size === 'whole' ? 'as it is read with ease' : 'whole')
            }
          />
        </fieldset>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: who has no pointer scrolls it with the arrow keys */}
      <section class="bench-frame" ref={frame} tabIndex={0} aria-label={`${says}: a picture that scrolls`}>
        {children}
      </section>
    </div>
  )
}

type FrameRef = { readonly current: HTMLElement | null }

/** Keeps the picture's width as it was chosen, whatever becomes of the window and of the picture. */
function useFitting(frame: FrameRef, letters: number, size: Size): void {
  useLayoutEffect(() => {
    const { current: box } = frame
    const holder = box?.querySelector('.bench-scroll')
    if (box == null || holder == null) return
    const redrawn = new MutationObserver(() => suit())
    const suit = (): void => {
      const picture = holder.querySelector(':scope > svg')
      if (picture !== null) redrawn.observe(picture, { attributeFilter: ['viewBox', 'width', 'height'] })
      fitPicture(box, picture, letters, size)
    }
    const resized = new ResizeObserver(suit)
    suit()
    // the picture may come later than its frame
    redrawn.observe(holder, { childList: true })
    resized.observe(box)
    return () => {
      redrawn.disconnect()
      resized.disconnect()
    }
  }, [letters, size])
}

function fitPicture(box: HTMLElement, picture: Element | null, letters: number, size: Size): void {
  const [, , width = 0, height = 0] = (picture?.getAttribute('viewBox') ?? '').split(' ').map(Number)
  // a picture that is not shown has no room
  if (picture === null || !(width > 0) || box.clientWidth === 0) return
  const page = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  // the border of the picture's own box stands within the frame
  const wide = shownWidth({ width, letters, room: box.clientWidth, page }, size)
  const high = Math.round((wide * height) / width)
  if (picture.getAttribute('width') !== `${wide}`) picture.setAttribute('width', `${wide}`)
  if (picture.getAttribute('height') !== `${high}`) picture.setAttribute('height', `${high}`)
}

/** So long after a change both pictures have been drawn, ms. */
const DRAWN = 200

/** Brings what is selected or shown as a way into the frame; the page itself stays where it is. */
function useInSight(frame: FrameRef): void {
  const [thing, path] = [selected.value, shownPath.value]
  useEffect(() => {
    if (thing === undefined && path.length === 0) return
    const timer = setTimeout(() => {
      const { current: box } = frame
      // whoever is in the picture has it in sight
      if (box === null || box.contains(document.activeElement)) return
      const goal = box.querySelector(path.length > 0 ? '.on-way, .on-path' : '.selected')
      if (goal !== null) bringIn(box, goal)
    }, DRAWN)
    return () => clearTimeout(timer)
  }, [thing, path])
}

function bringIn(box: HTMLElement, goal: Element): void {
  const [inner, outer] = [goal.getBoundingClientRect(), box.getBoundingClientRect()]
  const across = (inner.left + inner.right - outer.left - outer.right) / 2
  const down = (inner.top + inner.bottom - outer.top - outer.bottom) / 2
  box.scrollBy({
    left: inner.left < outer.left || inner.right > outer.right ? across : 0,
    top: inner.top < outer.top || inner.bottom > outer.bottom ? down : 0,
  })
}
