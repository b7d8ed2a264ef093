/**
 * A table imported: read and looked over first, every bad cell named; nothing changes before it is
 * said so.
 */
import { Box, Button, Stack, TextField, Typography } from '@mui/material'
import { useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import { shelfColumns } from '../../../shared/desk/exchange/shelf-columns.ts'
import { call } from '../../host.ts'
import { Trouble } from '../../parts/form.tsx'
import { decodedText } from '../../parts/tableText.ts'
import { useHostAction } from '../../query.ts'
import { CsvPreview, type Looked } from './CsvPreview.tsx'
import type { ShelfPageProps } from './useShelf.ts'
import { compareShelf, mergeShelf } from './words.ts'

const textOf = async (file: File): Promise<string> =>
	decodedText(new Uint8Array(await file.arrayBuffer()))

/** What was taken in of a table, in words. */
function takenWords({ of, problems }: Looked, added: number, replaced: number): string {
	const left = problems.length
	return (
		`Imported from ${of}: ${added} new, ${replaced} replaced.` +
		(left > 0 ? ` Left out: what had a bad cell (${left}).` : '')
	)
}

export function ImportCsv({ shelf, save }: ShelfPageProps) {
	const [looked, setLooked] = useState<Looked>()
	const { busy, says, run } = useHostAction()
	const look = (text: string, of: string) =>
		run(async () => {
			setLooked({ ...(await call('shelf.previewCsv', { text })), of })
			return ''
		})
	const take = (table: Looked) =>
		run(async () => {
			const changed = compareShelf(shelf, table.shelf).filter(({ fate }) => fate !== 'same')
			const added = changed.filter(({ fate }) => fate === 'new').length
			const words = takenWords(table, added, changed.length - added)
			await save(mergeShelf(shelf, table.shelf), words)
			navigate('/shelf')
			return ''
		})
	return (
		<Stack spacing={2}>
			<Table busy={busy} look={look} />
			<Trouble says={says} />
			{looked && (
				<CsvPreview
					looked={looked}
					shelf={shelf}
					busy={busy}
					take={() => take(looked)}
					discard={() => setLooked(undefined)}
				/>
			)}
		</Stack>
	)
}

/** Looks a table over. @param of where it comes from, in words */
type Look = (text: string, of: string) => void

/** The table, from a file or pasted. */
function Table({ busy, look }: { busy: boolean; look: Look }) {
	const [pasted, setPasted] = useState('')
	return (
		<Box sx={{ display: 'grid', gap: 2, maxWidth: '52rem' }}>
			<FileChooser look={look} />
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
		</Box>
	)
}

function FileChooser({ look }: { look: Look }) {
	return (
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
	)
}
