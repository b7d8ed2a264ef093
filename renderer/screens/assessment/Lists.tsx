/** The lists of a visit: surfaces, conditions, and the pairs the player owns. */
import { Box, Button, Checkbox, FormControlLabel, Paper } from '@mui/material'
import { conditions, surfaces, termWords } from '../../../shared/engine/visit/terms.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { writePath } from '../../parts/draft-path.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import type { StepProps } from './stepProps.ts'

type Part = Pick<StepProps, 'draft' | 'change'>

export function Surfaces({ draft, change }: Part) {
	const chosen = draft.visit.play?.surfaces ?? []
	return (
		<Box
			role="group"
			aria-label="Surfaces"
			sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 1 }}
		>
			{surfaces.map((surface) => (
				<FormControlLabel
					key={surface}
					label={termWords(surface)}
					control={
						<Checkbox
							checked={chosen.includes(surface)}
							onChange={(_, on) =>
								change((now) => {
									const next = on
										? [...(now.visit.play?.surfaces ?? []), surface]
										: (now.visit.play?.surfaces ?? []).filter((one) => one !== surface)
									return {
										...now,
										visit: writePath(
											now.visit,
											'play.surfaces',
											next.length > 0 ? next : undefined,
										),
									}
								})
							}
						/>
					}
				/>
			))}
		</Box>
	)
}
/** Taking a row out of a list also takes the raw texts of its fields. */
function without<K extends 'conditions' | 'footwear'>(
	now: StepProps['draft'],
	list: K,
	index: number,
): StepProps['draft'] {
	const next = (now.visit[list] ?? []).filter((_, at) => at !== index)
	const raw = Object.fromEntries(
		Object.entries(now.raw).filter(([path]) => !path.startsWith(`${list}.`)),
	)
	return { ...now, raw, visit: writePath(now.visit, list, next.length > 0 ? next : undefined) }
}
export function Conditions({ draft, change }: Part) {
	const list = draft.visit.conditions ?? []
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			{list.map((one, index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: rows have no id of their own in the file format
				<Paper key={index} variant="outlined" sx={{ p: 1.5 }}>
					{['condition', 'side', 'status', 'painWorst'].map((key) => (
						<FieldRow
							key={key}
							paths={[`conditions.${index}.${key}`]}
							draft={draft}
							change={change}
						/>
					))}
					<Button onClick={() => change((now) => without(now, 'conditions', index))}>
						Remove {termWords(one.condition)}
					</Button>
				</Paper>
			))}
			<Button
				variant="outlined"
				onClick={() =>
					change((now) => ({
						...now,
						visit: {
							...now.visit,
							conditions: [
								...(now.visit.conditions ?? []),
								{ condition: conditions[0], side: 'left', status: 'current' },
							],
						} as Visit,
					}))
				}
			>
				Add a condition
			</Button>
		</Box>
	)
}
export function Pairs({ draft, change }: Part) {
	const list = draft.visit.footwear ?? []
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			{list.map((one, index) => (
				<Paper key={one.id} variant="outlined" sx={{ p: 1.5 }}>
					{[
						'name',
						'sole',
						'sizeSystem',
						'size',
						'insideLengthMm',
						'heelToForefootOffsetMm',
						'heelLiftMm',
						'minutesWorn',
						'acquired',
						'brokenIn',
						'letter',
						'newFrom',
						'price',
						'lifeMinutes',
						'dryingHours',
						'weeklyMinutesMax',
						'shareMinPercent',
						'shareMaxPercent',
						'studHeightMm',
					].map((key) => (
						<FieldRow
							key={key}
							paths={[`footwear.${index}.${key}`]}
							draft={draft}
							change={change}
						/>
					))}
					<Button onClick={() => change((now) => without(now, 'footwear', index))}>
						Remove {one.name ?? 'this pair'}
					</Button>
				</Paper>
			))}
			<Button
				variant="outlined"
				onClick={() =>
					change((now) => {
						const taken = new Set((now.visit.footwear ?? []).map((pair) => pair.id))
						let number = 1
						while (taken.has(`p${number}`)) number++
						return {
							...now,
							visit: {
								...now.visit,
								footwear: [...(now.visit.footwear ?? []), { id: `p${number}` }],
							},
						}
					})
				}
			>
				Add a pair
			</Button>
		</Box>
	)
}
