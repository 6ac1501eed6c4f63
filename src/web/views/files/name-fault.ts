/** Names of sheets. */

/** What is wrong with a name, in the words of the field. */
export function nameFault(name: string): string | undefined {
  if (name === '') return 'A sheet needs a name.'
  return /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name)
    ? undefined
    : 'Lower-case letters, digits and single hyphens only.'
}
