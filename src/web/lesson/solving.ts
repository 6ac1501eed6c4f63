/** Solved houses for a component: of what is shown, and of what decides its question. */
import { useEffect, useState } from 'preact/hooks'
import type { HouseReading } from './rig/reading.ts'
import { solvedHouse } from './rig/solved.ts'
import { solvedStep } from './steps/solved-step.ts'
import type { Found, State, Step } from './steps/step.ts'

const problem = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** The reading of a house; while a new one is solved the old one is gone. */
export function useHouse(step: Step, state: State): { reading?: HouseReading; failed?: string } {
  const key = JSON.stringify(state)
  const [got, setGot] = useState<{ key?: string; reading?: HouseReading; failed?: string }>({})
  useEffect(() => {
    let wanted = true
    solvedHouse(step.house(state)).then(
      (reading) => wanted && setGot({ key, reading }),
      (error: unknown) => wanted && setGot({ key, failed: problem(error) }),
    )
    return () => {
      wanted = false
    }
  }, [key])
  // the last picture stays until the new one is solved, which is soon; another house would mislead
  return got.key === key ? got : {}
}

/** All houses that decide the question: solved ahead while the learner thinks, told once they are asked for. */
export function useFound(
  step: Step,
  ahead: boolean,
  wanted: boolean,
): { found?: Found; failed?: string; tells?: string } {
  const [got, setGot] = useState<{ found?: Found; failed?: string; tells?: string }>({})
  useEffect(() => {
    if (!ahead) return
    let on = true
    // what fails here fails again when it is asked for, and is told then
    solvedStep(step, () => on).catch(() => undefined)
    return () => {
      on = false
    }
  }, [ahead])
  useEffect(() => {
    if (!wanted) return
    let on = true
    const tell = (tells: string): boolean => {
      if (on) setGot({ tells })
      return true
    }
    solvedStep(step, tell).then(
      (found) => on && setGot({ found }),
      (error: unknown) => on && setGot({ failed: problem(error) }),
    )
    return () => {
      on = false
    }
  }, [wanted])
  return got
}
