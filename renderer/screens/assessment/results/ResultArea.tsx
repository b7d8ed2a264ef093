/**
 * Beside the measures of a step: its result, which never leaves the sight, and below it what was
 * found on this step. Help on the field in focus takes the place of the result.
 */
import { Box, Typography } from '@mui/material'
import type { ComponentType } from 'react'
import { Measuring } from '../../../parts/Measuring.tsx'
import { narrow } from '../narrow.ts'
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
export function ResultArea({ step, assessment, trouble, ...rest }: ResultAreaProps) {
	const { focused, draft, helpOpen, setHelpOpen } = rest
	const Result = resultOf[step.name]
	const helps = helpOpen && focused !== ''
	return (
		<Box
			component="aside"
			aria-label="Result"
			sx={{
				position: 'sticky',
				top: 'var(--walk-head)',
				height: 'calc(100vh - var(--walk-head) - var(--walk-foot))',
				display: 'flex',
				flexDirection: 'column',
				gap: 1.5,
				minHeight: 0,
				[narrow]: { position: 'static', height: 'auto' },
			}}
		>
			{helps && <Measuring path={focused} draft={draft} open={helpOpen} setOpen={setHelpOpen} />}
			{trouble && <Typography role="status">{trouble}</Typography>}
			{!helps && assessment && Result && <Result assessment={assessment} {...rest} />}
			<StepFindings {...{ assessment, visit: rest.visit, earlier: rest.earlier }} step={step} />
		</Box>
	)
}
