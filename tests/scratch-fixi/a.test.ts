import { test } from 'vitest'
import { appendFileSync, writeFileSync } from 'node:fs'
import { ringproof } from '../faces/ringproof.ts'
test('x', async () => {
  writeFileSync('/tmp/help/fixi.out','')
  const p = async (argv: string[], ask?: string[]) => { const left=[...(ask??[])]; const r = await ringproof(argv, ask? {ask: () => Promise.resolve(left.shift())}: {}); appendFileSync('/tmp/help/fixi.out','===== '+ argv.join(' ')+'\n'+ r.code + '\n' + r.out + '\nERR ' + r.err+'\n') }
  await p(['identify', '--seen', 'slot=no', '--width', '60'])
  for (const s of ['strip=A','slot','slot=','strap=A3-A4:','slot=may','strip=A:not looked', 'unit=clo']) await p(['identify', '--seen', s])
  for (const s of ['A3 A4 upside 0.2 Ω','A3 A4 offhook 0.2 Ω','A3 A4 offhook','A3 A4 opne', 'A3 A4 0,2', 'A3 A4 0,2 Ω','A3 A4 2','A3 A4 off-hook/mak 2 Ω','a3 A4 2 Ω','A3','A3 A4 no','A3 A4 on-hook/ringing 2 Ω', 'A3 A4 on-hook']) await p(['identify', '--reading', s])
  await p(['identify', '--reading', 'Z9 A4 0.2 Ω'])
  await p(['identify', '--seen','slot=no', '--reading', 'A3 A4 on-hook 0.2 Ω', '--width', '60'])
  await p(['identify', '--ask', '--width', '60'], ['?','back','perhaps','2','ye','back','1','?','skip','back', '','', '', '', '', '', '', '','stop'])
  await p(['identify', '--ask', '--seen','board=board','--seen','slot=no','--reading','A5 C1 off-hook 4.35 kΩ'], ['?','0,2','','','0.2','open','', '?'])
}, 60000)
