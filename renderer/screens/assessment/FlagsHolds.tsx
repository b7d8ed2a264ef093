/** What is held back, since when, and what ends it; the outcomes that were recorded. */
import { Box, Button, Paper, Typography } from '@mui/material'
import { listed } from '../../../shared/engine/words/en/format.ts'
import { holdableNames } from '../../../shared/engine/words/en/gate.ts'
import { dateWords } from '../../../shared/engine/words/words.ts'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { OutcomeForm } from './FlagsOutcomeForm.tsx'
import { endings, type HeldBySign, heldBySign, isSameSign, sinceOf } from './flagsHeld.ts'
import { nameOfSign, outcomesBegun } from './flagsTyped.ts'
import type { AssessedProps, DraftProps } from './stepProps.ts'

function Held({ group, draft, change }: { group: HeldBySign } & DraftProps) {
	const name = nameOfSign(group)
	const since = sinceOf(group) ?? draft.visit.visitDate
	const carried = since < draft.visit.visitDate
	return (
		<Box
			component="section"
			aria-label={name}
			data-held={name}
			sx={{ borderLeft: 3, borderColor: 'error.main', pl: 2, my: 1.5 }}
		>
			<Typography variant="h3">{name}</Typography>
			<Typography variant="body2" color="text.secondary">
				{carried ? `Open since ${dateWords(since)}, from an earlier visit.` : 'Found today.'}
			</Typography>
			{endings(group.holds).map((line) => (
				<Typography key={line}>{line}</Typography>
			))}
			<Disclosure
				label="Record an outcome"
				name={`Record an outcome: ${name}`}
				openAtFirst={outcomesBegun(draft).some((sign) => isSameSign(sign, group))}
			>
				<OutcomeForm group={group} draft={draft} change={change} />
			</Disclosure>
		</Box>
	)
}
/** An outcome that was begun, of a sign that holds nothing any more. */
function Begun({ group, draft, change }: { group: HeldBySign } & DraftProps) {
	const name = nameOfSign(group)
	return (
		<Box component="section" aria-label={name} sx={{ borderLeft: 3, pl: 2, my: 1.5 }}>
			<Typography variant="h3">{name}</Typography>
			<Typography>Holds nothing now. Record what was begun here, or clear the form.</Typography>
			<OutcomeForm group={group} draft={draft} change={change} />
		</Box>
	)
}
function Outcomes({ draft, change, assessment }: AssessedProps) {
	const { outcomes = [] } = draft.visit
	if (outcomes.length === 0) return null
	const idle = (index: number) =>
		assessment?.findings.find(
			({ code, params }) => code === 'screening.ends-nothing' && params.number === index + 1,
		)
	const remove = (index: number) =>
		change((now) => {
			const { outcomes: kept = [], ...visit } = now.visit
			const next = kept.filter((_, at) => at !== index)
			return { ...now, visit: next.length > 0 ? { ...visit, outcomes: next } : visit }
		})
	return (
		<>
			<Typography variant="h3" sx={{ mt: 2 }}>
				Outcomes recorded at this visit
			</Typography>
			{outcomes.map((outcome, index) => (
				<Box
					key={`${outcome.rule} ${outcome.side} ${outcome.on} ${outcome.found}`}
					sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2, my: 1 }}
				>
					<Box sx={{ flex: '1 1 20rem' }}>
						<Typography sx={{ fontWeight: 600 }}>
							{nameOfSign(outcome)}: {outcome.result}
						</Typography>
						<Typography variant="body2">
							{outcome.found} ({outcome.how}, {outcome.by}, {dateWords(outcome.on)}). No longer
							held:{' '}
							{outcome.lifts.length > 0
								? listed(outcome.lifts.map((what) => holdableNames[what]))
								: 'nothing'}
							.{outcome.treatingDoctorClears ? ' The treating doctor allows sport.' : ''}
						</Typography>
						{idle(index) ? (
							<Typography role="status" variant="body2" sx={{ color: 'warning.main' }}>
								{idle(index)?.says}
							</Typography>
						) : null}
					</Box>
					<Button
						aria-label={`Remove the outcome: ${nameOfSign(outcome)}`}
						onClick={() => remove(index)}
					>
						Remove
					</Button>
				</Box>
			))}
		</>
	)
}
/** Nothing where nothing is held and no outcome was recorded or begun. */
export function OpenHolds({ draft, change, assessment }: AssessedProps) {
	const gate = assessment?.prescription?.gate
	const groups = gate ? heldBySign(gate) : []
	const begun = outcomesBegun(draft)
		.filter((sign) => !groups.some((group) => isSameSign(sign, group)))
		.map((sign): HeldBySign => ({ ...sign, holds: [] }))
	if (groups.length + begun.length === 0 && !draft.visit.outcomes?.length) return null
	return (
		<Paper component="section" aria-label="What is held" variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h2">What is held</Typography>
			<Typography variant="body2" color="text.secondary">
				A hold ends by a recorded outcome: what was found or excluded, how, by whom and when. Being
				sent or written to ends nothing.
			</Typography>
			{groups.map((group) => (
				<Held key={`${group.rule} ${group.side}`} group={group} draft={draft} change={change} />
			))}
			{begun.map((group) => (
				<Begun key={`${group.rule} ${group.side}`} group={group} draft={draft} change={change} />
			))}
			<Outcomes draft={draft} change={change} assessment={assessment} />
		</Paper>
	)
}
