/**
 * Calls that only read or give out, as the audit trail names them, and by whom they are about.
 * Changes stand in the trail with the record they write. Searching logs the query without results.
 */
import type { CallName, InputOf } from '../../shared/contract.ts'
import type { AuditFunction } from '../../shared/desk/records/audit.ts'

interface Read<Input> {
	does: AuditFunction
	/** the player it is about; of nobody where absent */
	player?: (input: Input) => string
	/** what was read, as the trail names it */
	objectRef?: (input: Input) => string
}
type Reads = { [Name in CallName]?: Read<InputOf<Name>> }

const ofPlayer = (input: { playerId: string }) => input.playerId
const ofVisit = (input: { visitId: string }) => `visit:${input.visitId}`

const reads: Reads = {
	'players.search': { does: 'search', objectRef: ({ query }) => `query:${query}` },
	'players.open': { does: 'read', player: ofPlayer },
	'players.summary': { does: 'read', player: ofPlayer, objectRef: () => 'summary' },
	'players.course': { does: 'read', player: ofPlayer, objectRef: () => 'course' },
	'drafts.open': { does: 'read', player: ofPlayer, objectRef: () => 'draft' },
	'drafts.preview': { does: 'read', objectRef: ({ draftId }) => `draft:${draftId}` },
	'visits.open': { does: 'read', objectRef: ofVisit },
	'visits.history': { does: 'read', objectRef: ofVisit },
	'reports.open': {
		does: 'read',
		objectRef: ({ visitId, version }) =>
			`report:${visitId}${version === undefined ? '' : ` version ${version}`}`,
	},
	'reports.sheet': { does: 'read', objectRef: ({ visitId }) => `sheet:${visitId}` },
	'season.open': { does: 'read', player: ofPlayer, objectRef: () => 'season' },
	'season.chart': { does: 'print', player: ofPlayer, objectRef: () => 'season' },
	'season.page': { does: 'export', player: ofPlayer, objectRef: () => 'season' },
	'season.ics': { does: 'export', player: ofPlayer, objectRef: () => 'season' },
	'squad.open': { does: 'read', objectRef: () => 'squad' },
	'squad.summary': { does: 'print', objectRef: () => 'squad' },
	'squad.summaryPage': { does: 'export', objectRef: () => 'squad' },
	'outbox.notes': { does: 'read', player: ofPlayer, objectRef: () => 'sending-notes' },
	'outbox.tell': { does: 'read', player: ofPlayer, objectRef: () => 'sendings' },
	'outbox.unsent': { does: 'read', objectRef: () => 'unsent' },
	'recall.list': { does: 'read', objectRef: () => 'recall' },
	'recall.referrals': { does: 'read', objectRef: () => 'referrals' },
	'clinicAudit.read': {
		does: 'read',
		objectRef: ({ days }) => `clinic-audit${days ? `:${days.from} ${days.to}` : ''}`,
	},
	'clinicAudit.print': { does: 'print', objectRef: ({ from, to }) => `clinic-audit:${from} ${to}` },
	'clinicAudit.export': {
		does: 'export',
		objectRef: ({ from, to }) => `clinic-audit:${from} ${to}`,
	},
	'clinicAudit.forecast': { does: 'read', objectRef: () => 'clinic-audit' },
	'outreach.list': { does: 'read', objectRef: () => 'outreach' },
	'consents.list': { does: 'read', player: ofPlayer, objectRef: () => 'consents' },
	'audit.page': { does: 'read', objectRef: () => 'audit' },
	'people.list': { does: 'read', objectRef: () => 'people' },
	'retention.due': { does: 'read', objectRef: () => 'retention' },
	'retention.register': { does: 'read', objectRef: () => 'register' },
	'backups.preview': { does: 'read', objectRef: () => 'backup' },
}
/** The row of the audit trail for a call that was answered; undefined where it has none. */
export function readRow<Name extends CallName>(name: Name, input: InputOf<Name>) {
	const read = reads[name] as Read<InputOf<Name>> | undefined
	return (
		read && {
			function: read.does,
			playerId: read.player?.(input) ?? null,
			objectRef: read.objectRef?.(input) ?? '',
		}
	)
}
