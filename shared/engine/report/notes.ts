/** The numbered notes at the end of a document: where each rule comes from. */
import type { Basis } from '../protocol/basis.ts'
import { limitInWords } from '../words/reading.ts'
import type { Speak } from '../words/speak.ts'
import { capital, ruleInWords, strengthWords } from '../words/words.ts'

/** Numbered notes: the same source is numbered once, with every rule that rests on it. */
export class Notes {
	private readonly bySource = new Map<string, { place: number; rules: Set<string> }>()
	private readonly t: Speak
	private readonly withBodyMass: boolean
	private readonly apart: boolean
	/**
	 * @param withBodyMass whether rules about body mass are for this reader
	 * @param apart whether the notes stand apart from the sentences, without numbers
	 */
	constructor(t: Speak, { withBodyMass = true, apart = false } = {}) {
		this.t = t
		this.withBodyMass = withBodyMass
		this.apart = apart
	}
	/**
	 * Notes a rule and its source. @returns the number to print beside what rests on it: '[2]'; empty
	 * where the rule is not for this reader, or the notes stand apart
	 */
	mark(basis: Basis): string {
		if (!this.withBodyMass && isOfBodyMass(basis)) return ''
		const source = this.sourceWords(basis)
		const note = this.bySource.get(source) ?? { place: this.bySource.size + 1, rules: new Set() }
		this.bySource.set(source, note)
		note.rules.add(this.ruleWords(basis))
		return this.apart ? '' : `[${note.place}]`
	}
	get list(): string[] {
		return [...this.bySource].map(([source, { rules }]) =>
			oneFullStop(`${[...rules].join('; ')}. ${capital(source)}`),
		)
	}
	private sourceWords({ source, strength, unsourced }: Basis): string {
		// what has no source has said how strong it is
		if (unsourced) return oneFullStop(`${source}.`)
		const howStrong = this.t('page.strength', { strength: strengthWords[strength] })
		return oneFullStop(`${source}. ${howStrong}`)
	}
	private ruleWords(basis: Basis): string {
		// the key of the row is the program's own name; the reader is given the limit itself
		const limit = limitInWords(basis)
		const withLimit = limit ? ` (${this.t('page.limit', { limit })})` : ''
		return `${ruleInWords(basis.rule)}${withLimit}`
	}
}
/** Limits in kilograms are limits of body mass. */
const isOfBodyMass = ({ limit }: Basis): boolean => limit !== undefined && /^kg\b/.test(limit.unit)
/** Words with the numbers of their notes behind them. */
export const withMarks = (says: string, ...marks: readonly string[]): string =>
	[says, ...marks].filter(Boolean).join(' ')
const oneFullStop = (text: string): string => text.replaceAll('..', '.')
