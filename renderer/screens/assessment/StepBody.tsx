/** The step on screen: what it still lacks, its measures, and what belongs to it alone. */
import { Box, Paper, Typography } from '@mui/material'
import type { FocusEvent, ReactNode, RefObject } from 'react'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { TestsWait } from '../../parts/measure/NotToday.tsx'
import { spokenOnly } from '../../parts/spokenOnly.ts'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { Conditions } from './Conditions.tsx'
import { Decide } from './decide/Decide.tsx'
import { Flags } from './Flags.tsx'
import { Pairs, Surfaces } from './Lists.tsx'
import { latestBefore } from './latestBefore.ts'
import { MeasureGroup } from './MeasureGroup.tsx'
import { Sign } from './sign/Sign.tsx'
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
	onSigned: () => void
}
export function StepBody(props: StepBodyProps) {
	const { draft, change, earlier, step, said } = props
	const last = latestBefore(earlier, draft.visit.visitDate)
	const tellFocus = (event: FocusEvent<HTMLElement>) => {
		const { path } = event.target.dataset
		if (path !== undefined) props.focus(path)
	}
	return (
		<Box
			ref={props.box}
			sx={{ display: 'grid', gap: 1.5 }}
			onKeyDown={step.wide ? undefined : walkByEnter}
			onFocus={tellFocus}
		>
			<Typography role="status" sx={{ fontWeight: 600, '&:empty': { display: 'none' } }}>
				{said}
			</Typography>
			<Typography variant="h1" ref={props.heading} tabIndex={-1} sx={spokenOnly}>
				{step.name}
			</Typography>
			<TestsWait value={props.assessment?.testsWait}>
				{step.groups.map((group) => (
					<MeasureGroup key={group.heading} {...{ group, draft, change, last }} />
				))}
				<OfStep {...props} />
			</TestsWait>
		</Box>
	)
}

/** What stands on one step alone. */
function OfStep(props: StepBodyProps) {
	const { draft, change } = props
	switch (props.step.name) {
		case 'Play':
			return (
				<>
					<Sheet title="Surfaces">
						<Surfaces draft={draft} change={change} />
					</Sheet>
					<Sheet title="Conditions">
						<Conditions draft={draft} change={change} goTo={props.goTo} />
					</Sheet>
					<Sheet title="Pairs the player owns">
						<Pairs draft={draft} change={change} />
					</Sheet>
					<Paper variant="outlined" sx={{ p: 2 }}>
						<FieldRow
							paths={['notes']}
							hint="For the clinician alone: no document carries them"
							draft={draft}
							change={change}
						/>
					</Paper>
				</>
			)
		case 'Flags':
			return <Flags {...props} />
		case 'Decide':
			return <Decide {...props} />
		case 'Sign':
			return <Sign {...props} />
		default:
			return null
	}
}
function Sheet({ title, children }: { title: string; children: ReactNode }) {
	return (
		<Paper variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h2">{title}</Typography>
			{children}
		</Paper>
	)
}
