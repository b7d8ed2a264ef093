/**
 * The shelf: what can be bought locally, as measured in the clinic. A page for the list, one model,
 * a table to take in, and how to measure.
 */
import { Alert, Box, Stack, Typography } from '@mui/material'
import { useCallback, useEffect, useState } from 'react'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { call, wordsOf } from '../../host.ts'
import { RoomNav } from '../../parts/RoomNav.tsx'
import { askStatusAgain } from '../../query.ts'
import { Guide } from './Guide.tsx'
import { ImportCsv } from './ImportCsv.tsx'
import { List } from './List.tsx'
import { ModelForm } from './ModelForm.tsx'
import { copyOf, emptyTexts, textsOf } from './texts.ts'

export interface Held {
	shelf: Shelf
	savedAs?: string | undefined
}
/** Saves the whole shelf; `words` are said once it is done. Rejects in words. */
export type SaveShelf = (next: Shelf, words: string) => Promise<void>
const empty: Shelf = { format: 'lastwright-shelf', version: 1, models: [] }

export function ShelfScreen({
	page,
	item,
}: {
	page: string | undefined
	item: string | undefined
}) {
	const [held, setHeld] = useState<Held>()
	const [trouble, setTrouble] = useState('')
	const [done, setDone] = useState('')
	const load = useCallback(() => {
		call('shelf.get', {}).then(
			({ shelf, savedAs }) => {
				setHeld({ shelf: shelf ?? empty, savedAs })
				setTrouble('')
			},
			(error) => setTrouble(wordsOf(error)),
		)
	}, [])
	useEffect(load, [load])
	// what was done is said on the list it leads back to, and no longer than that
	useEffect(() => {
		if (page !== undefined) setDone('')
	}, [page])
	const save: SaveShelf = async (next, words) => {
		setDone('')
		setTrouble('')
		try {
			const { savedAs } = await call('shelf.save', {
				shelf: next,
				...(held?.savedAs === undefined ? {} : { follows: held.savedAs }),
			})
			setHeld({ shelf: next, savedAs })
			setDone(words)
		} catch (error) {
			setTrouble(wordsOf(error))
			askStatusAgain()
			throw error
		}
	}
	const shown = () => {
		if (!held) return trouble ? null : <Typography role="status">Opening the shelf.</Typography>
		const { shelf } = held
		if (page === 'guide') return <Guide />
		if (page === 'import') return <ImportCsv shelf={shelf} save={save} />
		const model = shelf.models.find((one) => one.id === item)
		if (page === 'new' || page === 'model') {
			if (item && !model)
				return (
					<Alert severity="warning">
						There is no model "{item}" on the shelf. Go back to the list.
					</Alert>
				)
			const key = `${page} ${item ?? ''}`
			return (
				<ModelForm
					key={key}
					place={key}
					start={page === 'model' && model ? textsOf(model) : model ? copyOf(model) : emptyTexts()}
					shelf={shelf}
					save={save}
				/>
			)
		}
		return <List shelf={shelf} save={save} />
	}
	return (
		<Stack spacing={2}>
			<RoomNav
				label="Shelf"
				pages={(
					[
						[undefined, '#/shelf', 'Models'],
						['import', '#/shelf/import', 'Take in a table'],
						['guide', '#/shelf/guide', 'How to measure'],
					] as const
				).map(([name, to, title]) => ({
					to,
					title,
					here: name === (page === 'new' || page === 'model' ? undefined : page),
				}))}
			/>
			{trouble && (
				<Alert severity="error" role="alert">
					{trouble}
				</Alert>
			)}
			<Box role="status">{done && <Alert severity="success">{done}</Alert>}</Box>
			{shown()}
		</Stack>
	)
}
