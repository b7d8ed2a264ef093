/** One condition on a line: how it stands, on which side, how much it hurts; the rest folded. */
import { Box, Button, Typography } from '@mui/material'
import { type ReactNode, useId, useState } from 'react'
import { ageDoubt } from '../../../shared/engine/conditions/ages.ts'
import type { EnteredCondition } from '../../../shared/engine/conditions/query.ts'
import { conditionRow, questionsOf } from '../../../shared/engine/conditions/registry.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { type Feature, statuses } from '../../../shared/engine/visit/terms.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { unusualAgeQuestion } from '../../../shared/engine/words/en/conditions.ts'
import { capital, conditionInWords } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { DenseField, DenseGrid } from '../../parts/DenseField.tsx'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { AskedOf } from '../../parts/help/AskedOf.tsx'
import { OneOf } from '../../parts/measure/Toggles.tsx'
import { FeaturePicker } from './ConditionPicker.tsx'
import { questionGroup } from './questions.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

interface EnteredProps extends DraftProps {
	entered: EnteredCondition
	/** 'conditions.0' */
	path: string
}
interface ConditionRowProps extends EnteredProps, Pick<StepProps, 'goTo'> {
	remove: () => void
}
export function ConditionRow(props: ConditionRowProps) {
	const { entered, path, draft, change, remove } = props
	const name = conditionInWords({ condition: entered.condition }, 'clinician')
	const note = useNote()
	return (
		<Box
			component="section"
			aria-label={capital(name)}
			sx={{ borderLeft: 3, borderColor: 'divider', pl: 1.5, py: 0.5 }}
		>
			<AskedOf
				condition={entered.condition}
				head={
					<Typography variant="h3" sx={{ flex: '1 1 10rem' }}>
						{capital(name)}
					</Typography>
				}
				end={
					<>
						<NoteButton {...props} note={note} />
						<Button size="small" onClick={remove} aria-label={`Remove ${name}`} sx={{ px: 1 }}>
							Remove
						</Button>
					</>
				}
			/>
			<NoteField {...props} note={note} />
			<AgeQuestion {...props} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'end', columnGap: 2, rowGap: 0.5 }}>
				<SideOf {...props} />
				<OneOf
					name="Status"
					path={`${path}.status`}
					terms={statuses}
					chosen={entered.status}
					choose={(status) => change((now) => withValue(now, `${path}.status`, status))}
				/>
				{['painWorst', ...(draft.visit.since ? sinceFields : [])].map((key) => (
					<Box key={key} sx={{ width: '6.5rem' }}>
						<DenseField path={`${path}.${key}`} draft={draft} change={change} />
					</Box>
				))}
			</Box>
			<Unsaid {...props} />
			<Own {...props} />
			<QuestionsOf {...props} />
		</Box>
	)
}
/** What a re-check asks beside. */
const sinceFields = ['painNow', 'daysOff', 'sessionsMissed'] as const
const sides = ['left', 'right', 'both'] as const
function SideOf({ entered: { condition, side }, path, change }: EnteredProps) {
	if (conditionRow(condition).sides === 'person' && side === 'none') return null
	return (
		<OneOf
			name="Side"
			path={`${path}.side`}
			terms={sides}
			chosen={side === 'none' ? undefined : side}
			choose={(next) => change((now) => withValue(now, `${path}.side`, next ?? 'none'))}
		/>
	)
}
const Asked = ({ children }: { children: ReactNode }) => (
	<Typography role="status" variant="body2" sx={{ color: 'warning.main', pt: 0.25 }}>
		{children}
	</Typography>
)
/** What was not said yet, and what that means. */
function Unsaid({ entered: { condition, side, status } }: EnteredProps) {
	const lacksSide = side === 'none' && conditionRow(condition).sides === 'each'
	if (status !== undefined && !lacksSide) return null
	if (status !== undefined) return <Asked>Choose the side. Until then it counts for both.</Asked>
	return (
		<Asked>
			Choose {lacksSide ? 'side and ' : ''}status. Until its status is said nothing follows from it,
			and the visit is not signed.
		</Asked>
	)
}
function AgeQuestion({ entered, draft }: EnteredProps) {
	const { player, visitDate } = draft.visit
	const years = ageYears(player.birthDate, visitDate)
	const doubt =
		entered.status === 'past' ? undefined : ageDoubt(entered.condition, years, clinicProtocol)
	return doubt ? <Asked>{unusualAgeQuestion(years, doubt)}</Asked> : null
}
/** Which of the warning-sign questions belong to it; they stand open on the step of the flags. */
function QuestionsOf({ entered, draft, goTo }: EnteredProps & Pick<StepProps, 'goTo'>) {
	const unasked = questionsOf(entered.condition).filter(
		(path) => readPath(draft.visit, path) === undefined,
	)
	if (unasked.length === 0 || entered.status === 'past') return null
	const titles = unasked.map(
		(path) => questionGroup(path)?.heading ?? fieldMeta(visitSchema, path).title,
	)
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1 }}>
			<Typography variant="body2" sx={{ flex: '1 1 18rem' }}>
				Open on Flags, to be asked with it: {titles.join('; ')}.
			</Typography>
			<Button size="small" onClick={() => goTo('Flags')}>
				Go to the flags
			</Button>
		</Box>
	)
}
/** One list, so that nothing drawn from it seems changed. */
const none: readonly Feature[] = []
const operationFields = ['operation', 'operationDate', 'clearedBySurgeon']
/** What is asked of this condition alone, and what holds something already. */
function Own(props: EnteredProps) {
	const { entered, path, draft, change } = props
	const asks = conditionRow(entered.condition).asks ?? []
	const held = (key: string) => key in entered
	const ownWords = asks.includes('own-words')
	const fields = [
		...(ownWords || held('inWords') ? ['inWords'] : []),
		...(asks.includes('operation') || operationFields.some(held) ? operationFields : []),
	]
	const { seek = none, avoid = none } = entered
	const put = (key: 'seek' | 'avoid') => (chosen: unknown) =>
		change((now) => withValue(now, `${path}.${key}`, chosen))
	return (
		<DenseGrid columnRem={14}>
			{fields.map((key) => (
				<DenseField key={key} path={`${path}.${key}`} draft={draft} change={change} />
			))}
			{(ownWords || entered.seek || entered.avoid) && (
				<>
					<FeaturePicker
						label="Seek in a shoe"
						chosen={seek}
						without={avoid}
						choose={put('seek')}
					/>
					<FeaturePicker
						label="Avoid in a shoe"
						chosen={avoid}
						without={seek}
						choose={put('avoid')}
					/>
				</>
			)}
		</DenseGrid>
	)
}
/** The note unfolds under the line of its button. */
function useNote() {
	const [open, setOpen] = useState(false)
	const id = useId()
	return { open, setOpen, id }
}
interface NoteProps extends EnteredProps {
	note: ReturnType<typeof useNote>
}
/** Folded it says that it holds something. */
function NoteButton({ entered, path, draft, note: { open, setOpen, id } }: NoteProps) {
	const held = draft.raw[`${path}.note`] ?? entered.note
	return (
		<Button
			size="small"
			aria-expanded={open}
			aria-controls={id}
			title={open ? undefined : held}
			onClick={() => setOpen(!open)}
			sx={{ px: 1 }}
		>
			{held && !open ? 'Note written' : 'Note'}
		</Button>
	)
}
const NoteField = ({ path, draft, change, note: { open, id } }: NoteProps) => (
	<Box id={id} hidden={!open}>
		{open && <DenseField path={`${path}.note`} draft={draft} change={change} />}
	</Box>
)
