/** What was read of a table: every bad cell, and what importing it would do to each model. */
import { Alert, AlertTitle, Box, Button, Typography } from '@mui/material'
import { useEffect, useRef } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { Rows } from '../../parts/panels.tsx'
import { compareShelf, type Fate, sizesWords } from './words.ts'

/** A table that was looked over, and where it comes from. */
export type Looked = OutputOf<'shelf.previewCsv'> & { of: string }
const fates: Record<Fate, string> = {
	new: 'new',
	replaces: 'replaces what stands on the shelf',
	same: 'as it stands on the shelf',
}
function badCells(count: number): string {
	if (count === 0) return 'No bad cell.'
	const cells = count === 1 ? 'cell' : 'cells'
	return `${count} bad ${cells}: a model with a bad cell is left out whole.`
}

interface CsvPreviewProps {
	looked: Looked
	/** As it stands now. */
	shelf: Shelf
	busy: boolean
	take: () => void
	discard: () => void
}
export function CsvPreview({ looked, shelf, busy, take, discard }: CsvPreviewProps) {
	const heading = useRef<HTMLHeadingElement>(null)
	// biome-ignore lint/correctness/useExhaustiveDependencies: another table brings the focus to it
	useEffect(() => heading.current?.focus(), [looked])
	const { of, good, problems } = looked
	const coming = compareShelf(shelf, looked.shelf)
	const changed = coming.filter(({ fate }) => fate !== 'same').length
	return (
		<Box
			component="section"
			sx={{ borderTop: 1, borderColor: 'divider', pt: 1.5, display: 'grid', gap: 2 }}
		>
			<Typography variant="h2" ref={heading} tabIndex={-1}>
				Looked over: {of}
			</Typography>
			<Alert severity="info">
				<AlertTitle>Nothing has been changed yet</AlertTitle>
				{good} {good === 1 ? 'model' : 'models'} can be imported, {changed} of them{' '}
				{changed === 1 ? 'changes' : 'change'} the shelf. {badCells(problems.length)}
			</Alert>
			{problems.length > 0 && (
				<>
					<Typography variant="h3">To correct</Typography>
					<Rows
						label="Bad cells"
						figures={['Line']}
						heads={['Line', 'Column', 'What is wrong']}
						empty=""
						rows={problems.map(({ row, column, message }, index) => ({
							key: `${index}`,
							cells: [row, column, message],
						}))}
					/>
				</>
			)}
			<Typography variant="h3">To import</Typography>
			<Rows
				label="Models to import"
				heads={['Name', 'Sole', 'Sizes', 'What happens']}
				empty="No model can be imported."
				rows={coming.map(({ model, fate }) => ({
					key: model.id,
					cells: [model.name, termWords(model.sole), sizesWords(model), fates[fate]],
				}))}
			/>
			<Box sx={{ display: 'flex', gap: 2 }}>
				<Button variant="contained" disabled={busy || changed === 0} onClick={take}>
					Import these rows
				</Button>
				<Button variant="outlined" onClick={discard}>
					Discard
				</Button>
			</Box>
		</Box>
	)
}
