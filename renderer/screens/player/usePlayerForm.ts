/** The details of a player while they are typed: kept by the host at once, saved on demand. */
import { useEffect, useMemo, useState } from 'react'
import { today } from '../../parts/dates.ts'
import { byField } from '../../parts/form.tsx'
import { useKeeping } from '../../parts/typedHere.ts'
import { change } from '../../query.ts'
import {
	entryProblems,
	entryQuestions,
	type Form,
	formOf,
	type Player,
	paths,
	readForm,
	twiceProblems,
} from './details.ts'
import { allKept, type FormOf, isAllKept, keepTyped } from './keeping.ts'
import type { SavedNotice } from './notice.ts'

export interface PlayerForm {
	form: Form
	/** what was typed and is not saved, by path */
	typed: Form
	/** what stands on record, by path */
	held: Form
	/** new addresses as they were typed once more, by path */
	again: Form
	putAgain: (path: string, value: string) => void
	/** what is wrong with a field, by its path */
	wrong: Form
	/** what is asked about a field */
	asked: Form
	says: string
	/** why what is typed is not kept */
	notKept: string
	busy: boolean
	/** something was typed that is not saved */
	edited: boolean
	put: (path: string, value: string) => void
	/** takes back all that was typed since the last save */
	discard: () => void
	/** brings back what was discarded; undefined where nothing was */
	bringBack: (() => void) | undefined
	/** @returns whether the details were saved */
	save: () => Promise<boolean>
}
const without = (typed: Form, saved: Form): Form =>
	Object.fromEntries(Object.entries(typed).filter(([path, text]) => saved[path] !== text))

/** Asks before the window closes while something typed is not with the host. */
function useLeaveGuard(): void {
	useEffect(() => {
		const leave = (event: BeforeUnloadEvent) => {
			if (!isAllKept()) event.preventDefault()
		}
		addEventListener('beforeunload', leave)
		return () => removeEventListener('beforeunload', leave)
	}, [])
}
/**
 * What was typed over what stands on record: every change goes to the host at once.
 * @param before what was typed before and not saved
 */
function useTyped(of: FormOf, held: Form, before: Form) {
	const [typed, setTyped] = useState(before)
	const [discarded, setDiscarded] = useState<Form>()
	const [notKept, setNotKept] = useState('')
	const keep = (next: Form) => {
		setTyped(next)
		keepTyped({ ...of, typed: next, told: setNotKept })
	}
	const put = (path: string, value: string) => {
		const { [path]: _, ...others } = typed
		setDiscarded(undefined)
		keep(value === (held[path] ?? '') ? others : { ...others, [path]: value })
	}
	return {
		typed,
		notKept,
		put,
		/** the host has dropped what was saved */
		saved: (words: Form) => setTyped((now) => without(now, words)),
		discard: () => {
			setDiscarded(typed)
			keep({})
		},
		bringBack:
			discarded &&
			(() => {
				keep(discarded)
				setDiscarded(undefined)
			}),
	}
}
/** Rejects where the host refused to keep what was typed. */
const keepsDetails = {
	keep: async () => {
		await allKept()
		if (!isAllKept()) throw new Error('The details of the player are on this screen only.')
	},
}
/** @param player as it stands on record; undefined for a new one */
export function usePlayerForm(
	of: FormOf,
	player: Player | undefined,
	before: Form,
	saved: (notice: SavedNotice) => void,
): PlayerForm {
	const held = useMemo<Form>(() => (player ? formOf(player) : {}), [player])
	const { typed, saved: dropSaved, discard, put, ...rest } = useTyped(of, held, before)
	const [refusedAt, setRefusedAt] = useState<Form>({})
	const [again, setAgain] = useState<Form>({})
	const [says, setSays] = useState('')
	const [busy, setBusy] = useState(false)
	useLeaveGuard()
	useKeeping(keepsDetails)
	const form = { ...held, ...typed }
	const refuse = (problems: Form, words = '') => {
		setRefusedAt(problems)
		setSays([words, ...Object.values(problems)].filter(Boolean).join(' '))
	}
	const save = async (): Promise<boolean> => {
		const read = readForm(form, today())
		const problems = { ...twiceProblems(typed, again), ...read.problems }
		refuse(problems)
		if (!read.player || Object.keys(problems).length > 0) return false
		setBusy(true)
		try {
			await allKept()
			const notice = await change('players.save', { playerId: of.playerId, player: read.player })
			dropSaved(typed)
			setAgain({})
			saved(notice)
			return true
		} catch (error) {
			const { fields, says: words } = byField(error, 'player', paths)
			refuse(fields, words)
			return false
		} finally {
			setBusy(false)
		}
	}
	return {
		...{ form, typed, held, again, says, busy, save, ...rest },
		putAgain: (path, value) => setAgain((now) => ({ ...now, [path]: value })),
		wrong: { ...refusedAt, ...entryProblems(form, today()) },
		asked: entryQuestions(form, today()),
		edited: Object.keys(typed).length > 0,
		put: (path, value) => {
			setRefusedAt(({ [path]: _, ...others }) => others)
			put(path, value)
		},
		discard: () => {
			refuse({})
			discard()
		},
	}
}
