/** The first script: theme, session gate and the small hash router. */
import createCache from '@emotion/cache'
import { CacheProvider } from '@emotion/react'
import { Alert, Box, Button, CssBaseline, ThemeProvider } from '@mui/material'
import { lazy, Suspense, useCallback, useEffect, useState } from 'react'
import { createRoot } from 'react-dom/client'
import './fonts.css'
import type { OutputOf } from '../shared/contract.ts'
import { call, wordsOf } from './host.ts'
import { PlayerScreen } from './screens/player/player.tsx'
import { Players } from './screens/players/players.tsx'
import { Setup } from './screens/setup/setup.tsx'
import { Unlock } from './screens/unlock/unlock.tsx'
import { theme } from './theme.ts'

const AssessmentScreen = lazy(async () => ({ default: (await import('./screens/assessment/assessment.tsx')).AssessmentScreen }))
const nonce = document.querySelector<HTMLMetaElement>('meta[name="csp-nonce"]')?.content
const cache = createCache({ key: 'lw', nonce, prepend: true })

function App() {
	const [status, setStatus] = useState<OutputOf<'session.status'>>()
	const [says, setSays] = useState('')
	const [hash, setHash] = useState(location.hash)
	const look = useCallback(() => { call('session.status', {}).then(setStatus, (error) => setSays(wordsOf(error))) }, [])
	useEffect(look, [look])
	useEffect(() => { const moved = () => setHash(location.hash); addEventListener('hashchange', moved); return () => removeEventListener('hashchange', moved) }, [])
	if (says) return <Alert severity="error" role="alert">{says}</Alert>
	if (!status) return <p>Opening</p>
	if (status.state === 'needs-setup') return <Setup done={look} />
	if (status.state === 'locked') return <Unlock done={look} />
	const [, room, id] = hash.split('/')
	return <><Box component="nav" sx={{ mb: 2 }}><Button href="#/">Players</Button><Button onClick={() => call('session.lock', {}).then(look, (error) => setSays(wordsOf(error)))}>Lock</Button></Box>
		{status.warnings.map((one) => <Alert key={one} severity="warning">{one}</Alert>)}
		{room === 'assessment' && id ? <Suspense fallback={<p>Opening</p>}><AssessmentScreen key={id} playerId={id} /></Suspense> : room === 'player' ? <PlayerScreen key={id ?? 'new'} playerId={id} /> : <Players />}</>
}
const root = document.getElementById('root')
if (root) createRoot(root).render(<CacheProvider value={cache}><ThemeProvider theme={theme}><CssBaseline /><Box component="main" sx={{ p: 3, maxWidth: 1400, mx: 'auto' }}><App /></Box></ThemeProvider></CacheProvider>)
