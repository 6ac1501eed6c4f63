/** What the schemas of premises cannot see. */
import type { Checker } from './checker.ts'
import { entriesOf, type Raw, textOf, under } from './raw.ts'
import { ticked } from './wording.ts'

/** Names of sheets, names of sockets, and no socket that feeds itself by way of others. */
export function checkPremises(check: Checker): void {
  const sockets = entriesOf(under(check.root, 'sockets'))
  check.onShelf(under(check.root, 'line'), 'line')
  const entry = check.root.entries.get('sockets')
  if (entry !== undefined && sockets.size === 0) {
    check.report(
      'key-missing',
      entry.place,
      'no socket',
      'at least one socket that `is: master` or `is: outlet`',
    )
  }
  for (const { value } of sockets.values()) check.known(under(value, 'fed from'), sockets.keys(), 'socket')
  checkFeeding(check)
  checkLeads(check)
  checkAdapters(check)
  for (const map of ['sockets', 'sets']) {
    for (const [name, { place }] of entriesOf(under(check.root, map))) {
      if (name !== 'exchange' && name !== 'earth') continue
      check.report(
        'name-malformed',
        place,
        `the name ${ticked(name)}`,
        'a name that the line itself does not use',
        'choose another name',
      )
    }
  }
  for (const { value } of entriesOf(under(check.root, 'sets')).values()) {
    check.onShelf(under(value, 'set'), 'set')
    check.onShelf(under(value, 'rewire'), 'rewire')
    check.known(under(value, 'in'), sockets.keys(), 'socket')
    checkCondition(check, under(value, 'condition'))
  }
}

/** What the line does is one for all sets; said of one set it is left out. */
function checkCondition(check: Checker, raw: Raw | undefined): void {
  const word = check.word(raw)
  const said = word?.text.split('/').find((one) => one === 'ringing' || one === 'speech')
  if (word === undefined || said === undefined) return
  check.problems.push({
    code: 'name-unknown',
    severity: 'warning',
    place: word.place,
    found: `${ticked(said)} in the condition of one set, which is left out: what the line does is one for all`,
    expected: 'what handset, dial and key of this set do',
    mend: `write ${ticked(
      word.text
        .split('/')
        .filter((one) => one !== said)
        .join('/'),
    )}, and ask with \`--condition\``,
  })
}

/** What belongs to the cable between two sockets means nothing where the line ends. */
function checkLeads(check: Checker): void {
  for (const { value } of entriesOf(under(check.root, 'sockets')).values()) {
    if (under(value, 'fed from') !== undefined) continue
    for (const key of ['over', 'ringing lead']) {
      const stray = under(value, key)
      const is = textOf(under(value, 'is'))
      if (stray === undefined || (is !== 'master' && is !== 'outlet')) continue
      check.report(
        'key-unknown',
        stray.place,
        `${ticked(key)} of a socket in which the line ends`,
        'a socket that another one feeds',
        `add \`fed from\`, or take ${ticked(key)} away; the line’s own cable is in the sheet of the line`,
      )
    }
  }
}

/** An adapter lead makes a ringing lead of a capacitor and a resistor together. */
function checkAdapters(check: Checker): void {
  for (const { value, place } of entriesOf(under(check.root, 'sockets')).values()) {
    if (textOf(under(value, 'is')) !== 'adapter') continue
    const keys = ['capacitance', 'resistance']
    const [there, ...more] = keys.filter((key) => under(value, key) !== undefined)
    const [missing] = keys.filter((key) => under(value, key) === undefined)
    if (there === undefined || missing === undefined || more.length > 0) continue
    check.report(
      'key-missing',
      place,
      `an adapter with ${ticked(there)} but no ${ticked(missing)}`,
      'both, or neither',
      `add ${ticked(missing)}, or take ${ticked(there)} away`,
    )
  }
}

/** Each circle is reported once, at its member that is written first. */
function checkFeeding(check: Checker): void {
  const sockets = entriesOf(under(check.root, 'sockets'))
  const done = new Set<string>()
  for (const start of sockets.keys()) {
    const path: string[] = []
    let at: string | undefined = start
    while (at !== undefined && sockets.has(at) && !done.has(at) && !path.includes(at)) {
      path.push(at)
      at = textOf(under(sockets.get(at)?.value, 'fed from'))
    }
    for (const name of path) done.add(name)
    const circle = at === undefined ? [] : path.slice(path.indexOf(at)).filter(() => path.includes(at ?? ''))
    const place = under(sockets.get(circle[0] ?? '')?.value, 'fed from')?.place
    if (place === undefined) continue
    const found = `the circle ${[...circle, circle[0] ?? ''].map(ticked).join(' → ')}`
    check.report(
      'base-circular',
      place,
      found,
      'sockets that lead to a master socket',
      'feed one of them from it',
    )
  }
}
