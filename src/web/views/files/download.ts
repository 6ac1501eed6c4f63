/** Hands a text to the browser as a file to keep. */
export function download(name: string, text: string, type: string = 'text/yaml'): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  // the browser has begun to read it by then
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
