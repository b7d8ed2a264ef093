/**
 * Every footwear rule can be reached by some visit, none fires without its measures, and
 * contradictions are shown. Visits are generated from the terms and fields themselves.
 */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { footwearRules } from '../../shared/engine/footwear/rules/rules.ts'
import {
	codes,
	conditions,
	features,
	firstRays,
	statuses,
	surfaces,
} from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'

const adult = '1995-01-01',
	child = '2014-03-01'
const visit = (more: object = {}, birthDate = adult): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
		visitDate: '2027-01-20',
		...more,
	})
const positions = [
	'winger',
	'prop',
	'hooker',
	'lock',
	'goalkeeper',
	'goal kicker',
	'ruck',
	'full-back',
	'midfielder',
	'fly-half',
]
const foot = (ballWidthMm: number, heelToToeMm = 262) => ({
	heelToToeMm,
	heelToBallMm: heelToToeMm * 0.72,
	ballWidthMm,
	ballGirthMm: 245,
})
/** One fact or a few at a time, spread over every list of terms and both ends of every measure. */
const generated: readonly (readonly [object, string?])[] = [
	[{}],
	[{}, child],
	...conditions.flatMap((condition) =>
		statuses.flatMap((status): [object, string?][] => [
			[{ conditions: [{ condition, side: 'left', status }] }],
			[{ conditions: [{ condition, side: 'left', status }] }, child],
		]),
	),
	...surfaces.map((surface): [object] => [{ play: { surfaces: [surface] } }]),
	...codes.map((code): [object] => [{ play: { code } }]),
	...positions.flatMap((position) => codes.map((code): [object] => [{ play: { position, code } }])),
	...[55, 70, 85, 100].flatMap((massKg): [object][] => [
		[{ body: { massKg } }],
		[{ body: { massKg }, play: { surfaces: ['road'] } }],
	]),
	...[82, 92, 100, 112].flatMap((width): [object][] => [
		[{ feet: { left: foot(width), right: foot(width) } }],
		[
			{
				feet: { left: foot(width), right: foot(width) },
				conditions: conditions
					.slice(-40)
					.map((condition) => ({ condition, side: 'left', status: 'current' })),
			},
		],
	]),
	[
		{
			feet: { left: foot(82), right: foot(82) },
			conditions: [{ condition: 'subungual-haematoma', side: 'left', status: 'current' }],
		},
	],
	[{ feet: { left: foot(98, 260), right: foot(98, 270) } }],
	[{ feet: { left: foot(98, 270), right: foot(98, 260) } }],
	...[-2, -1, 0, 1, 2].map((item): [object] => [
		{ posture: { left: { fpi6: Array(6).fill(item) } } },
	]),
	...firstRays.map((firstRay): [object] => [{ posture: { right: { firstRay } } }]),
	[
		{
			posture: { left: { firstMtpDegNonWeightBearing: 30, jackTestDeg: 5 } },
			conditions: [{ condition: 'hallux-limitus', side: 'left', status: 'current' }],
		},
	],
	[{ ankles: { left: { lungeDeg: 30, endFeel: 'front-pinch' } } }],
	[{ ankles: { right: { lungeDeg: 30, endFeel: 'calf-stretch' } } }],
	[
		{
			body: {
				statureCm: 150,
				sittingHeightCm: 78,
				massKg: 40,
				motherStatureCm: 166,
				fatherStatureCm: 180,
			},
		},
		child,
	],
	[
		{
			body: {
				statureCm: 160,
				sittingHeightCm: 83,
				massKg: 48,
				motherStatureCm: 164,
				fatherStatureCm: 178,
			},
		},
		'2013-08-01',
	],
]
const fired = (recorded: Visit) => {
	const { target, findings } = assess(recorded).footwear
	return new Set(
		[...target.seek, ...target.avoid]
			.map((wish) => wish.rule)
			.concat(
				findings.flatMap((finding) =>
					finding.id.startsWith('footwear.') ? [finding.id.slice(9)] : [],
				),
			),
	)
}
const reached = new Map<string, Visit>()
for (const [more, birth] of generated) {
	const made = visit(more, birth)
	for (const rule of fired(made)) if (!reached.has(rule)) reached.set(rule, made)
}
/** A visit that a rule is told in: it is silent where danger holds what may be bought. */
const told = new Map<string, Visit>()
for (const [more, birth] of generated) {
	const made = visit(more, birth)
	for (const { code } of assess(made).footwear.findings) {
		const id = code.replace('footwear.', '')
		if (!told.has(id)) told.set(id, made)
	}
}
/** The visit without what a path names; a birth date makes an adult of the player. */
function without(recorded: Visit, path: string): Visit {
	if (path === 'player.birthDate')
		return { ...recorded, player: { ...recorded.player, birthDate: adult } }
	const copy = structuredClone(recorded) as unknown as Record<string, Record<string, unknown>>
	const [first, second] = path.split('.')
	if (second) delete copy[first!]?.[second]
	else delete copy[first!]
	return copy as unknown as Visit
}
describe('the table of rules', () => {
	it('has at least forty, each with an id, a sentence, a basis and what it reads', () => {
		expect(footwearRules.length).toBeGreaterThanOrEqual(40)
		expect(new Set(footwearRules.map((rule) => rule.id)).size).toBe(footwearRules.length)
		for (const rule of footwearRules) {
			expect(rule.needs.length).toBeGreaterThan(0)
			expect(rule.basis.source.length).toBeGreaterThan(5)
			expect(rule.seek.length + rule.avoid.length).toBeGreaterThan(0)
		}
	})
	it.each(footwearRules.map((one) => one.id))('%s is reached by a generated visit', (id) =>
		expect(reached.has(id)).toBe(true),
	)
	it.each(footwearRules.map((one) => [one.id, one.needs] as const))(
		'%s does not fire without %o',
		(id, needs) => expect(fired(needs.reduce(without, reached.get(id)!)).has(id)).toBe(false),
	)
	it.each(footwearRules.map((one) => one.id))('%s is told in a generated visit', (id) =>
		expect(told.has(id)).toBe(true),
	)
	it('every axis is named by some rule', () => {
		const named = new Set(footwearRules.flatMap((rule) => [...rule.seek, ...rule.avoid]))
		expect(features.filter((feature) => !named.has(feature))).toEqual([])
	})
	it('every rule that applies says something, by the code of its id, and nothing is left open', () => {
		for (const [id, made] of told) {
			const found = assess(made).footwear.findings.find((one) => one.id === `footwear.${id}`)
			if (!footwearRules.some((rule) => rule.id === id)) continue
			expect(found?.code).toBe(`footwear.${id}`)
			for (const reader of ['clinician', 'player', 'guardian'] as const) {
				const words = spokenTo(reader, found!, ['weight'])
				expect(words, `${id} to the ${reader}`).toMatch(/\.$/)
				expect(words).not.toMatch(/undefined|NaN/)
			}
		}
	})
})
it('stiff for the big toe against flexible for the calf is settled, and what gave way is told', () => {
	const { contradictions, settled, target, findings } = assess(
		visit({
			conditions: [
				{ condition: 'turf-toe', side: 'left', status: 'current', painWorst: 4 },
				{ condition: 'calf-strain', side: 'left', status: 'current', painWorst: 4 },
			],
		}),
	).footwear
	expect(contradictions.map(({ feature, other }) => [feature, other])).toEqual([
		['stiff-forefoot', 'flexible-forefoot'],
	])
	expect(findings.filter(({ level }) => level === 'caution')).toEqual([])
	expect(settled!.map(({ code, params }) => ({ code, params }))).toEqual([
		{
			code: 'settled.feature',
			params: {
				feature: 'flexible-forefoot',
				way: 'seek',
				rules: ['calf-lever'],
				rank: 'injury-now',
				over: 'stiff-forefoot',
				overWay: 'seek',
				overRules: ['turf-toe'],
				overRank: 'injury-now',
				// Rodeo 1990 is a cohort, the lever of the calf belief
				by: 'strength',
			},
		},
	])
	// the room's own wishes stay as they are
	expect(target.seek.map((wish) => wish.feature)).toEqual(
		expect.arrayContaining(['stiff-forefoot', 'flexible-forefoot']),
	)
})
