/** Styles are the builder's business: importing one puts it on the page. */
declare module '*.css'

/** A file that is handed out as it is: its address. */
declare module '*?url' {
  const address: string
  export default address
}
