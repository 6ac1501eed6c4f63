/** Reverse the pair, in two places. */
import { bellAt, type HouseReading } from '../rig/reading.ts'
import { milli } from '../words.ts'
import { type Found, foundOf, type Step } from './step.ts'

const bell = (found: Found, name: string): HouseReading['bells'][number] =>
  bellAt(foundOf(found, name), 'hall')

const STRAIGHT = { exchange: 'straight', plug: 'straight', others: 'none' }

const option = (value: string, says: string): { value: string; says: string } => ({ value, says })

export const REVERSED: Step = {
  id: 'reversed',
  title: 'Reverse the pair',
  text: [
    'The a wire and the b wire can be exchanged in two places: before the master socket, on the exchange side, or behind it, at the plug of one set.',
    'Speech does not mind either. People say that a telephone works either way round.',
  ],
  question: 'Where does a reversal silence the bell of a set that stands alone?',
  asks: 'one',
  choices: [
    option('exchange', 'On the exchange side only'),
    option('plug', 'At the plug only'),
    option('both', 'In either place'),
    option('neither', 'In neither place'),
  ],
  controls: [
    {
      id: 'exchange',
      sort: 'choice',
      says: 'Pair on the exchange side',
      options: [option('straight', 'Straight'), option('turned', 'Reversed')],
    },
    {
      id: 'plug',
      sort: 'choice',
      says: 'Pair at the plug of the hall set',
      options: [option('straight', 'Straight'), option('turned', 'Reversed')],
    },
    {
      id: 'others',
      sort: 'choice',
      says: 'A second set, wired rightly',
      options: [option('none', 'Not plugged in'), option('one', 'Plugged in')],
    },
  ],
  begin: STRAIGHT,
  shown: { ...STRAIGHT, plug: 'turned' },
  care: ['opening', 'ringing', 'line-side'],
  house: ({ exchange, plug, others }) => ({
    turned: exchange === 'turned',
    sets: [
      { place: 'hall', set: 'table', turned: plug === 'turned' },
      ...(others === 'one' ? [{ place: 'kitchen', set: 'table' as const }] : []),
    ],
  }),
  needs: {
    straight: STRAIGHT,
    exchange: { ...STRAIGHT, exchange: 'turned' },
    plug: { ...STRAIGHT, plug: 'turned' },
    beside: { ...STRAIGHT, plug: 'turned', others: 'one' },
  },
  answer: (found) => {
    const exchange = !bell(found, 'exchange').rings
    const plug = !bell(found, 'plug').rings
    if (exchange && plug) return 'both'
    return exchange ? 'exchange' : plug ? 'plug' : 'neither'
  },
  why: (found) => {
    const beside = foundOf(found, 'beside')
    return [
      `Straight, the bell gets ${milli(bell(found, 'straight').current)}; reversed on the exchange side ${milli(bell(found, 'exchange').current)}, since the capacitor turns with the pair. Reversed at the plug it gets ${milli(bell(found, 'plug').current)}.`,
      `Behind the socket the bell then lies between the third wire and the b wire, as the capacitor does. Both hang on the b wire, and nothing joins the third wire to the a wire but the resistor of the socket: it leaves ${milli(bell(found, 'plug').current)}, where the bell needs ${milli(bell(found, 'plug').need)}.`,
      `Beside a second set it gets ${milli(bell(found, 'beside').current)} on the current of that set. ${bell(found, 'beside').rings ? 'So it may sound right, but the line draws' : 'And the line draws'} ${milli(beside.leakage.value)} of direct current with everybody on-hook, where ${milli(beside.leakage.allowed)} are allowed.`,
    ]
  },
  learned: (found) =>
    `The pair may be reversed on the exchange side (${milli(bell(found, 'exchange').current)}); at the plug a lone bell gets ${milli(bell(found, 'plug').current)}.`,
}
