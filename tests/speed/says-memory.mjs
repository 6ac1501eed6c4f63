// Loaded before a program: says at its end, on the error stream, how many kilobytes it needed at most.
process.on('exit', () => {
  process.stderr.write(`memory ${process.resourceUsage().maxRSS}\n`)
})
