/** What saving a player had to say: saving a new one changes the page, so it is kept above it. */
import { useEffect, useState } from 'react'
import { goTo } from '../parts/goTo.ts'
import type { SavedNotice } from '../screens/player/notice.ts'

/** @param id the part of the address that names the player; the notice goes with that page */
export function useSavedNotice(id: string | undefined): {
	notice: SavedNotice | undefined
	saved: (notice: SavedNotice) => void
} {
	const [notice, setNotice] = useState<SavedNotice>()
	useEffect(() => setNotice((now) => (now && now.playerId !== id ? undefined : now)), [id])
	return {
		notice,
		saved: (now) => {
			setNotice(now)
			if (now.playerId !== id) goTo(`/players/${now.playerId}`)
		},
	}
}
