/**
 * The shelf: what can be bought locally, as measured in the clinic. A page for the list, one model,
 * a table to import, and how to measure.
 */
import { Alert, Box, Link } from '@mui/material'
import type { ReactNode } from 'react'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Trouble } from '../../parts/form.tsx'
import { Page } from '../../parts/Page.tsx'
import { Guide } from './Guide.tsx'
import { ImportCsv } from './ImportCsv.tsx'
import { List } from './List.tsx'
import { ListActs } from './ListActs.tsx'
import { ModelForm } from './ModelForm.tsx'
import { copyOf, emptyTexts, type ModelTexts, textsOf } from './modelTexts.ts'
import { type ShelfPageProps, useShelf } from './useShelf.ts'

/** A clinic that saved none yet. */
const empty: Shelf = { format: 'lastwright-shelf', version: 1, models: [] }
const pages = [
	{ name: undefined, to: '#/shelf', title: 'Models' },
	{ name: 'import', to: '#/shelf/import', title: 'Import a table' },
	{ name: 'guide', to: '#/shelf/guide', title: 'How to measure' },
] as const

interface Where {
	page: string | undefined
	/** Id of a model. */
	item: string | undefined
}
/** The line under the title, by page. */
const lines: Readonly<Record<string, ReactNode>> = {
	list:
		'The models that can be bought near here, as this clinic measured them. Decide matches them ' +
		'to the player. Sizes on labels differ between makers: only what was measured counts.',
	import: (
		<>
			One line for each size; what is true of the whole model stands on its first line. Columns are
			set apart by comma, semicolon or tab; <em>Save as table</em> on the list gives the heading.
			Nothing changes before you have looked it over.
		</>
	),
	guide:
		'Common practice, no source. What matters is that every model is measured the same way, by ' +
		'the same hands where that can be. Leave empty what you did not measure.',
	form: (
		<>
			Only name, sole and one measured size are needed. What is left empty is <em>not recorded</em>,
			never zero; the match says so. Enter goes on, Shift+Enter back. The page{' '}
			<Link href="#/shelf/guide">How to measure</Link> shows each measure; what is typed here is
			kept meanwhile.
		</>
	),
}
function titleOf({ page, item }: Where, shelf: Shelf | undefined): string {
	if (page === 'new') return 'New model'
	if (page !== 'model') return 'Shelf'
	return shelf?.models.find(({ id }) => id === item)?.name ?? 'Model'
}
const isForm = (page: string | undefined) => page === 'new' || page === 'model'
const lineOf = (page = 'list') => lines[isForm(page) ? 'form' : page] ?? lines.list

export function ShelfScreen({ page, item }: Where) {
	const { held, refused, done, save } = useShelf(page)
	const shelf = held.value && (held.value.shelf ?? empty)
	return (
		<Page
			title={titleOf({ page, item }, shelf)}
			line={lineOf(page)}
			acts={shelf && page === undefined && <ListActs some={shelf.models.length > 0} />}
			room={{
				label: 'Shelf',
				pages: pages.map(({ name, to, title }) => ({
					to,
					title,
					here: name === (isForm(page) ? undefined : page),
				})),
			}}
		>
			<Trouble says={refused} />
			<Box role="status" sx={{ '&:empty': { display: 'none' } }}>
				{done && <Alert severity="success">{done}</Alert>}
			</Box>
			<Answered of={held} what="the shelf">
				{({ shelf = empty }) => <ShelfPage page={page} item={item} shelf={shelf} save={save} />}
			</Answered>
		</Page>
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
