/** The clinic's shelf, and saving it whole. */
import { useEffect, useState } from 'react'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { wordsOf } from '../../host.ts'
import { change, hostClient, useHost } from '../../query.ts'

/** Saves the whole shelf; `words` are said once it is done. Rejects in words. */
type SaveShelf = (next: Shelf, words: string) => Promise<void>
/** What a page of the room is given. */
export interface ShelfPageProps {
	shelf: Shelf
	save: SaveShelf
}

/**
 * @param page what was done is said on the list it leads back to, and no longer than that
 * @returns `refused` is why the last save failed, `done` what it did; empty where there is none
 */
export function useShelf(page: string | undefined) {
	const held = useHost('shelf.get', {})
	const [refused, setRefused] = useState('')
	const [done, setDone] = useState('')
	useEffect(() => {
		if (page !== undefined) setDone('')
	}, [page])
	const save: SaveShelf = async (shelf, words) => {
		setDone('')
		setRefused('')
		try {
			const follows = held.value?.savedAs
			const { savedAs } = await change('shelf.save', present({ shelf, follows }))
			// the next save follows this one, also where it comes before the shelf is read anew
			hostClient.setQueryData(['shelf.get', {}], { shelf, savedAs })
			setDone(words)
		} catch (error) {
			setRefused(wordsOf(error))
			throw error
		}
	}
	return { held, refused, done, save }
}
