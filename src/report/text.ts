/** Every answer as text. */
import type {
  CheckAnswer,
  CompareAnswer,
  Envelope,
  FiguresAnswer,
  FollowAnswer,
  ListAnswer,
  SolveAnswer,
} from '../answer/answer.ts'
import type { DiagnoseAnswer } from '../answer/diagnose-answer.ts'
import type { FaultsAnswer } from '../answer/faults-answer.ts'
import type { IdentifyAnswer } from '../answer/identify-answer.ts'
import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { SpreadAnswer } from '../answer/spread-answer.ts'
import { answerName } from './heading.ts'
import { NARROWEST, type Page } from './paint.ts'
import { plugNumbers } from './plug-text.ts'
import { checkText } from './text-check.ts'
import { compareText } from './text-compare.ts'
import { diagnosisText } from './text-diagnosis.ts'
import { faultsText } from './text-fault-book.ts'
import { figuresText } from './text-figures.ts'
import { followText } from './text-follow.ts'
import { identifyText } from './text-identify.ts'
import { listText } from './text-list.ts'
import { meterText } from './text-meter.ts'
import { solveText } from './text-solve.ts'
import { spreadText } from './text-spread.ts'

export type { Page } from './paint.ts'

/** Any answer. */
export type Answer =
  | CheckAnswer
  | CompareAnswer
  | FiguresAnswer
  | SolveAnswer
  | FollowAnswer
  | ListAnswer
  | MeterAnswer
  | IdentifyAnswer
  | SpreadAnswer
  | FaultsAnswer
  | DiagnoseAnswer

const TEXTS: Readonly<Record<string, (answer: never, page: Page) => string[]>> = {
  check: checkText,
  compare: compareText,
  figures: figuresText,
  solve: solveText,
  follow: followText,
  list: listText,
  meter: meterText,
  identify: identifyText,
  spread: spreadText,
  faults: faultsText,
  diagnose: diagnosisText,
}

/**
 * An answer as a person reads it, lines of at most `page.width` columns (60 at least), the last one ended.
 * @throws TypeError for an answer of an unknown name: the programmer's error
 */
export function answerText(answer: Answer, page: Page): string {
  const text = TEXTS[answerName(answer satisfies Envelope)]
  if (text === undefined) throw new TypeError(`no text for ${answer.ringproof}`)
  const plugs = plugNumbers(answer.stands)
  const wide: Page = { ...page, width: Math.max(NARROWEST, page.width), plugs }
  return `${text(answer as never, wide).join('\n')}\n`
}
