/** Text files that vite puts into the build. */
declare module '*?raw' {
  const text: string
  export default text
}
