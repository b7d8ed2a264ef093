/**
 * The shelf, matched to feet of known figures: bands from the protocol, common practice where no
 * source is named.
 */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment, RankedModel } from '../../shared/engine/findings/assessment.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import { surfaces } from '../../shared/engine/visit/terms.ts'
import { foot, modelWith, rank, shelfOf, sizeOf, studAt, visitWith } from './known-shelf.ts'

/** What would change the verdict on a model, by codes. */
const codesOf = ({ changes = [] }: RankedModel) => changes.map(({ code, params }) => [code, params])
const changesOf = ({ footwear }: Assessment) => codesOf(need(footwear.ranked[0], 'a ranked model'))
const file = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
it(
	'toe room is inside length less the length to fit and the sock, and the size nearest the ' +
		'target is chosen',
	() => {
		expect([rank().size.label, rank().toeRoomMm]).toEqual([7.5, 7])
		const sock = rank({}, { feet: { left: foot, right: foot, sockMm: 4 } })
		expect([sock.size.label, sock.toeRoomMm]).toEqual([8, 7])
	},
)
it.each([
	[264.9, 'unsuitable'],
	[265, 'suits'],
	[273, 'suits'],
	[273.1, 'unsuitable'],
])(
	'a single size of %f mm inside on a foot of 260: %s (least 5, most 10 and 3 beyond)',
	(insideLengthMm, verdict) =>
		expect(rank({ sizes: [sizeOf(8, insideLengthMm)] }).verdict).toBe(verdict),
)
it.each([
	['medium', 97, 'with-changes', []],
	['medium', 96.9, 'unsuitable', ['too-narrow']],
	['firm', 98, 'suits', []],
	['firm', 97.9, 'unsuitable', ['too-narrow']],
	['soft', 95.3, 'with-changes', []],
	['soft', 95.2, 'unsuitable', ['too-narrow']],
	['soft', 98.3, 'suits', []],
] as const)(
	'%s upper, %f mm inside on a foot 100 mm wide: %s',
	(upperSoftness, ballWidthMm, verdict, stops) => {
		const found = rank({ upperSoftness, sizes: [sizeOf(8, 268, ballWidthMm)] })
		expect([found.verdict, found.stops.map((reason) => reason.rule)]).toEqual([verdict, stops])
	},
)
it('the narrowest fitting that is not tight is chosen, else the widest', () => {
	const sizes = [sizeOf(8, 268, 96, 'F'), sizeOf(8, 268, 101, 'G'), sizeOf(8, 268, 106, 'H')]
	expect(rank({ sizes }).size.fitting).toBe('G')
	expect(
		rank({ sizes }, { feet: { left: foot, right: { ...foot, ballWidthMm: 120 } } }).size.fitting,
	).toBe('H')
})
it('depth is toe-box depth less toe depth', () => {
	expect(rank({ toeBoxDepthMm: 26 }).depthMarginMm).toBe(2)
	expect(rank({ toeBoxDepthMm: 19.9 }).stops.map((reason) => reason.rule)).toEqual(['too-shallow'])
	expect(rank({ toeBoxDepthMm: 20 }).stops).toEqual([])
})
it('a sole forbidden on every surface stops, on some it costs', () => {
	expect(
		rank(
			{ sole: 'soft-ground' },
			{ play: { surfaces: ['artificial-3g', 'natural-hard'] } },
		).stops.map((reason) => reason.rule),
	).toEqual(['sole'])
	const part = rank(
		{ sole: 'soft-ground' },
		{ play: { surfaces: ['artificial-3g', 'natural-soft'] } },
	)
	expect([
		part.stops,
		part.against.map((reason) => reason.rule).includes('sole-part'),
		part.against.some((reason) => reason.rule === 'surface'),
	]).toEqual([[], true, false])
})
it('the seed matrix of outsoles and surfaces, cell by cell as the trade table has it (dry)', () => {
	const cells = (sole: keyof typeof suitability) =>
		surfaces.map((surface) =>
			suitability[sole][surface].dry === 'forbidden' ? 'X' : suitability[sole][surface].dry,
		)
	// natural-soft, natural-firm, natural-hard, hybrid, artificial-3g, artificial-sand, hall, road
	expect([
		cells('soft-ground'),
		cells('firm-ground'),
		cells('artificial-ground'),
		cells('turf'),
		cells('indoor'),
		cells('road'),
	]).toEqual([
		[0, 2, 'X', 2, 'X', 'X', 'X', 'X'],
		[1, 0, 1, 0, 2, 3, 'X', 'X'],
		[2, 0.5, 0.5, 0.5, 0, 1, 'X', 'X'],
		['X', 1.5, 0.5, 1.5, 0.5, 0, 1, 0.5],
		['X', 'X', 'X', 'X', 'X', 1, 0, 1],
		['X', 'X', 'X', 'X', 'X', 'X', 1, 0],
	])
	expect([
		suitability.turf['artificial-3g'].wet,
		suitability['firm-ground']['artificial-3g'].wet,
		suitability['artificial-ground']['artificial-3g'].wet,
	]).toEqual([1.5, 2, 0])
})
it(
	'a stud under a joint at risk is a finding with its modification; without a risk it is only ' +
		'a distance',
	() => {
		const studs = [studAt(0.7, -0.6), studAt(0.2, 0.5)]
		const boot = modelWith({ sizes: [sizeOf(8, 268)], studs })
		const risk = assess(
			visitWith({ posture: { left: { firstRay: 'plantarflexed' } } }),
			[],
			shippedProtocol,
			shelfOf(boot),
		)
		// stud at 187.6, -30.6; joint at 190, -33: the root of 2.4 squared twice is 3.4
		expect(risk.footwear.ranked[0]!.studs!.left![0]!.nearestMm).toBe(3.4)
		expect(
			risk.findings
				.filter((finding) => finding.id.startsWith('footwear.stud-'))
				.map((finding) => [finding.id, finding.side, finding.level]),
		).toEqual([['footwear.stud-m-left-first-metatarsal-head', 'left', 'caution']])
		expect(changesOf(risk)).toContainEqual([
			'match.change-stud',
			{ sides: ['left'], joint: 'first metatarsal head', removable: false },
		])
		expect(
			assess(visitWith(), [], shippedProtocol, shelfOf(boot)).findings.filter((finding) =>
				finding.id.startsWith('footwear.stud-'),
			),
		).toEqual([])
		const loose = assess(
			visitWith({ posture: { left: { firstRay: 'plantarflexed' } } }),
			[],
			shippedProtocol,
			shelfOf({ ...boot, studs: studs.map((stud) => ({ ...stud, removable: true })) }),
		)
		expect(changesOf(loose)).toContainEqual([
			'match.change-stud',
			{ sides: ['left'], joint: 'first metatarsal head', removable: true },
		])
		const lug = assess(
			visitWith({ posture: { left: { firstRay: 'plantarflexed' } } }),
			[],
			shippedProtocol,
			shelfOf({ ...boot, studs: studs.map((stud) => ({ ...stud, heightMm: 4 })) }),
		)
		expect(lug.footwear.ranked[0]!.studs!.left![0]!.under).toEqual([])
	},
)
it('says that studs cannot be checked where a joint is at risk and the foot is not measured', () => {
	const found = assess(
		visitWith({
			feet: { left: { heelToToeMm: 260 }, right: foot },
			posture: { left: { firstRay: 'plantarflexed' } },
		}),
		[],
		shippedProtocol,
		shelfOf(modelWith({ studs: [studAt(0.7, -0.6)] })),
	)
	expect(found.findings.find((finding) => finding.id === 'footwear.stud-unplaced')?.params).toEqual(
		{ side: 'left' },
	)
})
it('a heel raise or a wider fitting is named as what would change the verdict', () => {
	const stiff = { ankles: { left: { lungeDeg: 30 }, right: { lungeDeg: 30 } } }
	expect(codesOf(rank({ heelStackMm: 9, forefootStackMm: 9 }, stiff))).toEqual([
		['match.change-by-raise', { raiseMm: 4, offsetMm: 0, soughtMm: 4 }],
	])
	expect(codesOf(rank({ heelStackMm: 13, forefootStackMm: 9 }, stiff))).toEqual([])
	expect(codesOf(rank({ sizes: [sizeOf(8, 268, 90)] }))).toEqual([
		['match.change-width', { insideMm: 100 }],
	])
})
it('without a foot length nothing is ranked, and it is said', () => {
	const found = assess(
		visitWith({ feet: undefined as never }),
		[],
		shippedProtocol,
		shelfOf(modelWith()),
	)
	expect([
		found.footwear.ranked,
		found.findings.some((finding) => finding.id === 'footwear.shelf-unmatched'),
	]).toEqual([[], true])
})
it(
	'the demo shelf is read, says that it is invented, and gives both demo players models that ' +
		'pass, reasons on each side',
	() => {
		const parsed = parseShelf(file('shelf.json'))
		expect(parsed.ok).toBe(true)
		if (!parsed.ok) return
		expect(parsed.value.note).toMatch(/invented/)
		for (const name of ['visit-adult.json', 'visit-adolescent.json']) {
			const { ranked } = assess(file(name), [], shippedProtocol, parsed.value).footwear
			expect(ranked.length).toBe(parsed.value.models.filter((model) => !model.retired).length)
			expect(ranked[0]!.verdict).not.toBe('unsuitable')
			expect(ranked.every((model) => model.for.length + model.stops.length > 0)).toBe(true)
			for (const model of ranked)
				for (const reason of [...model.for, ...model.against, ...model.stops])
					expect([reason.says, reason.basis.source].every((words) => words.length > 5)).toBe(true)
		}
	},
)
