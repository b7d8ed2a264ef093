/** The step on screen: its measures, and what belongs to it alone. */
import { Box, Typography } from '@mui/material'
import { type FocusEvent, type KeyboardEvent, type RefObject, useId } from 'react'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { TestsWait } from '../../parts/measure/NotToday.tsx'
import { spokenOnly } from '../../parts/spokenOnly.ts'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { Decide } from './decide/Decide.tsx'
import { Flags } from './Flags.tsx'
import { latestBefore } from './latestBefore.ts'
import { MeasureGroup } from './MeasureGroup.tsx'
import { narrow } from './narrow.ts'
import { PlayStep } from './PlayStep.tsx'
import { Sign } from './sign/Sign.tsx'
import { SinceStep } from './since/SinceStep.tsx'
import type { StepProps } from './stepProps.ts'
import type { Step } from './steps.ts'

interface StepBodyProps extends StepProps {
	box: RefObject<HTMLDivElement | null>
	heading: RefObject<HTMLHeadingElement | null>
	/** What a key did, in words. */
	said: string
	step: Step
	/** Told the path of the field that has the focus. */
	focus: (path: string) => void
	shelf: Shelf | undefined
	shelfTrouble: string
	/** The question of Decide that was asked for; empty where none was. */
	wanted: string
	/** How often one was asked for: the same may be asked for again. */
	asked: number
	/** Enter on the last field. */
	goOn: () => void
	onSigned: () => void
}
export function StepBody(props: StepBodyProps) {
	const { draft, change, earlier, step, said } = props
	const last = latestBefore(earlier, draft.visit.visitDate)
	const tellFocus = (event: FocusEvent<HTMLElement>) => {
		const { path } = event.target.dataset
		if (path !== undefined) props.focus(path)
	}
	const heading = useId()
	const walk = (event: KeyboardEvent<HTMLElement>) => {
		if (walkByEnter(event)) props.goOn()
	}
	return (
		<Box
			ref={props.box}
			role="group"
			aria-labelledby={heading}
			sx={{ ...clearOfHeadAndFoot, display: 'grid', gap: 1.5 }}
			onKeyDown={step.wide ? undefined : walk}
			onFocus={tellFocus}
		>
			<Typography role="status" sx={{ fontWeight: 600, '&:empty': { display: 'none' } }}>
				{said}
			</Typography>
			<Typography variant="h1" ref={props.heading} id={heading} tabIndex={-1} sx={spokenOnly}>
				{step.name}
			</Typography>
			<TestsWait value={props.assessment?.testsWait}>
				{step.name === 'Play' ? (
					<PlayStep {...props} last={last} />
				) : (
					step.groups.map((group) => (
						<MeasureGroup key={group.heading} {...{ group, draft, change, last }} />
					))
				)}
				<OfStep {...props} />
			</TestsWait>
		</Box>
	)
}
/** What takes the focus is never under the head or the foot. */
const clearOfHeadAndFoot = {
	'& :is(input, select, textarea, button, a, li)': {
		scrollMarginBlock: 'calc(var(--walk-head) + 0.5rem) calc(var(--walk-foot) + 4rem)',
	},
	[narrow]: { '& :is(input, select, textarea, button, a, li)': { scrollMarginBlock: '1rem' } },
}

/** What stands on one step alone. */
function OfStep(props: StepBodyProps) {
	switch (props.step.name) {
		case 'Since then':
			return <SinceStep {...props} />
		case 'Flags':
			return <Flags {...props} />
		case 'Decide':
			return <Decide key={props.asked} {...props} />
		case 'Sign':
			return <Sign {...props} />
		default:
			return null
	}
}
