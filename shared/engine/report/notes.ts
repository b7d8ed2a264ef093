/** The numbered notes at the end of a document: where each rule comes from. */
import type { Basis } from '../protocol/basis.ts'
import { strengthWords } from '../words/en.table.ts'
import type { Speak } from '../words/speak.ts'
import { capital, ruleInWords } from '../words/words.ts'

/** Numbered notes: the same source is numbered once, with every rule that rests on it. */
export class Notes {
	private readonly rulesBySource = new Map<string, Set<string>>()
	private readonly t: Speak
	constructor(t: Speak) {
		this.t = t
	}
	/** Notes a rule and its source. @returns the number to print beside what rests on it: '[2]' */
	mark(basis: Basis): string {
		const source = this.sourceWords(basis)
		const rules = this.rulesBySource.get(source) ?? new Set<string>()
		this.rulesBySource.set(source, rules.add(this.ruleWords(basis)))
		return `[${[...this.rulesBySource.keys()].indexOf(source) + 1}]`
	}
	get list(): string[] {
		return [...this.rulesBySource].map(([source, rules]) =>
			oneFullStop(`${[...rules].join('; ')}. ${capital(source)}`),
		)
	}
	private sourceWords({ source, strength }: Basis): string {
		// a source that calls itself common practice has said how strong it is
		if (strength === 'practice' && /common practice/.test(source)) return oneFullStop(`${source}.`)
		const howStrong = this.t('page.strength', { strength: strengthWords[strength] })
		return oneFullStop(`${source}. ${howStrong}`)
	}
	private ruleWords({ rule, threshold }: Basis): string {
		// 'ankle.flagCm = 2 cm' is the program's own name; the reader is given the limit itself
		const limit = threshold?.split(' = ')[1]
		const withLimit = limit ? ` (${this.t('page.limit', { limit })})` : ''
		return `${ruleInWords(rule)}${withLimit}`
	}
}
const oneFullStop = (text: string): string => text.replaceAll('..', '.')
