/** What people complain of, in their own words, and which answers of which tests that is. */
import type { BenchTest } from '../bench-test.ts'

/** A complaint. It says all of its answers, and rules out no other test. */
export interface Complaint {
  /** Part of the interface: fixed once. */
  readonly id: string
  readonly says: string
  /** Each test with the answers that agree with the complaint. */
  readonly answers: readonly { readonly test: string; readonly answers: readonly string[] }[]
}

const complaint = (id: string, says: string, ...answers: readonly (readonly string[])[]): Complaint => ({
  id,
  says,
  answers: answers.map(([test = '', ...those]) => ({ test, answers: those })),
})

/** All of them. A disjunction is a test of its own: `talk` fails where one way of speech fails or both. */
export const COMPLAINTS: readonly Complaint[] = Object.freeze([
  complaint(
    'rings-but-no-speech',
    'it rings, but one cannot talk',
    ['rings', 'rings', 'weak'],
    ['talk', 'no'],
  ),
  complaint('bell-silent', 'the bell is silent', ['rings', 'silent']),
  complaint('bell-weak', 'the bell rings weakly', ['rings', 'weak']),
  complaint(
    'rings-only-beside-another',
    'it rings only while another telephone is plugged in',
    ['rings', 'rings', 'weak'],
    ['rings-alone', 'silent'],
  ),
  complaint('ringing-not-stopped', 'it goes on ringing after lifting', ['stops-ringing', 'no']),
  complaint('drops-when-ringing', 'calls break off in the first ring', ['goes-on-ringing', 'drops']),
  complaint('no-dial-tone', 'there is no dial tone', ['tone', 'none']),
  complaint('cannot-be-heard', 'the far end hears nothing, or hardly anything', ['heard', 'no', 'faint']),
  complaint('hears-nothing', 'nothing is heard in the receiver', ['hears', 'no']),
  complaint('faint-both-ways', 'speech is faint both ways', ['heard', 'faint'], ['hears', 'faint']),
  complaint('loud-sidetone', 'the own voice is too loud in the receiver', ['own-voice', 'loud']),
  complaint('always-busy', 'callers always find the line engaged', ['engaged', 'engaged']),
  complaint('others-affected', 'other telephones fail while this one is plugged in', ['others', 'affected']),
  complaint('one-way-round-only', 'it works one way round only', ['either-way', 'one-way']),
  complaint(
    'dialling-without-effect',
    'dialling does not break the tone',
    ['tone', 'faint', 'clear'],
    ['dial-breaks', 'stays'],
  ),
  complaint('clicks-while-dialling', 'the receiver clicks loudly while the dial turns', [
    'dial-mutes',
    'clicks',
  ]),
])

/** The complaints that can be answered by these tests; others have no meaning where the set stands. */
export function complaintsFor(tests: readonly Pick<BenchTest, 'id'>[]): readonly Complaint[] {
  const known = new Set(tests.map(({ id }) => id))
  return COMPLAINTS.filter(({ answers }) => answers.every(({ test }) => known.has(test)))
}
