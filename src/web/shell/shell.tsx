/** The frame of every view: its name, the menu, and what is being shown. */
import { type Signal, signal } from '@preact/signals'
import type { ComponentType, VNode } from 'preact'
import { useEffect } from 'preact/hooks'
import { go, route } from './route.ts'
import { VIEWS } from './views.ts'

const shown: Signal<{ readonly id: string; readonly view: ComponentType } | undefined> = signal(undefined)

export function Shell(): VNode {
  const { view } = route.value
  useEffect(() => {
    const one = VIEWS.find(({ id }) => id === view) ?? VIEWS[0]
    void one?.load().then((loaded) => {
      shown.value = { id: one.id, view: loaded }
    })
  }, [view])
  const Shown = shown.value?.view
  return (
    <>
      <header class="top">
        <p class="name">Ringproof</p>
        <nav aria-label="Views">
          {VIEWS.map(({ id, title }) => (
            <button
              key={id}
              type="button"
              aria-current={id === shown.value?.id ? 'page' : undefined}
              onClick={() => go(id)}
            >
              {title}
            </button>
          ))}
        </nav>
      </header>
      <main>{Shown === undefined ? <p>Loading…</p> : <Shown />}</main>
    </>
  )
}
