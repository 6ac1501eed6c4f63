/** The page's own thread: it draws and listens; what is computed is computed in workers. */
import './look/tokens.css'
import './look/base.css'
import './look/kit.css'
import './look/verdicts.css'
import './look/notices.css'
import './look/shell.css'
import './look/pictures.css'
import './look/print.css'
import { render } from 'preact'
import { startKeeping } from './keep/keeper.ts'
import { guardLeaving, resume, startNoting } from './keep/unsaved.ts'
import { keepOffline } from './offline/keep-offline.ts'
import { startKeys } from './shell/keys.ts'
import { route } from './shell/route.ts'
import { Shell } from './shell/shell.tsx'
import { show } from './shell/shown.ts'
import { startTheme } from './shell/theme.ts'

startTheme()
// the view's files and the sheets come while the page is being drawn
void show(route.value.view)
void startKeeping(route.value.token)
resume()
void startNoting()
startKeys()
guardLeaving()

const root = document.getElementById('page')
if (root !== null) render(<Shell />, root)
keepOffline(route.value.token !== undefined)
