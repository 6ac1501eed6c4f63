/** The page's own thread: it draws and listens; what is computed is computed in workers. */
import './look/tokens.css'
import './look/base.css'
import { render } from 'preact'
import { Shell } from './shell/shell.tsx'

const root = document.getElementById('page')
if (root !== null) render(<Shell />, root)
