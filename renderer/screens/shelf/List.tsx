/** The models of the shelf: look, copy, retire. */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Stack,
	TextField,
	Typography,
} from '@mui/material'
import { useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { Model, Shelf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { Empty } from '../../parts/Page.tsx'
import { ToLearn } from '../../parts/ToLearn.tsx'
import { AddModel } from './ListActs.tsx'
import { Models } from './Models.tsx'
import { unsaved } from './unsaved.ts'
import type { ShelfPageProps } from './useShelf.ts'
import { featureWords } from './words.ts'

/** As many rows as are drawn at once; the rest on request. */
const atOnce = 100

/** What is looked for in the list. */
interface Search {
	query: string
	withRetired: boolean
}
const searchedWords = (model: Model): string =>
	[model.name, termWords(model.sole), ...(model.codes ?? []).map(termWords), featureWords(model)]
		.join(' ')
		.toLowerCase()
/** The models that hold every word, by name. */
function foundModels({ models }: Shelf, { query, withRetired }: Search): Model[] {
	const words = query.trim().toLowerCase().split(/\s+/).filter(Boolean)
	return models
		.filter((model) => withRetired || !model.retired)
		.filter((model) => words.every((word) => searchedWords(model).includes(word)))
		.toSorted((left, right) => left.name.localeCompare(right.name) || (left.id < right.id ? -1 : 1))
}
function countWords({ models }: Shelf, found: number, withRetired: boolean): string {
	const retired = models.filter((model) => model.retired).length
	return withRetired
		? `${found} of ${models.length} models`
		: `${found} of ${models.length - retired} models on sale`
}
/** The same shelf with a model retired, or brought back. */
function withRetired(shelf: Shelf, { id }: Model, retire: boolean): Shelf {
	const models = shelf.models.map((model) => {
		if (model.id !== id) return model
		const { retired: _, ...rest } = model
		return retire ? { ...rest, retired: true } : rest
	})
	return { ...shelf, models }
}

export function List({ shelf, save }: ShelfPageProps) {
	const [search, setSearch] = useState<Search>({ query: '', withRetired: false })
	const [all, setAll] = useState(false)
	const found = foundModels(shelf, search)
	const shown = all ? found : found.slice(0, atOnce)
	const retire = (model: Model) => {
		const words = model.retired
			? `${model.name} is back on the shelf.`
			: `${model.name} is retired: it is no longer matched. It stays on the shelf and can be ` +
				'brought back.'
		save(withRetired(shelf, model, !model.retired), words).catch(() => {})
	}
	return (
		<Stack spacing={2}>
			{shelf.note && <Alert severity="info">{shelf.note}</Alert>}
			<Unsaved shelf={shelf} />
			<ToLearn />
			{shelf.models.length === 0 ? (
				<Empty
					says="No model yet. Measure the first one, or import a table of many: Decide then matches them to the player."
					act={<AddModel />}
				/>
			) : (
				<>
					<Tools shelf={shelf} search={search} setSearch={setSearch} />
					<Typography role="status" color="textSecondary">
						{countWords(shelf, found.length, search.withRetired)}
					</Typography>
				</>
			)}
			{found.length > 0 && <Models models={shown} retire={retire} />}
			{shown.length < found.length && (
				<Button sx={{ alignSelf: 'flex-start' }} onClick={() => setAll(true)}>
					Show all {found.length}
				</Button>
			)}
		</Stack>
	)
}

/** The way back to a form with entries not saved. */
function placeOf(place: string, { models }: Shelf): { to: string; words: string } {
	const [page = '', item = ''] = place.split(' ')
	const name = models.find((model) => model.id === item)?.name
	const to = `/shelf/${page}${item ? `/${item}` : ''}`
	if (page === 'model') return { to, words: name ?? item }
	return { to, words: name ? `a copy of ${name}` : 'a new model' }
}
function Unsaved({ shelf }: { shelf: Shelf }) {
	return [...unsaved.keys()].map((place) => {
		const { to, words } = placeOf(place, shelf)
		return (
			<Alert
				key={place}
				severity="warning"
				action={
					<Button color="inherit" onClick={() => navigate(to)}>
						Go on
					</Button>
				}
			>
				Entries not saved yet: {words}.
			</Alert>
		)
	})
}

interface ToolsProps {
	shelf: Shelf
	search: Search
	setSearch: (search: Search) => void
}
function Tools({ shelf: { models }, search, setSearch }: ToolsProps) {
	return (
		<Box
			className="lw-screen-only"
			sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'end' }}
		>
			<TextField
				sx={{ width: '24rem', maxWidth: '100%' }}
				label="Find a model"
				type="search"
				value={search.query}
				onChange={(event) => setSearch({ ...search, query: event.target.value })}
				slotProps={{ inputLabel: { shrink: true } }}
			/>
			<FormControlLabel
				label={`Show retired (${models.filter((model) => model.retired).length})`}
				control={
					<Checkbox
						checked={search.withRetired}
						onChange={(event) => setSearch({ ...search, withRetired: event.target.checked })}
					/>
				}
			/>
		</Box>
	)
}
