/** The details of a player while they are typed, and their saving. */
import { useState } from 'react'
import { today } from '../../parts/dates.ts'
import { byField } from '../../parts/form.tsx'
import { change } from '../../query.ts'
import { type Form, formOf, type Player, paths, readForm } from './details.ts'
import type { SavedNotice } from './notice.ts'

export interface PlayerForm {
	form: Readonly<Form>
	/** what is wrong with a field, by its path */
	wrong: Readonly<Record<string, string>>
	says: string
	busy: boolean
	/** something was typed that is not saved */
	edited: boolean
	put: (path: string, value: string) => void
	/** @returns whether the details were saved */
	save: () => Promise<boolean>
}
/** @param playerId undefined for a new player */
export function usePlayerForm(
	playerId: string | undefined,
	held: Player | undefined,
	saved: (notice: SavedNotice) => void,
): PlayerForm {
	const [form, setForm] = useState<Form>(() => (held ? formOf(held) : {}))
	const [wrong, setWrong] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const [edited, setEdited] = useState(false)
	const [busy, setBusy] = useState(false)
	const put = (path: string, value: string) => {
		setForm((now) => ({ ...now, [path]: value }))
		setEdited(true)
		setWrong(({ [path]: _, ...rest }) => rest)
	}
	const refused = (error: unknown) => {
		const { fields, says: words } = byField(error, 'player', paths)
		setWrong(fields)
		setSays([words, ...Object.values(fields)].join(' '))
	}
	const save = async (): Promise<boolean> => {
		const { player, problems } = readForm(form, today())
		setWrong(problems)
		setSays(Object.values(problems).join(' '))
		if (!player || Object.keys(problems).length > 0) return false
		setBusy(true)
		try {
			saved(await change('players.save', { playerId, player }))
			setForm(formOf(player))
			setEdited(false)
			return true
		} catch (error) {
			refused(error)
			return false
		} finally {
			setBusy(false)
		}
	}
	return { form, wrong, says, busy, edited, put, save }
}
