/**
 * What a player reads is written at a reading grade of 7 or less: Flesch-Kincaid (Kincaid et al.
 * 1975; coefficients from memory), over whole documents and over every sentence alone.
 */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { explainedAtEnd } from '../../shared/engine/report/explained.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import {
	countsOf,
	fleschKincaid,
	readabilityOf,
	syllablesOf,
} from '../../shared/engine/report/readability.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { conditionWords } from '../../shared/engine/words/en/conditions.table.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { glossary } from '../../shared/engine/words/en/glossary.table.ts'
import { sentences as rooms } from '../../shared/engine/words/en/sentences.ts'
import {
	ankleLimits,
	defaultWarningSigns,
	featureWords,
	statusWords,
} from '../../shared/engine/words/en/terms.table.ts'
import type { Params, Sentence } from '../../shared/engine/words/sentence.ts'
import { placeholdersOf, speakFrom } from '../../shared/engine/words/speak.ts'
import type { Stated } from '../../shared/engine/words/statement.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'
import { wholeVisit } from './random-visit.ts'
import { samples as roomSamples, samplesOf, yesOrNo } from './sentence-samples.table.ts'

const mostGrade = 7
/** A label is too short for the formula: no word of it may be longer than this. */
const mostSyllables = 3
const leastWords = 4
const folder = new URL('./pictures/', import.meta.url)
const pictures = readdirSync(folder)
	.filter((name) => name.endsWith('.json'))
	.map((name) => visitSchema.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))))
const known: readonly Visit[] = [...pictures, ...demoNames.map((name) => read(json(name)))]

/** Why a text is too hard; undefined where it is not. */
function hardness(text: string): string | undefined {
	const counts = countsOf(text)
	if (!counts) return undefined
	if (counts.words >= leastWords) {
		const grade = fleschKincaid(counts)
		return grade > mostGrade ? `grade ${grade.toFixed(1)}: ${text}` : undefined
	}
	const long = (text.match(/\p{L}+/gu) ?? []).find((word) => syllablesOf(word) > mostSyllables)
	return long && `long word ${long}: ${text}`
}
const hardOf = (texts: readonly string[]): string[] =>
	[...new Set(texts)].flatMap((text) => hardness(text) ?? [])
const documentsOf = (visit: Visit) => {
	const assessment = assess(visit)
	const input = {
		visit,
		assessment,
		decisions: noDecisions,
		clinic,
		signedAt: undefined,
		draft: true,
		on: '2027-03-01',
	}
	return (['player', 'guardian'] as const)
		.filter((kind) => kinds[kind].problems(input).length === 0)
		.map((kind) => kinds[kind].compose(input))
}
/** Everything stated in a result: objects with a code. */
function statedIn(value: unknown): Stated[] {
	if (Array.isArray(value)) return value.flatMap(statedIn)
	if (value === null || typeof value !== 'object') return []
	const inside = Object.values(value).flatMap(statedIn)
	return 'code' in value && 'says' in value ? [value as Stated, ...inside] : inside
}

describe('a document in a player’s hands', () => {
	it('reads at grade 7 or less: twelve pictures and the demo', () => {
		for (const visit of known)
			for (const document of documentsOf(visit))
				expect(readabilityOf(document)!.grade, document.kind).toBeLessThanOrEqual(mostGrade)
	})
	it('reads at grade 7 or less for any visit', () => {
		fc.assert(
			fc.property(wholeVisit, (visit) => {
				for (const document of documentsOf(visit))
					expect(readabilityOf(document)!.grade, document.kind).toBeLessThanOrEqual(mostGrade)
			}),
			{ numRuns: 40 },
		)
	})
})

describe('each sentence alone', () => {
	/** Samples by the name of what is filled in; a number otherwise. */
	const samples: Readonly<Record<string, string>> = {
		action: 'same-day medical review',
		changes: 'boots and laces',
		clinician: 'A. Day',
		condition: 'Sore heel',
		contact: '555 0142',
		date: '2 May 2027',
		done: 'a letter went out',
		feet: 'left foot 246 mm long',
		feature: 'A flat sole',
		features: 'a wide fitting; round studs',
		fittings: 'E',
		labels: 'EU 39',
		letter: 'E',
		measured: '2 May 2027',
		month: 'May 2027',
		name: 'Tui',
		pair: 'boots for matches',
		pairs: 'match boots',
		phone: '555 0142',
		raise: '4 mm in both shoes',
		reasons: 'Your heel is sore.',
		registration: 'X1',
		says: 'a flat sole.',
		side: 'left',
		sport: 'FOOTBALL',
		signed: '2 May 2027',
		status: 'now',
		system: 'EU',
		term: 'Liner',
		value: '246 mm',
		what: 'boots fit',
		why: ankleLimits['soleus-or-capsule'],
		words: 'it can come out.',
	}
	/** Sentences that a player or a guardian reads, and why one may be hard. */
	const read =
		/^(player|pageOne|guardian|feet|pocket|amended|sign|page\.footer(Draft|Signed|Growth))/
	const exceptions: Readonly<Record<string, string>> = {
		'sign.registration': 'names a number by its official word',
	}
	const filled = Object.entries(sentences)
		.filter(([key]) => read.test(key) && !(key in exceptions))
		.map(([key, sentence]) => {
			const values = Object.fromEntries(
				placeholdersOf(sentence).map((name) => [name, samples[name] ?? '4']),
			)
			return (speakFrom() as (key: string, values: object) => string)(key, values)
		})
	it('of the documents is plain', () => {
		expect(filled.length).toBeGreaterThan(120)
		expect(hardOf(filled)).toEqual([])
	})
	it('of the features, conditions and actions is plain', () => {
		// the trade's name in brackets is a name, for the player to know it by; it is no plain word
		const playerNames = Object.values(conditionWords).map(({ player }) =>
			player.replace(/ \([^)]*\)$/, ''),
		)
		expect(playerNames.length).toBeGreaterThan(40)
		const { 'artificial-ground-sole': asBootsAreLabelled, ...plainFeatures } = featureWords
		expect(asBootsAreLabelled).toBeDefined()
		expect(
			hardOf([
				...Object.values(plainFeatures),
				...playerNames,
				...Object.values(statusWords),
				...Object.values(ankleLimits),
				...defaultWarningSigns,
				...glossary.flatMap(({ player }) => (player ? [player.words] : [])),
			]),
		).toEqual([])
	})
	/** A sentence filled in by the names of its parameters, with what is yes or no both ways. */
	const sampled = (code: string, speak: (params: Params) => string): string[] =>
		[true, false].map((answer) =>
			speak(
				new Proxy<Params>(
					{},
					{
						get: (_, name) => {
							const key = String(name)
							return yesOrNo.has(key) ? answer : (samplesOf[code]?.[key] ?? roomSamples[key] ?? 4)
						},
						// what a sentence hands on by its name
						ownKeys: () => Object.keys(roomSamples),
						getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
					},
				),
			),
		)
	it('that a room has for a player or a guardian is plain', () => {
		const drawn = fc.sample(fc.tuple(wholeVisit, wholeVisit), { numRuns: 80, seed: 4 })
		const stated = statedIn([
			...known.map((visit) => assess(visit)),
			...drawn.map(([visit, other]) =>
				assess(visit, [{ ...other, player: visit.player, visitDate: '2026-03-02' }]),
			),
		])
		const byCode = Map.groupBy(stated, ({ code }) => code)
		const told = Object.entries(
			rooms as unknown as Readonly<Record<string, Sentence<Params>>>,
		).flatMap(([code, words]) =>
			(['player', 'guardian'] as const).flatMap((reader) => {
				const speak = words[reader]
				if (!speak) return []
				const met = byCode.get(code)
				const says = met ? met.map(({ params }) => speak(params ?? {})) : sampled(code, speak)
				return says.map((sentence) => ({ code, sentence }))
			}),
		)
		const topics = new Set(told.map(({ code }) => code.split('.')[0]))
		for (const topic of ['footwear', 'work', 'pairs', 'insert', 'season', 'chart', 'conditions'])
			expect(topics).toContain(topic)
		expect(told.filter(({ sentence }) => /undefined|NaN|\[object|Invalid/.test(sentence))).toEqual(
			[],
		)
		expect(hardOf(told.map(({ sentence }) => sentence))).toEqual([])
	})
})

describe('a trade word', () => {
	it('is explained once, under what it stands in', () => {
		const told = speakFrom()
		const blocks = explainedAtEnd(
			[
				{ kind: 'heading', text: 'Your insert' },
				{ kind: 'text', text: 'Take out the liner. Put in the insert.' },
				{ kind: 'list', items: ['The insert goes in first.', 'No football today.'] },
			],
			told,
		)
		expect(blocks.map(({ kind }) => kind)).toEqual(['heading', 'text', 'list', 'text'])
		expect(textsIn(blocks[3]).join(' ')).toContain('Insert:')
		expect(textsIn(blocks[3]).join(' ')).toContain('Liner:')
		expect(textsIn(blocks).join(' ')).not.toContain('Ball:')
	})
	it('that stands on a player’s page is explained there', () => {
		for (const visit of known) {
			const [report] = documentsOf(visit)
			const texts = textsIn(report!.blocks, new Set(['kind', 'svg', 'alternative']))
			for (const { term, player } of glossary)
				for (const form of player?.forms ?? []) {
					const stands = texts.findIndex((text) =>
						new RegExp(`(?<![\\p{L}-])${form}(?![\\p{L}-])`, 'iu').test(text),
					)
					if (stands >= 0)
						expect(
							texts.some((text) => text.includes(`${term}: ${player!.words}`)),
							term,
						).toBe(true)
				}
		}
	})
})
