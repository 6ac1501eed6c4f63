// A writer that keeps one entry and looks for it: what it found stands on its output.
const [store, folder] = process.argv.slice(2)
const { bookStore } = await import(store)
const books = bookStore(folder)
books.write('key', Uint8Array.of(1, 2, 3))
books.write('other', Uint8Array.of(4))
books.remove('none')
process.stdout.write(JSON.stringify(Array.from(books.read('key') ?? [])))
