/** The head of the page: its name, the document and whether it is kept, undo and redo, the menu of views. */
import { useSignal } from '@preact/signals'
import type { VNode } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { isNoting } from '../keep/unsaved.ts'
import { Button, StateMark } from '../kit/index.ts'
import { stepsBack, stepsForward } from '../state/history.ts'
import { tally } from '../state/tally.ts'
import { isKept, present, redo, undo, work } from '../state/work.ts'
import { shown } from './shown.ts'
import { VIEWS } from './views.ts'

export function Header(): VNode {
  const isOpen = useSignal(false)
  const box = useRef<HTMLElement>(null)
  const current = shown.value?.id
  useEffect(() => {
    // a view was chosen: the menu has done its work
    isOpen.value = false
  }, [current])
  useEffect(() => {
    const fold = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || !isOpen.value) return
      isOpen.value = false
      box.current?.querySelector<HTMLElement>('.menu-opener button')?.focus()
    }
    box.current?.addEventListener('keydown', fold)
    return () => box.current?.removeEventListener('keydown', fold)
  }, [])
  return (
    <header class="top" ref={box}>
      <p class="name">Ringproof</p>
      <Document />
      <Steps />
      <div class="menu-opener">
        <Button
          says="Menu"
          controls="menu"
          expanded={isOpen.value}
          onPress={() => (isOpen.value = !isOpen.value)}
        />
      </div>
      <nav class={isOpen.value ? 'menu open' : 'menu'} id="menu" aria-label="Views">
        <ul>
          {VIEWS.map(({ id, title }) => (
            <li key={id}>
              <a
                href={`#view=${id}`}
                aria-current={id === current ? 'page' : undefined}
                onClick={() => {
                  isOpen.value = false
                }}
              >
                {title}
              </a>
            </li>
          ))}
        </ul>
      </nav>
    </header>
  )
}

/** What lies on the bench, and whether it would be lost. */
function Document(): VNode {
  const { value: now } = present
  if (now === undefined) return <p class="document">Nothing on the bench yet</p>
  const { name = now.set, title } = now
  return (
    <p class="document">
      <span class="document-name" title={title === undefined ? name : `${name}: ${title}`}>
        <strong>{name}</strong> {title === undefined ? null : <span class="document-title">{title}</span>}
      </span>
      <span class={isKept.value ? 'kept' : 'kept not'}>{keptWord(now.file)}</span>
      <Tally />
    </p>
  )
}

/** What the newest move comes to is in view wherever the page is scrolled to. */
function Tally(): VNode | null {
  const { value: counts } = tally
  if (counts === undefined) return null
  return (
    <span class="tally">
      <StateMark state="fails" bare /> {counts.fails} {counts.fails === 1 ? 'fails' : 'fail'},{' '}
      <StateMark state="marginal" bare /> {counts.marginal} marginal
    </span>
  )
}

function keptWord(file: string | undefined): string {
  if (isKept.value) return file === undefined ? 'as found' : 'saved'
  return isNoting.value
    ? 'not saved yet; this browser remembers it'
    : 'not saved; it is lost when the page is closed'
}

function Steps(): VNode {
  const { value: history } = work
  const back = history === undefined ? 0 : stepsBack(history)
  const forward = history === undefined ? 0 : stepsForward(history)
  return (
    <fieldset class="tools" aria-label="Steps">
      <Button
        says="Undo"
        keys="Control+Z"
        onPress={undo}
        disabledBecause={back === 0 ? 'There is no step to take back.' : undefined}
      />
      <Button
        says="Redo"
        keys="Control+Shift+Z"
        onPress={redo}
        disabledBecause={forward === 0 ? 'No step has been taken back.' : undefined}
      />
    </fieldset>
  )
}
