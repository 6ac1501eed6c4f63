/** Styles are the builder's business: importing one puts it on the page. */
declare module '*.css'
