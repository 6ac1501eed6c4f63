/** A way of current that a verdict or a fault speaks of, shown in the pictures. */
import type { VNode } from 'preact'
import { Button } from '../../../kit/index.ts'
import { selected } from '../../../state/work.ts'
import { showNoPath, shownOf, showPath, withoutPlace } from '../state/shown-path.ts'

export interface ShowPathProps {
  /** Whose way it is: of a verdict or a fault. */
  readonly of: string
  readonly path: readonly string[]
}

/** Marks a way in both pictures; the first terminal on it is taken up, and the picture comes into view. */
export function ShowPath({ of, path }: ShowPathProps): VNode | null {
  if (path.length === 0) return null
  const isShown = shownOf.value === of
  return (
    <Button
      says={isShown ? 'Stop showing it' : 'Show it'}
      label={isShown ? 'Stop showing it in the pictures' : 'Show it in the pictures'}
      pressed={isShown}
      onPress={() => {
        if (isShown) {
          showNoPath()
          return
        }
        showPath(of, path)
        const [first] = withoutPlace(path).filter((one) => /^[A-Z]+[0-9]+$/.test(one))
        if (first !== undefined) selected.value = `terminal:${first}`
        setTimeout(bringIntoView, DRAWN)
      }}
    />
  )
}

/** So long after a press the pictures have been drawn and their frames have come to the way, ms. */
const DRAWN = 300

/** Scrolls the page to the way; not where a picture with it can be seen already. */
function bringIntoView(): void {
  const goals = [...document.querySelectorAll('.bench-frame')].flatMap((frame) => {
    const goal = frame.querySelector('.on-way, .on-path') ?? frame.querySelector('.selected')
    return goal === null || frame.clientHeight === 0 ? [] : [goal]
  })
  const isSeen = goals.some((goal) => {
    const { top, bottom } = goal.getBoundingClientRect()
    return top >= 0 && bottom <= innerHeight
  })
  if (!isSeen) goals[0]?.scrollIntoView({ block: 'center', inline: 'nearest' })
}
