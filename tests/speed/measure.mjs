// Started by `inFreshNode`: measures one subject and prints what it found.
const [subject] = process.argv.slice(2)
const { measure } = await import(new URL(`${subject}.mjs`, import.meta.url).href)
process.stdout.write(JSON.stringify(await measure()))
