/** The places the palette leads to. */
import type { Command } from './commands.ts'
import { goTo } from './goTo.ts'
import { may, type PersonRole } from './roles.ts'

const go = (address: string) => () => goTo(address)
export const places: readonly Command[] = [
	{ name: 'Players', run: go('/players'), single: 'p' },
	{ name: 'New player', run: go('/players/new') },
	{ name: 'Shelf', run: go('/shelf'), single: 's' },
	{ name: 'Outbox', run: go('/outbox') },
	{ name: 'Due', run: go('/due') },
	{ name: 'Referrals not heard from', run: go('/due/referrals') },
	{ name: 'Squad day', run: go('/squad') },
	{ name: 'Outreach', run: go('/outreach') },
	{ name: 'Backups and records', run: go('/records/backups') },
	{ name: 'Settings: letterhead', run: go('/settings/letterhead') },
	{ name: 'Settings: protocol', run: go('/settings/protocol') },
	{ name: 'Settings: ages, keeping and lock', run: go('/settings/records') },
	{ name: 'Settings: look', run: go('/settings/look') },
	{ name: 'Help: how to measure', run: go('/help/measures') },
	{ name: 'Help: conditions', run: go('/help/conditions') },
	{ name: 'Help: glossary', run: go('/help/glossary') },
	{ name: 'Help: shortcuts', run: go('/help/keys') },
]
/** What reception would only be refused: measures and packs are for those who assess. */
const assessing = [
	'Outreach',
	'Referrals not heard from',
	'This player: assessment',
	'This player: season',
	'This player: trends',
]
export const openTo = (role: PersonRole, name: string): boolean =>
	may(role).treat || !assessing.includes(name)

/** The rooms whose address names a player. */
const ofOnePlayer = ['players', 'player', 'assessment', 'season', 'trends', 'consents']
/** Commands of the player whose page is open, by its address: '/season/ID'. */
export function placesOfPlayer(address: string): Command[] {
	const [, room = '', id] = address.split('/')
	if (!id || id === 'new' || !ofOnePlayer.includes(room)) return []
	return [
		{ name: 'This player: details', run: go(`/players/${id}`) },
		{ name: 'This player: assessment', run: go(`/assessment/${id}`) },
		{ name: 'This player: season', run: go(`/season/${id}`) },
		{ name: 'This player: trends', run: go(`/trends/${id}`) },
		{ name: 'This player: consents', run: go(`/consents/${id}`) },
	]
}
