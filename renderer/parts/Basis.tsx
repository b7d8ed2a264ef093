/**
 * What a finding rests on, one press away: numbers put in, rule, threshold, source and its strength
 * in words.
 */
import type { ReactNode } from 'react'
import type { Basis as BasisOf, Because, Strength } from '../../shared/engine/protocol/basis.ts'
import { readingInWords, thresholdInWords } from '../../shared/engine/words/reading.ts'
import { ruleInWords } from '../../shared/engine/words/words.ts'
import { Disclosure, Told } from './Disclosure.tsx'

export const strengthWords: Record<Strength, string> = {
	standard: 'published standard',
	guideline: 'guideline',
	trial: 'controlled trial',
	cohort: 'cohort study',
	'cross-sectional': 'cross-sectional study',
	expert: 'expert opinion',
	practice: 'common practice',
	clinic: 'set by this clinic',
}
/** Findings that begin with the name of a feature or a pair begin as a sentence does. */
export const sentence = { '&::first-letter': { textTransform: 'uppercase' } } as const

interface BasisProps {
	because: readonly Because[]
	basis: BasisOf
	/** what stands before the button on its line */
	head?: ReactNode
	/** what stands after it */
	end?: ReactNode
}
export function Basis({ because, basis, head, end }: BasisProps) {
	const rows: [string, string][] = [
		['Numbers put in', because.length ? because.map(readingInWords).join('; ') : 'none'],
		['Rule', ruleInWords(basis.rule)],
		['Threshold', thresholdInWords(basis) ?? 'none; the rule is yes or no'],
		['Source', basis.source],
		['Strength', strengthWords[basis.strength]],
	]
	return (
		<Disclosure label="Basis" head={head} end={end}>
			<Told rows={rows} />
		</Disclosure>
	)
}
