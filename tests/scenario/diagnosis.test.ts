/** "It rings, but one cannot talk", on two demo sets: each fault by its own way. */
import { beforeAll, describe, expect, test } from 'vitest'
import { jsonOf, ringproof } from '../faces/ringproof.ts'
import { diagnosing, follow, means, written } from '../support/diagnosing.ts'

const COMPLAINT = 'rings-but-no-speech'
const FIRST = ['stops-ringing', 'tone', 'heard']

describe.each(['sedge', 'fescue'])('%s in the workshop', (target) => {
  let one: Awaited<ReturnType<typeof diagnosing>>
  beforeAll(async () => {
    one = await diagnosing({ target, symptoms: [COMPLAINT] })
  }, 120_000)

  const answers = (asked: readonly string[]): string[] =>
    asked.slice(0, 3).map((line) => line.split(': ')[1] ?? '')
  /** The way, and the group that it ends with. */
  const endOf = (fault: string) => {
    const { asked, state } = follow(one, fault)
    const result = one.diagnosis.result(state)
    const ids = result.groups[0]?.causes.flatMap(({ faults }) => faults) ?? []
    expect(asked.slice(0, 3).map((line) => line.split(':')[0])).toEqual(FIRST)
    expect(result.decided).toBe('sure')
    expect(result.groups[0]?.probability).toBeGreaterThan(0.95)
    expect(ids).toContain(fault)
    return { asked, result }
  }

  test('a receiver core one terminal off: it trips, is heard, and hears nothing', () => {
    const wrong = one.book.faults.filter(({ id }) => /\/handset\.r2 one-off B[34]$/.test(id))
    expect(wrong).toHaveLength(1)
    const { asked } = endOf(wrong[0]?.id ?? '')
    expect(answers(asked)).toEqual(['stops', 'none', 'well'])
  })

  test('receiver cores that touch: the same first answers, another end', () => {
    expect(answers(endOf(`${target}/handset.r1+handset.r2 touching`).asked)).toEqual([
      'stops',
      'none',
      'well',
    ])
  })

  test('a shorted transmitter: it trips, hears, and is not heard', () => {
    const { asked } = endOf(`${target}/transmitter shorted`)
    expect(answers(asked)).toEqual(['stops', 'clear', 'no'])
  })

  test('a packed transmitter: it trips, and is hardly heard', () => {
    const { asked } = endOf(`${target}/transmitter packed`)
    expect(asked[0]).toBe('stops-ringing: stops')
    expect(asked[2]).toBe('heard: faint')
  })

  test('an open transmitter core: not heard, and the way differs from all the others', () => {
    const { asked } = endOf(`${target}/handset.t1 open`)
    expect(asked[2]).toBe('heard: no')
    expect(answers(asked)).not.toEqual(['stops', 'clear', 'no'])
  })

  test('nothing is asked on a live line without its cautions, and no inside reading without its own', () => {
    for (const fault of one.book.faults.filter((_, k) => k % 20 === 0)) {
      let state = one.diagnosis.begin
      for (let n = 0; n < 20; n++) {
        const question = one.diagnosis.next(state)
        if (question === undefined) break
        if (question.live) expect(question.cautions.join(' ')).toMatch(/insulated leads/)
        if (question.site !== 'in-use') expect(question.cautions.join(' ')).toMatch(/[Uu]nplug/)
        const line = written(one.book, fault.id, question.test)
        state =
          line === undefined
            ? one.diagnosis.skip(state, question.test)
            : one.diagnosis.answer(state, question.test, line)
      }
    }
  }, 60_000)
})

describe('an open transmitter core in sedge', () => {
  test('never trips the ringing, and there is no tone', async () => {
    const one = await diagnosing({ target: 'sedge', symptoms: [COMPLAINT] })
    expect(follow(one, 'sedge/handset.t1 open').asked.slice(0, 3)).toEqual([
      'stops-ringing: no',
      'tone: none',
      'heard: no',
    ])
  })
})

describe('where there is no tone', () => {
  test('nobody is asked whether it goes away, with the case open or shut', async () => {
    for (const inside of [true, false]) {
      const one = await diagnosing({ target: 'sedge', symptoms: [COMPLAINT], inside })
      for (const fault of ['handset.t1 open', 'handset.r1 open', 'receiver open']) {
        const { asked } = follow(one, `sedge/${fault}`)
        expect(asked).toContain('tone: none')
        expect(asked.filter((line) => line.startsWith('dial-breaks'))).toEqual([])
      }
    }
  }, 60_000)
})

describe('the command', () => {
  const lines = (...all: readonly string[]) => {
    const left = [...all]
    return { books: () => means, ask: () => Promise.resolve(left.shift()) }
  }
  const DIAGNOSE = ['diagnose', 'sedge', '--symptom', COMPLAINT] as const

  test('asks line by line, explains, takes back, and says what it is and what mends it', async () => {
    const one = await diagnosing({ target: 'sedge', symptoms: [COMPLAINT] })
    const way = follow(one, 'sedge/handset.r1+handset.r2 touching').asked.map(
      (line) => line.split(': ')[1] ?? '',
    )
    const { code, out, err } = await ringproof(
      [...DIAGNOSE, '--ask'],
      lines('?', 'nonsense', ...way.slice(0, 2), 'back', ...way.slice(1)),
    )
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(out).toMatch(/it points at/)
    expect(out).toMatch(/Not understood: the answer `nonsense`/)
    expect(out).toMatch(
      /It is, by what was found out:\n +9\d\.\d % {2}(\d+ causes[^\n]*\n +1 +)?.*(touch|shorted)/,
    )
    expect(out).toMatch(/mend/)
    expect(out).toMatch(/Caution: Unplug/)
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  }, 60_000)

  test('ends calmly where the input ends, and where a person stops', async () => {
    for (const io of [lines(), lines('end'), lines('back', 'skip', '', 'STOP')]) {
      const { code, out } = await ringproof([...DIAGNOSE, '--ask'], io)
      expect(code).toBe(0)
      expect(out).toMatch(/It is not decided yet/)
    }
  }, 60_000)

  test('takes yes and no, says what they were taken for and how far it is, and `stop` as an answer', async () => {
    const { code, out } = await ringproof(
      [...DIAGNOSE, '--ask'],
      lines('YES', 'b', 'stop', 'No', 'perhaps', 'Well', 'end'),
    )
    expect(code).toBe(0)
    expect(out).toMatch(/Question 1: Does the ringing stop/)
    expect(out.match(/noted: it stops\nso far: .*, \d+ %/g)).toHaveLength(2)
    expect(out).toMatch(/noted: none\nso far: /)
    expect(out.replace(/\s+/g, ' ')).toMatch(/Not understood: the answer `perhaps`\. .*`\?` explains/)
    expect(out).not.toMatch(/request-wrong|1 problem/)
    expect(out.match(/Question \d/g)?.slice(-1)).toEqual(['Question 4'])
    // what stood at the beginning is not said again at the end
    expect(out.match(/Caution: /g)).toHaveLength(1)
  }, 60_000)

  test('a bare number is ohms where ohms were asked for; a comma is told', async () => {
    const { out } = await ringproof(
      [...DIAGNOSE, '--ask'],
      lines('stops', 'none', 'well', 'none', '0,2 Ω', '150', 'end'),
    )
    expect(out.replace(/\s+/g, ' ')).toMatch(/Write `0\.2 Ω`, with a point, not a comma/)
    expect(out).toMatch(/noted: 150 Ω\nso far: /)
  }, 60_000)

  test('a reading that fits nothing is said to be none of the causes, with what to do', async () => {
    const { out } = await ringproof(
      [
        'diagnose',
        'sedge',
        '--reading',
        'plug.a plug.b off-hook 1234 Ω',
        '--observed',
        'tone=clear',
        '--reading',
        'handset.r1 handset.r2 on-hook 66 kΩ',
      ],
      lines(),
    )
    expect(out).toMatch(/No cause that is known fits well:\n +\d\d\.\d % {2}none of these\n[^:]*--pairs/)
  }, 60_000)

  test('two values of one reading: the later counts, and that is said', async () => {
    const READ = 'plug.a plug.b off-hook'
    const { out, err } = await ringproof(
      ['diagnose', 'sedge', '--reading', `${READ} 450 Ω`, '--reading', `${READ} 460 Ω`],
      lines(),
    )
    expect(err.replace(/\s+/g, ' ')).toMatch(/with two values, expected one value each; the later one counts/)
    expect(out).toMatch(/460 Ω/)
  }, 60_000)

  test('says what one may begin with where nothing was told, and only there', async () => {
    const { out } = await ringproof(['diagnose', 'sedge'], lines())
    expect(out).toMatch(/You have told nothing yet\..*--symptom/)
    expect(out).toMatch(/^ {2}bell-silent +the bell is silent$/m)
    expect((await ringproof(DIAGNOSE, lines())).out).not.toMatch(/told nothing/)
  }, 60_000)

  test('names the set that stands at the place that was meant', async () => {
    const { code, err } = await ringproof(['diagnose', 'station-house', '--at', 'kitchen'], lines())
    expect(code).toBe(2)
    expect(err.replace(/\s+/g, ' ')).toMatch(
      /name the set that stands there: `\S+ --on station-house --at kitchen`/,
    )
  })

  test('asks by itself only where a person sits, and nothing decides yet', async () => {
    const asked = await ringproof(DIAGNOSE, { ...lines('end'), person: true })
    expect(asked.out).toMatch(/Answer each question/)
    const plain = await ringproof(DIAGNOSE, lines())
    expect(plain.out).not.toMatch(/Answer each question/)
    expect(plain.out).toMatch(/Find out next: Does the ringing stop/)
  }, 60_000)

  test('answers at once as JSON of its shape, questions aside', async () => {
    const ran = await ringproof(
      [
        ...[
          ...DIAGNOSE,
          '--observed',
          'stops-ringing=stops',
          '--observed',
          'tone=none',
          '--observed',
          'heard=well',
        ],
        ...[
          '--reading',
          'handset.r1 handset.r2 on-hook 0.01 Ω',
          '--reading',
          'handset.r1 handset.r2 cord-off open',
        ],
        ...['--no-live', '--outside', '--json', '--ask'],
      ],
      lines('end'),
    )
    const { wrong } = jsonOf(ran)
    expect(wrong).toEqual([])
    const data = JSON.parse(ran.out)
    expect(data.request).toMatchObject({ live: false, inside: false })
    expect(data.evidence).toHaveLength(7)
    expect(ran.err).toMatch(/Answer each question/)
  }, 60_000)

  test.each([
    [['--symptom', 'rings-but-no-speach'], /perhaps `rings-but-no-speech`/],
    [['--observed', 'tone=purple'], /one of none, faint, clear/],
    [['--observed', 'colour=red'], /the question `colour`/],
    [['--reading', 'plug.b plug.a off-hook 3 Ω'], /the other way/],
    [['--reading', 'plug.a plug.b off-hook 3 A'], /210 Ω/],
    [['--reading', 'plug.a plug.b off-hook'], /no value behind/],
    [['--reading', 'plug.a plug.z off-hook 3 Ω'], /the point `plug.z` .* perhaps `plug.[ab]`/],
    [['--reading', 'plug.a plug.b offhook 3 Ω'], /the condition `offhook` .* perhaps `off-hook`/],
    [['--reading', 'plug.a handset.r1 off-hook 3 Ω'], /does not read that pair so.*handset.r1 on-hook/],
    [['--symptom', 'bell-silent', '--observed', 'rings=rings'], /contradict each other about `rings`/],
    [['--observed', 'tone'], /one of none, faint, clear/],
    [['--symptom', 'others-affected'], /of this set one may complain: rings-but-no-speech/],
    [['--ask'], /where nobody can be asked/],
  ])(
    'refuses %j with what would be right',
    async (more, says) => {
      const { code, out, err } = await ringproof(['diagnose', 'sedge', ...more], { books: () => means })
      expect({ code, out }).toEqual({ code: 2, out: '' })
      expect(err.replace(/\s+/g, ' ')).toMatch(says)
    },
    60_000,
  )
})
