/** Texts that do not have the form that their key asks for. */
import { NAME } from '../parts/fields.ts'
import type { Problem, ProblemCode } from '../problem.ts'
import type { Raw } from './raw.ts'
import { CONDITION, DATE } from './schema-fields.ts'
import { CORE } from './schema-moves.ts'
import { STRAP_NAME } from './schema-set.ts'
import { shownAs, ticked, write, wrong } from './wording.ts'

interface Form {
  readonly code: ProblemCode
  readonly expected: string
  /** A well-formed text for the malformed one, where one is at hand. */
  readonly mended?: (text: string) => string | undefined
}

const FORMS: ReadonlyMap<string, Form> = new Map<string, Form>([
  [
    NAME.source,
    { code: 'name-malformed', expected: 'a name of lower-case letters, digits and hyphens', mended: nameOf },
  ],
  [
    CORE.source,
    { code: 'name-malformed', expected: 'a cord and its core with a dot between, such as `handset.r2`' },
  ],
  [
    STRAP_NAME.source,
    { code: 'name-malformed', expected: 'two terminals with a hyphen between, such as `B2-B3`' },
  ],
  [DATE.source, { code: 'quantity-unreadable', expected: 'a day such as `2026-11-03`' }],
  [
    CONDITION.source,
    {
      code: 'name-unknown',
      expected: 'a condition such as `on-hook`, `off-hook`, `on-hook/ringing` or `off-hook/break`',
    },
  ],
])

const END: Form = {
  code: 'name-malformed',
  expected: 'a terminal such as `A1`, or a name of lower-case letters, digits and hyphens',
}

/** The problem of a text that fails a pattern; `pattern` as zod reports it, with slashes. */
export function patternProblem(pattern: string, at: Raw): Problem {
  const form = FORMS.get(pattern.replace(/^\/|\/[a-z]*$/g, '')) ?? END
  const mended = at.shape === 'scalar' ? form.mended?.(at.text) : undefined
  return wrong(form.code, at.place, shownAs(at), form.expected, write(mended))
}

/** A malformed key of a map. */
export function malformedKey(key: string, pattern: string): Pick<Problem, 'found' | 'expected' | 'mend'> {
  const mend = pattern === NAME.source ? write(nameOf(key)) : undefined
  const expected = KEY_FORMS.get(pattern) ?? 'a name of lower-case letters, digits and hyphens'
  return { found: `the name ${ticked(key)}`, expected, ...(mend === undefined ? {} : { mend }) }
}

const KEY_FORMS: ReadonlyMap<string, string> = new Map([
  ['^[A-Z]+$', 'capital letters, such as `A`'],
  ['^[1-6]$', 'the number of a contact, 1 to 6'],
  [STRAP_NAME.source, 'two terminals with a hyphen between, such as `B2-B3`'],
])

/** `Bell Resistor` → `bell-resistor`; undefined when nothing of a name is left. */
function nameOf(text: string): string | undefined {
  if (text.length > 48) return undefined
  const made = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '')
  return NAME.test(made) && made !== text ? made : undefined
}
