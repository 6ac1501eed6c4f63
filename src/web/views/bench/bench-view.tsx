/** The bench: pictures of a set, what can be done with it, and what follows at once. */
import './bench.css'
import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { Problem } from '../../../index.ts'
import { Button } from '../../kit/index.ts'
import { go, route } from '../../shell/route.ts'
import { openSheet, shelfState } from '../../state/shelf.ts'
import { present, work } from '../../state/work.ts'
import { Conditions } from './condition/conditions.tsx'
import { Flowing } from './condition/flowing.tsx'
import { MovesList } from './doing/moves-list.tsx'
import { WhatCan } from './doing/what-can.tsx'
import { MeterPanel } from './meter/meter-panel.tsx'
import { ChooseSheet } from './opening/choose-sheet.tsx'
import { readOpen } from './opening/read-open.ts'
import { WhereItStands } from './opening/where.tsx'
import { CircuitPicture, PicturesHead, TerminalsPicture } from './pictures/pictures.tsx'
import { problemsOf, watchBench } from './state/judgement.ts'
import { watchNow } from './state/now.ts'
import { Verdicts } from './verdicts/verdicts.tsx'

export function BenchView(): VNode {
  const problems = useOpening(route.value.more.open)
  useEffect(() => {
    const ends = [watchBench(), watchNow()]
    return () => {
      for (const end of ends) end()
    }
  }, [])
  const now = present.value
  if (now === undefined) return <ChooseSheet problems={problems} />
  return (
    <div class="bench">
      <header class="bench-head">
        <div>
          <h1>{now.name ?? now.set}</h1>
          {now.title === undefined ? null : <p class="bench-title">{now.title}</p>}
        </div>
        <WhereItStands />
        <Button
          says="Lay another set here"
          onPress={() => {
            work.value = undefined
            go('bench')
          }}
        />
      </header>
      <PicturesHead />
      <div class="bench-columns">
        <div class="bench-left">
          <TerminalsPicture />
          <WhatCan />
          <MovesList />
        </div>
        <div class="bench-right">
          <CircuitPicture />
          <Conditions />
          <Verdicts />
          <Flowing />
          <MeterPanel />
        </div>
      </div>
    </div>
  )
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
