/** What brought the player, and what is done about load. */
import { Box, Typography } from '@mui/material'
import { complaintsOf } from '../../../../shared/engine/prescription/load.ts'
import {
	conditionWords,
	exerciseWords,
} from '../../../../shared/engine/words/en/conditions.table.ts'
import { amount, listed } from '../../../../shared/engine/words/en/format.ts'
import { capital, sideWords } from '../../../../shared/engine/words/words.ts'
import { type Fact, Facts } from './Facts.tsx'
import type { AskedProps } from './stepTypes.ts'

export function LoadProposal({ draft: { visit }, assessment }: AskedProps) {
	const { load } = assessment.prescription
	const { returnSteps = [] } = assessment.loading
	const conditions = complaintsOf(visit).map(({ condition, side, pain }) =>
		[
			conditionWords[condition].name,
			...(side === 'none' ? [] : [sideWords[side]]),
			...(pain === undefined ? [] : [`worst pain ${pain} of 10`]),
		].join(', '),
	)
	const facts: Fact[] = [
		['Told', visit.complaint],
		['Now', conditions.length > 0 && capital(conditions.join('; '))],
		['Sport', load?.hoursPerWeek && `at most ${amount(load.hoursPerWeek, 'hours')} a week`],
		['Days off', load?.daysOffPerWeek && `at least ${load.daysOffPerWeek} a week`],
		[
			'Exercise',
			load &&
				load.exercises.length > 0 &&
				`${capital(listed(load.exercises.map((one) => exerciseWords[one])))}; how much is yours to say`,
		],
	]
	return (
		<Box>
			<Facts facts={facts} />
			{load?.returnWeeks !== undefined && returnSteps.length > 0 && (
				<>
					<Typography sx={{ fontWeight: 600, mt: 1 }}>
						Weekly steps back to the usual load
					</Typography>
					<Typography sx={{ fontVariantNumeric: 'tabular-nums' }}>
						{returnSteps
							.map(({ week, percentOfUsual }) => `${week}: ${Math.round(percentOfUsual)} %`)
							.join(', ')}
					</Typography>
				</>
			)}
		</Box>
	)
}
