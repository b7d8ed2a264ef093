/** The folder that the dialog shows: where it is, which entry is marked, and what went wrong. */
import { useCallback, useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { PlaceEntry } from '../../../shared/desk/places/calls.ts'
import { type Purpose, purposes } from '../../../shared/desk/places/purposes.table.ts'
import { call, wordsOf } from '../../host.ts'

type Look = OutputOf<'places.look'>
/** What the marked entry should be once the folder was read. */
type Mark = (entries: readonly PlaceEntry[]) => number
const first: Mark = () => 0
const pathIs =
	(path: string | undefined): Mark =>
	(entries) =>
		Math.max(
			0,
			entries.findIndex((entry) => entry.path === path),
		)

export interface Places {
	look: Look | undefined
	marked: number
	setMarked: (index: number) => void
	/** why the last step failed, in words */
	says: string
	busy: boolean
	/** into a folder, or with '' to the places */
	open: (path: string) => void
	up: () => void
	/** asks again, for a stick that was plugged in */
	again: () => void
	makeFolder: (name: string) => Promise<boolean>
	/** ends the dialog with this path, once the host said that it can serve */
	choose: (path: string, written?: boolean) => void
	/** the path that would be used now; undefined where there is none */
	ready: string | undefined
}
/** @param chosen told the path that serves */
export function usePlaces(purpose: Purpose, chosen: (path: string) => void): Places {
	const [look, setLook] = useState<Look>()
	const [marked, setMarked] = useState(0)
	const [says, setSays] = useState('')
	const [busy, setBusy] = useState(false)
	/** the step that was asked last: the answer to one before it counts no more */
	const step = useRef(0)
	const run = useCallback(async (work: () => Promise<() => void>): Promise<boolean> => {
		const mine = ++step.current
		setBusy(true)
		try {
			const show = await work()
			if (mine !== step.current) return false
			setSays('')
			show()
			return true
		} catch (error) {
			if (mine === step.current) setSays(wordsOf(error))
			return false
		} finally {
			if (mine === step.current) setBusy(false)
		}
	}, [])
	const go = useCallback(
		(at: string | undefined, mark: Mark = first) =>
			run(async () => {
				const next = await call('places.look', at === undefined ? { purpose } : { purpose, at })
				return () => {
					setLook(next)
					setMarked(mark(next.entries))
				}
			}),
		[purpose, run],
	)
	useEffect(() => {
		void go(undefined)
		return () => {
			step.current++
		}
	}, [go])
	const here = look?.at?.path
	return {
		look,
		marked,
		setMarked,
		says,
		busy,
		open: (path) => void go(path),
		up: () => {
			if (here !== undefined) void go(look?.above.at(-1)?.path ?? '', pathIs(here))
		},
		again: () => void go(here ?? '', pathIs(look?.entries[marked]?.path)),
		makeFolder: (name) =>
			here === undefined
				? Promise.resolve(false)
				: run(async () => {
						const { path } = await call('places.newFolder', { purpose, at: here, name })
						const next = await call('places.look', { purpose, at: path })
						return () => {
							setLook(next)
							setMarked(0)
						}
					}),
		choose: (path, written) =>
			void run(async () => {
				const choice = await call('places.choose', {
					purpose,
					path,
					...(written ? { written } : {}),
				})
				return () => chosen(choice.path)
			}),
		ready: readyIn(purpose, look, marked),
	}
}
function readyIn(purpose: Purpose, look: Look | undefined, marked: number): string | undefined {
	if (purposes[purpose].picks === 'folder') return look?.at?.canWrite ? look.at.path : undefined
	const entry = look?.entries[marked]
	return entry?.is === 'file' ? entry.path : undefined
}
