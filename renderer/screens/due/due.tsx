/** The room of what is due: who is to be seen, and the referrals that nobody has heard from. */
import { Page } from '../../parts/Page.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { List } from './List.tsx'
import { duePages } from './pages.ts'
import { Referrals } from './Referrals.tsx'

interface DueProps {
	page: string | undefined
	role: PersonRole
}
export function DueScreen({ page = 'players', role }: DueProps) {
	const { treat, lead } = may(role)
	const isReferrals = page === 'referrals' && treat
	return (
		<Page
			title="Due"
			line={
				isReferrals
					? 'What was asked of others, and nobody has heard yet.'
					: 'Who is to be seen again, by the days of their signed visits and seasons.'
			}
			acts={<PrintButton what="this list" />}
			{...(treat && {
				room: {
					label: 'Due',
					pages: duePages(isReferrals ? 'referrals' : 'players', lead),
				},
			})}
		>
			{isReferrals ? <Referrals role={role} /> : <List role={role} />}
		</Page>
	)
}
