/** The sessions in the documents: console blocks, their commands and what they print. */
import { spawnSync } from 'node:child_process'

/** A command as it stands behind `$ `, and the output below it. */
export interface Step {
  readonly command: string
  readonly output: string
}

const BLOCK = /^```console\n([\s\S]*?)^```$/gm
const COMMAND = 'npx --no-install ringproof'

/** The steps of each console block of a document. Throws when a block begins with output. */
export function sessionsOf(markdown: string): Step[][] {
  return [...markdown.matchAll(BLOCK)].map(([, body = '']) => stepsOf(body))
}

function stepsOf(body: string): Step[] {
  const steps: { command: string; output: string[] }[] = []
  for (const line of body.split('\n').slice(0, -1)) {
    if (line.startsWith('$ ')) steps.push({ command: line.slice(2), output: [] })
    else if (steps.length === 0) throw new Error(`a console block begins with output: ${line}`)
    else steps.at(-1)?.output.push(line)
  }
  return steps.map(({ command, output }) => ({ command, output: output.join('\n') }))
}

/** The document with every block written anew from what `print` gives for its commands. */
export function rewritten(markdown: string, print: (command: string) => string): string {
  return markdown.replaceAll(BLOCK, (_, body: string) => {
    const lines = stepsOf(body).map(({ command }) => `$ ${command}\n${print(command)}`)
    return `\`\`\`console\n${lines.map((text) => `${text.trimEnd()}\n`).join('')}\`\`\``
  })
}

/** Runs the commands of one document with the built command line; `echo $?` tells how the last one ended. */
export function runner(root: string): (command: string) => string {
  let ended = 0
  return (command) => {
    if (command === 'echo $?') return String(ended)
    if (command !== COMMAND && !command.startsWith(`${COMMAND} `)) {
      throw new Error(`a console block may run only \`${COMMAND}\`, not ${command}`)
    }
    const args = [...command.slice(COMMAND.length).matchAll(/'([^']*)'|"([^"]*)"|(\S+)/g)]
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['dist/cli/ringproof.js', ...args.map(([, single, double, plain]) => single ?? double ?? plain ?? '')],
      { cwd: root, encoding: 'utf8', env: { PATH: process.env.PATH, NO_COLOR: '1', COLUMNS: '100' } },
    )
    ended = status ?? -1
    return `${stdout}${stderr}`
      .split('\n')
      .map((line) => line.trimEnd())
      .join('\n')
      .trimEnd()
  }
}
