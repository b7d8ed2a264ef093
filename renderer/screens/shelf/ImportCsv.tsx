/**
 * A table taken in: read and looked over first, every bad cell named; nothing changes before it is
 * said so.
 */
import { Alert, AlertTitle, Box, Button, Paper, Stack, TextField, Typography } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { shelfColumns } from '../../../shared/desk/exchange/shelf-columns.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { call } from '../../host.ts'
import { Rows, useAction } from '../../parts/panels.tsx'
import type { SaveShelf } from './shelf.tsx'
import { compareShelf, type Fate, mergeShelf, sizesWords } from './words.ts'

type Preview = OutputOf<'shelf.previewCsv'>
const fates: Record<Fate, string> = {
	new: 'new',
	replaces: 'replaces what stands on the shelf',
	same: 'as it stands on the shelf',
}
/** UTF-8, or the code page that spreadsheets still write where it is not. */
async function textOf(file: File): Promise<string> {
	const bytes = await file.arrayBuffer()
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
	} catch {
		return new TextDecoder('windows-1252').decode(bytes)
	}
}
export function ImportCsv({ shelf, save }: { shelf: Shelf; save: SaveShelf }) {
	const [pasted, setPasted] = useState('')
	const [preview, setPreview] = useState<Preview & { of: string }>()
	const { busy, says, run } = useAction()
	const result = useRef<HTMLHeadingElement>(null)
	useEffect(() => {
		if (preview) result.current?.focus()
	}, [preview])
	const look = (text: string, of: string) =>
		run(async () => {
			setPreview({ ...(await call('shelf.previewCsv', { text })), of })
			return ''
		})
	const coming = preview ? compareShelf(shelf, preview.shelf) : []
	const changed = coming.filter((incoming) => incoming.fate !== 'same')
	const take = () =>
		run(async () => {
			if (!preview) return ''
			const added = changed.filter((incoming) => incoming.fate === 'new').length
			await save(
				mergeShelf(shelf, preview.shelf),
				`Taken in from ${preview.of}: ${added} new, ${changed.length - added} ` +
					`replaced.${preview.problems.length > 0 ? ` Left out: what had a bad cell (${preview.problems.length}).` : ''}`,
			)
			location.hash = '#/shelf'
			return ''
		})
	return (
		<Stack spacing={2}>
			<Typography variant="h1">Take in a table (CSV)</Typography>
			<Typography color="text.secondary">
				One line for each size; the model's own properties on its first line. Comma, semicolon or
				tab. <em>Save as table</em> on the list gives the heading and the form. Nothing changes
				before you have looked it over.
			</Typography>
			<Paper variant="outlined" sx={{ p: 2, display: 'grid', gap: 2 }}>
				<Box component="label" sx={{ display: 'grid', gap: 0.5, fontWeight: 600 }}>
					CSV file
					<Box
						component="input"
						type="file"
						accept=".csv,.txt,text/csv"
						onClick={(event) => {
							;(event.target as HTMLInputElement).value = ''
						}}
						sx={{
							font: 'inherit',
							fontWeight: 400,
							minHeight: 44,
							'&::file-selector-button': {
								font: 'inherit',
								fontWeight: 600,
								minHeight: 44,
								px: 2,
								mr: 1.5,
								border: 1,
								borderColor: 'primary.main',
								borderRadius: 1,
								bgcolor: 'background.paper',
								color: 'primary.main',
								cursor: 'pointer',
							},
						}}
						onChange={(event) => {
							const file = (event.target as HTMLInputElement).files?.[0]
							if (file) void textOf(file).then((text) => look(text, file.name))
						}}
					/>
				</Box>
				<TextField
					label="Or paste the table here"
					multiline
					minRows={3}
					maxRows={8}
					value={pasted}
					onChange={(event) => setPasted(event.target.value)}
					slotProps={{
						inputLabel: { shrink: true },
						htmlInput: {
							spellCheck: false,
							style: { fontFamily: 'monospace', fontSize: '0.85rem' },
						},
					}}
				/>
				<Box sx={{ display: 'flex', gap: 2 }}>
					<Button
						variant="outlined"
						disabled={busy || pasted.trim() === ''}
						onClick={() => look(pasted, 'the pasted table')}
					>
						Look over the pasted table
					</Button>
				</Box>
				<Box component="details">
					<Box component="summary" sx={{ minHeight: 44, py: 1.25, cursor: 'pointer' }}>
						Columns it understands
					</Box>
					<Typography variant="body2" sx={{ overflowWrap: 'anywhere' }}>
						{shelfColumns.join(', ')}
					</Typography>
				</Box>
			</Paper>
			{says && (
				<Alert severity="error" role="alert">
					{says}
				</Alert>
			)}
			{preview && (
				<Paper component="section" variant="outlined" sx={{ p: 2, display: 'grid', gap: 2 }}>
					<Typography variant="h2" ref={result} tabIndex={-1}>
						Looked over: {preview.of}
					</Typography>
					<Alert severity="info">
						<AlertTitle>Nothing has been changed yet</AlertTitle>
						{preview.good} {preview.good === 1 ? 'model' : 'models'} can be taken in,{' '}
						{changed.length} of them {changed.length === 1 ? 'changes' : 'change'} the shelf.{' '}
						{preview.problems.length === 0
							? 'No bad cell.'
							: `${preview.problems.length} bad ` +
								`${preview.problems.length === 1 ? 'cell' : 'cells'}: a model with a bad cell ` +
								'is left out whole.'}
					</Alert>
					{preview.problems.length > 0 && (
						<>
							<Typography variant="h3">To correct</Typography>
							<Rows
								label="Bad cells"
								heads={['Line', 'Column', 'What is wrong']}
								empty=""
								rows={preview.problems.map((problem, at) => ({
									key: `${at}`,
									cells: [problem.row, problem.column, problem.message],
								}))}
							/>
						</>
					)}
					<Typography variant="h3">To take in</Typography>
					<Rows
						label="Models to take in"
						heads={['Name', 'Sole', 'Sizes', 'What happens']}
						empty="No model can be taken in."
						rows={coming.map(({ model, fate }) => ({
							key: model.id,
							cells: [model.name, termWords(model.sole), sizesWords(model), fates[fate]],
						}))}
					/>
					<Box sx={{ display: 'flex', gap: 2 }}>
						<Button variant="contained" disabled={busy || changed.length === 0} onClick={take}>
							Take in these rows
						</Button>
						<Button variant="outlined" onClick={() => setPreview(undefined)}>
							Discard
						</Button>
					</Box>
				</Paper>
			)}
		</Stack>
	)
}
