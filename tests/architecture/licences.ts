/** Licences under which a dependency may be shipped. */
export const ALLOWED: readonly string[] = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD']

/**
 * Licences that bind only the package's own files: allowed for these packages, whose files are shipped as they are, each
 * in a file of its own.
 */
export const ALONE: Readonly<Record<string, string>> = { elkjs: 'EPL-2.0' }

/** What a package says of itself, as far as licences go. */
export interface Manifest {
  readonly name: string
  readonly license?: string | undefined
  readonly dependencies?: Readonly<Record<string, string>> | undefined
  readonly optionalDependencies?: Readonly<Record<string, string>> | undefined
  readonly peerDependencies?: Readonly<Record<string, string>> | undefined
  readonly peerDependenciesMeta?: Readonly<Record<string, { readonly optional?: boolean }>> | undefined
}

/** Reads the manifest of `name` as the package kept in `from` would get it, and says where it was found. */
export type Reader = (name: string, from: string) => { manifest: Manifest; folder: string } | undefined

/** True when every arm of an `AND`, and at least one arm of an `OR`, is allowed. Nothing else is read. */
export function licenceIsAllowed(licence: string | undefined, name?: string): boolean {
  if (typeof licence !== 'string') return false
  const bare = licence.replace(/^\((.*)\)$/, '$1')
  if (/[()]/.test(bare)) return false
  return bare.split(' OR ').some((arm) => {
    return arm
      .split(' AND ')
      .every((id) => ALLOWED.includes(id) || (name !== undefined && ALONE[name] === id))
  })
}

/** Every package that the run-time dependencies of `root` bring, itself left out; missing ones throw. */
export function runtimeClosure(root: Manifest, folder: string, read: Reader): Manifest[] {
  const found = new Map<string, Manifest>()
  const visit = (
    { name, dependencies, optionalDependencies, peerDependencies, peerDependenciesMeta }: Manifest,
    from: string,
  ): void => {
    const wanted = Object.keys({ ...dependencies, ...optionalDependencies, ...peerDependencies })
    for (const next of wanted) {
      const met = read(next, from)
      const optional = optionalDependencies?.[next] !== undefined || peerDependenciesMeta?.[next]?.optional
      if (!met && optional) continue
      if (!met) throw new Error(`${name} needs ${next}, which is not installed`)
      if (found.has(met.folder)) continue
      found.set(met.folder, met.manifest)
      visit(met.manifest, met.folder)
    }
  }
  visit(root, folder)
  return [...found.values()]
}
