/** The first script: theme, session gate and the small hash router. */
import createCache from '@emotion/cache'
import { CacheProvider } from '@emotion/react'
import { CssBaseline, GlobalStyles, ThemeProvider, Typography } from '@mui/material'
import { lazy, type ReactNode, Suspense, useCallback, useEffect, useState } from 'react'
import { createRoot } from 'react-dom/client'
import './fonts.css'
import type { OutputOf } from '../shared/contract.ts'
import { call, wordsOf } from './host.ts'
import { Frame } from './parts/Frame.tsx'
import { refusalShown } from './parts/form.tsx'
import { keepFocus } from './parts/keepFocus.ts'
import { loadLook } from './parts/look.ts'
import { lookStyles } from './parts/lookStyles.ts'
import { Palette } from './parts/Palette.tsx'
import { printStyles } from './parts/printStyles.ts'
import { Tour } from './parts/Tour.tsx'
import type { SavedNotice } from './screens/player/player.tsx'
import { Players } from './screens/players/players.tsx'
import { RecordsWays } from './screens/records/Ways.tsx'
import { Unlock } from './screens/unlock/unlock.tsx'
import { theme } from './theme.ts'

const PlayerScreen = lazy(async () => ({
	default: (await import('./screens/player/player.tsx')).PlayerScreen,
}))
const Setup = lazy(async () => ({ default: (await import('./screens/setup/setup.tsx')).Setup }))
const MoveHere = lazy(async () => ({
	default: (await import('./screens/records/Backups.tsx')).MoveHere,
}))
const AssessmentScreen = lazy(async () => ({
	default: (await import('./screens/assessment/assessment.tsx')).AssessmentScreen,
}))
const RecordsScreen = lazy(async () => ({
	default: (await import('./screens/records/records.tsx')).Records,
}))
const ShelfScreen = lazy(async () => ({
	default: (await import('./screens/shelf/shelf.tsx')).ShelfScreen,
}))
const SeasonScreen = lazy(async () => ({
	default: (await import('./screens/season/season.tsx')).SeasonScreen,
}))
const OutboxScreen = lazy(async () => ({
	default: (await import('./screens/outbox/outbox.tsx')).OutboxScreen,
}))
const OutreachScreen = lazy(async () => ({
	default: (await import('./screens/outreach/outreach.tsx')).Outreach,
}))
const SquadScreen = lazy(async () => ({
	default: (await import('./screens/squad/squad.tsx')).SquadScreen,
}))
const SettingsScreen = lazy(async () => ({
	default: (await import('./screens/settings/settings.tsx')).Settings,
}))
const TrendsScreen = lazy(async () => ({
	default: (await import('./screens/trends/trends.tsx')).Trends,
}))
const HelpScreen = lazy(async () => ({
	default: (await import('./screens/help/help.tsx')).HelpScreen,
}))
const ConsentsScreen = lazy(async () => ({
	default: (await import('./screens/records/Consents.tsx')).Consents,
}))
const nonce = document.querySelector<HTMLMetaElement>('meta[name="csp-nonce"]')?.content
const cache = createCache({ key: 'lw', nonce, prepend: true })
/** How often the gate asks whether the records were locked elsewhere. */
const askEveryMs = 10_000
/** How often at most the host hears that somebody is at the keyboard. */
const aliveEveryMs = 20_000

const opening = (what: string, screen: ReactNode) => (
	<Suspense fallback={<Typography role="status">{`Opening ${what}.`}</Typography>}>
		{screen}
	</Suspense>
)
/**
 * Puts focus on the page's h1 as soon as it stands, unless a field of the page took it or the
 * person moved on.
 */
function focusHeading(): () => void {
	const main = document.getElementById('main')
	const before = document.activeElement
	const tryIt = (late: boolean): boolean => {
		const now = document.activeElement
		if (now instanceof HTMLInputElement || (late && now !== before && now !== document.body))
			return true
		const heading = main?.querySelector('h1')
		if (!heading) return false
		heading.tabIndex = -1
		heading.focus()
		return true
	}
	if (tryIt(false) || !main) return () => {}
	const watch = new MutationObserver(() => {
		if (tryIt(true)) watch.disconnect()
	})
	watch.observe(main, { childList: true, subtree: true })
	return () => watch.disconnect()
}

function App() {
	const [status, setStatus] = useState<OutputOf<'session.status'>>()
	const [trouble, setTrouble] = useState('')
	const [hash, setHash] = useState(location.hash)
	const [notice, setNotice] = useState<SavedNotice>()
	const [packOpened, setPackOpened] = useState(false)
	const look = useCallback(() => {
		call('session.status', {}).then(
			(now) => {
				setStatus(now)
				setTrouble('')
			},
			(error) => setTrouble(wordsOf(error)),
		)
	}, [])
	const state = status?.state
	const known = state !== undefined
	useEffect(look, [look])
	useEffect(() => {
		void loadLook()
	}, [])
	// the list stands first; then what it leads to is fetched, so that a player opens at once
	useEffect(() => {
		if (state === 'open')
			requestIdleCallback(() => void import('./screens/player/player.tsx').catch(() => {}), {
				timeout: 2000,
			})
	}, [state])
	useEffect(() => {
		const moved = () => setHash(location.hash)
		addEventListener('hashchange', moved)
		return () => removeEventListener('hashchange', moved)
	}, [])
	useEffect(() => {
		// only while open: during set-up the recovery key must stay on the screen
		if (state !== 'open') return
		const timer = setInterval(look, askEveryMs)
		for (const event of [refusalShown, 'focus']) addEventListener(event, look)
		return () => {
			clearInterval(timer)
			for (const event of [refusalShown, 'focus']) removeEventListener(event, look)
		}
	}, [state, look])
	// biome-ignore lint/correctness/useExhaustiveDependencies: the address and the gate are the events that bring a new page
	useEffect(() => (known ? focusHeading() : undefined), [hash, state, known])
	const lock = useCallback(() => {
		call('session.lock', {}).then(
			() => {
				location.hash = '#/players'
				look()
			},
			(error) => setTrouble(wordsOf(error)),
		)
	}, [look])
	useEffect(() => {
		if (state !== 'open') return
		let told = 0
		const touched = (event: Event) => {
			if (
				event instanceof KeyboardEvent &&
				event.ctrlKey &&
				event.shiftKey &&
				event.key.toLowerCase() === 'l'
			) {
				event.preventDefault()
				return lock()
			}
			if (Date.now() - told < aliveEveryMs) return
			told = Date.now()
			call('session.alive', {}).catch(look)
		}
		for (const event of ['keydown', 'pointerdown', 'pointermove', 'wheel'])
			addEventListener(event, touched, { passive: false })
		return () => {
			for (const event of ['keydown', 'pointerdown', 'pointermove', 'wheel'])
				removeEventListener(event, touched)
		}
	}, [state, look, lock])
	const [, room, id] = hash.split('/')
	useEffect(() => setNotice((now) => (now && now.playerId !== id ? undefined : now)), [id])

	const page = () => {
		if (!status)
			return trouble ? null : <Typography role="status">Opening the workstation.</Typography>
		if (status.state === 'needs-setup')
			return opening(
				'the set-up',
				<>
					{!packOpened && <Setup done={look} />}
					<MoveHere done={look} opened={() => setPackOpened(true)} />
				</>,
			)
		if (status.state === 'locked') return <Unlock clinicName={status.clinicName} done={look} />
		if (room === 'assessment' && id)
			return opening('the assessment', <AssessmentScreen key={id} playerId={id} />)
		if (room === 'shelf')
			return opening('the shelf', <ShelfScreen page={id} item={hash.split('/')[3]} />)
		if (room === 'records')
			return opening('the records', <RecordsScreen page={id} person={status.person} look={look} />)
		if (room === 'settings')
			return opening('the settings', <SettingsScreen page={id} role={status.person?.role} />)
		if (room === 'trends' && id)
			return opening('the trends', <TrendsScreen key={id} playerId={id} />)
		if (room === 'help') return opening('help', <HelpScreen page={id} />)
		if (room === 'outbox')
			return opening(
				'the outbox',
				<OutboxScreen page={id} item={hash.split('/')[3]} person={status.person} />,
			)
		if (room === 'outreach')
			return opening('outreach', <OutreachScreen role={status.person?.role} />)
		if (room === 'squad')
			return opening(
				'the screening day',
				<SquadScreen
					key={id ?? ''}
					role={status.person?.role}
					squadId={id}
					station={hash.split('/')[3]}
					playerId={hash.split('/')[4]}
				/>,
			)
		if (room === 'season' && id)
			return opening('the season', <SeasonScreen key={id} playerId={id} />)
		if (room === 'consents' && id)
			return opening('the consents', <ConsentsScreen key={id} playerId={id} />)
		// the short form of the address is kept for links made before
		if ((room === 'players' && id) || room === 'player') {
			const playerId = id === 'new' ? undefined : id
			return opening(
				'the player',
				<PlayerScreen
					key={playerId ?? 'new'}
					playerId={playerId}
					role={status.person?.role}
					notice={notice?.playerId === playerId ? notice : undefined}
					saved={(now) => {
						setNotice(now)
						location.hash = `#/players/${now.playerId}`
					}}
				/>,
			)
		}
		return <Players />
	}
	const inList =
		state === 'open' &&
		(room === undefined || room === '' || room === 'players' || room === 'player')
	return (
		<Frame status={status} lock={lock} trouble={trouble}>
			{state === 'open' && <Palette role={status?.person?.role} />}
			{inList && !id && <Tour />}
			{page()}
			{inList && (
				<RecordsWays person={status?.person} playerId={id && id !== 'new' ? id : undefined} />
			)}
		</Frame>
	)
}

keepFocus()
const root = document.getElementById('root')
if (root)
	createRoot(root).render(
		<CacheProvider value={cache}>
			<ThemeProvider theme={theme}>
				<CssBaseline />
				<GlobalStyles styles={lookStyles} />
				<GlobalStyles styles={printStyles} />
				<App />
			</ThemeProvider>
		</CacheProvider>,
	)
