/** A pasted block before it is taken in: each value beside the field it would go to. */
import {
	Box,
	Button,
	Dialog,
	DialogActions,
	DialogContent,
	DialogTitle,
	TextField,
	Typography,
} from '@mui/material'
import { createContext } from 'react'
import type { DraftContent } from '../../shared/contract.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { nameOf, storedText } from './measure/fieldState.ts'
import type { PasteCell, PastePlan } from './pasteBlock.ts'
import { unitShown } from './units.ts'

/** Takes a pasted block over from a field; false where the field should paste as usual. */
export const PasteBlock = createContext<(path: string, text: string) => boolean>(() => false)

export interface Pasting {
	plan: PastePlan
	/** The field of the first value, where they go by place. */
	at: string
	/** Fields that the first value can go to. */
	fields: readonly string[]
	moveTo: (path: string) => void
	take: () => void
	close: () => void
}
interface PasteDialogProps extends Pasting {
	/** What stands in the fields now. */
	draft: DraftContent
}
export function PasteDialog(props: PasteDialogProps) {
	const { plan, take, close, draft } = props
	const good = plan.cells.filter(({ judged }) => judged.error === undefined).length
	return (
		<Dialog open onClose={close} aria-labelledby="paste-title" maxWidth="md" fullWidth>
			<DialogTitle id="paste-title">Pasted values: look before they are taken in</DialogTitle>
			<DialogContent>
				<Typography color="text.secondary" sx={{ mb: 1 }}>
					{plan.by === 'names'
						? 'Placed by the names in the block, whatever their order.'
						: 'The block has no names: its values go by their place.'}{' '}
					Nothing is entered yet. What cannot be read is left out.
				</Typography>
				{plan.by === 'place' && <FirstField {...props} />}
				<Box component="table" sx={tableStyle}>
					<thead>
						<tr>
							<th scope="col">Field</th>
							<th scope="col">Now</th>
							<th scope="col">Pasted</th>
							<th scope="col">Read as</th>
						</tr>
					</thead>
					<tbody>
						{plan.cells.map((cell, index) => (
							// biome-ignore lint/suspicious/noArrayIndexKey: the cells do not move meanwhile
							<Row key={index} cell={cell} draft={draft} />
						))}
					</tbody>
				</Box>
			</DialogContent>
			<DialogActions>
				<Button onClick={close}>Cancel</Button>
				<Button variant="contained" autoFocus disabled={good === 0} onClick={take}>
					{good === plan.cells.length
						? `Enter these ${good} values`
						: `Enter ${good} of ${plan.cells.length} values`}
				</Button>
			</DialogActions>
		</Dialog>
	)
}
const tableStyle = {
	width: '100%',
	borderCollapse: 'collapse',
	fontVariantNumeric: 'tabular-nums',
	'& th, & td': {
		textAlign: 'left',
		verticalAlign: 'top',
		py: 0.75,
		pr: 2,
		borderBottom: 1,
		borderColor: 'divider',
	},
}
function FirstField({ at, fields, moveTo }: Pick<Pasting, 'at' | 'fields' | 'moveTo'>) {
	return (
		<TextField
			select
			size="small"
			label="The first value goes to"
			value={at}
			onChange={(event) => moveTo(event.target.value)}
			slotProps={{ select: { native: true } }}
			sx={{ mb: 1.5, minWidth: '16rem' }}
		>
			{fields.map((path) => (
				<option key={path} value={path}>
					{nameOf(path)}
				</option>
			))}
		</TextField>
	)
}
function readAs({ path, judged }: PasteCell): string {
	const { error, notMeasured, value, warning } = judged
	if (error !== undefined) return `Left out: ${error}`
	if (notMeasured !== undefined) return `not measured: ${notMeasured}`
	const shown = Array.isArray(value) ? value.join(', ') : String(value ?? '')
	const unit = path ? unitShown(fieldMeta(visitSchema, path).unit) : ''
	return `${shown} ${unit}`.trim() + (warning ? `. ${warning}` : '')
}
function Row({ cell, draft }: { cell: PasteCell; draft: DraftContent }) {
	const { name, path, text, judged } = cell
	return (
		<tr>
			<th scope="row">{name}</th>
			<td>{path === undefined ? '' : storedText({ path, draft })}</td>
			<td>{text}</td>
			<Box component="td" sx={judged.error ? { color: 'error.main' } : {}}>
				{readAs(cell)}
			</Box>
		</tr>
	)
}
