/** The thresholds while they are changed, before they are kept as a version. */
import { useEffect, useMemo, useState } from 'react'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { differs, readTexts, type Scheme, textsOf } from './thresholds.ts'

export interface ProtocolDraft {
	/** what was typed, by the key of the threshold; a key left out has the shipped value */
	texts: Readonly<Record<string, string>>
	values: Readonly<Record<string, number>>
	/** what is wrong with a text, by its key */
	wrong: Readonly<Record<string, string>>
	scheme: Scheme | undefined
	why: string
	/** it differs from what is kept, or cannot be read */
	edited: boolean
	/** @param text undefined brings the shipped value back */
	put: (key: string, text: string | undefined) => void
	setScheme: (scheme: Scheme | undefined) => void
	setWhy: (why: string) => void
	/** the values of another version, or with none the shipped ones */
	take: (file: ProtocolFile | undefined, why: string) => void
	/** back to what is kept */
	discard: () => void
}
export function useProtocolDraft(kept: ProtocolFile): ProtocolDraft {
	const [texts, setTexts] = useState(() => textsOf(kept))
	const [scheme, setScheme] = useState(kept.fpiScheme)
	const [why, setWhy] = useState('')
	const { values, wrong } = useMemo(() => readTexts(texts), [texts])
	const put = (file: ProtocolFile | undefined) => {
		setTexts(file ? textsOf(file) : {})
		setScheme(file?.fpiScheme)
	}
	// biome-ignore lint/correctness/useExhaustiveDependencies: a new version is taken over once
	useEffect(() => put(kept), [kept])
	return {
		texts,
		values,
		wrong,
		scheme,
		why,
		edited: Object.keys(wrong).length > 0 || differs(values, scheme, kept),
		put: (key, text) =>
			setTexts(({ [key]: _, ...rest }) => (text === undefined ? rest : { ...rest, [key]: text })),
		setScheme,
		setWhy,
		take: (file, reason) => {
			put(file)
			setWhy(reason)
		},
		discard: () => put(kept),
	}
}
