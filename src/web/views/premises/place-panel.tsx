/** One set in its place: its handset lifted, its pair reversed, and what it gets then; or onto the bench with it. */
import type { VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { type Figure, type Problem, type StandingPlace, shortId } from '../../../index.ts'
import { Busy, Button, Choice, FigureTable, Problems } from '../../kit/index.ts'
import { AskedWrong } from '../../talk/ask.ts'
import type { OnBench } from '../../talk/protocol.ts'
import { bench } from '../../talk/solver.ts'

export interface PlacePanelProps {
  readonly premises: string
  readonly one: StandingPlace
  /** The set with its moves that stands in this place just now. */
  readonly lies: OnBench | undefined
  readonly onOpen: () => void
}

const CONDITIONS = [
  { value: 'on-hook', says: 'Handset down' },
  { value: 'off-hook', says: 'Handset up' },
  { value: 'on-hook/ringing', says: 'It rings' },
] as const
type Doing = (typeof CONDITIONS)[number]['value']

/** So many figures stand open. */
const SHOWN = 8

export function PlacePanel({ premises, one, lies, onOpen }: PlacePanelProps): VNode {
  const [doing, setDoing] = useState<Doing>('on-hook')
  const [isTurned, setTurned] = useState(false)
  const [figures, setFigures] = useState<readonly Figure[] | undefined>(undefined)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const { place } = one
  useEffect(() => {
    let isHere = true
    setFigures(undefined)
    setProblems([])
    figuresOf(premises, place, lies, doing, isTurned).then(
      (came) => {
        if (isHere) setFigures(came)
      },
      (error: unknown) => {
        if (isHere) setProblems(error instanceof AskedWrong ? error.problems : [])
        if (isHere) setFigures([])
      },
    )
    return () => {
      isHere = false
    }
  }, [premises, place, lies, doing, isTurned])
  return (
    <div class="place-panel">
      <p>
        {one.rewire ?? one.set}, {one.socket === null ? 'in no socket' : `in the socket ${one.socket}`}
        {one.reversed ? ', its pair reversed as its sheet says' : ''}
        {lies === undefined ? '' : '. It lies on the bench and stands here with the moves made there'}
      </p>
      <div class="switches">
        <Choice says={`What ${place} does`} options={CONDITIONS} chosen={doing} onChoose={setDoing} />
        <Button
          says="Pair turned over"
          label={`Pair turned over where ${place} is plugged in`}
          pressed={isTurned}
          onPress={() => setTurned(!isTurned)}
        />
        <Button sort="main" says={`Put ${place} on the bench`} onPress={onOpen} />
      </div>
      {figures === undefined ? <Busy /> : null}
      <Problems problems={problems} />
      {figures === undefined || figures.length === 0 ? null : (
        <>
          <FigureTable
            says={`${place} so, all other handsets as the premises say`}
            figures={figures.slice(0, SHOWN).map((figure) => here(figure, place))}
          />
          {figures.length <= SHOWN ? null : (
            <details class="folded">
              <summary>{figures.length - SHOWN} more figures</summary>
              <FigureTable
                says={`More of ${place}`}
                figures={figures.slice(SHOWN).map((figure) => here(figure, place))}
              />
            </details>
          )}
        </>
      )}
    </div>
  )
}

function here(figure: Figure, place: string): Figure {
  return { ...figure, subject: shortId(figure.subject, place) }
}

/** What the set is and does there, asked of the worker. */
async function figuresOf(
  premises: string,
  place: string,
  lies: OnBench | undefined,
  doing: Doing,
  reversed: boolean,
): Promise<readonly Figure[]> {
  const stands = lies ?? (await standing(premises, place))
  const { figures } = await bench.ask('now', { bench: stands, side: 'proposed', condition: doing, reversed })
  return figures
}

async function standing(premises: string, place: string): Promise<OnBench> {
  const { set, moves, on, at } = await bench.ask('open', { sheet: 'premises', name: premises, at: place })
  return { set, moves, on: on ?? premises, at: at ?? place }
}
