/** The models of the shelf: look, add, copy, retire, and save the table as CSV. */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Paper,
	Stack,
	Table,
	TableBody,
	TableCell,
	TableHead,
	TableRow,
	TextField,
	Typography,
} from '@mui/material'
import { useState } from 'react'
import { type Model, offsetOf, type Shelf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { call, wordsOf } from '../../host.ts'
import { saveText } from '../../parts/files.ts'
import { PrintButton } from '../../parts/Print.tsx'
import type { SaveShelf } from './shelf.tsx'
import { unsaved } from './texts.ts'
import { featureWords, sizesWords } from './words.ts'

/** As many rows as are drawn at once; the rest on request. */
const atOnce = 100
const go = (to: string) => {
	location.hash = to
}
/** The way back to a form with entries not saved. */
const placeWords = (place: string, shelf: Shelf): { to: string; words: string } => {
	const [page = '', item = ''] = place.split(' ')
	const name = shelf.models.find((model) => model.id === item)?.name
	return {
		to: `#/shelf/${page}${item ? `/${item}` : ''}`,
		words: page === 'model' ? (name ?? item) : name ? `a copy of ${name}` : 'a new model',
	}
}
export function List({ shelf, save }: { shelf: Shelf; save: SaveShelf }) {
	const [query, setQuery] = useState('')
	const [withRetired, setWithRetired] = useState(false)
	const [all, setAll] = useState(false)
	const [says, setSays] = useState('')
	const words = query.trim().toLowerCase().split(/\s+/).filter(Boolean)
	const found = shelf.models
		.filter(
			(model) =>
				(withRetired || !model.retired) &&
				words.every((word) =>
					`${model.name} ${termWords(model.sole)} ${(model.codes ?? []).map(termWords).join(' ')} ${featureWords(model)}`
						.toLowerCase()
						.includes(word),
				),
		)
		.toSorted((a, b) => a.name.localeCompare(b.name) || (a.id < b.id ? -1 : 1))
	const shown = all ? found : found.slice(0, atOnce)
	const retired = shelf.models.filter((model) => model.retired).length
	const setRetired = ({ id, name }: Model, on: boolean) => {
		const models = shelf.models.map((model) => {
			if (model.id !== id) return model
			const { retired: _, ...rest } = model
			return on ? { ...rest, retired: true } : rest
		})
		save(
			{ ...shelf, models },
			on
				? `${name} is retired: it is no longer matched. It stays on the shelf and can be ` +
						'brought back.'
				: `${name} is back on the shelf.`,
		).catch(() => {})
	}
	// led by the mark by which spreadsheets know UTF-8
	const download = () => {
		setSays('')
		call('shelf.exportCsv', {}).then(
			({ csv }) => saveText(`\uFEFF${csv}`, 'shelf.csv', 'text/csv;charset=utf-8'),
			(error) => setSays(wordsOf(error)),
		)
	}
	return (
		<Stack spacing={2}>
			<Typography variant="h1">Shelf</Typography>
			<Typography color="text.secondary">
				What can be bought locally, as measured here. In Decide these models are matched to the
				player. Labels differ between makers: only your own measures count.
			</Typography>
			{shelf.note && <Alert severity="info">{shelf.note}</Alert>}
			{[...unsaved.keys()].map((place) => {
				const { to, words: what } = placeWords(place, shelf)
				return (
					<Alert
						key={place}
						severity="warning"
						action={
							<Button color="inherit" onClick={() => go(to)}>
								Go on
							</Button>
						}
					>
						Entries not saved yet: {what}.
					</Alert>
				)
			})}
			{says && (
				<Alert severity="error" role="alert">
					{says}
				</Alert>
			)}
			<Box
				className="lw-screen-only"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'end' }}
			>
				<Button variant="contained" onClick={() => go('#/shelf/new')}>
					Add a model
				</Button>
				<Button variant="outlined" onClick={() => go('#/shelf/import')}>
					Take in a table (CSV)
				</Button>
				<Button variant="outlined" onClick={download}>
					{shelf.models.length > 0 ? 'Save as table (CSV)' : 'Save an empty table to fill in (CSV)'}
				</Button>
				{found.length > 0 && <PrintButton what="this list" />}
				<Box sx={{ flexGrow: 1 }} />
				<TextField
					size="small"
					label="Find a model"
					type="search"
					value={query}
					onChange={(event) => setQuery(event.target.value)}
					slotProps={{ inputLabel: { shrink: true } }}
				/>
				<FormControlLabel
					label={`Show retired (${retired})`}
					control={
						<Checkbox
							checked={withRetired}
							onChange={(event) => setWithRetired(event.target.checked)}
						/>
					}
				/>
			</Box>
			<Typography role="status">
				{shelf.models.length === 0
					? 'The shelf is empty. Add a model, or take in a table.'
					: `${found.length} of ${shelf.models.length - (withRetired ? 0 : retired)} ` +
						`models${withRetired ? '' : ' on sale'}`}
			</Typography>
			{found.length > 0 && (
				<Paper
					variant="outlined"
					sx={{ overflowX: 'auto' }}
					tabIndex={0}
					role="region"
					aria-label="Models"
				>
					<Table size="small" aria-label="Models">
						<TableHead>
							<TableRow>
								{['Name', 'Sole', 'Sizes', 'Offset', 'Features', 'Price', 'Actions'].map((head) => (
									<TableCell
										key={head}
										align={head === 'Offset' || head === 'Price' ? 'right' : 'left'}
										sx={head === 'Actions' ? { displayPrint: 'none' } : {}}
									>
										{head}
									</TableCell>
								))}
							</TableRow>
						</TableHead>
						<TableBody>
							{shown.map((one) => {
								const offset = offsetOf(one)
								return (
									<TableRow
										key={one.id}
										sx={one.retired ? { '& td, & th': { color: 'text.secondary' } } : {}}
									>
										<TableCell component="th" scope="row" sx={{ fontWeight: 600, minWidth: 130 }}>
											{one.name}
											{one.retired ? ' (retired)' : ''}
										</TableCell>
										<TableCell>{termWords(one.sole)}</TableCell>
										<TableCell>{sizesWords(one)}</TableCell>
										<TableCell align="right" sx={{ whiteSpace: 'nowrap' }}>
											{offset === undefined ? 'not recorded' : `${offset} mm`}
										</TableCell>
										<TableCell sx={{ minWidth: 220 }}>
											{featureWords(one) || 'not recorded'}
										</TableCell>
										<TableCell align="right">{one.price ?? ''}</TableCell>
										<TableCell sx={{ whiteSpace: 'nowrap', py: 0, displayPrint: 'none' }}>
											<Button
												size="small"
												aria-label={`Edit ${one.name}`}
												onClick={() => go(`#/shelf/model/${one.id}`)}
											>
												Edit
											</Button>
											<Button
												size="small"
												aria-label={`Copy ${one.name}`}
												onClick={() => go(`#/shelf/new/${one.id}`)}
											>
												Copy
											</Button>
											<Button
												size="small"
												aria-label={one.retired ? `Bring back ${one.name}` : `Retire ${one.name}`}
												onClick={() => setRetired(one, !one.retired)}
											>
												{one.retired ? 'Bring back' : 'Retire'}
											</Button>
										</TableCell>
									</TableRow>
								)
							})}
						</TableBody>
					</Table>
				</Paper>
			)}
			{shown.length < found.length && (
				<Button sx={{ alignSelf: 'flex-start' }} onClick={() => setAll(true)}>
					Show all {found.length}
				</Button>
			)}
		</Stack>
	)
}
