/** Settings: the clinic's letterhead and words, the protocol, the records, the look of this PC. */
import { Page } from '../../parts/Page.tsx'
import { RecordsSettings } from '../records/Settings.tsx'
import { Letterhead } from './Letterhead.tsx'
import { LookSettings } from './LookSettings.tsx'
import { ProtocolEditor } from './ProtocolEditor.tsx'

const pages = [
	['letterhead', 'Letterhead and documents'],
	['protocol', 'Protocol'],
	['records', 'Ages, keeping and lock'],
	['look', 'Look'],
] as const
/** Settings that stand in the room they belong to. */
const elsewhere = [
	['#/records/people', 'People', true],
	['#/records/backups', 'Backups', false],
	['#/outbox/mail', 'Mail', true],
] as const
export function Settings({ page, role }: { page: string | undefined; role: string | undefined }) {
	const clinical = role === 'owner' || role === 'clinician'
	const shown = pages.filter(([name]) =>
		name === 'records' ? role === 'owner' : name === 'letterhead' ? clinical : true,
	)
	const now = shown.find(([name]) => name === page)?.[0] ?? 'look'
	return (
		<Page
			title="Settings"
			room={{
				label: 'Settings',
				pages: [
					...shown.map(([name, title]) => ({
						to: `#/settings/${name}`,
						title,
						here: name === now,
					})),
					...elsewhere
						.filter(([, , forOwner]) => role === 'owner' || !forOwner)
						.map(([to, title]) => ({ to, title })),
				],
			}}
		>
			{now === 'letterhead' && <Letterhead owner={role === 'owner'} />}
			{now === 'protocol' && <ProtocolEditor mayChange={clinical} />}
			{now === 'records' && <RecordsSettings />}
			{now === 'look' && <LookSettings />}
		</Page>
	)
}
