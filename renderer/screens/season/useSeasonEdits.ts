/** The season as it is edited: shown at once, saved behind it, one save after the other. */
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { call } from '../../host.ts'
import { useKeeping } from '../../parts/typedHere.ts'
import { withIds } from './edits.ts'
import type { Told } from './useTold.ts'

export type Opened = OutputOf<'season.open'>
interface Held {
	season: Season | undefined
	/** Of the season as the host has it; undefined before the first save. */
	savedAs: string | undefined
}
const heldOf = ({ season, savedAs }: Opened): Held => ({
	season: season && withIds(season),
	savedAs,
})

interface Editing {
	playerId: string
	opened: Opened
	/** Asks the host again for the season as it has it. */
	again: () => void
	told: Told
}
export function useSeasonEdits({ playerId, opened, again, told }: Editing) {
	const [held, setHeld] = useState(() => heldOf(opened))
	const [history, setHistory] = useState<readonly Season[]>([])
	const saved = useRef(held)
	const saving = useRef(Promise.resolve())
	const [kept] = useState(() => ({ keep: () => saving.current }))
	useKeeping(kept)
	// planned anew, or refused: what the host has takes the place of what is on screen
	useEffect(() => {
		saved.current = heldOf(opened)
		setHeld(saved.current)
	}, [opened])

	const save = async (season: Season) => {
		try {
			const follows = saved.current.savedAs
			const { savedAs } = await call('season.save', present({ playerId, season, follows }))
			saved.current = { season, savedAs }
			setHeld((now) => ({ ...now, savedAs }))
		} catch (error) {
			told.refuse(error)
			setHeld(saved.current)
			again()
		}
	}
	const store = (season: Season) => {
		setHeld((now) => ({ ...now, season }))
		saving.current = saving.current.then(() => save(season))
	}
	const change = (next: Season, says: string) => {
		const { season } = held
		if (season) setHistory((before) => [...before, season])
		told.clearTrouble()
		told.tell(says)
		store(next)
	}
	const takeBack = () => {
		const before = history.at(-1)
		if (!before) return
		setHistory(history.slice(0, -1))
		store(before)
		told.tell('The last change was taken back.')
	}
	/** Resolves once every change is saved. */
	const allSaved = () => saving.current
	/** The same, and a season that was never saved is. */
	const saveAll = async () => {
		await saving.current
		if (saved.current.savedAs !== undefined || !held.season) return
		store(held.season)
		await saving.current
	}
	return { ...held, canTakeBack: history.length > 0, change, takeBack, allSaved, saveAll }
}
export type SeasonEdits = ReturnType<typeof useSeasonEdits>
