/**
 * Beside the measures of a step: its result, which never leaves the sight, and below it (on a wide
 * window beside it) what was found on this step. Help on the field in focus takes the place of the
 * result.
 */
import { Box, Typography } from '@mui/material'
import { type ComponentType, useRef } from 'react'
import { helpOf } from '../../../parts/help/topic.ts'
import { Measuring } from '../../../parts/Measuring.tsx'
import { useRoom } from '../../../parts/useRoom.ts'
import { useScrolls } from '../../../parts/useScrolls.ts'
import { broad, narrow } from '../narrow.ts'
import type { Step, StepName } from '../steps.ts'
import { AnklesResult } from './AnklesResult.tsx'
import { FeetResult } from './FeetResult.tsx'
import { FlagsResult } from './FlagsResult.tsx'
import { GrowthResult } from './GrowthResult.tsx'
import { PlayResult } from './PlayResult.tsx'
import { PostureResult } from './PostureResult.tsx'
import type { ResultProps } from './resultProps.ts'
import { StepFindings } from './StepFindings.tsx'

/** The steps that take the whole width show no result beside them. */
const resultOf: Readonly<Partial<Record<StepName, ComponentType<ResultProps>>>> = {
	'Since then': PlayResult,
	Play: PlayResult,
	Flags: FlagsResult,
	Feet: FeetResult,
	Ankles: AnklesResult,
	Posture: PostureResult,
	Growth: GrowthResult,
}
interface ResultAreaProps extends Omit<ResultProps, 'assessment'> {
	step: Step
	/** Undefined while it cannot be worked out: `trouble` says why. */
	assessment: ResultProps['assessment'] | undefined
	trouble: string
	helpOpen: boolean
	setHelpOpen: (open: boolean) => void
}
/** As high as the window leaves it, so that neither part is ever under the head or the foot. */
const inSight = {
	position: 'sticky',
	top: 'calc(var(--walk-head) + 0.5rem)',
	height: 'calc(100vh - var(--frame-head) - var(--walk-head) - var(--walk-foot) - 1rem)',
	display: 'flex',
	flexDirection: 'column',
	gap: 1,
	minHeight: 0,
	[broad]: { flexDirection: 'row', gap: 3 },
	[narrow]: { position: 'static', height: 'auto' },
} as const

export function ResultArea(props: ResultAreaProps) {
	const { step, assessment, visit, earlier, focused, helpOpen, setHelpOpen } = props
	const hasHelp = focused !== '' && helpOf(focused) !== undefined
	const helps = helpOpen && hasHelp
	const besides = useRef<HTMLDivElement>(null)
	// where it stands below the result it has no box of its own
	const column = useRoom(besides)
	return (
		<Box component="aside" aria-label="Result" sx={inSight}>
			<Answer {...props} helps={helps} />
			<Box
				ref={besides}
				sx={{
					display: 'contents',
					[broad]: { display: 'flex', flexDirection: 'column', flex: '0 0 26rem' },
				}}
			>
				<StepFindings
					key={step.name}
					{...{ assessment, visit, earlier, step }}
					beside={(column?.height ?? 0) > 0}
					help={!helps && hasHelp ? () => setHelpOpen(true) : undefined}
				/>
			</Box>
		</Box>
	)
}
/** The result of the step, or help in its place. */
function Answer({
	step,
	assessment,
	trouble,
	helps,
	...rest
}: ResultAreaProps & { helps: boolean }) {
	const { focused, draft, setHelpOpen } = rest
	const box = useRef<HTMLDivElement>(null)
	const scrolls = useScrolls(box)
	const Result = resultOf[step.name]
	return (
		<Box
			ref={box}
			role="group"
			aria-label={helps ? 'Help' : step.name}
			tabIndex={scrolls ? 0 : undefined}
			sx={{
				position: 'relative',
				flex: '1 1 0',
				minHeight: 0,
				minWidth: 0,
				overflow: 'auto',
				// room for the ring of what has the focus at its edge
				px: 0.75,
				mx: -0.75,
				display: 'flex',
				flexDirection: 'column',
				[narrow]: { flex: 'none', overflow: 'visible' },
			}}
		>
			{helps && <Measuring path={focused} draft={draft} close={() => setHelpOpen(false)} />}
			{trouble && <Typography role="status">{trouble}</Typography>}
			{!helps && assessment && Result && <Result assessment={assessment} {...rest} />}
		</Box>
	)
}
