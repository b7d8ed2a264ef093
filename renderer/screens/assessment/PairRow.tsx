/** One pair: what is said of it, six places that stand open, and the rest folded. */
import { Box, Button, Typography } from '@mui/material'
import { type ReactNode, useId, useState } from 'react'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { type Pair, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { DenseField, DenseGrid, Labelled } from '../../parts/DenseField.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { SeveralOf } from '../../parts/measure/Toggles.tsx'
import { unitShown } from '../../parts/units.ts'
import { fitShown } from './fitWords.ts'
import { ownedInShort } from './ownedInShort.ts'
import { PairOnFoot } from './PairOnFoot.tsx'
import { type PairField, pairFolds, pairHints, pairPlaces } from './pairFields.table.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

interface PairProps extends DraftProps {
	index: number
}
interface PairRowProps extends PairProps, Partial<Pick<StepProps, 'assessment'>> {
	remove: () => void
}
export function PairRow({ remove, assessment, ...pair }: PairRowProps) {
	const { draft, index } = pair
	const name = draft.visit.footwear?.[index]?.name ?? `Pair ${index + 1}`
	return (
		<Box
			component="section"
			aria-label={name}
			sx={{ borderLeft: 3, borderColor: 'divider', pl: 1.5, py: 0.5 }}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1.5 }}>
				<Typography variant="h3">{name}</Typography>
				<Verdict {...pair} assessment={assessment} />
				<Button size="small" onClick={remove} aria-label={`Remove ${name}`} sx={{ ml: 'auto' }}>
					Remove
				</Button>
			</Box>
			<Places {...pair} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 1 }}>
				<Fold title={onFootTitle} name={`${onFootTitle}: ${name}`} fields={['onFoot']} {...pair}>
					<PairOnFoot {...pair} />
				</Fold>
				{pairFolds.map(({ title, fields }) => (
					<Fold key={title} title={title} name={`${title}: ${name}`} fields={fields} {...pair}>
						<DenseGrid columnRem={10}>
							{fields.map((field) => (
								<Field key={field} field={field} {...pair} />
							))}
						</DenseGrid>
					</Fold>
				))}
			</Box>
		</Box>
	)
}
/** What becomes of it and the room in it, as far as that is known; of a new one whether it is worn in. */
function Verdict({ draft, index, assessment }: PairProps & Pick<PairRowProps, 'assessment'>) {
	const pair = draft.visit.footwear?.[index]
	const fit = assessment && pair && fitShown(assessment, draft.visit, pair)
	return (
		<Typography
			variant="body2"
			color="text.secondary"
			sx={{ flex: '1 1 12rem', fontVariantNumeric: 'tabular-nums' }}
		>
			{assessment && pair ? ownedInShort(assessment, pair.id) : ''}
			{fit && (
				<Box component="span" sx={{ color: 'text.primary', fontWeight: 600 }}>
					{`. ${fit}`}
				</Box>
			)}
		</Typography>
	)
}
const lists: readonly PairField[] = ['roles', 'damage']
function Field({ field, index, draft, change }: PairProps & { field: PairField }) {
	const path = `footwear.${index}.${field}`
	const hint = pairHints[field]
	if (!lists.includes(field))
		return (
			<DenseField path={path} hint={hint} whole={field === 'note'} draft={draft} change={change} />
		)
	const { title, options } = fieldMeta(visitSchema, path)
	return (
		<Labelled title={title} hint={hint} whole={field === 'damage'}>
			<SeveralOf
				name={title}
				path={path}
				terms={options}
				chosen={(readPath(draft.visit, path) as readonly string[] | undefined) ?? []}
				choose={(terms) => change((now) => withValue(now, path, terms))}
			/>
		</Labelled>
	)
}
/** Two columns; fields that belong together share a place. */
const Places = (pair: PairProps): ReactNode => (
	<DenseGrid columnRem={14}>
		{pairPlaces.map((fields) => (
			<Box key={fields[0]} sx={{ ...shared, gridTemplateColumns: `repeat(${fields.length}, 1fr)` }}>
				{fields.map((field) => (
					<Field key={field} field={field} {...pair} />
				))}
			</Box>
		))}
	</DenseGrid>
)
const shared = {
	display: 'grid',
	gridTemplateRows: 'subgrid',
	gridRow: 'span 2',
	columnGap: 1,
	minWidth: 0,
}
/** 'room 8 mm left, 9 mm right, comfort 7 of 10'; '' where nothing was looked at. */
function heldOnFoot({ onFoot }: Pair): string {
	if (onFoot === undefined) return ''
	const rooms = bothSides.flatMap((side) => {
		const roomMm = onFoot[side]?.roomMm
		return roomMm === undefined ? [] : [`${roomMm} mm ${side}`]
	})
	const comfort = onFoot.comfortLater ?? onFoot.comfortFirst
	const told = [
		rooms.length > 0 && `room ${rooms.join(', ')}`,
		comfort !== undefined && `comfort ${comfort} of 10`,
	].filter(Boolean)
	return told.length > 0 ? told.join(', ') : 'recorded'
}
const onFootTitle = 'On the foot'
/** 'Minutes worn 1200 min'; '' where nothing stands in it. */
function heldIn(pair: Pair, field: PairField): string {
	if (field === 'onFoot') return heldOnFoot(pair)
	const value = pair[field]
	if (value === undefined || typeof value === 'object') {
		const terms = Array.isArray(value) ? value.filter((one) => typeof one === 'string') : []
		return terms.map(termWords).join(', ')
	}
	const { title, kind, unit } = fieldMeta(visitSchema, `footwear.0.${field}`)
	if (kind === 'yesNo') return value ? title.toLowerCase() : `${title.toLowerCase()}: no`
	const shown = kind === 'date' ? dayInWords(String(value)) : String(value)
	return `${title.toLowerCase()} ${shown} ${kind === 'number' ? unitShown(unit) : ''}`.trim()
}
interface FoldProps extends PairProps {
	title: string
	/** What the button is called. */
	name: string
	fields: readonly PairField[]
	/** What stands in it while it is open. */
	children: ReactNode
}
/** Folded it says what it holds, so that nothing is hidden. */
function Fold({ title, name, fields, draft, index, children }: FoldProps) {
	const [open, setOpen] = useState(false)
	const id = useId()
	const pair = draft.visit.footwear?.[index]
	const held = pair ? fields.map((field) => heldIn(pair, field)).filter(Boolean) : []
	const unread = fields.flatMap((field) =>
		Object.keys(draft.raw).filter((path) => `${path}.`.startsWith(`footwear.${index}.${field}.`)),
	)
	const holds = [...held, ...(unread.length > 0 ? [`${unread.length} not readable yet`] : [])]
	return (
		<Box sx={{ flex: open || holds.length > 0 ? '1 1 100%' : '0 1 auto' }}>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 1 }}>
				<Button
					size="small"
					aria-label={name}
					aria-expanded={open}
					aria-controls={id}
					onClick={() => setOpen(!open)}
					sx={{ px: 1 }}
				>
					{title}
				</Button>
				{!open && holds.length > 0 && (
					<Typography variant="body2" color="text.secondary" sx={{ flex: '1 1 10rem' }}>
						{holds.join('; ')}
					</Typography>
				)}
			</Box>
			<Box id={id} hidden={!open}>
				{open && children}
			</Box>
		</Box>
	)
}
