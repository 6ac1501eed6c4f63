/** What the build of the page adds: the demo fleet, licences, the worker that keeps the page, and the list of files. */
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Plugin, type Rolldown, transformWithOxc } from 'vite'

type Bundle = Rolldown.OutputBundle

/** Files that pages and workers were built from. */
const built = new Set<string>()

function note(bundle: Bundle): void {
  for (const file of Object.values(bundle))
    for (const id of file.type === 'chunk' ? file.moduleIds : file.originalFileNames) built.add(id)
}

/** Workers are bundled by themselves: what they are made of is told here. */
export const partsOfWorkers: Plugin = {
  name: 'parts-of-workers',
  generateBundle(_options, bundle) {
    note(bundle)
    keepApart(bundle)
  },
}

/** Packages whose licence binds their own files: each stays in files of its own. */
const APART = /node_modules[\\/]elkjs[\\/]/

/** A module that holds the mere address of a file. */
const isAddress = (id: string): boolean => id.endsWith('?url')

/** What the builder puts in by itself, such as the frame that a module of the older kind needs. */
const isFrame = (id: string): boolean => id.startsWith('\0')

/** @throws Error where a file would hold such a package beside anything else */
function keepApart(bundle: Bundle): void {
  for (const file of Object.values(bundle)) {
    if (file.type !== 'chunk') continue
    const own = file.moduleIds.filter((id) => !isFrame(id) && !isAddress(id))
    const apart = own.filter((id) => APART.test(id))
    if (apart.length > 0 && apart.length < own.length)
      throw new Error(`${file.fileName} holds ${apart.join(', ')} beside other modules`)
  }
}

const hash = (bytes: string | Uint8Array, form: 'hex' | 'base64'): string =>
  createHash('sha256').update(bytes).digest(form)

const contentOf = (file: Bundle[string]): string | Uint8Array =>
  file.type === 'chunk' ? file.code : file.source

/** Every sheet that comes with the program, as a static page loads them. */
function fleet(root: string): string {
  const files = readdirSync(`${root}netlists`, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.yaml'))
    .sort()
  const texts = files.map((file) => ({
    file: `netlists/${file}`,
    text: readFileSync(`${root}netlists/${file}`, 'utf8'),
  }))
  // tables of odds and limits lie there too; they are in the library already
  return JSON.stringify(texts.filter(({ text }) => /^sheet:/m.test(text)))
}

/** The licences of all packages that the page is made of. */
function licences(root: string): string {
  const names = new Set<string>()
  for (const id of built) {
    const [, name] = /.*node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)/.exec(id) ?? []
    if (name !== undefined) names.add(name.replaceAll('\\', '/'))
  }
  const own = readFileSync(`${root}LICENSE`, 'utf8').trim()
  const parts = [...names].sort().map((name) => {
    const folder = `${root}node_modules/${name}`
    const { license, version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'))
    const file = readdirSync(folder).find((one) => /^licen[cs]e/i.test(one))
    const text = file === undefined ? '' : `\n\n${readFileSync(join(folder, file), 'utf8').trim()}`
    return `${name} ${version} (${license})${text}`
  })
  const word =
    'The source of each package below is published under its name and version, as it was used here.'
  return `${[`Ringproof\n\n${own}`, word, ...parts].join(`\n\n${'-'.repeat(72)}\n\n`)}\n`
}

/** Sizes of `icon.svg` as pixels, drawn once by a browser: not every system takes the drawing itself. */
const ICONS = [192, 512] as const

function manifest(icon: string): string {
  return JSON.stringify({
    id: './',
    name: 'Ringproof bench',
    short_name: 'Ringproof',
    description: 'How an old telephone set is wired, and what follows from it',
    lang: 'en',
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#ffffff',
    theme_color: '#0a5566',
    icons: [
      ...ICONS.map((size) => ({ src: `icon-${size}.png`, sizes: `${size}x${size}`, type: 'image/png' })),
      { src: icon, sizes: 'any', type: 'image/svg+xml' },
    ],
  })
}

/** The worker that keeps the page, with its list before it. */
async function keeper(root: string, kept: Readonly<Record<string, string>>): Promise<string> {
  const path = `${root}src/web/offline/service-worker.ts`
  const { code } = await transformWithOxc(readFileSync(path, 'utf8'), path, { target: 'es2023' })
  const list = JSON.stringify(kept)
  const plain = code.replace(/^export\s*\{\s*\};?$/m, '').replace(/^\/\/# sourceMappingURL=.*$/m, '')
  return `const KEPT = ${list}\nconst BUILD = ${JSON.stringify(hash(list, 'hex').slice(0, 16))}\n${plain}`
}

/** Puts these files beside the page. */
export function pagePlugins(root: string): readonly Plugin[] {
  if (!existsSync(`${root}netlists`)) throw new Error(`no sheets in ${root}netlists`)
  return [
    {
      name: 'beside-the-page',
      enforce: 'post',
      generateBundle: {
        order: 'post',
        async handler(_options, bundle) {
          note(bundle)
          keepApart(bundle)
          const icon = Object.keys(bundle).find((file) => /(^|\/)icon[^/]*\.svg$/.test(file))
          if (icon === undefined) throw new Error('the page has no icon')
          const all = new Map(Object.entries(bundle).map(([file, one]) => [file, contentOf(one)]))
          const put = (fileName: string, source: string | Uint8Array): void => {
            this.emitFile({ type: 'asset', fileName, source })
            all.set(fileName, source)
          }
          put('fleet.json', fleet(root))
          put('licences.txt', licences(root))
          put('manifest.webmanifest', manifest(icon))
          for (const size of ICONS) put(`icon-${size}.png`, readFileSync(`${root}src/web/icon-${size}.png`))
          const kept = [...all].sort(([a], [b]) => (a < b ? -1 : 1))
          const sums = kept.map(([file, content]) => [file, `sha256-${hash(content, 'base64')}`])
          put('service-worker.js', await keeper(root, Object.fromEntries(sums)))
          const files = Object.fromEntries([...all].map(([file, content]) => [file, hash(content, 'hex')]))
          put('files.json', JSON.stringify({ ringproof: 'page/1', files }))
        },
      },
    },
  ]
}
