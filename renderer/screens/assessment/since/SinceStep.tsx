/** The first step of a re-check: what became of the last plan, and how it is today. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { askedOfAll } from '../../../../shared/engine/recheck/always.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { toDoName } from '../../../../shared/engine/words/en/recheck.ts'
import { sideWords } from '../../../../shared/engine/words/en/terms.table.ts'
import { capital, conditionInWords } from '../../../../shared/engine/words/words.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { MeasureField } from '../../../parts/MeasureField.tsx'
import { Conditions } from '../Conditions.tsx'
import { latestBefore } from '../latestBefore.ts'
import { Pairs } from '../Pairs.tsx'
import type { StepProps } from '../stepProps.ts'
import { Bought } from './Bought.tsx'
import type { SinceProps } from './sinceProps.ts'
import { Unchanged } from './Unchanged.tsx'
import { Worn } from './Worn.tsx'

type SinceStepProps = Pick<StepProps, 'draft' | 'change' | 'assessment' | 'earlier' | 'goTo'>
export function SinceStep({ draft, change, assessment, earlier, goTo }: SinceStepProps) {
	const { since, visitDate } = draft.visit
	if (!since) return null
	const last =
		earlier.findLast((one) => one.visitDate === since.visitDate) ?? latestBefore(earlier, visitDate)
	const props = { draft, change, since }
	return (
		<Box sx={{ display: 'grid', gap: 1.5 }}>
			<Typography variant="body2" color="text.secondary">
				Since {dayInWords(since.visitDate)}. {askedOfAll(assessment?.prescription.gate)}
			</Typography>
			<Done {...props} />
			<Bought {...props} />
			<Worn {...props} />
			<Kept {...props} />
			<Part title="How it is today">
				<Then last={last} />
				<Conditions draft={draft} change={change} goTo={goTo} />
			</Part>
			<Unchanged {...props} last={last} />
			<Part title="Pairs the player owns">
				<Pairs draft={draft} change={change} assessment={assessment} />
			</Part>
		</Box>
	)
}
/** How it stood then: why each is asked. */
function Then({ last }: { last: Visit | undefined }) {
	const told = (last?.conditions ?? []).flatMap((one) => {
		if (one.status === 'past') return []
		const pain = one.painWorst === undefined ? '' : `worst pain ${one.painWorst} of 10`
		const name = conditionInWords(one, 'clinician')
		return [[name, sideWords[one.side], one.status, pain].filter(Boolean).join(', ')]
	})
	if (!last || told.length === 0) return null
	return (
		<Typography variant="body2" color="text.secondary">
			On {dayInWords(last.visitDate)}: {told.join('; ')}.
		</Typography>
	)
}
const Part = ({ title, children }: { title: string; children: ReactNode }) => (
	<Box component="section" aria-label={title}>
		<Typography variant="h2" sx={{ mb: 0.5 }}>
			{title}
		</Typography>
		{children}
	</Box>
)
const line = {
	display: 'grid',
	gridTemplateColumns: 'minmax(0, 1fr) 10.5rem 10.5rem',
	columnGap: 1.5,
	rowGap: 0.5,
	alignItems: 'center',
	'@container (max-width: 30rem)': { gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)' },
	'& > :first-of-type': { '@container (max-width: 30rem)': { gridColumn: '1 / -1' } },
} as const
/** What the plan asked for first, with what became of it; why where it was not done. */
function Done({ draft, change, since: { done = [] } }: SinceProps) {
	if (done.length === 0) return null
	return (
		<Part title="What was to be done">
			<Box sx={{ containerType: 'inline-size', display: 'grid', gap: 0.5 }}>
				{done.map((row, place) => {
					const name = capital(toDoName(row))
					const path = `since.done.${place}`
					const asksWhy = row.answer !== undefined && row.answer !== 'done'
					return (
						<Box key={path} role="group" aria-label={name} sx={line}>
							<Typography>{name}</Typography>
							<MeasureField path={`${path}.answer`} draft={draft} change={change} />
							{(asksWhy || row.why) && (
								<MeasureField path={`${path}.why`} draft={draft} change={change} />
							)}
						</Box>
					)
				})}
			</Box>
		</Part>
	)
}
/** Questions of one answer, each where the last plan makes it worth asking. */
function Kept({ draft, change, since }: SinceProps) {
	const asked = [
		...(since.asksLetter ? [{ path: 'since.letter', name: 'What came of the letter' }] : []),
		...(since.asksWearingIn ? [{ path: 'since.wearingIn', name: 'Wearing in, step by step' }] : []),
		...(since.asksSeason ? [{ path: 'since.season', name: 'The plan of the season' }] : []),
	]
	if (asked.length === 0) return null
	return (
		<Part title="What was planned">
			<Box sx={{ containerType: 'inline-size', display: 'grid', gap: 0.5 }}>
				{asked.map(({ path, name }) => (
					<Box key={path} role="group" aria-label={name} sx={line}>
						<Typography>{name}</Typography>
						<MeasureField path={path} draft={draft} change={change} />
					</Box>
				))}
			</Box>
		</Part>
	)
}
