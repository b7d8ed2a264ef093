/** A pasted block before it is taken in: each value beside the field it would go to. */
import {
	Box,
	Button,
	Dialog,
	DialogActions,
	DialogContent,
	DialogTitle,
	Typography,
} from '@mui/material'
import { createContext } from 'react'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import type { PasteCell } from './pasteBlock.ts'

/** Takes a pasted block over from a field; false where the field should paste as usual. */
export const PasteBlock = createContext<(path: string, text: string) => boolean>(() => false)
function readAs({ path, judged }: PasteCell): string {
	const { error, notMeasured, value, warning } = judged
	if (error !== undefined) return error
	if (notMeasured !== undefined) return `not measured: ${notMeasured}`
	const shown = Array.isArray(value) ? value.join(', ') : String(value ?? '')
	const unit = path ? fieldMeta(visitSchema, path).unit : ''
	return `${shown} ${unit}`.trim() + (warning ? `. ${warning}` : '')
}

export function PasteDialog({
	cells,
	take,
	close,
}: {
	cells: readonly PasteCell[]
	take: () => void
	close: () => void
}) {
	const good = cells.filter((cell) => cell.judged.error === undefined).length
	return (
		<Dialog open onClose={close} aria-labelledby="paste-title" maxWidth="md" fullWidth>
			<DialogTitle id="paste-title">Pasted values: look before they are taken in</DialogTitle>
			<DialogContent>
				<Typography color="text.secondary" sx={{ mb: 1 }}>
					Nothing is entered yet. What cannot be read is left out.
				</Typography>
				<Box
					component="table"
					sx={{
						width: '100%',
						borderCollapse: 'collapse',
						'& th, & td': {
							textAlign: 'left',
							py: 0.75,
							pr: 2,
							borderBottom: 1,
							borderColor: 'divider',
						},
					}}
				>
					<thead>
						<tr>
							<th scope="col">Field</th>
							<th scope="col">Pasted</th>
							<th scope="col">Read as</th>
						</tr>
					</thead>
					<tbody>
						{cells.map((cell, index) => (
							// biome-ignore lint/suspicious/noArrayIndexKey: the cells do not move meanwhile
							<tr key={index}>
								<th scope="row">{cell.name}</th>
								<td>{cell.text}</td>
								<Box component="td" sx={cell.judged.error ? { color: 'error.main' } : {}}>
									{readAs(cell)}
								</Box>
							</tr>
						))}
					</tbody>
				</Box>
			</DialogContent>
			<DialogActions>
				<Button onClick={close}>Cancel</Button>
				<Button variant="contained" autoFocus disabled={good === 0} onClick={take}>
					{good === cells.length
						? `Enter these ${good} values`
						: `Enter ${good} of ${cells.length} values`}
				</Button>
			</DialogActions>
		</Dialog>
	)
}
