/** What changed between visits, the real changes first. */
import { Box, Chip, Typography } from '@mui/material'
import type { Change } from '../../../shared/engine/findings/assessment.ts'
import { examinerWords } from '../../../shared/engine/findings/change.ts'
import { changesOfVisit } from '../../../shared/engine/findings/measure-change.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { unitShown } from '../../parts/units.ts'

const verdictWords: Record<Change['verdict'], string> = {
	real: 'Real change',
	'within-error': 'Within error',
	'cannot-compare': 'Cannot be compared',
}
/** Of a measure for which no smallest real change is held. */
const noLimit = 'No limit known'
const order: Change['verdict'][] = ['real', 'cannot-compare', 'within-error']

interface Compared {
	key: string
	title: string
	change: Change
	/** Whether any smallest real change is known for the measure. */
	hasLimit: boolean
}
/** The real changes first, those of measures without a published limit last. */
function changesOf(visits: readonly Visit[]): Compared[] {
	const latest = visits.at(-1)
	if (!latest) return []
	const rank = ({ change, hasLimit }: Compared) =>
		hasLimit ? order.indexOf(change.verdict) : order.length
	return changesOfVisit(latest, visits.slice(0, -1), clinicProtocol)
		.map(({ placed: { key, measure }, side, change }) => ({
			key: `${key} ${side ?? ''}`,
			title: side ? `${measure.label}, ${side}` : measure.label,
			change,
			hasLimit: measure.realChange !== 'none',
		}))
		.sort((former, latter) => rank(former) - rank(latter))
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
	const shownUnit = unitShown(unit)
	const verdictSentence =
		verdict === 'cannot-compare'
			? capital(why ?? '')
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

/** @param visits in order of time; the last one is compared with those before it */
export function WhatChanged({ visits }: { visits: readonly Visit[] }) {
	const changes = changesOf(visits)
	return (
		<Panel
			title="What really changed"
			hint={
				'Since the last visit that has the measure. Real only from the smallest real change of ' +
				'the protocol, which stands beside it; its source stands in Settings, Protocol.'
			}
		>
			{changes.length === 0 && (
				<Empty says="Nothing to compare yet: two visits with the same measure are needed." />
			)}
			<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
				{changes.map(({ key, title, change, hasLimit }) => (
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
							label={hasLimit ? verdictWords[change.verdict] : noLimit}
							sx={{ justifySelf: 'start' }}
						/>
						<Typography sx={{ fontWeight: 600 }}>{title}</Typography>
						<Typography variant="body2">{changeSentence(change)}</Typography>
					</Box>
				))}
			</Box>
		</Panel>
	)
}
