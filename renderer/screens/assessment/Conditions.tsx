/** The conditions of a visit: found by any of their names, with what is recorded of each. */
import { Box, Button, Paper, ToggleButton, ToggleButtonGroup, Typography } from '@mui/material'
import { useRef } from 'react'
import { ageDoubt } from '../../../shared/engine/conditions/ages.ts'
import type { RecordedCondition } from '../../../shared/engine/conditions/query.ts'
import { conditionRow, questionsOf } from '../../../shared/engine/conditions/registry.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import type { Condition } from '../../../shared/engine/visit/terms.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { unusualAgeQuestion } from '../../../shared/engine/words/en/conditions.ts'
import { capital, conditionInWords } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { AskedOf } from '../../parts/help/AskedOf.tsx'
import { FieldRow, RowColumns } from '../../parts/MeasureField.tsx'
import { ConditionPicker, FeaturePicker } from './ConditionPicker.tsx'
import { withoutRow } from './listRows.ts'
import { questionGroup } from './questions.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

/** The side is not guessed: until it is chosen a condition counts for both. */
function withCondition(now: StepProps['draft'], condition: Condition): StepProps['draft'] {
	const more = { condition, side: 'none', status: 'current' } as const
	return { ...now, visit: { ...now.visit, conditions: [...(now.visit.conditions ?? []), more] } }
}
interface RowProps extends DraftProps {
	recorded: RecordedCondition
	/** 'conditions.0' */
	path: string
}
function SideOf({ recorded: { condition, side }, path, change }: RowProps) {
	const { sides } = conditionRow(condition)
	if (sides === 'person' && side === 'none')
		return <Typography color="text.secondary">Of the player, not of one side.</Typography>
	return (
		<RowColumns two={false} label={<Typography sx={{ fontWeight: 600, pt: 1 }}>Side</Typography>}>
			<Box sx={{ mb: 1.5 }}>
				<ToggleButtonGroup
					exclusive
					aria-label="Side"
					value={side}
					onChange={(_, next: RecordedCondition['side'] | null) =>
						change((now) => withValue(now, `${path}.side`, next ?? 'none'))
					}
				>
					{(['left', 'right', 'both'] as const).map((each) => (
						<ToggleButton key={each} value={each} data-path={`${path}.side`} sx={{ px: 2.5 }}>
							{capital(each)}
						</ToggleButton>
					))}
				</ToggleButtonGroup>
				{side === 'none' && sides === 'each' ? (
					<Typography role="status" variant="body2" sx={{ color: 'warning.main', mt: 0.5 }}>
						Choose the side. Until then it counts for both.
					</Typography>
				) : null}
			</Box>
		</RowColumns>
	)
}
function AgeQuestion({ recorded, draft }: RowProps) {
	const { player, visitDate } = draft.visit
	const years = ageYears(player.birthDate, visitDate)
	const doubt =
		recorded.status === 'past' ? undefined : ageDoubt(recorded.condition, years, clinicProtocol)
	if (!doubt) return null
	return (
		<Typography role="status" variant="body2" sx={{ color: 'warning.main' }}>
			{unusualAgeQuestion(years, doubt)}
		</Typography>
	)
}
/** Which of the warning-sign questions belong to it; they open on the step of the flags. */
function QuestionsOf({ recorded, draft, goTo }: RowProps & Pick<StepProps, 'goTo'>) {
	const unasked = questionsOf(recorded.condition).filter(
		(path) => readPath(draft.visit, path) === undefined,
	)
	if (unasked.length === 0 || recorded.status === 'past') return null
	const titles = unasked.map(
		(path) => questionGroup(path)?.heading ?? fieldMeta(visitSchema, path).title,
	)
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1 }}>
			<Typography variant="body2" color="text.secondary" sx={{ flex: '1 1 20rem' }}>
				To ask with it: {titles.join('; ')}.
			</Typography>
			<Button onClick={() => goTo('Flags')}>Go to the flags</Button>
		</Box>
	)
}
function OwnWishes({ recorded: { seek = [], avoid = [] }, path, change }: RowProps) {
	const put = (key: 'seek' | 'avoid') => (chosen: unknown) =>
		change((now) => withValue(now, `${path}.${key}`, chosen))
	return (
		<>
			<FeaturePicker label="Seek in a shoe" chosen={seek} without={avoid} choose={put('seek')} />
			<FeaturePicker label="Avoid in a shoe" chosen={avoid} without={seek} choose={put('avoid')} />
		</>
	)
}
const operationFields = ['operation', 'operationDate', 'clearedBySurgeon']
/** Fields that are asked of this condition, and those that hold something already. */
function fieldsOf(recorded: RecordedCondition): string[] {
	const asks = conditionRow(recorded.condition).asks ?? []
	const held = (key: string) => key in recorded
	return [
		...(asks.includes('own-words') || held('inWords') ? ['inWords'] : []),
		...(asks.includes('operation') || operationFields.some(held) ? operationFields : []),
		'status',
		'painWorst',
		'note',
	]
}
function ConditionRow(props: RowProps & Pick<StepProps, 'goTo'> & { remove: () => void }) {
	const { recorded, path, draft, change, remove } = props
	const name = conditionInWords({ condition: recorded.condition }, 'clinician')
	const wishes = conditionRow(recorded.condition).asks?.includes('own-words')
	return (
		<Paper component="section" aria-label={capital(name)} variant="outlined" sx={{ p: 1.5 }}>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				<Typography variant="h3" sx={{ flex: '1 1 12rem' }}>
					{capital(name)}
				</Typography>
				<Button onClick={remove} aria-label={`Remove ${name}`}>
					Remove
				</Button>
			</Box>
			<AgeQuestion {...props} />
			<SideOf {...props} />
			{fieldsOf(recorded).map((key) => (
				<FieldRow key={key} paths={[`${path}.${key}`]} draft={draft} change={change} />
			))}
			{wishes || recorded.seek || recorded.avoid ? <OwnWishes {...props} /> : null}
			<QuestionsOf {...props} />
			<AskedOf condition={recorded.condition} />
		</Paper>
	)
}
export function Conditions({ draft, change, goTo }: DraftProps & Pick<StepProps, 'goTo'>) {
	const list = draft.visit.conditions ?? []
	const box = useRef<HTMLDivElement>(null)
	const add = (condition: Condition) => {
		change((now) => withCondition(now, condition))
		// on to what is asked of it: the side, or the first field where it has none
		requestAnimationFrame(() =>
			box.current?.querySelector<HTMLElement>(`[data-path^="conditions.${list.length}."]`)?.focus(),
		)
	}
	return (
		<Box ref={box} sx={{ display: 'grid', gap: 1, mt: 1 }}>
			{list.map((recorded, index) => (
				<ConditionRow
					// biome-ignore lint/suspicious/noArrayIndexKey: rows have no id in the file format
					key={index}
					{...{ recorded, draft, change, goTo }}
					path={`conditions.${index}`}
					remove={() => change((now) => withoutRow(now, 'conditions', index))}
				/>
			))}
			<ConditionPicker choose={add} />
		</Box>
	)
}
