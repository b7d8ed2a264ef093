/**
 * The shelf: what can be bought locally, as measured in the clinic. A page for the list, one model,
 * a table to take in, and how to measure.
 */
import { Alert, Box, Stack } from '@mui/material'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Trouble } from '../../parts/form.tsx'
import { RoomNav } from '../../parts/RoomNav.tsx'
import { Guide } from './Guide.tsx'
import { ImportCsv } from './ImportCsv.tsx'
import { List } from './List.tsx'
import { ModelForm } from './ModelForm.tsx'
import { copyOf, emptyTexts, type ModelTexts, textsOf } from './modelTexts.ts'
import { type ShelfPageProps, useShelf } from './useShelf.ts'

/** A clinic that saved none yet. */
const empty: Shelf = { format: 'lastwright-shelf', version: 1, models: [] }
const pages = [
	{ name: undefined, to: '#/shelf', title: 'Models' },
	{ name: 'import', to: '#/shelf/import', title: 'Take in a table' },
	{ name: 'guide', to: '#/shelf/guide', title: 'How to measure' },
] as const

interface Where {
	page: string | undefined
	/** Id of a model. */
	item: string | undefined
}
export function ShelfScreen({ page, item }: Where) {
	const { held, refused, done, save } = useShelf(page)
	const onForm = page === 'new' || page === 'model'
	return (
		<Stack spacing={2}>
			<RoomNav
				label="Shelf"
				pages={pages.map(({ name, to, title }) => ({
					to,
					title,
					here: name === (onForm ? undefined : page),
				}))}
			/>
			<Trouble says={refused} />
			<Box role="status">{done && <Alert severity="success">{done}</Alert>}</Box>
			<Answered of={held} what="the shelf">
				{({ shelf = empty }) => <ShelfPage page={page} item={item} shelf={shelf} save={save} />}
			</Answered>
		</Stack>
	)
}

function ShelfPage({ page, item, shelf, save }: Where & ShelfPageProps) {
	if (page === 'guide') return <Guide />
	if (page === 'import') return <ImportCsv shelf={shelf} save={save} />
	if (page !== 'new' && page !== 'model') return <List shelf={shelf} save={save} />
	const start = startOf(page, item, shelf)
	if (!start)
		return (
			<Alert severity="warning">
				There is no model "{item}" on the shelf. Go back to the list.
			</Alert>
		)
	const place = `${page} ${item ?? ''}`
	return <ModelForm key={place} place={place} start={start} shelf={shelf} save={save} />
}

/** What the form begins with; undefined where the model that it is about is not on the shelf. */
function startOf(
	page: 'new' | 'model',
	item: string | undefined,
	shelf: Shelf,
): ModelTexts | undefined {
	if (!item) return emptyTexts()
	const model = shelf.models.find(({ id }) => id === item)
	if (!model) return undefined
	return page === 'model' ? textsOf(model) : copyOf(model)
}
