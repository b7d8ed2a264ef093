/** The lists of a visit: surfaces, the pairs the player owns, and how many may be bought. */
import { Box, Button, Checkbox, FormControlLabel, Paper } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { readPath, writePath } from '../../parts/draft-path.ts'
import { FieldRow, RowColumns, RowLabel } from '../../parts/MeasureField.tsx'
import { withoutRow } from './listRows.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

/** A list of terms with one more or one less, in the order of the terms; empty it is not there. */
function withTerm(
	now: StepProps['draft'],
	path: string,
	terms: readonly string[],
	changed: string,
): StepProps['draft'] {
	const had = readPath(now.visit, path) as readonly string[] | undefined
	const next = terms.filter((term) => (had?.includes(term) ?? false) !== (term === changed))
	return { ...now, visit: writePath(now.visit, path, next.length > 0 ? next : undefined) }
}
/** Several terms of one list, each with a box to tick. */
function Terms({ path, draft, change }: DraftProps & { path: string }) {
	const { title, options } = fieldMeta(visitSchema, path)
	const chosen = readPath(draft.visit, path) as readonly string[] | undefined
	return (
		<Box role="group" aria-label={title} sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 1 }}>
			{options.map((term) => (
				<FormControlLabel
					key={term}
					label={termWords(term)}
					control={
						<Checkbox
							checked={chosen?.includes(term) ?? false}
							onChange={() => change((now) => withTerm(now, path, options, term))}
						/>
					}
				/>
			))}
		</Box>
	)
}
export const Surfaces = (props: DraftProps) => <Terms {...props} path="play.surfaces" />
type PairField = keyof NonNullable<Visit['footwear']>[number]
/** Fields of a pair, in the order in which they are asked. */
const pairFields: readonly PairField[] = [
	'name',
	'sole',
	'sizeSystem',
	'size',
	'insideLengthMm',
	'heelToForefootOffsetMm',
	'heelLiftMm',
	'insertInside',
	'roles',
	'comfort',
	'hurts',
	'damage',
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
const ofTerms: readonly PairField[] = ['roles', 'damage']
const pairHints: Partial<Record<PairField, string>> = {
	roles: 'Where none is ticked, by its sole',
	comfort: 'As the player says: 0 worst, 10 best',
}
function PairRow({ field, index, ...rest }: DraftProps & { field: PairField; index: number }) {
	const path = `footwear.${index}.${field}`
	const hint = pairHints[field]
	if (!ofTerms.includes(field)) return <FieldRow paths={[path]} hint={hint} {...rest} />
	return (
		<RowColumns
			two={false}
			label={<RowLabel title={fieldMeta(visitSchema, path).title} hint={hint} />}
		>
			<Terms path={path} {...rest} />
		</RowColumns>
	)
}
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
	const box = useRef<HTMLDivElement>(null)
	const [added, setAdded] = useState(false)
	// a pair that was added begins with its name
	useEffect(() => {
		if (!added) return
		setAdded(false)
		const name = `[data-path="footwear.${list.length - 1}.name"]`
		box.current?.querySelector<HTMLElement>(name)?.focus()
	}, [added, list.length])
	return (
		<Box ref={box} sx={{ display: 'grid', gap: 1 }}>
			{list.map(({ id, name }, index) => (
				<Paper key={id} variant="outlined" sx={{ p: 1.5 }}>
					{pairFields.map((key) => (
						<PairRow key={key} field={key} index={index} draft={draft} change={change} />
					))}
					<Button onClick={() => change((now) => withoutRow(now, 'footwear', index))}>
						Remove {name ?? 'this pair'}
					</Button>
				</Paper>
			))}
			<Button
				variant="outlined"
				onClick={() => {
					change(withPair)
					setAdded(true)
				}}
			>
				Add a pair
			</Button>
			<FieldRow
				paths={['means']}
				hint="Nothing chosen: as many as are needed"
				draft={draft}
				change={change}
			/>
		</Box>
	)
}
