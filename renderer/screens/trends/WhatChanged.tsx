/** What changed between visits, the real changes first. */
import { Box, Chip, Paper, Typography } from '@mui/material'
import type { Assessment, Change } from '../../../shared/engine/findings/assessment.ts'
import { examinerWords } from '../../../shared/engine/findings/change.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { bothSides, rounded } from '../../../shared/engine/visit/sides.ts'

const nameOf: Record<string, string> = {
	lengthMm: 'Foot length',
	widthMm: 'Ball width',
	girthMm: 'Ball girth',
	lungeCm: 'Knee to wall',
	lungeDeg: 'Lunge angle',
	fpi: 'Foot posture index',
	navicularDropMm: 'Navicular drop',
	heelRises: 'Heel rises',
}
const verdictWords: Record<Change['verdict'], string> = {
	real: 'Real change',
	'within-error': 'Within error',
	'cannot-compare': 'Cannot be compared',
}
const order: Change['verdict'][] = ['real', 'cannot-compare', 'within-error']

function changesOf({
	sizing,
	ankle,
	posture,
}: Assessment): { key: string; title: string; change: Change }[] {
	const rows = [sizing.changes, ankle.changes, posture.changes].flatMap((room) =>
		bothSides.flatMap((side) =>
			Object.entries(room[side] as Record<string, Change | undefined>).flatMap(([key, change]) =>
				change ? [{ key: `${key} ${side}`, title: `${nameOf[key] ?? key}, ${side}`, change }] : [],
			),
		),
	)
	return rows.sort(
		(former, latter) => order.indexOf(former.change.verdict) - order.indexOf(latter.change.verdict),
	)
}
/**
 * '5.5 mm more: 246.5 mm now, 241 mm on 15 July 2026. Smallest real change 5 mm (same examiner).'
 */
function changeSentence({
	since,
	was,
	now,
	change,
	unit,
	examiners,
	smallestReal,
	verdict,
	why,
}: Change): string {
	const shownUnit = unit === 'deg' ? 'degrees' : unit
	const verdictSentence =
		verdict === 'cannot-compare'
			? `Cannot be compared: ${why}`
			: `Smallest real change ${smallestReal} ${shownUnit} (${examinerWords[examiners]})`
	const step =
		change === 0
			? 'The same'
			: `${rounded(Math.abs(change), 2)} ${shownUnit} ${change > 0 ? 'more' : 'less'}`
	return (
		`${step}: ${rounded(now, 2)} ${shownUnit} now, ${rounded(was, 2)} ${shownUnit} on ` +
		`${dayInWords(since)}. ${verdictSentence}.`
	)
}

/** @param assessment undefined where nothing could be worked out */
export function WhatChanged({ assessment }: { assessment: Assessment | undefined }) {
	const changes = assessment ? changesOf(assessment) : []
	return (
		<Paper component="section" variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h2">What really changed</Typography>
			<Typography variant="body2" color="text.secondary">
				Since the last visit that has the measure. Real only from the smallest real change of the
				protocol, which stands beside it; its source stands in Settings, Protocol.
			</Typography>
			{changes.length === 0 && (
				<Typography sx={{ mt: 1 }}>
					Nothing to compare yet: two visits with the same measure are needed.
				</Typography>
			)}
			<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
				{changes.map(({ key, title, change }) => (
					<Box
						component="li"
						key={key}
						sx={{
							display: 'grid',
							gridTemplateColumns: 'minmax(0, 11rem) minmax(0, 12rem) minmax(0, 1fr)',
							'@container (max-width: 54rem)': { gridTemplateColumns: 'minmax(0, 1fr)' },
							gap: 1,
							alignItems: 'center',
							py: 1,
							borderBottom: 1,
							borderColor: 'divider',
						}}
					>
						<Chip
							size="small"
							color={change.verdict === 'real' ? 'primary' : 'default'}
							variant={change.verdict === 'real' ? 'filled' : 'outlined'}
							label={verdictWords[change.verdict]}
							sx={{ justifySelf: 'start' }}
						/>
						<Typography sx={{ fontWeight: 600 }}>{title}</Typography>
						<Typography variant="body2">{changeSentence(change)}</Typography>
					</Box>
				))}
			</Box>
		</Paper>
	)
}
