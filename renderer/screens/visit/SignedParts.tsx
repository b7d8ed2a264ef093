/** What stands in a signed visit: entries, decisions, and the findings of that day. */
import { Box, Typography } from '@mui/material'
import type { SignedVisit } from '../../../shared/contract.ts'
import { agreementInWords } from '../../../shared/engine/words/en/agreement.ts'
import { Panel, Rows } from '../../parts/panels.tsx'
import { answerRows } from './answerRows.ts'
import { assessmentOf, decisionRows, groupsOf, otherDecisions } from './rows.ts'

export function Entries({ signed }: { signed: SignedVisit }) {
	return (
		<Panel title="Entries">
			<Box
				sx={{
					display: 'grid',
					gap: 3,
					gridTemplateColumns: { xs: 'minmax(0, 1fr)', lg: 'minmax(0, 1fr) minmax(0, 1fr)' },
					alignItems: 'start',
				}}
			>
				{groupsOf(signed.visit).map((group) => (
					<Box key={group.title}>
						<Typography variant="h3" sx={{ mb: 0.5 }}>
							{group.title}
						</Typography>
						<Rows
							label={group.title}
							heads={group.sided ? ['Field', 'Left', 'Right'] : ['Field', 'Value']}
							empty="Nothing entered."
							rows={group.rows.map((row) => ({
								key: row.key,
								cells: [
									row.title,
									...row.values,
									...(group.sided && row.values.length === 1 ? [''] : []),
								],
							}))}
						/>
					</Box>
				))}
			</Box>
		</Panel>
	)
}
/** Records of before 0.5 hold a tick alone, which stands among the decisions. */
export function Agreed({ signed: { decisions } }: { signed: SignedVisit }) {
	if (!decisions.agreement) return null
	return (
		<Panel title="Explained and agreed">
			<Rows
				label="Explained and agreed"
				heads={['What', 'Noted']}
				empty="Nothing was noted."
				rows={agreementInWords(decisions.agreement).map(({ key, title, says }) => ({
					key,
					cells: [title, says],
				}))}
			/>
		</Panel>
	)
}
export function Decisions({ signed }: { signed: SignedVisit }) {
	return (
		<Panel title="Decisions">
			{signed.decisions.answers && (
				<Rows
					label="Answers to the questions"
					heads={['Question', 'Answer', 'What was changed', 'Reason']}
					empty=""
					rows={answerRows(signed).map(({ key, question, choice, changed, why }) => ({
						key,
						cells: [question, choice, changed, why],
					}))}
				/>
			)}
			<Rows
				label="Decisions about findings"
				heads={['Finding', 'Decision', 'Reason']}
				empty="No finding was decided one by one: they stand in the words of the proposal."
				rows={decisionRows(signed).map(({ key, says, choice, why }) => ({
					key,
					cells: [says, choice, why],
				}))}
			/>
			<Rows
				label="Other decisions"
				heads={['What', 'Value']}
				empty=""
				rows={otherDecisions(signed).map((row) => ({
					key: row.key,
					cells: [row.title, ...row.values],
				}))}
			/>
		</Panel>
	)
}
export function FindingsThen({ signed }: { signed: SignedVisit }) {
	const { findings, protocol } = assessmentOf(signed)
	const whose =
		protocol.id === 'shipped' ? 'The protocol as shipped' : 'The protocol of this clinic'
	return (
		<Panel
			title="Findings at the time"
			hint={`${whose}, version ${protocol.version}. They stand as they were on that day.`}
		>
			<Box component="ul" sx={{ m: 0, pl: 2.5, maxWidth: '52rem' }}>
				{findings.map((finding) => (
					<li key={finding.id}>{finding.says}</li>
				))}
			</Box>
		</Panel>
	)
}
