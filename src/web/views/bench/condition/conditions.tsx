/** What the set and its line are doing, worked as at the set itself. */
import type { VNode } from 'preact'
import { readCondition, type WrittenCondition, writeCondition } from '../../../../index.ts'
import { announce, Cautions, Choice } from '../../../kit/index.ts'
import { condition, reversed } from '../../../state/work.ts'
import { judged } from '../state/judgement.ts'

const AT_REST: WrittenCondition = { hook: 'on-hook', dial: 'rest', key: 'up', line: 'idle' }

/** The words of the signal as what they say; at rest where they cannot be read. */
export function conditionNow(): WrittenCondition {
  return readCondition(condition.value) ?? AT_REST
}

function put(part: Partial<WrittenCondition>, says: string): void {
  condition.value = writeCondition({ ...conditionNow(), ...part })
  announce(says)
}

/** Which words the set's own contacts answer to: a set without a dial is not asked for one. */
function answersTo(word: string): boolean {
  const known = judged.value?.quick.conditions
  return known === undefined || known.some((one) => one.split('/').includes(word))
}

const HOOKS = [
  { value: 'on-hook', says: 'down' },
  { value: 'off-hook', says: 'lifted' },
] as const
const DIALS = [
  { value: 'rest', says: 'at rest' },
  { value: 'make', says: 'turned, pulse contact closed' },
  { value: 'break', says: 'turned, pulse contact open' },
] as const
const KEYS = [
  { value: 'up', says: 'up' },
  { value: 'down', says: 'pressed' },
] as const
const LINES = [
  { value: 'idle', says: 'idle' },
  { value: 'ringing', says: 'ringing arrives' },
  { value: 'speech', says: 'speech' },
] as const
const PAIRS = [
  { value: 'straight', says: 'as it stands' },
  { value: 'reversed', says: 'reversed at the plug' },
] as const

export function Conditions(): VNode {
  const { hook, dial, key, line } = conditionNow()
  return (
    <section class="bench-conditions" aria-labelledby="bench-conditions-title">
      <h2 id="bench-conditions-title">What the set is doing</h2>
      <div class="bench-choices">
        <Choice
          says="Handset"
          options={HOOKS}
          chosen={hook}
          onChoose={(value) => put({ hook: value }, `Handset ${value === 'on-hook' ? 'down' : 'lifted'}.`)}
        />
        <Choice
          says="Line"
          options={LINES}
          chosen={line}
          onChoose={(value) => put({ line: value }, `Line: ${value}.`)}
        />
        <Choice
          says="Pair"
          options={PAIRS}
          chosen={reversed.value ? 'reversed' : 'straight'}
          onChoose={(value) => {
            reversed.value = value === 'reversed'
            announce(value === 'reversed' ? 'The pair is reversed at the plug.' : 'The pair is as it stands.')
          }}
        />
        {answersTo('break') ? (
          <Choice
            says="Dial"
            options={DIALS}
            chosen={dial}
            onChoose={(value) => put({ dial: value }, `Dial: ${value}.`)}
          />
        ) : null}
        {answersTo('key') ? (
          <Choice
            says="Key"
            options={KEYS}
            chosen={key}
            onChoose={(value) => put({ key: value }, `Key ${value}.`)}
          />
        ) : null}
      </div>
      {line === 'ringing' ? <Cautions about={['ringing', 'burst', 'line-side']} /> : null}
    </section>
  )
}
