/**
 * Below the result: what was found on this step alone, the most consequential first; the rest, the
 * course over the visits and the workings are one key away.
 */
import { Box, Button, Typography } from '@mui/material'
import { useEffect, useId, useMemo, useRef, useState } from 'react'
import { chartsOf } from '../../../../shared/engine/charts/charts.ts'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import { type Finding, isGrave, type Level } from '../../../../shared/engine/findings/finding.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { Basis, sentence } from '../../../parts/Basis.tsx'
import { ChartView } from '../../../parts/ChartView.tsx'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { useScrolls } from '../../../parts/useScrolls.ts'
import { WorkingsList, workingsOf } from '../../../parts/Workings.tsx'
import { levelWords } from '../levelWords.ts'
import { broad, narrow } from '../narrow.ts'
import type { Step } from '../steps.ts'

const levelColours: Record<Level, string> = {
	stop: 'error.main',
	caution: 'warning.main',
	advise: 'primary.main',
	note: 'text.secondary',
}
/** Where nothing is a stop or a caution, so many are shown at once. */
const mostShown = 2
/** A chart of one point tells nothing that its figure does not tell. */
const leastPoints = 2

function FindingShown({ finding }: { finding: Finding }) {
	const { level, says, because, basis } = finding
	const grave = isGrave(finding)
	return (
		<Box
			component="li"
			sx={{
				// as far in with its mark as without
				...(grave
					? { borderLeft: 3, borderColor: levelColours[level], pl: 1 }
					: { pl: 'calc(0.5rem + 3px)' }),
				listStyle: 'none',
				'& .MuiButton-root': { my: -0.5 },
			}}
		>
			<Basis
				because={because}
				basis={basis}
				head={
					<Box sx={{ flex: '1 1 14rem', minWidth: 0, display: 'flex', columnGap: 1, py: 0.25 }}>
						<Typography
							component="span"
							variant="body2"
							sx={{
								flex: 'none',
								minWidth: '4.2em',
								fontWeight: grave ? 700 : 600,
								color: levelColours[level],
							}}
						>
							{levelWords[level]}
						</Typography>
						<Typography component="span" variant="body2" sx={{ ...sentence, display: 'block' }}>
							{says}
						</Typography>
					</Box>
				}
			/>
		</Box>
	)
}
interface StepFindingsProps {
	assessment: Assessment | undefined
	/** The visit that was assessed and those before it, for the charts. */
	visit: Visit
	earlier: readonly Visit[]
	step: Step
	/** It has a column of its own: all findings and the course over the visits have room. */
	beside: boolean
	/** Opens the help of the field in hand; undefined where it has none, or it stands open. */
	help: (() => void) | undefined
}
/** One at a time, below the findings. */
type Opened = 'more' | 'course' | 'workings'

export function StepFindings(props: StepFindingsProps) {
	const { assessment, step, help, beside } = props
	const [opened, setOpened] = useState<Opened>()
	const list = useRef<HTMLDivElement>(null)
	const scrolls = useScrolls(list)
	const id = useId()
	const charts = useCharts(props)
	const workings = workingsOf(assessment, step.topics)
	const here = assessment?.findings.filter(({ topic }) => step.topics.includes(topic)) ?? []
	const { shown, more } = mostConsequential(here, beside || opened === 'more')
	// what was opened by a key comes into sight
	useEffect(() => {
		if (opened && opened !== 'more')
			document.getElementById(id)?.scrollIntoView({ block: 'nearest' })
	}, [opened, id])
	const toggle = (part: Opened) => setOpened((now) => (now === part ? undefined : part))
	return (
		<Box component="section" aria-label="Findings" sx={frame}>
			<Box
				ref={list}
				role="group"
				aria-label="What was found on this step"
				tabIndex={scrolls ? 0 : undefined}
				sx={{ ...forTheRing, overflow: 'auto', minHeight: 0, [narrow]: { overflow: 'visible' } }}
			>
				{here.length === 0 && (
					<Typography variant="body2" color="text.secondary">
						Nothing found on this step yet.
					</Typography>
				)}
				<Box component="ul" sx={{ p: 0, m: 0, display: 'grid', rowGap: 0.5 }}>
					{shown.map((finding) => (
						<FindingShown key={finding.id} finding={finding} />
					))}
				</Box>
				<Box id={id}>
					{(beside || opened === 'course') &&
						charts.map((chart) => <ChartView key={chart.id} chart={chart} />)}
					{opened === 'workings' && <WorkingsList workings={workings} />}
				</Box>
			</Box>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 0.5, flex: 'none', minHeight: 44 }}>
				{!beside && (more > 0 || opened === 'more') && (
					<Opener keys="Alt+M" open={opened === 'more'} press={() => toggle('more')}>
						{opened === 'more' ? 'Fewer findings' : `${more} more`}
					</Opener>
				)}
				{!beside && charts.length > 0 && (
					<Opener keys="Alt+C" open={opened === 'course'} press={() => toggle('course')}>
						Over the visits
					</Opener>
				)}
				{workings.length > 0 && (
					<Opener keys="Alt+W" open={opened === 'workings'} press={() => toggle('workings')}>
						How it was worked out
					</Opener>
				)}
				{help && (
					<Opener keys="F1" press={help}>
						How to measure
					</Opener>
				)}
			</Box>
		</Box>
	)
}
/** What scrolls leaves room for the ring of what has the focus at its edge. */
const forTheRing = {
	px: 0.75,
	mx: -0.75,
	py: 1.25,
	my: -1.25,
	// the buttons are higher than their lines: above and below, the ring stands inside
	'& button:focus-visible': { outlineOffset: '-3px' },
}
/** The result above keeps at least half of the height. */
const frame = {
	flex: '0 1 auto',
	minHeight: '6.5rem',
	maxHeight: '50%',
	[broad]: { maxHeight: 'none' },
	display: 'flex',
	flexDirection: 'column',
	borderTop: 1,
	borderColor: 'divider',
	pt: 0.75,
	[narrow]: { maxHeight: 'none' },
} as const
/** Findings come in the order of their consequence; a stop or a caution is never folded away. */
function mostConsequential(here: readonly Finding[], all: boolean) {
	const grave = here.filter(isGrave).length
	const shown = all ? here : here.slice(0, Math.max(mostShown, grave))
	return { shown, more: here.length - shown.length }
}
function useCharts({ assessment, visit, earlier, step: { topics } }: StepFindingsProps) {
	return useMemo(
		() =>
			assessment
				? topics
						.flatMap((topic) => chartsOf(topic, visit, earlier, assessment, clinicProtocol))
						.filter(({ visits }) => visits >= leastPoints)
				: [],
		[assessment, visit, earlier, topics],
	)
}
interface OpenerProps {
	keys: string
	/** Undefined where what it opens stands elsewhere. */
	open?: boolean
	press: () => void
	children: string
}
function Opener({ keys, open, press, children }: OpenerProps) {
	return (
		<Button
			variant="text"
			size="small"
			aria-expanded={open}
			aria-keyshortcuts={keys}
			onClick={press}
			sx={{ px: 1 }}
		>
			{children}
			<Box component="span" aria-hidden sx={{ ml: 0.75, fontWeight: 400, color: 'text.secondary' }}>
				{keys}
			</Box>
		</Button>
	)
}
