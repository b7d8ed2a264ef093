/** Preferred languages: how they are typed and kept, what Sign asks, and what each paper says. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leafWords } from '../../shared/desk/records/leaf-words.ts'
import { toldDifferences } from '../../shared/desk/records/told.ts'
import { rosterFromCells } from '../../shared/desk/squad/roster.ts'
import { assess } from '../../shared/engine/assess.ts'
import { agreementBlocks } from '../../shared/engine/report/agreement-blocks.ts'
import { type KindName, kinds } from '../../shared/engine/report/kinds.ts'
import type { Agreement } from '../../shared/engine/visit/agreement.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { isLanguageTag } from '../../shared/engine/visit/languages.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import type { Player } from '../../shared/engine/visit/visit.ts'
import { agreementInWords } from '../../shared/engine/words/en/agreement.ts'
import { offeredLanguages } from '../../shared/engine/words/en/languages.table.ts'
import {
	hasLanguageName,
	languageEntry,
	languageName,
	languageNames,
	languageTyped,
} from '../../shared/engine/words/en/languages.ts'
import { agreed } from '../agreed.ts'
import { clinic, json, read } from '../demo.ts'

const today = '2027-01-20'

describe('the list of languages', () => {
	it('has a canonical tag, a name and no second place for each', () => {
		expect(offeredLanguages.filter((tag) => !isLanguageTag(tag))).toEqual([])
		expect(offeredLanguages.filter((tag) => Intl.getCanonicalLocales(tag)[0] !== tag)).toEqual([])
		expect(offeredLanguages.filter((tag) => !hasLanguageName(tag))).toEqual([])
		expect(new Set(languageNames).size).toBe(offeredLanguages.length)
	})
	it('reads each name and each tag back, with or without marks, in any case', () => {
		for (const tag of offeredLanguages) {
			expect(languageTyped(languageName(tag))).toBe(tag)
			expect(languageTyped(languageEntry(tag))).toBe(tag)
			// a name goes before a tag: 'ga' is Ga
			if (tag !== 'ga') expect(languageTyped(` ${tag.toUpperCase()} `)).toBe(tag)
		}
		expect(languageTyped('maori')).toBe('mi')
		expect(languageTyped('EN-nz')).toBe('en-NZ')
		expect(languageEntry('en-NZ')).toBe('en-NZ')
		expect(languageTyped('pjt')).toBe('pjt')
		for (const wrong of ['', 'Elvish of the woods', '1', 'a', 'de_1996', 'english?'])
			expect(languageTyped(wrong), wrong).toBeUndefined()
	})
	it('names whatever has the form of a tag, without a fault', () =>
		fc.assert(
			fc.property(fc.stringMatching(/^[a-z]{2,3}(-[A-Z][a-z]{3})?(-[A-Z]{2})?$/), (tag) => {
				expect(languageName(tag).length).toBeGreaterThan(0)
			}),
		))
})

describe('a preferred language', () => {
	it('that nobody knows is named, in a file and in a roster', () => {
		const file = json('visit-adult.json')
		const parsed = parseVisit({ ...file, player: { ...file.player, preferredLanguage: 'Elvish' } })
		expect(parsed.ok ? [] : parsed.problems.map(({ path }) => path)).toEqual([
			'player.preferredLanguage',
		])
		const heads = ['No', 'Given name', 'Family name', 'Born', 'Sex', 'Language']
		const row = ['1', 'Ada', 'Quill', '2005-03-01', 'f']
		const roster = (language: string) =>
			rosterFromCells([heads, [...row, language]], { team: '', on: today })
		expect(roster('Elvish').problems).toMatchObject([{ row: 2, column: 'language' }])
		expect(roster('Arabic').rows[0]?.player.preferredLanguage).toBe('ar')
		expect(roster('').rows[0]?.player).not.toHaveProperty('preferredLanguage')
	})
	it('of a guardian comes in a roster too, and not without the name', () => {
		const heads = [
			'No',
			'Given name',
			'Family name',
			'Born',
			'Sex',
			'Guardian',
			'Guardian language',
		]
		const row = (name: string) => ['1', 'Ada', 'Quill', '2015-03-01', 'f', name, 'prs']
		const named = rosterFromCells([heads, row('Nur')], { team: '', on: today })
		expect(named.rows[0]?.player.guardian).toEqual({ name: 'Nur', preferredLanguage: 'fa-AF' })
		expect(rosterFromCells([heads, row('')], { team: '', on: today }).problems).toMatchObject([
			{ column: 'guardian', code: 'missing' },
		])
	})
	it('is read by its name where versions are compared', () => {
		expect(leafWords('player.preferredLanguage', 'mi')).toBe('Māori')
		const [told] = toldDifferences([
			{ path: 'visit.player.preferredLanguage', before: '"mi"', after: '"sm"' },
		])
		expect(told).toMatchObject({ title: 'Preferred language', before: 'Māori', after: 'Samoan' })
	})
})

const base = agreed.agreement
const codesOf = (interpreter: Agreement['interpreter'], player: Partial<Player>, told = base) =>
	agreementBlocks({ ...told, interpreter }, { minor: true, urgent: false, player }).map(
		({ code }) => code,
	)
describe('Sign', () => {
	it('asks how it was explained where another language than that of the papers is preferred', () => {
		const arabic = { preferredLanguage: 'ar' }
		expect(codesOf(undefined, arabic)).toEqual(['signing.language-open'])
		expect(codesOf({ need: 'not-needed' }, arabic)).toEqual(['signing.language-how'])
		expect(codesOf({ need: 'not-needed', how: '  ' }, arabic)).toEqual(['signing.language-how'])
		expect(codesOf({ need: 'not-needed', how: 'Speaks English well.' }, arabic)).toEqual([])
		expect(codesOf({ need: 'present', who: 'No 7', relation: 'professional' }, arabic)).toEqual([])
	})
	it('asks nothing more in the language of the papers, of nobody told, and in haste', () => {
		for (const player of [{}, { preferredLanguage: 'en' }, { preferredLanguage: 'en-NZ' }])
			expect(codesOf({ need: 'not-needed' }, player)).toEqual([])
		const guardian = { name: 'Nur', preferredLanguage: 'ar' }
		expect(codesOf({ need: 'not-needed' }, { guardian })).toEqual(['signing.language-how'])
		const alone = { ...base, explainedTo: { player: true } }
		expect(codesOf({ need: 'not-needed' }, { guardian }, alone)).toEqual([])
		const urgent = { minor: true, urgent: true, player: { preferredLanguage: 'ar' } }
		expect(agreementBlocks(base, urgent)).toEqual([])
	})
	it('keeps the words in the record', () => {
		const said = agreementInWords({ interpreter: { need: 'not-needed', how: 'In Arabic by Dr A' } })
		expect(said).toMatchObject([{ says: 'Not needed, In Arabic by Dr A' }])
	})
})

describe('the papers', () => {
	const textOf = (
		kind: KindName,
		player: Partial<Player>,
		interpreter: Agreement['interpreter'],
		explainedTo = base?.explainedTo,
	): string => {
		const file = json('visit-adolescent.json')
		const visit = read({
			...file,
			player: {
				...file.player,
				...player,
				guardian: { ...file.player.guardian, ...player.guardian },
			},
		})
		const input = {
			visit,
			assessment: assess(visit),
			decisions: { ...noDecisions, agreement: { ...base, explainedTo, interpreter } },
			clinic,
			draft: false,
			signedAt: '2027-01-20T09:00:00.000Z',
			on: '2027-01-20',
			consents: [{ id: 'C', purpose: 'coach', decision: 'permit', given: '2027-01-01' }] as const,
		}
		return JSON.stringify(kinds[kind].compose({ ...input, consents: [...input.consents] }))
	}
	const guardian = { name: 'Nur Ashdown', preferredLanguage: 'fa-AF' }
	const present = { need: 'present', way: 'by-telephone' } as const
	it('say to each the own language, and how it was explained', () => {
		const both = { preferredLanguage: 'ar', guardian }
		const player = textOf('player', both, present)
		expect(player).toContain('Your preferred language: Arabic. This was explained through an')
		expect(player).toContain('interpreter, by telephone.')
		expect(player).not.toContain('Dari')
		expect(textOf('guardian', both, present)).toContain('Your preferred language: Dari. This was')
		const doctor = textOf('referral', both, present)
		expect(doctor).toContain('Preferred language: Arabic and Dari (guardian).')
		expect(doctor).toContain('This was explained through an interpreter, by telephone.')
		expect(textOf('appointment', both, present)).toContain('Arabic and Dari (guardian)')
	})
	it('say only what was so', () => {
		const arabic = { preferredLanguage: 'ar' }
		expect(
			textOf('player', arabic, { need: 'not-needed', how: 'The player reads English.' }),
		).toContain('There was no interpreter. How it was explained: The player reads English.')
		expect(textOf('player', arabic, { need: 'needed-but-none', why: 'late' })).toContain(
			'An interpreter was needed and there was none. It has to be explained again with one.',
		)
		// the player was not told: nothing was explained to the player
		const toGuardian = textOf('player', arabic, present, { guardian: true })
		expect(toGuardian).toContain('Your preferred language: Arabic.')
		expect(toGuardian).not.toContain('interpreter')
		for (const kind of ['player', 'guardian', 'referral', 'appointment'] as const)
			expect(textOf(kind, {}, { need: 'not-needed' }), kind).not.toMatch(
				/referred language|interpreter/,
			)
	})
	it('of club and laboratory say nothing of it', () => {
		for (const kind of ['coach', 'squad', 'insert-order'] as const)
			expect(textOf(kind, { preferredLanguage: 'ar', guardian }, present), kind).not.toMatch(
				/Arabic|Dari|interpreter/,
			)
	})
})
