/**
 * Outreach: packs that go out, what a laptop carries, coming home, and what is still to be
 * answered.
 */
import { Alert } from '@mui/material'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { Page } from '../../parts/Page.tsx'
import { Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { useHost } from '../../query.ts'
import { ComeHome } from './ComeHome.tsx'
import { Laptop } from './Laptop.tsx'
import { MakePack } from './MakePack.tsx'
import type { Listed } from './Merged.tsx'
import { Merges } from './Merges.tsx'
import { Questions } from './Questions.tsx'

function ToSettle({ listed: { questions, merged } }: { listed: Listed }) {
	const drafts = merged.reduce((sum, { draftsBoth }) => sum + draftsBoth.length, 0)
	const open = [
		questions.length > 0 ? counted(questions.length, 'question') : '',
		drafts > 0 ? `${counted(drafts, 'draft')} kept twice` : '',
	].filter(Boolean)
	if (open.length === 0) return null
	return (
		<Alert severity="warning" role="status">
			To settle after coming home: {open.join(' and ')}.{' '}
			{questions.length > 0 ? 'See To answer, below.' : 'See What came home, below.'}
		</Alert>
	)
}
/** At home packs are made and brought in, by those who lead. */
function AtHome({ leads }: { leads: boolean }) {
	return leads ? (
		<>
			<MakePack />
			<ComeHome />
		</>
	) : (
		<Alert severity="info">
			Packs are made and brought home by a clinician or the owner. What came home stands below.
		</Alert>
	)
}
function PacksOut({ packs }: { packs: Listed['out'] }) {
	return (
		<Panel title="Packs that went out">
			<Rows
				label="Packs that went out"
				heads={['Made', 'By', 'Opens until', 'File', 'Players', 'Came home']}
				empty="None yet. Choose the players above, then a folder or stick, and make the pack."
				rows={packs.map((pack) => ({
					key: pack.packId,
					cells: [
						timeWords(pack.madeAt),
						pack.by,
						dayInWords(pack.expires),
						pack.file,
						pack.players.join(', ') || 'none',
						pack.home ? 'Yes' : 'Not yet',
					],
				}))}
			/>
		</Panel>
	)
}
function Listing({ listed, role }: { listed: Listed; role: PersonRole }) {
	const { carries, questions, merged, out } = listed
	const { lead } = may(role)
	return (
		<>
			<ToSettle listed={listed} />
			{carries ? <Laptop carries={carries} leads={lead} /> : <AtHome leads={lead} />}
			{questions.length > 0 && <Questions questions={questions} leads={lead} />}
			{merged.length > 0 && <Merges merged={merged} leads={lead} owner={role === 'owner'} />}
			{!carries && <PacksOut packs={out} />}
		</>
	)
}
function ForThoseWhoAssess({ role }: { role: PersonRole }) {
	const answer = useHost('outreach.list', {})
	return (
		<Answered of={answer} what="the packs">
			{(listed) => <Listing listed={listed} role={role} />}
		</Answered>
	)
}
/**
 * @param role who works here: packs are made and brought home by clinicians and the owner, a
 * student works on the laptop
 */
export function Outreach({ role }: { role: PersonRole }) {
	return (
		<Page
			title="Outreach"
			line="Players and shelf go out on a laptop in a sealed pack, and what was measured comes home."
		>
			{role === 'reception' ? (
				<Alert severity="info">
					Packs are made, carried and brought home by those who assess. Ask a clinician, or hand
					this PC over to one.
				</Alert>
			) : (
				<ForThoseWhoAssess role={role} />
			)}
		</Page>
	)
}
