/**
 * A player's visits side by side: what really changed beyond error first, then charts, then every
 * measure.
 */
import { Alert, Box, Chip, Link, Paper, Stack, Typography } from '@mui/material'
import { useEffect, useMemo, useState } from 'react'
import { assess } from '../../../shared/engine/assess.ts'
import { chartsOf } from '../../../shared/engine/charts/charts.ts'
import type { Assessment, Change } from '../../../shared/engine/findings/assessment.ts'
import { examinerWords } from '../../../shared/engine/findings/change.ts'
import { ageYears, dayInWords } from '../../../shared/engine/visit/age.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { bothSides, meanOf, rounded } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { ChartView } from '../../parts/ChartView.tsx'
import { clinicProtocol, loadProtocol } from '../../parts/clinicProtocol.ts'
import { readPath } from '../../parts/draft-path.ts'
import { Trouble } from '../../parts/form.tsx'
import { unitShown } from '../../parts/units.ts'
import { steps } from '../assessment/steps.ts'
import { loadChart, painChart } from './courses.ts'

interface Opened {
	name: string
	visits: readonly Visit[]
	draftDate: string | undefined
}
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

/** Signed visits that count, and the open draft where there is one, in order of time. */
async function open(playerId: string): Promise<Opened> {
	await loadProtocol()
	const { player, visits, drafts } = await call('players.open', { playerId })
	const signed = await Promise.all(
		visits
			.filter((visit) => !visit.inError)
			.map(async ({ visitId }) => (await call('visits.open', { visitId })).visit),
	)
	const [draft] = drafts
	const working = draft
		? [(await call('drafts.open', { playerId, visitDate: draft.visitDate })).draft.content.visit]
		: []
	// a draft that amends a visit of the same day stands for it
	const dates = new Set(working.map((one) => one.visitDate))
	const all = [...signed.filter((one) => !dates.has(one.visitDate)), ...working].sort((a, b) =>
		a.visitDate < b.visitDate ? -1 : 1,
	)
	return {
		name: `${player.givenName} ${player.familyName}`,
		visits: all,
		draftDate: draft?.visitDate,
	}
}
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
	return rows.sort((a, b) => order.indexOf(a.change.verdict) - order.indexOf(b.change.verdict))
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
	const step =
		change === 0
			? 'The same'
			: `${rounded(Math.abs(change), 2)} ${shownUnit} ${change > 0 ? 'more' : 'less'}`
	return (
		`${step}: ${rounded(now, 2)} ${shownUnit} now, ${rounded(was, 2)} ${shownUnit} on ` +
		`${dayInWords(since)}. ` +
		`${verdict === 'cannot-compare' ? `Cannot be compared: ${why}` : `Smallest real change ${smallestReal} ${shownUnit} (${examinerWords[examiners]})`}.`
	)
}
/** What a cell of the table shows: the mean of repeats, words of a choice. */
function shown(visit: Visit, path: string): string {
	const value = readPath(visit, path)
	if (value === undefined || value === null)
		return visit.notMeasured?.[path] ? `not measured: ${visit.notMeasured[path]}` : ''
	if (path.endsWith('fpi6') && Array.isArray(value))
		return String(value.reduce((sum: number, one: number) => sum + one, 0))
	if (Array.isArray(value) || typeof value === 'number')
		return String(rounded(meanOf(value as number | number[]) ?? 0, 1))
	return typeof value === 'boolean' ? (value ? 'yes' : 'no') : termWords(String(value))
}
const paths = [
	...new Set(
		steps.flatMap((step) =>
			step.groups.flatMap((group) => group.fields.flatMap((row) => [...row.paths])),
		),
	),
].filter((path) => path !== 'feet.examiner')
const rowName = (path: string): string => {
	const meta = fieldMeta(visitSchema, path),
		side = /\.(left|right)\./.exec(path)?.[1]
	return `${meta.title}${side ? `, ${side}` : ''}${unitShown(meta.unit) && meta.kind === 'number' ? ` (${unitShown(meta.unit)})` : ''}`
}

export function Trends({ playerId }: { playerId: string }) {
	const [opened, setOpened] = useState<Opened>()
	const [says, setSays] = useState('')
	useEffect(() => {
		open(playerId).then(setOpened, (error) => setSays(wordsOf(error)))
	}, [playerId])
	const { assessment, charts, trouble } = useMemo(() => {
		const latest = opened?.visits.at(-1)
		if (!opened || !latest) return { charts: [] }
		const earlier = opened.visits.slice(0, -1)
		try {
			const found = assess(latest, earlier, clinicProtocol.file)
			const own = [painChart(opened.visits), loadChart(opened.visits)].filter(
				(one) => one !== undefined,
			)
			return {
				assessment: found,
				charts: [
					...(['sizing', 'growth', 'ankle'] as const).flatMap((topic) =>
						chartsOf(topic, latest, earlier, found, clinicProtocol),
					),
					...own,
				].filter((chart) => chart.visits > 1),
			}
		} catch {
			return {
				charts: [],
				trouble:
					'The course cannot be worked out from these visits. The measures stand below as they ' +
					'were recorded.',
			}
		}
	}, [opened])
	if (!opened)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">Opening the visits.</Typography>
		)
	const { visits, draftDate } = opened
	const changes = assessment ? changesOf(assessment) : []
	const rows = paths
		.map((path) => ({ path, cells: visits.map((visit) => shown(visit, path)) }))
		.filter((row) => row.cells.some((cell) => cell !== ''))
	const pains = [
		...new Set(
			visits.flatMap((visit) =>
				(visit.conditions ?? []).map((condition) => `${condition.condition} ${condition.side}`),
			),
		),
	]
	return (
		<Stack spacing={3}>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					justifyContent: 'space-between',
					alignItems: 'center',
					gap: 2,
				}}
			>
				<Box>
					<Typography variant="h1">Trends</Typography>
					<Typography color="text.secondary">
						{opened.name}, {visits.length} {visits.length === 1 ? 'visit' : 'visits'}
						{draftDate ? '; the last one is a draft, not signed' : ''}
					</Typography>
				</Box>
				<Link
					href={`#/players/${playerId}`}
					underline="hover"
					sx={{
						display: 'inline-flex',
						alignItems: 'center',
						minHeight: 44,
						px: 1.5,
						fontWeight: 600,
					}}
				>
					Back to the player
				</Link>
			</Box>
			{trouble ? <Alert severity="warning">{trouble}</Alert> : null}
			{visits.length === 0 ? (
				<Alert severity="info">
					No visits yet. <Link href={`#/assessment/${playerId}`}>Start an assessment</Link>; its
					measures then stand here.
				</Alert>
			) : null}
			{visits.length > 0 ? (
				<Paper component="section" variant="outlined" sx={{ p: 2 }}>
					<Typography variant="h2">What really changed</Typography>
					<Typography variant="body2" color="text.secondary">
						Since the last visit that has the measure. Real only from the smallest real change of
						the protocol, which stands beside it; its source stands in Settings, Protocol.
					</Typography>
					{changes.length === 0 ? (
						<Typography sx={{ mt: 1 }}>
							Nothing to compare yet: two visits with the same measure are needed.
						</Typography>
					) : null}
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
			) : null}
			{charts.length > 0 ? (
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(30rem, 100%), 1fr))',
						gap: 2,
						alignItems: 'start',
					}}
				>
					{charts.map((chart) => (
						<Paper
							key={chart.id}
							variant="outlined"
							sx={{ p: 2, minWidth: 0, '& figure': { mt: 0 } }}
						>
							<ChartView chart={chart} />
						</Paper>
					))}
				</Box>
			) : null}
			{visits.length > 0 ? (
				<Paper component="section" variant="outlined" sx={{ p: 2 }}>
					<Typography variant="h2">Visits side by side</Typography>
					<Box
						role="region"
						aria-label="Visits side by side"
						tabIndex={0}
						sx={{ overflowX: 'auto' }}
					>
						<Box
							component="table"
							sx={{
								borderCollapse: 'collapse',
								minWidth: '100%',
								fontVariantNumeric: 'tabular-nums',
								'& th, & td': {
									textAlign: 'left',
									py: 0.75,
									pr: 3,
									borderBottom: 1,
									borderColor: 'divider',
								},
								'& tbody th': { fontWeight: 400 },
							}}
						>
							<thead>
								<tr>
									<th scope="col">Measure</th>
									{visits.map((visit) => (
										<th key={visit.visitDate} scope="col">
											{dayInWords(visit.visitDate)}
											{visit.visitDate === draftDate ? ' (draft)' : ''}
										</th>
									))}
								</tr>
							</thead>
							<tbody>
								<tr>
									<th scope="row">Age (years)</th>
									{visits.map((visit) => (
										<td key={visit.visitDate}>
											{ageYears(visit.player.birthDate, visit.visitDate)}
										</td>
									))}
								</tr>
								{rows.map((row) => (
									<tr key={row.path}>
										<th scope="row">{rowName(row.path)}</th>
										{row.cells.map((cell, index) => (
											<td key={visits[index]?.visitDate}>{cell}</td>
										))}
									</tr>
								))}
								{pains.map((pain) => (
									<tr key={pain}>
										<th scope="row">
											Worst pain, {pain.split(' ').map(termWords).join(', ')} (/10)
										</th>
										{visits.map((visit) => {
											const found = visit.conditions?.find(
												(condition) => `${condition.condition} ${condition.side}` === pain,
											)
											return (
												<td key={visit.visitDate}>
													{found ? (found.painWorst ?? found.status) : ''}
												</td>
											)
										})}
									</tr>
								))}
							</tbody>
						</Box>
					</Box>
				</Paper>
			) : null}
		</Stack>
	)
}
