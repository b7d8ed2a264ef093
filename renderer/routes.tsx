/**
 * The pages by their addresses, one row each: whom it is for, its name in the head, the words while
 * it opens, and its screen, fetched when it is first wanted.
 */
import { type ComponentType, lazy, type ReactNode } from 'react'
import type { StringRouteParams } from 'wouter'
import type { Status } from './frame/useSession.ts'
import { may, type PersonRole } from './parts/roles.ts'
import { Tour } from './parts/Tour.tsx'
import { Morning } from './screens/due/Morning.tsx'
import type { SavedNotice } from './screens/player/notice.ts'
import { Players } from './screens/players/players.tsx'

const player = () => import('./screens/player/player.tsx')
/** The screen `name` of a file, fetched when it is first shown. */
const later = <Name extends string, Properties>(
	file: () => Promise<Record<Name, ComponentType<Properties>>>,
	name: Name,
) => lazy(async () => ({ default: (await file())[name] }))

const PlayerScreen = later(player, 'PlayerScreen')
const Assessment = later(() => import('./screens/assessment/assessment.tsx'), 'AssessmentScreen')
const Records = later(() => import('./screens/records/records.tsx'), 'Records')
const Shelf = later(() => import('./screens/shelf/shelf.tsx'), 'ShelfScreen')
const Season = later(() => import('./screens/season/season.tsx'), 'SeasonScreen')
const Outbox = later(() => import('./screens/outbox/outbox.tsx'), 'OutboxScreen')
const Due = later(() => import('./screens/due/due.tsx'), 'DueScreen')
const Audit = later(() => import('./screens/audit/audit.tsx'), 'AuditScreen')
const Outreach = later(() => import('./screens/outreach/outreach.tsx'), 'Outreach')
const Squad = later(() => import('./screens/squad/squad.tsx'), 'SquadScreen')
const ImportPlayers = later(() => import('./screens/squad/ImportPlayers.tsx'), 'ImportPlayers')
const Settings = later(() => import('./screens/settings/settings.tsx'), 'Settings')
const Trends = later(() => import('./screens/trends/trends.tsx'), 'Trends')
const Help = later(() => import('./screens/help/help.tsx'), 'HelpScreen')
const Parts = later(() => import('./screens/parts/parts.tsx'), 'Parts')
const Consents = later(() => import('./screens/records/Consents.tsx'), 'Consents')

/** Fetches the screen that the list of players leads to, so that a player opens at once. */
export const fetchPlayerScreen = (): void => void player().catch(() => {})

/** What a page is told beside its address. */
export interface Surroundings {
	person: Status['person']
	clinicName: Status['clinicName']
	notice: SavedNotice | undefined
	saved: (notice: SavedNotice) => void
}
type Who = 'everyone' | 'those who assess' | 'those who run the desk' | 'those who lead'
export interface Page {
	path: string
	/** who finds it in the head; the host refuses the others by the contract's own table */
	who: Who
	/** its name in the head */
	menu?: string
	/** 'the player': what opens */
	opening: string
	/** there are only invented players: for those who work on the program */
	demoOnly?: boolean
	/** it takes the whole width of the window */
	wide?: boolean
	/** it fits itself to the window and scrolls within */
	fits?: boolean
	/** the way to the records room stands under it */
	recordsBelow?: boolean
	show: (parts: Readonly<Record<string, string | undefined>>, around: Surroundings) => ReactNode
}
/** A row whose screen is told the named parts of its own path. */
const page = <Path extends string>(
	path: Path,
	row: Omit<Page, 'path' | 'show'> & {
		show: (parts: StringRouteParams<Path>, around: Surroundings) => ReactNode
	},
): Page => ({ path, ...row, show: row.show as Page['show'] })

const details = (id: string | undefined, { person, notice, saved }: Surroundings) => {
	const playerId = id === 'new' ? undefined : id
	return (
		<PlayerScreen
			key={`${playerId ?? 'new'} ${person?.personId}`}
			playerId={playerId}
			role={person?.role}
			personId={person?.personId}
			notice={notice?.playerId === playerId ? notice : undefined}
			saved={saved}
		/>
	)
}
/** The start; also where an address leads nowhere. */
const start: Omit<Page, 'path'> = {
	who: 'everyone',
	opening: 'the players',
	recordsBelow: true,
	show: (_, { person }) => (
		<>
			<Tour />
			<Players
				desk={may(person?.role).desk}
				beside={<Morning key={person?.personId} role={person?.role} />}
			/>
		</>
	),
}
/** In the order of the head; the first that fits the address is shown. */
export const pages: readonly Page[] = [
	{ path: '/', ...start },
	{ path: '/players', menu: 'Players', ...start },
	page('/players/import', {
		who: 'those who run the desk',
		opening: 'the import of players',
		show: () => <ImportPlayers />,
	}),
	page('/players/:id', {
		who: 'everyone',
		opening: 'the player',
		recordsBelow: true,
		show: ({ id }, around) => details(id, around),
	}),
	// the short form of the address is kept for links made before
	page('/player/:id?', {
		who: 'everyone',
		opening: 'the player',
		recordsBelow: true,
		show: ({ id }, around) => details(id, around),
	}),
	page('/assessment/:playerId', {
		who: 'those who assess',
		opening: 'the assessment',
		wide: true,
		fits: true,
		show: ({ playerId }) => <Assessment key={playerId} playerId={playerId} />,
	}),
	page('/recheck/:playerId', {
		who: 'those who assess',
		opening: 'the re-check',
		wide: true,
		fits: true,
		show: ({ playerId }) => <Assessment key={playerId} playerId={playerId} recheck />,
	}),
	page('/trends/:playerId', {
		who: 'those who assess',
		opening: 'the trends',
		show: ({ playerId }) => <Trends key={playerId} playerId={playerId} />,
	}),
	page('/season/:playerId', {
		who: 'those who assess',
		opening: 'the season',
		wide: true,
		show: ({ playerId }) => <Season key={playerId} playerId={playerId} />,
	}),
	page('/consents/:playerId', {
		who: 'everyone',
		opening: 'the consents',
		show: ({ playerId }) => <Consents key={playerId} playerId={playerId} />,
	}),
	page('/shelf/:page?/:item?', {
		who: 'everyone',
		menu: 'Shelf',
		opening: 'the shelf',
		show: ({ page, item }) => <Shelf page={page} item={item} />,
	}),
	page('/outbox/:page?/:item?', {
		who: 'those who run the desk',
		menu: 'Outbox',
		opening: 'the outbox',
		show: ({ page, item }, { person }) => <Outbox page={page} item={item} person={person} />,
	}),
	page('/due/:page?', {
		who: 'everyone',
		menu: 'Due',
		opening: 'what is due',
		show: ({ page }, { person }) => <Due page={page} role={person?.role} />,
	}),
	page('/audit', {
		who: 'those who lead',
		opening: 'what became of visits',
		show: () => <Audit />,
	}),
	page('/squad/:squadId?/:station?/:playerId?', {
		who: 'everyone',
		menu: 'Squad day',
		opening: 'the screening day',
		show: ({ squadId, station, playerId }, { person }) => (
			<Squad
				key={squadId ?? ''}
				role={person?.role}
				squadId={squadId}
				station={station}
				playerId={playerId}
			/>
		),
	}),
	page('/outreach', {
		who: 'those who assess',
		menu: 'Outreach',
		opening: 'outreach',
		show: (_, { person }) => <Outreach role={person?.role} />,
	}),
	page('/help/:page?', {
		who: 'everyone',
		menu: 'Help',
		opening: 'help',
		show: ({ page }) => <Help page={page} />,
	}),
	page('/settings/:page?', {
		who: 'everyone',
		menu: 'Settings',
		opening: 'the settings',
		show: ({ page }, { person }) => <Settings page={page} role={person?.role} />,
	}),
	page('/records/:page?', {
		who: 'everyone',
		opening: 'the records',
		show: ({ page }, { person, clinicName }) => (
			<Records page={page} person={person} clinicName={clinicName} />
		),
	}),
	page('/parts', {
		who: 'everyone',
		opening: 'the parts',
		demoOnly: true,
		show: () => <Parts />,
	}),
	{ path: '*', ...start, recordsBelow: false, show: () => <Players /> },
]
const isFor: Record<Who, (role: PersonRole) => boolean> = {
	everyone: () => true,
	'those who assess': (role) => role !== 'reception',
	'those who run the desk': (role) => role !== 'student',
	'those who lead': (role) => may(role).lead,
}
/** The room that an address leads to: its first part; the start is the list of players. */
export const roomOf = (address: string): string => address.split('/')[1] || 'players'
/** Whether the page of an address is for who works here. */
export function mayStand(address: string, role: PersonRole): boolean {
	const page = pages.find(({ path }) => roomOf(path) === roomOf(address))
	return !page || isFor[page.who](role)
}
/** How the page of an address stands in the window. */
export const standing = (address: string): { wide: boolean; fits: boolean } => {
	const page = pages.find(({ path }) => roomOf(path) === roomOf(address))
	return { wide: page?.wide ?? false, fits: page?.fits ?? false }
}
/** The ways in the head for who works here: name and address. */
export const waysFor = (role: PersonRole): { title: string; to: string }[] =>
	pages.flatMap(({ path, menu, who }) =>
		menu && isFor[who](role) ? [{ title: menu, to: `#${path.replace(/\/:.*/, '')}` }] : [],
	)
