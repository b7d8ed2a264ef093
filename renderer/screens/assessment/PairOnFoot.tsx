/** A pair on the foot: what was measured of the shoe, what is seen on each foot, how it feels. */
import { Box, TextField, Typography } from '@mui/material'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { type Model, offsetOf } from '../../../shared/engine/visit/shelf.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import { type Pair, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { DenseField, DenseGrid, Labelled } from '../../parts/DenseField.tsx'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { FieldRow, RowColumns } from '../../parts/MeasureField.tsx'
import { SeveralOf } from '../../parts/measure/Toggles.tsx'
import { useHost } from '../../query.ts'
import { chosenNow } from './alone.ts'
import type { DraftProps } from './stepProps.ts'

interface OnFootProps extends DraftProps {
	index: number
}
/** Of the shoe itself and of the player's word, in the order in which it is gone through. */
const ofShoe = ['role', 'lengthBy', 'insideWidthMm', 'tried'] as const
const ofPlayer = ['comfortFirst', 'comfortLater'] as const
/** Of each foot: one answer, then several. */
const oneOnFoot = ['roomMm', 'width', 'heel', 'bends'] as const
const severalOnFoot = ['pressure', 'studs'] as const
const hints: Readonly<Record<string, string>> = {
	role: 'Which pair of the prescription it is; empty where it was there before',
	lengthBy: 'A label is no measure',
	comfortFirst: '0 worst, 10 best',
	comfortLater: '0 worst, 10 best',
	roomMm: 'Standing, on the liner or by gauge: a thumb does not measure',
	bends: 'Up on the toes',
}
export function PairOnFoot({ index, draft, change }: OnFootProps) {
	const base = `footwear.${index}.onFoot`
	const props = { draft, change }
	return (
		<Box sx={{ display: 'grid', gap: 1, pt: 0.5 }}>
			<DenseGrid columnRem={11}>
				<ModelOfShelf index={index} {...props} />
				{ofShoe.map((field) => (
					<DenseField key={field} path={`${base}.${field}`} hint={hints[field]} {...props} />
				))}
			</DenseGrid>
			<Box>
				<RowColumns label={null} two>
					{bothSides.map((side) => (
						<Typography key={side} variant="h3" component="p" sx={{ textAlign: 'right', pr: 1.5 }}>
							{capital(side)}
						</Typography>
					))}
				</RowColumns>
				{oneOnFoot.map((field) => (
					<FieldRow
						key={field}
						paths={bothSides.map((side) => `${base}.${side}.${field}`)}
						hint={hints[field]}
						{...props}
					/>
				))}
				{severalOnFoot.map((field) => (
					<SeveralRow key={field} base={base} field={field} {...props} />
				))}
			</Box>
			<DenseGrid columnRem={11}>
				{ofPlayer.map((field) => (
					<DenseField key={field} path={`${base}.${field}`} hint={hints[field]} {...props} />
				))}
			</DenseGrid>
		</Box>
	)
}
/** What a model brings to the pair where nothing stands there yet. */
function withModel(pair: Pair, model: Model | undefined): Pair {
	const { onFoot: { model: _, fitting: __, ...onFoot } = {}, ...rest } = pair
	if (!model) return Object.keys(onFoot).length > 0 ? { ...rest, onFoot } : rest
	const offsetMm = offsetOf(model)
	return {
		...(offsetMm !== undefined && { heelToForefootOffsetMm: offsetMm }),
		name: model.name,
		sole: model.sole,
		...rest,
		onFoot: { ...onFoot, model: model.id },
	}
}
/** Which model of the clinic's shelf it is, and in which fitting, so that the shelf can learn of it. */
function ModelOfShelf({ index, draft, change }: OnFootProps) {
	const { value } = useHost('shelf.get', {})
	const models = value?.shelf?.models ?? []
	const pair = draft.visit.footwear?.[index]
	const chosen = pair?.onFoot?.model ?? ''
	const model = models.find(({ id }) => id === chosen)
	const path = `footwear.${index}.onFoot.model`
	if (models.length === 0 && chosen === '') return null
	const choose = (id: string) =>
		change((now) => ({
			...now,
			visit: {
				...now.visit,
				footwear: (now.visit.footwear ?? []).map((one, at) =>
					at === index
						? withModel(
								one,
								models.find((each) => each.id === id),
							)
						: one,
				),
			},
		}))
	const fittings = [...new Set(model?.sizes.flatMap(({ fitting }) => fitting ?? []))]
	return (
		<>
			<Chosen
				title="Model of the shelf"
				path={path}
				value={chosen}
				options={models.map(({ id, name }) => [id, name])}
				choose={choose}
			/>
			{fittings.length > 0 && (
				<Chosen
					title="Fitting"
					path={`footwear.${index}.onFoot.fitting`}
					value={pair?.onFoot?.fitting ?? ''}
					options={fittings.map((fitting) => [fitting, fitting])}
					choose={(fitting) =>
						change((now) =>
							withValue(now, `footwear.${index}.onFoot.fitting`, fitting || undefined),
						)
					}
				/>
			)}
		</>
	)
}
interface ChosenProps {
	title: string
	path: string
	value: string
	options: readonly (readonly [value: string, words: string])[]
	choose: (value: string) => void
}
function Chosen({ title, path, value, options, choose }: ChosenProps) {
	const isGone = value !== '' && !options.some(([one]) => one === value)
	return (
		<Labelled title={title}>
			<TextField
				select
				fullWidth
				size="small"
				value={value}
				onChange={({ target }) => choose(target.value)}
				slotProps={{
					select: { native: true },
					htmlInput: { 'aria-label': title, 'data-path': path },
				}}
			>
				<option value="">not recorded</option>
				{options.map(([one, words]) => (
					<option key={one} value={one}>
						{words}
					</option>
				))}
				{isGone && <option value={value}>no longer on the shelf</option>}
			</TextField>
		</Labelled>
	)
}
/** Several terms on each foot: none, or clear, excludes the others. */
function SeveralRow({
	base,
	field,
	draft,
	change,
}: DraftProps & { base: string; field: (typeof severalOnFoot)[number] }) {
	const { title, options } = fieldMeta(visitSchema, `${base}.left.${field}`)
	const [alone = ''] = options
	return (
		<Box sx={{ pt: 0.5 }}>
			<RowColumns
				label={<Typography sx={{ fontWeight: 600, lineHeight: 1.3, pt: 0.5 }}>{title}</Typography>}
				two
			>
				{bothSides.map((side) => {
					const path = `${base}.${side}.${field}`
					const chosen = (readPath(draft.visit, path) as readonly string[] | undefined) ?? []
					return (
						<SeveralOf
							key={side}
							name={`${title}, ${side}`}
							path={path}
							terms={options}
							chosen={chosen}
							choose={(after) =>
								change((now) => withValue(now, path, chosenNow(alone, chosen, after)))
							}
						/>
					)
				})}
			</RowColumns>
		</Box>
	)
}
