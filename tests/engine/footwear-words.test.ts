/**
 * The sentences of the footwear room, read: English of the clinician, plain words of the player. The
 * one test of the room that reads sentences. Reading grade: Flesch-Kincaid (Kincaid et al. 1975),
 * at most 7, as the project asks of words for players of 13.
 */
import { describe, expect, it } from 'vitest'
import { countsOf, fleschKincaid } from '../../shared/engine/report/readability.ts'
import { codes, features, pairRoles, soles, surfaces } from '../../shared/engine/visit/terms.ts'
import { footwearSentences } from '../../shared/engine/words/en/footwear.ts'
import { matchSentences } from '../../shared/engine/words/en/match.ts'
import { ownedSentences } from '../../shared/engine/words/en/owned.ts'
import { settledSentences } from '../../shared/engine/words/en/settled.ts'
import { workSentences } from '../../shared/engine/words/en/work.ts'
import type { Audience, Params } from '../../shared/engine/words/sentence.ts'
import {
	type ParamsOf,
	type StatementCode,
	spokenTo,
	state,
} from '../../shared/engine/words/statement.ts'
import { onFootSamples } from './on-foot-samples.table.ts'

const own = {
	...footwearSentences,
	...matchSentences,
	...ownedSentences,
	...settledSentences,
	...workSentences,
}
type Own = keyof typeof own
/** Codes whose sentence is filled in, each with what a real visit could give. */
type Filled = {
	[Code in Own]: keyof ParamsOf<Code> extends never ? never : Code
}[Own]
const part = { code: 'pairs.stud-sharp', params: {} }
const wished = { feature: 'round-studs', rules: ['acl', 'third-generation'] } as const
const model = { name: 'M', size: { label: 8.5, system: 'uk' }, withChanges: true }
const band = { leastMm: 5, mostMm: 10 }
const stud = { side: 'left', joint: 'heel centre', nearestMm: 1 } as const
/** What a sole by itself has or lacks. */
const ofSoles = [
	'long-studs',
	'short-studs',
	'many-studs',
	'bladed-studs',
	'low-rotational-grip',
] as const
const samples: { [Code in Filled]: readonly ParamsOf<Code>[] } = {
	'footwear.fifth-metatarsal': [{ turfShare: 0.8 }],
	'footwear.toenails': [{ leastMm: 5, mostMm: 10 }],
	'footwear.growth-spurt': [{ band: 'around' }, { band: 'uncertain' }],
	'footwear.contest': [{ positions: ['Prop'] }, { positions: ['Prop', 'Lock', 'Hooker'] }],
	'footwear.scrum': [{ positions: ['Prop'] }],
	'footwear.speed-position': [{ positions: ['Winger'] }],
	'footwear.kicking-support': [{ positions: ['Fly-half'] }],
	'footwear.contradiction-of-one': features.map((feature) => ({
		feature,
		seekRules: ['acl'],
		avoidRules: ['junior', 'heavy'],
	})),
	'footwear.contradiction-of-two': features.map((feature, at) => ({
		feature,
		other: features[(at + 1) % features.length]!,
		featureRules: ['acl'],
		otherRules: ['junior'],
	})),
	'footwear.two-pairs': [
		{ matchesPerWeek: 1, boots: 0 },
		{ matchesPerWeek: 3, boots: 1 },
	],
	'match.too-short': [{ toeRoomMm: 1, leastMm: 5 }],
	'match.too-long': [{ toeRoomMm: 20, mostMm: 10 }],
	'match.toe-room-above': [{ toeRoomMm: 11, leastMm: 5, mostMm: 10 }],
	'match.toe-room': [{ toeRoomMm: 7, targetMm: 7.5 }],
	'match.toe-room-target': [{ offTargetMm: 0.5, direction: 'below' }],
	'match.change-to-least-length': [{ leastMm: 265 }],
	'match.change-length': [{ leastMm: 265, mostMm: 270 }],
	'match.too-narrow': [
		{ shortMm: 4, upperGives: true },
		{ shortMm: 4, upperGives: false },
	],
	'match.tight-gives': [{ narrowMm: 1 }],
	'match.tight': [{ narrowMm: 1 }],
	'match.loose': [{ marginMm: 8 }],
	'match.width': [{ marginMm: 2 }],
	'match.change-width': [{ insideMm: 100 }],
	'match.change-fitting': [{ widerMm: 4 }],
	'match.change-by-stretching': [{ stretchMm: 2, limitMm: 3 }],
	'match.too-shallow': [{ shortMm: 5 }],
	'match.shallow': [{ shortMm: 1 }],
	'match.depth': [{ marginMm: 3 }],
	'match.change-liner': [{ linerMm: 3 }],
	'match.sole': soles.map((sole) => ({ sole, banned: surfaces })),
	'match.sole-part': surfaces.map((surface) => ({ banned: [surface] })),
	'match.sole-role': soles.flatMap((sole) => pairRoles.map((role) => ({ sole, role }))),
	'match.sole-scrum': [{ sole: 'trail', surface: 'natural-soft' }],
	'match.must-have': features.map((feature) => ({ ...wished, feature })),
	'settled.feature': features.flatMap((feature, at) =>
		(['rank', 'severity', 'strength', 'order'] as const).flatMap((by) =>
			([feature, features[(at + 1) % features.length]!] as const).map((over) => ({
				feature,
				way: over === feature ? ('avoid' as const) : ('seek' as const),
				rules: ['heavy'],
				rank: 'shape' as const,
				over,
				overWay: 'seek' as const,
				overRules: ['cavus'],
				overRank: 'injury-now' as const,
				by,
			})),
		),
	),
	'settled.ground': soles.flatMap((sole) =>
		surfaces.map((surface) => ({ sole, better: 'turf' as const, surfaces: [surface] })),
	),
	'settled.sole': ofSoles.flatMap((feature) =>
		(['seek', 'avoid'] as const).map((way) => ({
			feature,
			way,
			rules: ['heavy'],
			sole: 'soft-ground' as const,
			surfaces: ['natural-soft' as const],
		})),
	),
	'settled.sole-left': ofSoles.flatMap((feature) =>
		(['seek', 'avoid'] as const).map((way) => ({
			inPlaceOf: 'soft-ground' as const,
			sole: 'firm-ground' as const,
			feature,
			way,
			rules: ['heavy'],
			rank: 'injury-now' as const,
		})),
	),
	'match.surface': soles.map((sole) => ({ sole, suits: 'second' as const })),
	'match.surface-fit': soles.map((sole) => ({ sole, suited: surfaces })),
	'match.stud-clear': [stud],
	'match.stud-under': [
		{ ...stud, shared: true },
		{ ...stud, shared: false },
	],
	'match.change-stud': [
		{ sides: ['left', 'right'], joint: 'heel centre', removable: true },
		{ sides: ['left'], joint: 'heel centre', removable: false },
	],
	'match.code': codes.map((code) => ({ madeFor: codes, code })),
	'match.change-by-raise': [{ raiseMm: 4, offsetMm: 0, soughtMm: 4 }],
	'match.raise-too-much': [{ raiseMm: 8, offsetMm: 0, limitMm: 6 }],
	'match.has': features.map((feature) => ({ ...wished, feature })),
	'match.lacks': [wished],
	'match.better-avoided': [wished],
	'match.must-avoid': [wished],
	'match.in-place-of': features.map((feature, at) => ({
		...wished,
		feature,
		sought: features[(at + 1) % features.length]!,
	})),
	'footwear.shelf-unmatched': [{ lacks: 'foot-length' }, { lacks: 'models' }],
	'footwear.shelf-none': [
		{ models: 1, stops: [{ code: 'match.too-short', params: { toeRoomMm: 1, leastMm: 5 } }] },
		{ models: 4, stops: [] },
	],
	'footwear.shelf': [{ models: [model] }, { models: [model, { ...model, withChanges: false }] }],
	'footwear.stud': [
		{ ...stud, model: 'M', removable: true },
		{ ...stud, model: 'M', removable: true, isTold: true },
	],
	'footwear.stud-unplaced': [{ side: 'left' }, { side: 'both' }],
	'pairs.worn-out': [{ hours: 130, lifeHours: 120, lifeShare: 0.9 }],
	'pairs.near-its-end': [{ hours: 90, lifeShare: 1 }],
	'pairs.owned-for': [{ months: 1 }, { months: 14 }],
	'pairs.not-broken-in': [{ minutes: 150 }],
	'pairs.outgrown-by': [
		{ leastMm: 5, on: '2027-06-20' },
		{ leastMm: 5, on: '2027-06-20', earliest: '2027-05-20' },
	],
	'owned.modify': [{ mendFirst: true }, { mendFirst: false }],
	'owned.replace': [{ held: true }, { held: false }, { held: false, by: '2027-06-20' }],
	'owned.stop-wearing': [
		{ mendable: true, held: false },
		{ mendable: false, held: false },
		{ mendable: false, held: true },
	],
	'owned.not-measured': [{ lacks: 'inside-length' }, { lacks: 'foot-length' }],
	'owned.touches': [
		{ shortMm: 0, withSock: true },
		{ shortMm: 3, withSock: false },
	],
	'owned.short-and-sore': [
		{ toeRoomMm: 2, ...band },
		{ toeRoomMm: -4, ...band },
	],
	'owned.short': [
		{ toeRoomMm: 2, ...band, swollen: false },
		{ toeRoomMm: -4, ...band, swollen: true },
	],
	'owned.room-near': [{ toeRoomMm: 4, ...band }],
	'owned.room': [{ toeRoomMm: 8, ...band }],
	'owned.long': [{ toeRoomMm: 14, ...band }],
	'owned.too-long': [{ toeRoomMm: 20, ...band }],
	'owned.much-too-long': [{ toeRoomMm: 56, ...band }],
	'owned.uncomfortable': [{ comfort: 3 }],
	'owned.sole-nowhere': soles.map((sole) => ({ sole, grounds: surfaces })),
	'owned.take-out-raise': [{ raiseMm: 4 }],
	'owned.raise-waits': [{ raiseMm: 4 }],
	'owned.pair': [{ said: [part] }],
	...onFootSamples,
	'pairs.pair': [{ said: [part] }],
	'footwear.pair': [{ pair: 'Match boot', said: [part] }],
	'work.heel-raise': [{ raiseMm: 4 }],
	'work.heel-raise-in': [
		{
			pairs: [
				{ pair: 'boots', leftMm: 4, rightMm: 4, leftBy: 'wedge', rightBy: 'wedge' },
				{ role: 'match', leftMm: 0, rightMm: 6, leftBy: 'none', rightBy: 'outsole' },
			],
		},
	],
	'work.heel-raise.limits': [
		{ freeWeeksLeast: 4, freeWeeksMost: 6, stepLeastMm: 2, stepMostMm: 3, stepWeeks: 2 },
		{ freeWeeksLeast: 1, freeWeeksMost: 1, stepLeastMm: 1, stepMostMm: 1, stepWeeks: 1 },
	],
	'work.stretch-ball': [{ mostMm: 3 }],
	'work.forefoot-plate': [{ leastMm: 1, mostMm: 2 }],
}
const fillings = samples as Readonly<Record<string, readonly Params[] | undefined>>
const spoken = (reader: Audience): { code: string; words: string }[] =>
	Object.keys(own).flatMap((code) =>
		(fillings[code] ?? [{}]).flatMap((params) => {
			const make = state as (code: StatementCode, params: Params) => ReturnType<typeof state>
			const words = spokenTo(reader, make(code as StatementCode, params), ['weight'])
			return words === undefined ? [] : [{ code, words }]
		}),
	)
const isName = (code: string) => code.endsWith('.name')
/** Sounds, not letters: 'a uniform', 'an hour'. */
const wrongArticle =
	/\ban? (?=\w)(?:(?<=\ban )[bcdfgjklmnpqrstvwyz](?!TP)|(?<=\ba )[aeiou](?!ni|se))/i

describe.each(['clinician', 'player', 'guardian', 'doctor', 'coach'] as const)(
	'to the %s',
	(reader) => {
		const all = spoken(reader)
		it('every sentence ends as one and leaves nothing open', () => {
			expect(all.length).toBeGreaterThan(5)
			for (const { code, words } of all) {
				if (!isName(code)) expect(words, code).toMatch(/[.:]$/)
				expect(words, code).not.toMatch(/undefined|NaN|\[object|\bnull\b| {2}|[{}]/)
			}
		})
		it('articles and verbs agree with what they stand with', () => {
			for (const { code, words } of all) {
				expect(words, code).not.toMatch(wrongArticle)
				expect(words, code).not.toMatch(/\b(?:studs|seams) is\b|\ba (?:\w+ )?(?:studs|seams)\b/i)
				expect(words, code).not.toMatch(/\b1 (?:weeks|months|hours|matches|models)\b/)
			}
		})
	},
)
describe('plain words', () => {
	const jargon =
		/\b(?:pronated|supinated|plantarflexed|newtons?|MTP|offset|sesamoid|metatarsal|counter|instep|forefoot|midfoot|calcaneal|syndesmosis|kg|mass|weight|heavy|z)\b/i
	const player = spoken('player').filter(({ code }) => !isName(code))
	it.each(player.map(({ code, words }) => [code, words]))('%s', (code, words) => {
		const counts = countsOf(words!)!
		expect(fleschKincaid(counts), words).toBeLessThanOrEqual(7)
		for (const sentence of words!.split(/(?<=[.:?])\s/))
			expect(countsOf(sentence)!.words, sentence).toBeLessThanOrEqual(15)
		// what a feature is called has words of its own
		if (!/^(?:footwear\.contradiction|settled\.)/.test(code!)) expect(words).not.toMatch(jargon)
	})
	it('the coach reads nothing clinical', () => {
		for (const { words } of spoken('coach'))
			expect(words).not.toMatch(/pain|sore|fracture|growth|injur|heel\b|ankle|knee/i)
	})
	it('what is only believed says so to clinician and player', () => {
		for (const code of ['footwear.calf-lever', 'footwear.contest'])
			for (const reader of ['clinician', 'player'] as const)
				expect(spoken(reader).find((one) => one.code === code)?.words).toMatch(/belie|not proven/)
	})
})
