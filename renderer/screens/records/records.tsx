/** The records room: one way in, a page for each concern. */
import type { OutputOf } from '../../../shared/contract.ts'
import { Page } from '../../parts/Page.tsx'
import { AfterRestore } from './AfterRestore.tsx'
import { Audit } from './Audit.tsx'
import { Backups } from './Backups.tsx'
import { MyAccess } from './MyAccess.tsx'
import { Notices } from './Notices.tsx'
import { People } from './People.tsx'
import { Retention } from './Retention.tsx'
import { RecordsSettings } from './Settings.tsx'

type Person = OutputOf<'session.status'>['person']
/** Page, its name, and whether only the owner sees it (the host refuses the others anyway). */
const pages = [
	['access', 'My access', false],
	['notices', 'Notices', true],
	['backups', 'Backups', false],
	['after-restore', 'After the restore', true],
	['people', 'People', true],
	['audit', 'Audit trail', true],
	['retention', 'Retention', true],
	['settings', 'Settings', true],
] as const

export function Records({
	page,
	person,
	clinicName = 'this clinic',
}: {
	page: string | undefined
	person: Person
	clinicName: string | undefined
}) {
	const owner = person?.role === 'owner'
	const shown = pages.filter(([, , forOwner]) => owner || !forOwner)
	const now = shown.find(([name]) => name === page)?.[0] ?? 'access'
	return (
		<Page
			title="Records"
			room={{
				label: 'Records',
				pages: shown.map(([name, title]) => ({
					to: `#/records/${name}`,
					title,
					here: name === now,
				})),
			}}
		>
			{now === 'access' && <MyAccess owner={owner} clinicName={clinicName} />}
			{now === 'notices' && <Notices />}
			{now === 'backups' && <Backups owner={owner} />}
			{now === 'after-restore' && <AfterRestore />}
			{now === 'people' && <People />}
			{now === 'audit' && <Audit />}
			{now === 'retention' && <Retention />}
			{now === 'settings' && <RecordsSettings />}
		</Page>
	)
}
