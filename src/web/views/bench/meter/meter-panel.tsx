/** A meter with two leads: what it would show, in words and in numbers. */
import { type Signal, signal } from '@preact/signals'
import type { VNode } from 'preact'
import { useEffect, useId, useState } from 'preact/hooks'
import {
  type Board,
  conditionWords,
  formatQuantity,
  type MeterAnswer,
  type Problem,
} from '../../../../index.ts'
import { announce, Button, Cautions, Choice, Problems } from '../../../kit/index.ts'
import { condition, onBench, side } from '../../../state/work.ts'
import { bench } from '../../../talk/solver.ts'
import { hand, type Lead, leads, pickUp, putDown } from '../state/hand.ts'
import { board, judged, problemsOf } from '../state/judgement.ts'

const live: Signal<boolean> = signal(false)
const range: Signal<string> = signal('')
const instrument: Signal<string> = signal('')
const reading: Signal<MeterAnswer | undefined> = signal(undefined)
const wrong: Signal<readonly Problem[]> = signal([])

interface Kept {
  readonly name: string
  readonly ranges: readonly string[]
}

export function MeterPanel(): VNode {
  const [kept, setKept] = useState<readonly Kept[]>([])
  useEffect(() => {
    void Promise.all([bench.ask('list', { what: 'instruments' }), bench.ask('list', { what: 'ranges' })])
      .then(([all, ranges]) =>
        setKept(
          all.rows.map(({ instrument: name }) => ({
            name: String(name),
            ranges: ranges.rows
              .filter((row) => String(row.of).split(', ').includes(String(name)))
              .map((row) => String(row.range)),
          })),
        ),
      )
      .catch((thrown: unknown) => {
        wrong.value = problemsOf(thrown)
      })
  }, [])
  useReading()
  const here = board.value
  const inHand = kept.find(({ name }) => name === instrument.value) ?? kept[0]
  return (
    <section class="bench-meter" aria-labelledby="bench-meter-title">
      <h2 id="bench-meter-title">Meter</h2>
      {live.value ? <Cautions /> : <Cautions about={['opening']} />}
      <div class="bench-choices">
        <Choice
          says="The set is"
          options={[
            { value: 'off', says: 'unplugged, off its line' },
            { value: 'live', says: 'on its line, live' },
          ]}
          chosen={live.value ? 'live' : 'off'}
          onChoose={(value) => {
            live.value = value === 'live'
            range.value = ''
          }}
        />
        <PickRow says="Red lead" lead="red" board={here} />
        <PickRow says="Black lead" lead="black" board={here} />
        <Select
          says="Instrument"
          value={inHand?.name ?? ''}
          options={kept.map(({ name }) => [name, name] as const)}
          onChange={(value) => {
            instrument.value = value
            range.value = ''
          }}
        />
        <Select
          says="Range"
          value={range.value}
          options={[
            ['', 'as usual'],
            ...(inHand?.ranges ?? []).map((one) => [one, one.replaceAll('-', ' ')] as const),
          ]}
          onChange={(value) => {
            range.value = value
          }}
        />
      </div>
      <Problems problems={wrong.value} />
      <Shown />
    </section>
  )
}

/** Reads again whenever a lead, the wiring or the condition changes. */
function useReading(): void {
  const work = judged.value?.of
  const { red, black } = leads.value
  const asked = [work, red, black, live.value, range.value, instrument.value, condition.value, side.value]
  useEffect(() => {
    if (work === undefined || red === undefined || black === undefined) {
      reading.value = undefined
      return
    }
    void bench
      .newest('meter', 'meter', {
        bench: onBench(work),
        side: side.value,
        between: [red, black],
        condition: live.value ? condition.value : condition.value.replace(/\/(ringing|speech)$/, ''),
        ...(range.value === '' ? {} : { range: range.value }),
        ...(instrument.value === '' ? {} : { instrument: instrument.value }),
        live: live.value,
      })
      .then((answer) => {
        if (answer === undefined) return
        reading.value = answer
        wrong.value = []
        const [one] = answer.readings
        if (one !== undefined) announce(`The meter shows ${amountOf(one)}.`)
      })
      .catch((thrown: unknown) => {
        reading.value = undefined
        wrong.value = problemsOf(thrown)
      })
  }, asked)
}

type One = MeterAnswer['readings'][number]

const STATES = {
  open: 'open: no number',
  undetermined: 'nothing steady',
  'beyond-range': 'beyond the range',
  'no-convergence': 'no number',
} as const

/** A reading as its number or its word. */
function amountOf({ value, unit, state }: One): string {
  if (value === null) return state === undefined ? 'nothing' : STATES[state]
  return formatQuantity(Math.abs(value) < 1e-12 ? 0 : value, unit, 4)
}

/** What hand and ear notice beside the reading. */
function heardWords({ branch, says, loud }: One['heard'][number]): string {
  const name = branch.slice(branch.indexOf('/') + 1)
  if (says === 'scrape') return `Blow into the ${name}: the reading wavers.`
  return `The ${name} clicks as the leads touch and leave.${loud === true ? ' Keep it away from the ear.' : ''}`
}

function Shown(): VNode {
  const answer = reading.value
  const one = answer?.readings[0]
  if (answer === undefined || one === undefined) return <p class="hint">Put both leads somewhere.</p>
  const says = one.id.slice('meter.'.length).replaceAll('-', ' ')
  return (
    <div class="bench-reading" data-reading={one.value ?? one.state}>
      <p>
        The meter shows <strong>{amountOf(one)}</strong> ({says}, range {one.range.replaceAll('-', ' ')}).
      </p>
      <p class="hint">
        Red lead on {one.red}, black lead on {one.black}; {conditionWords(one.condition)}.
        {one.buzzes === undefined ? '' : one.buzzes ? ' It sounds.' : ' It does not sound.'}
        {one.floating === true ? ' Nothing fixes this voltage: it wanders.' : ''}
        {one.approximate === undefined ? '' : ` Approximate: ${one.approximate}.`}
      </p>
      {[...one.heard.map(heardWords), ...one.remarks].map((text) => (
        <p key={text}>{text}</p>
      ))}
      {answer.cautions.length === 0 ? null : (
        <ul class="bench-meter-cautions">
          {answer.cautions.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
    </div>
  )
}

interface PickProps {
  readonly says: string
  readonly lead: Lead
  readonly board: Board | undefined
}

/** Where a lead is: from a list, or taken in the hand and put into a picture. */
function PickRow({ says, lead, board: here }: PickProps): VNode {
  const isHeld = hand.value?.what === 'lead' && hand.value.lead === lead
  return (
    <div class="bench-lead">
      <Select
        says={says}
        value={leads.value[lead] ?? ''}
        options={[['', 'nowhere'], ...pointsOf(here).map((one) => [one, one] as const)]}
        onChange={(value) => {
          const { [lead]: _, ...rest } = leads.peek()
          leads.value = value === '' ? rest : { ...rest, [lead]: value }
        }}
      />
      <Button
        says={isHeld ? 'Put it down' : 'Take it'}
        label={isHeld ? `Put it down: the ${lead} lead` : `Take it: the ${lead} lead`}
        onPress={isHeld ? putDown : () => pickUp({ what: 'lead', lead })}
      />
    </div>
  )
}

/** Terminals, and the far ends of the cords' cores. */
function pointsOf(here: Board | undefined): readonly string[] {
  if (here === undefined) return []
  const terminals = here.strips.flatMap(({ terminals: all }) => all.map(({ name }) => name))
  const ends = here.cores.map(({ cord, core, endsIn }) => `${endsIn === 'plug' ? 'plug' : cord}.${core}`)
  return [...terminals, ...ends]
}

interface SelectProps {
  readonly says: string
  readonly value: string
  readonly options: readonly (readonly [value: string, says: string])[]
  readonly onChange: (value: string) => void
}

function Select({ says, value, options, onChange }: SelectProps): VNode {
  const id = useId()
  return (
    <div class="bench-chooser">
      <label for={id}>{says}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        {options.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </div>
  )
}
