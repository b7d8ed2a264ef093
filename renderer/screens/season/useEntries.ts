/** The entries of a short form, and what is wrong with them. */
import { useState } from 'react'

type Entries = Record<string, string>

/** @param start what stands in the form first. An entry takes the last refusal's words away. */
export function useEntries(start: Entries | (() => Entries)) {
	const [entries, setEntries] = useState<Entries>(start)
	const [says, setSays] = useState('')
	const set = (key: string) => (value: string) => {
		setEntries((now) => ({ ...now, [key]: value }))
		setSays('')
	}
	/** What a field of a key is given. */
	const of = (key: string) => ({ value: entries[key] ?? '', set: set(key) })
	return { entries, setEntries, says, setSays, of }
}
