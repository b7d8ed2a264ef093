/** What brought the player, what the player has, what is played and on what, and what is worn. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { isAdult } from '../../../shared/engine/facts/age.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { surfaces } from '../../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { DenseField, DenseGrid, Labelled } from '../../parts/DenseField.tsx'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { MeasureField } from '../../parts/MeasureField.tsx'
import { SeveralOf } from '../../parts/measure/Toggles.tsx'
import { Conditions } from './Conditions.tsx'
import { Pairs } from './Pairs.tsx'
import { InsertWorn } from './since/InsertWorn.tsx'
import type { DraftProps, StepProps } from './stepProps.ts'
import type { Step } from './steps.ts'
import { TakeOver } from './TakeOver.tsx'

interface PlayStepProps extends Pick<StepProps, 'draft' | 'change' | 'assessment' | 'goTo'> {
	step: Step
	/** The visit before this one. */
	last: Visit | undefined
}
export function PlayStep({ step, last, goTo, ...props }: PlayStepProps) {
	const { draft, change } = props
	return (
		<Box sx={{ display: 'grid', gap: 2 }}>
			<TakeOver last={last} draft={draft} change={change} />
			<Complaint draft={draft} change={change} />
			<Part title="Conditions">
				<Conditions draft={draft} change={change} goTo={goTo} />
			</Part>
			<Part title="Play">
				<Grids step={step} last={last} draft={draft} change={change} />
				<Surfaces draft={draft} change={change} />
			</Part>
			<Part title="Pairs the player owns" answers="footwear">
				<Pairs {...props} />
			</Part>
			{draft.visit.insertWorn && !draft.visit.since && (
				<Part title="The insert that is worn">
					<InsertWorn draft={draft} change={change} />
				</Part>
			)}
			<DenseField
				path="notes"
				hint="For the clinician alone: no document carries them"
				draft={draft}
				change={change}
			/>
		</Box>
	)
}
interface PartProps {
	title: string
	/** What a visit is told to lack where nothing stands in it. */
	answers?: string
	children: ReactNode
}
const Part = ({ title, answers, children }: PartProps) => (
	<Box component="section" aria-label={title} data-answers={answers}>
		<Typography variant="h2" sx={{ mb: 0.5 }}>
			{title}
		</Typography>
		{children}
	</Box>
)
function Complaint(props: DraftProps) {
	const { title } = fieldMeta(visitSchema, 'complaint')
	return (
		<Box>
			<Typography variant="h2">{title}</Typography>
			<MeasureField path="complaint" {...props} />
		</Box>
	)
}
/** What only the limits of load for the young ask of: no rule reads it of an adult. */
const askedOfTheYoung: readonly string[] = [
	'play.freePlayHoursPerWeek',
	'play.monthsPerYearInOneSport',
	'play.daysOffPerWeek',
]
const isAsked = (path: string, { visit, raw }: DraftProps['draft']): boolean =>
	!askedOfTheYoung.includes(path) ||
	!isAdult(visit, clinicProtocol) ||
	// what stands in it already stays in sight
	readPath(visit, path) !== undefined ||
	raw[path] !== undefined
/** Terms and words in wide columns, values of a few digits in narrow ones. */
function Grids({ step, last, draft, change }: DraftProps & Pick<PlayStepProps, 'step' | 'last'>) {
	const rows = step.groups.flatMap(({ fields }) => fields)
	const isNumber = (path: string) => fieldMeta(visitSchema, path).kind === 'number'
	const fieldsOf = (number: boolean) =>
		rows
			.filter(({ paths: [path] }) => isNumber(path) === number && isAsked(path, draft))
			.map(({ paths: [path], hint }) => (
				<DenseField
					key={path}
					path={path}
					hint={hint}
					draft={draft}
					change={change}
					before={last && readPath(last, path)}
				/>
			))
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			<DenseGrid columnRem={14}>{fieldsOf(false)}</DenseGrid>
			<DenseGrid columnRem={9}>{fieldsOf(true)}</DenseGrid>
		</Box>
	)
}
const surfacesPath = 'play.surfaces'
function Surfaces({ draft, change }: DraftProps) {
	return (
		<Box data-answers={surfacesPath} sx={{ pt: 1 }}>
			<Labelled title="Surfaces">
				<SeveralOf
					name="Surfaces"
					path={surfacesPath}
					terms={surfaces}
					chosen={draft.visit.play?.surfaces ?? []}
					choose={(terms) => change((now) => withValue(now, surfacesPath, terms))}
				/>
			</Labelled>
		</Box>
	)
}
