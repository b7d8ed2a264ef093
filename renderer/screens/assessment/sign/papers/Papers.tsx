/**
 * What the letter to the doctor and the insert order say beyond what was found. Each is offered
 * where its paper can be written; what is left empty is said as proposed.
 */
import { Alert, Box, Button, FormControlLabel, Radio, RadioGroup, Typography } from '@mui/material'
import { useMemo, useState } from 'react'
import { adjustmentsOf, keptInsertOf } from '../../../../../shared/engine/report/adjustments-of.ts'
import { speakOf } from '../../../../../shared/engine/report/base.ts'
import type { ReportInput } from '../../../../../shared/engine/report/inputs.ts'
import { insertOf } from '../../../../../shared/engine/report/insert-of.ts'
import { unnamedClinic } from '../../../../../shared/engine/report/kinds.ts'
import { hasReason } from '../../../../../shared/engine/report/referral/reasons.ts'
import { usualLetter } from '../../../../../shared/engine/report/referral.ts'
import { urgencies } from '../../../../../shared/engine/visit/letters.ts'
import { capital } from '../../../../../shared/engine/words/words.ts'
import { draftInput } from '../../../../parts/draftPages.ts'
import { useHost } from '../../../../query.ts'
import type { DraftProps, StepProps } from '../../stepProps.ts'
import { Fields, Group } from '../agreement/Group.tsx'
import { WrittenText } from '../WrittenText.tsx'
import { withWritten } from '../written.ts'

type PapersProps = Pick<StepProps, 'draft' | 'change' | 'assessment' | 'earlier'>
export function Papers({ draft, change, assessment, earlier }: PapersProps) {
	const clinic = useHost('clinic.get', {}).value ?? unnamedClinic
	const input = useMemo(
		() => assessment && draftInput({ draft, assessment, earlier, clinic }),
		[draft, assessment, earlier, clinic],
	)
	if (!input) return null
	return (
		<>
			<Letter draft={draft} change={change} input={input} />
			<Order draft={draft} change={change} input={input} />
		</>
	)
}
interface PaperProps extends DraftProps {
	input: ReportInput
}
function Letter({ draft, change, input }: PaperProps) {
	const [wanted, setWanted] = useState(false)
	const isWritten = draft.decisions.letter !== undefined
	if (!hasReason(input) && !isWritten && !wanted)
		return (
			<Box>
				<Button variant="text" onClick={() => setWanted(true)}>
					Write to the doctor
				</Button>
			</Box>
		)
	const { urgency, question } = usualLetter(input)
	const t = speakOf(input.clinic)
	const chosen = draft.decisions.letter?.urgency
	return (
		<Section title="Letter to the doctor" id="letter-to-the-doctor">
			<Group
				title="Urgency"
				asked={false}
				hint={`Asked for by what was found: ${t(`referral.urgency.${urgency}`)}.`}
			>
				<RadioGroup
					row
					aria-label="Urgency"
					name="letter.urgency"
					value={chosen ?? urgency}
					onChange={({ target }) =>
						change((now) =>
							withWritten(
								now,
								'letter',
								'urgency',
								target.value === urgency ? undefined : target.value,
							),
						)
					}
				>
					{urgencies.map((one) => (
						<FormControlLabel
							key={one}
							value={one}
							label={capital(t(`referral.urgency.${one}`))}
							control={<Radio />}
						/>
					))}
				</RadioGroup>
				{chosen !== undefined && urgencies.indexOf(chosen) < urgencies.indexOf(urgency) && (
					<Alert severity="warning" role="note">
						Less urgent than what was found asks for: the letter says so as you chose, with every
						reason as it is.
					</Alert>
				)}
			</Group>
			<Fields>
				<WrittenText
					of="letter"
					path="question"
					lines
					otherwise={question}
					draft={draft}
					change={change}
				/>
				<WrittenText of="letter" path="words" lines draft={draft} change={change} />
				<WrittenText of="letter" path="enclosures" otherwise="none" draft={draft} change={change} />
				<WrittenText of="letter" path="copyTo" otherwise="none" draft={draft} change={change} />
			</Fields>
		</Section>
	)
}
function Order({ draft, change, input }: PaperProps) {
	const { left, right } = insertOf(input)
	const isAdjusted = adjustmentsOf(input) !== undefined
	const isOrdered = left.length + right.length > 0 && keptInsertOf(input) === undefined
	if (!isAdjusted && !isOrdered && draft.decisions.order === undefined) return null
	return (
		<Section title={isAdjusted ? 'Insert adjustment' : 'Insert order'} id="insert-order">
			<Fields>
				<WrittenText of="order" path="number" draft={draft} change={change} />
				<WrittenText of="order" path="laboratory" draft={draft} change={change} />
				<WrittenText of="order" path="neededBy" draft={draft} change={change} />
				<WrittenText of="order" path="sent" draft={draft} change={change} />
				<WrittenText
					of="order"
					path="shipTo"
					otherwise={[input.clinic.name, ...input.clinic.address].join(', ')}
					draft={draft}
					change={change}
				/>
			</Fields>
		</Section>
	)
}
function Section({
	title,
	id,
	children,
}: {
	title: string
	id: string
	children: React.ReactNode
}) {
	return (
		<Box component="section" aria-labelledby={id}>
			<Typography variant="h2" id={id}>
				{title}
			</Typography>
			{children}
		</Box>
	)
}
