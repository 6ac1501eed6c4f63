/** The bench: pictures of a set, what can be done with it, and what follows at once. */
import './bench.css'
import './print.css'
import type { VNode } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Problem } from '../../../index.ts'
import { focusHeading } from '../../shell/focus.ts'
import { go, route } from '../../shell/route.ts'
import { openSheet, shelfState } from '../../state/shelf.ts'
import { opening, present } from '../../state/work.ts'
import { Conditions } from './condition/conditions.tsx'
import { Flowing } from './condition/flowing.tsx'
import { MovesList } from './doing/moves-list.tsx'
import { WhatCan } from './doing/what-can.tsx'
import { keepFocus } from './keys/keep-focus.ts'
import { putDownByKey } from './keys/put-down-key.ts'
import { tellSteps } from './keys/tell-steps.ts'
import { MeterPanel } from './meter/meter-panel.tsx'
import { BenchHead } from './opening/bench-head.tsx'
import { ChooseSheet } from './opening/choose-sheet.tsx'
import { readOpen } from './opening/read-open.ts'
import { narrow } from './pictures/narrow.ts'
import { CircuitPicture, PicturesHead, TerminalsPicture } from './pictures/pictures.tsx'
import { Sized } from './pictures/sized.tsx'
import { watchAhead } from './state/ahead.ts'
import { problemsOf, watchBench } from './state/judgement.ts'
import { watchNow } from './state/now.ts'
import { watchShownPath } from './state/shown-path.ts'
import { openForPrint } from './verdicts/opened-for-print.ts'
import { Verdicts } from './verdicts/verdicts.tsx'

/** The smallest letters of the pictures, in their own units. */
const BOARD_LETTERS = 13
const CIRCUIT_LETTERS = 12

export function BenchView(): VNode {
  const problems = useOpening(route.value.more.open)
  useEffect(() => {
    const ends = [
      watchBench(),
      watchNow(),
      watchAhead(),
      watchShownPath(),
      openForPrint(),
      putDownByKey(),
      tellSteps(),
    ]
    return () => {
      for (const end of ends) end()
    }
  }, [])
  useTop(opening.value)
  const box = useRef<HTMLDivElement>(null)
  const now = present.value
  const isEmpty = now === undefined
  useEffect(() => {
    if (box.current !== null) return keepFocus(box.current)
    return undefined
  }, [isEmpty])
  if (now === undefined) return <ChooseSheet problems={problems} />
  const isNarrow = narrow.value
  const circuit = (
    <Sized key="circuit" says="Circuit" letters={CIRCUIT_LETTERS}>
      <CircuitPicture />
    </Sized>
  )
  return (
    <div class="bench" ref={box}>
      <BenchHead now={now} />
      <PicturesHead />
      {isNarrow ? circuit : null}
      <div class="bench-columns">
        <div class="bench-left">
          <Sized says="Terminals" letters={BOARD_LETTERS}>
            <TerminalsPicture />
          </Sized>
        </div>
        <div class="bench-right">
          {isNarrow ? null : circuit}
          <Conditions />
          <Verdicts />
          <WhatCan />
          <MovesList />
        </div>
      </div>
      <div class="bench-measures">
        <Flowing />
        <MeterPanel />
      </div>
    </div>
  )
}

/** Another document is looked at from its top. */
function useTop(turn: number): void {
  const before = useRef(turn)
  useEffect(() => {
    if (before.current === turn) return
    before.current = turn
    scrollTo(0, 0)
    // whoever has pressed nothing yet begins at the top of the page
    if (navigator.userActivation?.hasBeenActive !== false) focusHeading()
  }, [turn])
}

/** Opens what the fragment names, once for each name, as soon as the sheets are there. */
function useOpening(asked: string | undefined): readonly Problem[] {
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const isReady = shelfState.value === 'ready'
  useEffect(() => {
    if (asked === undefined || !isReady) return
    const meant = readOpen(asked)
    if (meant === undefined) {
      setProblems([
        {
          code: 'request-wrong',
          severity: 'error',
          found: `\`open=${asked}\``,
          expected: '`set`, `rewire` or `premises`, a stroke, and a name',
        },
      ])
      return
    }
    openSheet(meant.sort, meant.name)
      .then((wrong) => {
        setProblems(wrong)
        // what lies on the bench from now on is not what the address named
        if (wrong.length === 0) go('bench')
      })
      .catch((thrown: unknown) => setProblems(problemsOf(thrown)))
  }, [asked, isReady])
  return problems
}
