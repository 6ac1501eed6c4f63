/** Premises: which sockets feed which, what stands in them, who rings and who starves, and what the line bears. */
import '../diagnosis/diagnosis.css'
import './premises.css'
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { VNode } from 'preact'
import { useEffect } from 'preact/hooks'
import type { CheckAnswer, Problem, Stands } from '../../../index.ts'
import { Busy, Cautions, Notice, Problems } from '../../kit/index.ts'
import { go, route } from '../../shell/route.ts'
import { shelf } from '../../state/shelf.ts'
import { onBench, present } from '../../state/work.ts'
import { AskedWrong } from '../../talk/ask.ts'
import type { OnBench, ShelfRow } from '../../talk/protocol.ts'
import { bench } from '../../talk/solver.ts'
import { PlacePanel } from './place-panel.tsx'
import { putOnBench } from './put-on-bench.ts'
import { Line, Rings } from './rings.tsx'
import { Sockets } from './sockets.tsx'
import { Verdicts } from './verdicts.tsx'

const chosen: Signal<string | undefined> = signal(undefined)
const place: Signal<string | undefined> = signal(undefined)
const judged: Signal<CheckAnswer | undefined> = signal(undefined)
const problems: Signal<readonly Problem[]> = signal([])
const broke: Signal<string | undefined> = signal(undefined)
const waits: Signal<boolean> = signal(false)

/** What lies on the bench, where it stands on these premises. */
function standingThere(name: string | undefined): OnBench | undefined {
  const lies = present.value
  return lies === undefined || name === undefined || lies.on !== name ? undefined : onBench(lies)
}

/** Premises within reach; one's own come first and stand for the demo's of the same name. */
const within: ReadonlySignal<readonly ShelfRow[]> = computed(() => {
  const all = shelf.value.filter(({ sheet }) => sheet === 'premises')
  return all.filter((one, k) => all.findIndex(({ name }) => name === one.name) === k)
})

/** What the address names: `#view=premises&name=station-house`. */
const asked: ReadonlySignal<string | undefined> = computed(() =>
  route.value.view === 'premises' ? route.value.more.name : undefined,
)

/** Those that are shown: those that the address names, or the chosen ones, or where the bench stands, or the first. */
const shownName: ReadonlySignal<string | undefined> = computed(() => {
  const names = within.value.map(({ name }) => name)
  return [asked.value, chosen.value, present.value?.on, names[0]].find(
    (one) => one !== undefined && names.includes(one),
  )
})

async function judge(name: string, lies: OnBench | undefined): Promise<void> {
  waits.value = true
  try {
    const ask = { name, ...(lies === undefined ? {} : { bench: lies }) }
    const answer = await bench.newest('premises', 'premises', ask)
    if (answer === undefined) return
    judged.value = answer
    problems.value = []
    broke.value = undefined
  } catch (error) {
    judged.value = undefined
    if (error instanceof AskedWrong) problems.value = error.problems
    else broke.value = error instanceof Error ? error.message : String(error)
  }
  waits.value = false
}

export function PremisesView(): VNode {
  const name = shownName.value
  const lies = standingThere(name)
  useEffect(() => {
    if (name !== undefined) void judge(name, lies)
  }, [name, present.value, shelf.value])
  const called = asked.value
  useEffect(() => {
    if (called === undefined) return
    // the view is left and come back to by a link without the name
    chosen.value = called
    place.value = undefined
  }, [called])
  const answer = judged.value
  const stands = answer?.stands
  return (
    <div class="premises">
      <h1 tabIndex={-1}>Premises</h1>
      <div class="field">
        <label for="premises-name">Which premises</label>
        <select
          id="premises-name"
          value={name}
          onChange={(event) => {
            const { value } = event.currentTarget
            place.value = undefined
            chosen.value = value
            go('premises', { name: value })
          }}
        >
          {within.value.map((one) => (
            <option key={one.name} value={one.name}>
              {one.title === undefined ? one.name : `${one.name}: ${one.title}`}
            </option>
          ))}
        </select>
      </div>
      {called === undefined || name === undefined || called === name ? null : (
        <Notice title={`No premises called ${called} are within reach`}>
          <p>The sheet may have another name, or be taken away. These are shown instead.</p>
        </Notice>
      )}
      {waits.value ? <Busy tells="Judging every set on the line…" /> : null}
      <Problems problems={problems.value} />
      {broke.value === undefined ? null : (
        <Notice sort="wrong" title="Something of ours broke" urgent>
          <p>{broke.value}</p>
        </Notice>
      )}
      {answer === undefined || stands === undefined || name === undefined ? null : (
        <Judged answer={answer} stands={stands} name={name} lies={lies} />
      )}
    </div>
  )
}

interface JudgedProps {
  readonly answer: CheckAnswer
  readonly stands: Stands
  readonly name: string
  readonly lies: OnBench | undefined
}

function Judged({ answer, stands, name, lies }: JudgedProps): VNode {
  const one = stands.sets.find((set) => set.place === place.value)
  const { counts } = answer
  return (
    <>
      <p class="lead" aria-live="polite">
        {stands.sets.length} {stands.sets.length === 1 ? 'set' : 'sets'}
        {stands.line === null ? ', on no line' : ` on the line ${stands.line}`}: {counts.fails} fail,{' '}
        {counts.marginal} marginal, {counts.unknown} unknown, {counts.holds} hold
        {lies === undefined
          ? ''
          : `. The set on the bench stands at ${lies.at ?? 'its place'}, with its moves`}
      </p>
      <div class="two">
        <div>
          <Sockets
            stands={stands}
            chosen={place.value}
            onChoose={(next) => {
              place.value = place.value === next ? undefined : next
            }}
          />
          <section class="chosen" aria-live="polite" aria-label="The set that is chosen">
            {one === undefined ? (
              <p class="soft">
                Choose a set above to lift its handset, to reverse its pair, or to put it on the bench.
              </p>
            ) : (
              <PlacePanel
                key={`${name} ${one.place}`}
                premises={name}
                one={one}
                lies={lies?.at === one.place ? lies : undefined}
                onOpen={() => {
                  void putOnBench('premises', name, one.place).then((wrong) => {
                    problems.value = wrong
                  })
                }}
              />
            )}
          </section>
        </div>
        <div>
          <Rings answer={answer} stands={stands} />
          <Line answer={answer} stands={stands} />
        </div>
      </div>
      <Verdicts answer={answer} stands={stands} />
      <Cautions />
    </>
  )
}
