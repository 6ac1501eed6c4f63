/** The terminals and the circuit side by side, with one selection. */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { VNode } from 'preact'
import { useEffect } from 'preact/hooks'
import { drawBoard, drawCircuit, type Mark } from '../../../../index.ts'
import { Busy, Button, Choice, Picture } from '../../../kit/index.ts'
import { drawnLater } from '../../../state/after-paint.ts'
import { selected, side } from '../../../state/work.ts'
import { hand, heldWords, leads, offered, putDown } from '../state/hand.ts'
import { board } from '../state/judgement.ts'
import { now, placed } from '../state/now.ts'
import { shownPath, withoutPlace } from '../state/shown-path.ts'
import * as pointing from './pointing.ts'
import { roving } from './rove.ts'

/** Strips side by side: one where the window is narrow. */
const columns: Signal<number> = signal(3)
/** The picture that a narrow window shows. */
const picked: Signal<'terminals' | 'circuit'> = signal('terminals')

function fitColumns(): void {
  columns.value = innerWidth < 700 ? 1 : innerWidth < 2600 ? 2 : 3
}

const terminals = drawnLater(
  () => ({
    here: board.value,
    thing: selected.value,
    offered: offered.value,
    leads: leads.value,
    carries: now.value?.shown.carries ?? {},
    path: shownPath.value,
    columns: columns.value,
  }),
  ({ here, thing, path, ...options }): Mark | undefined =>
    here === undefined
      ? undefined
      : roving(
          drawBoard(here, {
            ...options,
            ...(thing === undefined ? {} : { selected: thing }),
            path: withoutPlace(path),
            live: true,
          }),
          pointing.stop.peek(),
        ),
)

const circuit = drawnLater(
  () => ({ here: placed.value, thing: selected.value, path: shownPath.value }),
  ({ here, thing, path }): Mark | undefined =>
    here === undefined
      ? undefined
      : roving(
          drawCircuit(here.circuit, here.places, {
            ...(thing === undefined ? {} : { selected: thing }),
            path,
            live: true,
          }),
          pointing.stop.peek(),
        ),
)

/** Draws both pictures whenever what they show changes, until it is ended. */
function watchPictures(): () => void {
  const ends = [terminals.watch(), circuit.watch()]
  return () => {
    for (const end of ends) end()
  }
}

/** Which side, on a narrow window which picture, and what is in the hand. */
export function PicturesHead(): VNode {
  useEffect(() => {
    fitColumns()
    addEventListener('resize', fitColumns)
    const end = watchPictures()
    return () => {
      removeEventListener('resize', fitColumns)
      end()
    }
  }, [])
  return (
    <>
      <div class="bench-picture-choices">
        <Choice
          says="Show the set"
          options={[
            { value: 'found', says: 'as found' },
            { value: 'proposed', says: 'proposed' },
          ]}
          chosen={side.value}
          onChoose={(value) => {
            hand.value = undefined
            side.value = value
          }}
        />
        <div class="bench-narrow">
          <Choice
            says="Picture"
            options={[
              { value: 'terminals', says: 'terminals' },
              { value: 'circuit', says: 'circuit' },
            ]}
            chosen={picked.value}
            onChoose={(value) => {
              picked.value = value
            }}
          />
        </div>
      </div>
      <InHand />
      <Ghost />
    </>
  )
}

export function TerminalsPicture(): VNode {
  const isHidden = picked.value !== 'terminals'
  return (
    <div class={isHidden ? 'bench-wide-only' : ''}>
      <Framed says="Terminals" name="terminals" drawn={terminals.drawn} />
      <p class="hint">
        Drag a core to a terminal, or tap the core and then the terminal. With keys: Tab to a picture, arrow
        keys from thing to thing, Enter takes up and lands, Escape puts down.
      </p>
    </div>
  )
}

export function CircuitPicture(): VNode {
  const isHidden = picked.value !== 'circuit'
  return (
    <div class={isHidden ? 'bench-circuit-box bench-wide-only' : 'bench-circuit-box'}>
      <Framed says="Circuit" name="circuit" drawn={circuit.drawn} />
    </div>
  )
}

interface FramedProps {
  readonly says: string
  readonly name: string
  readonly drawn: ReadonlySignal<Mark | undefined>
}

/** A picture with its name; only it is drawn again when it changes. */
function Framed({ says, name, drawn }: FramedProps): VNode {
  const picture = drawn.value
  return (
    <figure class={`bench-figure bench-${name}`}>
      <figcaption>{says}</figcaption>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the things in it are the buttons; the frame only listens for them */}
      <div
        class="bench-scroll"
        role="presentation"
        onPointerDown={pointing.onPointerDown}
        onPointerMove={pointing.onPointerMove}
        onPointerUp={pointing.onPointerUp}
        onPointerCancel={pointing.onPointerCancel}
        onClick={pointing.onClick}
        onKeyDown={pointing.onKeyDown}
        onFocusCapture={pointing.onFocus}
      >
        {picture === undefined ? <Busy tells="Drawing…" /> : <Picture mark={picture} />}
      </div>
    </figure>
  )
}

/** What is in the hand stands where it can be seen, with a way to put it down. */
function InHand(): VNode | null {
  const held = hand.value
  if (held === undefined) return null
  return (
    <p class="bench-hand">
      <strong>In hand: {heldWords(held)}.</strong> Choose where it goes.{' '}
      <Button says="Put it down" onPress={putDown} keys="Escape" />
    </p>
  )
}

/** The line that follows a drag. */
function Ghost(): VNode | null {
  const line = pointing.ghost.value
  if (line === undefined) return null
  const { from, to } = line
  return (
    <svg class="bench-ghost" aria-hidden="true">
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      <circle cx={to.x} cy={to.y} r="9" />
    </svg>
  )
}
