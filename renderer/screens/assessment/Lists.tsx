/** The lists of a visit: surfaces, and the pairs the player owns. */
import { Box, Button, Checkbox, FormControlLabel, Paper } from '@mui/material'
import { type Surface, surfaces, termWords } from '../../../shared/engine/visit/terms.ts'
import { writePath } from '../../parts/draft-path.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { withoutRow } from './listRows.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

function withSurface(now: StepProps['draft'], surface: Surface, on: boolean): StepProps['draft'] {
	const others = (now.visit.play?.surfaces ?? []).filter((other) => other !== surface)
	const next = on ? [...others, surface] : others
	const chosen = next.length > 0 ? next : undefined
	return { ...now, visit: writePath(now.visit, 'play.surfaces', chosen) }
}
export function Surfaces({ draft, change }: DraftProps) {
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
							onChange={(_, on) => change((now) => withSurface(now, surface, on))}
						/>
					}
				/>
			))}
		</Box>
	)
}
/** Fields of a pair, in the order in which they are asked. */
const pairFields = [
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
]
/** A pair more, under the first id that is free: p1, p2 and so on. */
function withPair(now: StepProps['draft']): StepProps['draft'] {
	const pairs = now.visit.footwear ?? []
	const taken = new Set(pairs.map((pair) => pair.id))
	let number = 1
	while (taken.has(`p${number}`)) number++
	return { ...now, visit: { ...now.visit, footwear: [...pairs, { id: `p${number}` }] } }
}
export function Pairs({ draft, change }: DraftProps) {
	const list = draft.visit.footwear ?? []
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			{list.map(({ id, name }, index) => (
				<Paper key={id} variant="outlined" sx={{ p: 1.5 }}>
					{pairFields.map((key) => (
						<FieldRow
							key={key}
							paths={[`footwear.${index}.${key}`]}
							draft={draft}
							change={change}
						/>
					))}
					<Button onClick={() => change((now) => withoutRow(now, 'footwear', index))}>
						Remove {name ?? 'this pair'}
					</Button>
				</Paper>
			))}
			<Button variant="outlined" onClick={() => change(withPair)}>
				Add a pair
			</Button>
		</Box>
	)
}
