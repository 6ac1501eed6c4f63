/** The frame of every view: the head, what is being shown, and the foot. */
import type { VNode } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Busy, Choice, LiveRegion, Notice } from '../kit/index.ts'
import { opening, present } from '../state/work.ts'
import { focusHeading, saveFocus } from './focus.ts'
import { Guard } from './guard.tsx'
import { Header } from './header.tsx'
import { Leftovers } from './leftovers.tsx'
import { route } from './route.ts'
import { notLoaded, show, shown } from './shown.ts'
import { chooseTheme, type Theme, theme } from './theme.ts'

export function Shell(): VNode {
  const { view } = route.value
  useEffect(() => {
    void show(view)
  }, [view])
  return (
    <>
      {/* no plain link: the fragment is the page's route */}
      <button type="button" class="skip" onClick={() => focusHeading()}>
        Skip to the view
      </button>
      <Header />
      <main>
        <View />
      </main>
      <footer class="foot">
        <Choice says="Light or dark" options={THEMES} chosen={theme.value} onChoose={chooseTheme} />
      </footer>
      <LiveRegion />
    </>
  )
}

const THEMES: readonly { readonly value: Theme; readonly says: string }[] = [
  { value: 'system', says: 'As the system' },
  { value: 'light', says: 'Light' },
  { value: 'dark', says: 'Dark' },
]

/** The view with what goes before it. Each view begins with an `h1` that can take the focus. */
function View(): VNode {
  const { value: one } = shown
  const before = useRef<string | undefined>(undefined)
  const { value: now } = present
  const about = now?.title ?? now?.name ?? now?.set
  useEffect(() => {
    if (one === undefined) return
    document.title = [one.title, about, 'Ringproof'].filter((word) => word !== undefined).join(' – ')
  }, [one, about])
  useEffect(() => {
    if (one === undefined) return
    // those who listen hear where they are; whoever has just come begins at the top
    if (before.current !== undefined && before.current !== one.id) {
      focusHeading()
      scrollTo(0, 0)
    }
    before.current = one.id
  }, [one])
  const isEmpty = now === undefined
  const { value: turn } = opening
  // another document, or none: what was pressed may have gone with the one before
  useEffect(saveFocus, [isEmpty, turn])
  const word = notLoaded.value
  if (one === undefined) {
    return (
      <>
        <h1 tabIndex={-1}>Ringproof</h1>
        {word === undefined ? <Busy tells="Loading…" /> : <NotLoaded word={word} />}
      </>
    )
  }
  const { id, view: Shown } = one
  return (
    <>
      {word === undefined ? null : <NotLoaded word={word} />}
      <Leftovers />
      <Guard key={id}>
        <Shown />
      </Guard>
    </>
  )
}

function NotLoaded({ word }: { readonly word: string }): VNode {
  return (
    <Notice sort="wrong" urgent>
      <p>{word} Load the page again; your work is kept.</p>
    </Notice>
  )
}
