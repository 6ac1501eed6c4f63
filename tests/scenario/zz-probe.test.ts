import { writeFileSync } from 'node:fs'
import { check, compare, follow } from 'ringproof'
import { test } from 'vitest'
import * as b from '../support/bench.ts'
let out = ''
const show = (name: string, f: () => any) => { try { const a = f(); out += `## ${name}: ${JSON.stringify(b.troubles(a))}\n`; for (const v of a.verdicts) if (v.check.startsWith('wiring') && v.state !== 'holds') out += `   ${v.check} [${v.subject}] ${v.state} ${v.reason ?? ''} ${v.figure?.id} ${v.figure?.value} ${v.figure?.state ?? ''} lim ${v.limit?.value} path ${v.path.join(' ')} mend ${v.mend}\n` } catch (e: any) { out += `## ${name}: ERR ${e.message} ${JSON.stringify(e.problems ?? e.stack)}\n` } }
test('probe', () => {
  for (const t of ['fescue','sedge','fescue-as-found','sedge-as-found','fescue-converted','sedge-converted','sedge-converted-as-fescue','fescue-reversed-at-cord','fescue-without-ringing-lead','fescue-unit-left-out','sedge-cores-joined-harmless','sedge-with-strap']) show(t, () => check({ target: t }, b.DEMO))
  show('cradle on A1', () => b.checkText(b.setText('fescue', 'touchable metal: {cradle: A1}')))
  show('cradle on C4', () => b.checkText(b.setText('fescue', 'touchable metal: {cradle: C4}')))
  show('spare A1', () => b.checkMoved('fescue', 'land core: line.spare, onto: A1'))
  show('spare earth socket', () => b.checkText(b.setText('fescue', 'straps: {C4-B5: {hold: screw}}')))
  show('own cap left', () => b.checkText(b.setText('fescue', 'parts: {own-capacitor: {kind: capacitor, from: C2, to: B5, capacitance: 1.8 µF}}')))
  show('own cap series', () => b.checkText(b.setText('fescue', 'parts: {bell: {from: joint-4}, own-capacitor: {kind: capacitor, from: C2, to: joint-4, capacitance: 1.8 µF}}', 'joints: [joint-1, joint-2, joint-3, joint-4]')))
  show('quench lifted', () => b.checkMoved('fescue', 'lift part: impulse-quench'))
  show('unit pulled', () => b.checkMoved('fescue', 'pull unit: regulator'))
  show('strap C1-A1', () => b.checkMoved('fescue', 'fit strap: C1-A1'))
  show('strap A1-C1', () => b.checkMoved('fescue', 'fit strap: A1-C1'))
  show('bell to b', () => b.checkMoved('fescue', 'lift strap: C3-A1', 'fit strap: C3-B5'))
  show('bell to nothing', () => b.checkMoved('fescue', 'lift strap: C3-A1'))
  show('earth joined', () => b.checkText(b.setText('fescue', 'parts: {drain: {kind: resistor, from: B5, to: earth, resistance: 10 kΩ}}')))
  show('earth capacitor', () => b.checkText(b.setText('fescue', 'parts: {drain: {kind: capacitor, from: B5, to: earth, capacitance: 10 nF}}')))
  show('r1 parked', () => b.checkMoved('fescue', 'park core: handset.r1'))
  show('t1 parked', () => b.checkMoved('fescue', 'park core: handset.t1'))
  show('t1 on B4', () => b.checkMoved('fescue', 'land core: handset.t1, onto: B4'))
  show('r1 on B2', () => b.checkMoved('fescue', 'land core: handset.r1, onto: B2'))
  show('r2 on B4', () => b.checkMoved('fescue', 'land core: handset.r2, onto: B4'))
  show('r1 on B4', () => b.checkMoved('fescue', 'land core: handset.r1, onto: B4'))
  show('a parked', () => b.checkMoved('fescue', 'park core: line.a'))
  show('b parked', () => b.checkMoved('fescue', 'park core: line.b'))
  show('a and b parked', () => b.checkMoved('fescue', 'park core: line.a', 'park core: line.b'))
  show('hook bridged', () => b.checkMoved('fescue', 'fit strap: A1-A2'))
  show('no bell', () => b.checkMoved('fescue', 'lift part: bell'))
  show('no receiver', () => b.checkText(b.setText('fescue', 'without: [handset.receiver]')))
  show('no handset', () => b.checkText(b.setText('fescue', 'without: [handset.receiver, handset.transmitter, cords.handset]')))
  show('no plug', () => b.checkText(b.setText('fescue', 'without: [plug]')))
  show('no impulse', () => b.checkText(b.setText('fescue', 'without: [contacts.impulse]', 'straps: {A2-A3: {hold: screw}}')))
  show('no spare', () => b.checkText(b.setText('fescue', 'without: [plug.contacts.4]', 'spare: []')))
  show('plug without ringing', () => b.checkText(b.setText('fescue', 'without: [plug.contacts.3]')))
  show('dangling part', () => b.checkText(b.setText('fescue', 'parts: {extra: {kind: resistor, from: C4, to: A1, resistance: 1 kΩ}}', 'cords: {line: {cores: {spare: {lands: parked}}}}')))
  show('2 in one C4', () => b.checkText(b.setText('fescue', 'parts: {extra: {kind: resistor, from: C4, to: A1, resistance: 1 kΩ}}')))
  show('common', () => b.checkText(b.setText('sedge-with-strap', 'common cores: [[r2, t2]]', 'cords: {handset: {cores: {r2: {lands: B3}}}}')))
  for (const t of ['fescue-converted','sedge-converted','sedge-converted-as-fescue','sedge-cores-joined-harmless','fescue-reversed-at-cord','fescue-unit-left-out']) { const c = compare({ found: t }, b.DEMO); out += `compare ${t} ${JSON.stringify(c.changed)} ${JSON.stringify(c.moves)}\n` }
  for (const [t, c] of [['fescue',''],['fescue','on-hook/ringing'],['sedge',''],['two-meshes',''],['fescue','on-hook']] as const) { const f = follow({ target: t, ...(c ? {condition: c}: {}) }, b.DEMO); out += `follow ${t} ${c} ${JSON.stringify(f.steps)}\n` }
  const tr = check({ target: 'sedge-converted-as-fescue' }, b.DEMO); out += JSON.stringify(b.verdictsOf(tr, 'wiring.cores-separate'), null, 1)
  writeFileSync('/tmp/help/probe/out.txt', out)
})
