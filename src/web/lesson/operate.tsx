/** The controls of a step. */
import type { VNode } from 'preact'
import { Button, Choice } from '../kit/index.ts'
import type { Control, State, Step } from './steps/step.ts'

export interface OperateProps {
  readonly step: Step
  readonly state: State
  readonly disabledBecause: string | undefined
  readonly onSet: (state: State) => void
}

export function Operate({ step, state, disabledBecause, onSet }: OperateProps): VNode {
  return (
    <>
      {step.controls.map((control) => {
        const value = state[control.id] ?? ''
        const set = (next: string): void => onSet({ ...state, [control.id]: next })
        return control.sort === 'choice' ? (
          <Choice
            key={control.id}
            says={control.says}
            options={control.options}
            chosen={value}
            disabledBecause={disabledBecause}
            onChoose={set}
          />
        ) : (
          <Count
            key={control.id}
            control={control}
            value={Number(value)}
            because={disabledBecause}
            onSet={set}
          />
        )
      })}
    </>
  )
}

interface CountProps {
  readonly control: Extract<Control, { sort: 'count' }>
  readonly value: number
  readonly because: string | undefined
  readonly onSet: (value: string) => void
}

function Count({ control, value, because, onSet }: CountProps): VNode {
  const { says, least, most } = control
  return (
    <fieldset class="choice">
      <legend>
        {says}: {value}
      </legend>
      <div class="lesson-buttons">
        <Button
          says="Add a set"
          sort="main"
          disabledBecause={because ?? (value >= most ? 'No more sets in this house' : undefined)}
          onPress={() => onSet(String(value + 1))}
        />
        <Button
          says="Take one away"
          disabledBecause={because ?? (value <= least ? 'One stays' : undefined)}
          onPress={() => onSet(String(value - 1))}
        />
      </div>
    </fieldset>
  )
}
