/** A way of current that a verdict or a fault speaks of, shown in the pictures. */
import type { VNode } from 'preact'
import { Button } from '../../../kit/index.ts'
import { selected } from '../../../state/work.ts'
import { shownPath, withoutPlace } from '../state/shown-path.ts'

/** Marks a way in both pictures; the first terminal on it is taken up. */
export function ShowPath({ path }: { readonly path: readonly string[] }): VNode | null {
  if (path.length === 0) return null
  const isShown = shownPath.value === path
  return (
    <Button
      says={isShown ? 'Stop showing it' : 'Show it'}
      label={isShown ? 'Stop showing it in the pictures' : 'Show it in the pictures'}
      pressed={isShown}
      onPress={() => {
        shownPath.value = isShown ? [] : path
        const [first] = withoutPlace(path).filter((one) => /^[A-Z]+[0-9]+$/.test(one))
        if (!isShown && first !== undefined) selected.value = `terminal:${first}`
      }}
    />
  )
}
