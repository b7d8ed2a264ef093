/**
 * The shelf, matched to feet of known figures: geometry by hand, bands from the protocol, common
 * practice where no source is named.
 */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { readShelfCsv, writeShelfCsv } from '../../electron/services/shelf/shelf-csv.ts'
import { assess } from '../../shared/engine/assess.ts'
import { lacingIds } from '../../shared/engine/footwear/lacing.ts'
import { lacingFigure } from '../../shared/engine/footwear/lacing-figure.ts'
import { judgePair } from '../../shared/engine/footwear/pairs.ts'
import { soleFigure } from '../../shared/engine/footwear/sole-figure.ts'
import { jointsOf, studPoints } from '../../shared/engine/footwear/studs.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { footwearRows } from '../../shared/engine/protocol/rows/footwear.table.ts'
import { type Model, parseShelf, type Shelf } from '../../shared/engine/visit/shelf.ts'
import { surfaces } from '../../shared/engine/visit/terms.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
const file = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
const foot = { heelToToeMm: 260, heelToBallMm: 190, ballWidthMm: 100, toeDepthMm: 24 }
const visit = (more: Partial<Visit> = {}): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
	visitDate: '2027-01-20',
	feet: { left: foot, right: foot },
	...more,
})
const size = (label: number, insideLengthMm: number, ballWidthMm = 102, fitting?: string) => ({
	system: 'uk' as const,
	label,
	insideLengthMm,
	ballWidthMm,
	...(fitting ? { fitting } : {}),
})
const model = (more: Partial<Model> = {}): Model => ({
	id: 'm',
	name: 'M',
	sole: 'firm-ground',
	sizes: [size(7, 263), size(7.5, 267), size(8, 271), size(8.5, 275)],
	...more,
})
const shelf = (...models: Model[]): Shelf => ({ format: 'lastwright-shelf', version: 1, models })
const rank = (one: Partial<Model> = {}, more: Partial<Visit> = {}) =>
	assess(visit(more), [], shippedProtocol, shelf(model(one))).footwear.ranked[0]!

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
		expect(rank({ sizes: [size(8, insideLengthMm)] }).verdict).toBe(verdict),
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
		const found = rank({ upperSoftness, sizes: [size(8, 268, ballWidthMm)] })
		expect([found.verdict, found.stops.map((one) => one.rule)]).toEqual([verdict, stops])
	},
)
it('the narrowest fitting that is not tight is chosen, else the widest', () => {
	const sizes = [size(8, 268, 96, 'F'), size(8, 268, 101, 'G'), size(8, 268, 106, 'H')]
	expect(rank({ sizes }).size.fitting).toBe('G')
	expect(
		rank({ sizes }, { feet: { left: foot, right: { ...foot, ballWidthMm: 120 } } }).size.fitting,
	).toBe('H')
})
it('depth is toe-box depth less toe depth', () => {
	expect(rank({ toeBoxDepthMm: 26 }).depthMarginMm).toBe(2)
	expect(rank({ toeBoxDepthMm: 19.9 }).stops.map((one) => one.rule)).toEqual(['too-shallow'])
	expect(rank({ toeBoxDepthMm: 20 }).stops).toEqual([])
})
it('a sole forbidden on every surface stops, on some it costs', () => {
	expect(
		rank(
			{ sole: 'soft-ground' },
			{ play: { surfaces: ['artificial-3g', 'natural-hard'] } },
		).stops.map((one) => one.rule),
	).toEqual(['sole'])
	const part = rank(
		{ sole: 'soft-ground' },
		{ play: { surfaces: ['artificial-3g', 'natural-soft'] } },
	)
	expect([
		part.stops,
		part.against.map((one) => one.rule).includes('sole-part'),
		part.against.some((one) => one.rule === 'surface'),
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
it('places joints and studs on the sole by hand-worked geometry', () => {
	const sizing = {
		left: { lengthMm: 260, ballLengthMm: 190, widthMm: 100, fitting: {} },
		right: { lengthMm: 260, widthMm: 100, fitting: {} },
	} as Parameters<typeof jointsOf>[0]
	const joints = jointsOf(sizing, 'left', protocol)!
	// 100 x (0.5 - 0.17) = 33 in from the middle; 190 x 0.88 = 167.2; 100 x (0.5 - 0.12) = 38; 260 x
	// 0.15 = 39
	const near = (point: { xMm: number; yMm: number }, x: number, y: number) => {
		expect(point.xMm).toBeCloseTo(x, 9)
		expect(point.yMm).toBeCloseTo(y, 9)
	}
	near(joints['first metatarsal head'], 190, -33)
	near(joints['fifth metatarsal head'], 167.2, 38)
	near(joints['heel centre'], 39, 0)
	expect(jointsOf(sizing, 'right', protocol)).toBeUndefined()
	near(
		studPoints(
			model({
				studs: [
					{ xFraction: 0.7, yFraction: -0.6, shape: 'round', heightMm: 10, removable: false },
				],
			}),
			size(8, 270, 102),
		)[0]!,
		189,
		-30.6,
	)
})
const stud = (
	xFraction: number,
	yFraction: number,
	more: Partial<NonNullable<Model['studs']>[number]> = {},
) => ({ xFraction, yFraction, shape: 'round' as const, heightMm: 10, removable: false, ...more })
it(
	'a stud under a joint at risk is a finding with its modification; without a risk it is only ' +
		'a distance',
	() => {
		const studs = [stud(0.7, -0.6), stud(0.2, 0.5)]
		const boot = model({ sizes: [size(8, 268)], studs })
		const risk = assess(
			visit({ posture: { left: { firstRay: 'plantarflexed' } } }),
			[],
			shippedProtocol,
			shelf(boot),
		)
		// stud at 187.6, -30.6; joint at 190, -33: the root of 2.4 squared twice is 3.4
		expect(risk.footwear.ranked[0]!.studs!.left![0]!.nearestMm).toBe(3.4)
		expect(
			risk.findings
				.filter((one) => one.id.startsWith('footwear.stud-'))
				.map((one) => [one.id, one.side, one.level]),
		).toEqual([['footwear.stud-m-left-first-metatarsal-head', 'left', 'caution']])
		expect(risk.footwear.ranked[0]!.wouldChange.join()).toMatch(/lowered/)
		expect(
			assess(visit(), [], shippedProtocol, shelf(boot)).findings.filter((one) =>
				one.id.startsWith('footwear.stud-'),
			),
		).toEqual([])
		const loose = assess(
			visit({ posture: { left: { firstRay: 'plantarflexed' } } }),
			[],
			shippedProtocol,
			shelf({ ...boot, studs: studs.map((one) => ({ ...one, removable: true })) }),
		)
		expect(loose.footwear.ranked[0]!.wouldChange.join()).toMatch(/take the stud out/)
		const lug = assess(
			visit({ posture: { left: { firstRay: 'plantarflexed' } } }),
			[],
			shippedProtocol,
			shelf({ ...boot, studs: studs.map((one) => ({ ...one, heightMm: 4 })) }),
		)
		expect(lug.footwear.ranked[0]!.studs!.left![0]!.under).toEqual([])
	},
)
it('says that studs cannot be checked where a joint is at risk and the foot is not measured', () => {
	const found = assess(
		visit({
			feet: { left: { heelToToeMm: 260 }, right: foot },
			posture: { left: { firstRay: 'plantarflexed' } },
		}),
		[],
		shippedProtocol,
		shelf(model({ studs: [stud(0.7, -0.6)] })),
	)
	expect(found.findings.find((one) => one.id === 'footwear.stud-unplaced')?.says).toMatch(
		/left foot/,
	)
})
it('a heel raise or a wider fitting is named as what would change the verdict', () => {
	const stiff = { ankles: { left: { lungeDeg: 30 }, right: { lungeDeg: 30 } } }
	expect(rank({ heelStackMm: 9, forefootStackMm: 9 }, stiff).wouldChange).toEqual([
		'A heel raise of 4 mm inside brings the 0 mm offset to 4 mm.',
	])
	expect(rank({ heelStackMm: 13, forefootStackMm: 9 }, stiff).wouldChange).toEqual([])
	expect(rank({ sizes: [size(8, 268, 90)] }).wouldChange).toEqual([
		'A wider fitting: 100 mm inside at the ball.',
	])
})
it('without a foot length nothing is ranked, and it is said', () => {
	const found = assess(visit({ feet: undefined as never }), [], shippedProtocol, shelf(model()))
	expect([
		found.footwear.ranked,
		found.findings.some((one) => one.id === 'footwear.shelf-unmatched'),
	]).toEqual([[], true])
})
it.each([
	['sole-separated', 'replace'],
	['counter-collapsed', 'replace'],
	['studs-worn', 'replace'],
	['stud-sharp', 'change'],
	['heel-slips', 'change'],
] as const)('own pair, %s: %s', (damage, verdict) =>
	expect(
		judgePair({ id: 'p', insideLengthMm: 267, damage: [damage] }, 260, 0, true, protocol).verdict,
	).toBe(verdict),
)
// a boot shorter than the foot is not 'tight': no source needed
it.each([
	[true, 0, 'Inside it is 7 mm shorter than the foot: too short, replace.'],
	[false, 2, 'Inside it is 9 mm shorter than the foot with its sock: too short, replace.'],
])('a pair shorter than the foot, adult %s, sock %d mm', (adult, sockMm, says) =>
	expect(judgePair({ id: 'p', insideLengthMm: 255 }, 262, sockMm, adult, protocol)).toMatchObject({
		verdict: 'replace',
		says,
	}),
)
it(
	'own pair of a growing player: replaced by the date the growth room gives, none for an adult ' +
		'without one',
	() => {
		const toeRoom = {
			id: 'p',
			toeRoomMm: 8,
			leastMm: 5,
			state: 'runs-out',
			runsOutOn: '2027-06-20',
			earliest: '2027-05-20',
		} as const
		const judged = judgePair({ id: 'p', insideLengthMm: 258 }, 250, 0, false, protocol, { toeRoom })
		expect([judged.verdict, judged.replaceBy, judged.replaceBetween]).toEqual([
			'keep',
			'2027-06-20',
			{ from: '2027-05-20' },
		])
		expect(judged.says).toContain('20 June 2027')
		expect(
			judgePair({ id: 'p', insideLengthMm: 270 }, 262, 0, true, protocol, {}).replaceBy,
		).toBeUndefined()
	},
)
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
			expect(ranked.length).toBe(parsed.value.models.filter((one) => !one.retired).length)
			expect(ranked[0]!.verdict).not.toBe('unsuitable')
			expect(ranked.every((one) => one.for.length + one.stops.length > 0)).toBe(true)
			for (const one of ranked)
				for (const reason of [...one.for, ...one.against, ...one.stops])
					expect([reason.says, reason.basis.source].every((words) => words.length > 5)).toBe(true)
		}
	},
)
it('a shelf file is refused with field, value and remedy', () => {
	const wrong = parseShelf({
		format: 'lastwright-shelf',
		version: 1,
		models: [model(), { ...model(), sizes: [size(8, 2680)] }],
	})
	expect(wrong.ok ? [] : wrong.problems.map((one) => `${one.path}: ${one.message}`)).toEqual([
		'models.1.sizes.0.insideLengthMm: too large, given 2680, allowed: 420 or less',
	])
	const twice = parseShelf(shelf(model(), model()))
	expect(twice.ok ? [] : twice.problems.map((one) => one.path)).toEqual(['models.1.id'])
})
it('CSV: out and in again is the same shelf, and each bad cell is named by line and column', () => {
	const parsed = parseShelf(file('shelf.json'))
	if (!parsed.ok) throw new Error('demo shelf')
	const again = readShelfCsv(writeShelfCsv(parsed.value))
	expect(again.problems).toEqual([])
	expect(again.shelf.models).toEqual(parsed.value.models)
	const bad = readShelfCsv(
		'id;name;sole;system;label;insideLengthMm;ballWidthMm;removableLiner;studs\r\na;A;firm-ground;uk;8;268,5;100;perhaps;\r\nb;B;clogs;uk;8;268;100;yes;0.7 ' +
			'-0.6 round ' +
			'9\r\nc;C;turf;uk;8;26x;100;no;none\r\n;;;uk;8,5;272;101;;\r\nd;D;turf;uk;8;268,5;100;yes;none\r\ne;E;clogs;uk;8;268;100;;\r\nf;F;turf;uk;8;268;100;;\r\nf;;;uk;8;269;101;;',
	)
	expect(bad.problems.map((one) => `${one.row} ${one.column}`)).toEqual([
		'2 removableLiner',
		'3 studs',
		'4 insideLengthMm',
		'7 sole',
		'9 label',
	])
	expect(bad.shelf.models.map((one) => [one.id, one.sizes[0]!.insideLengthMm])).toEqual([
		['d', 268.5],
	])
	expect(readShelfCsv('name,sole\nA,turf').problems.map((one) => one.column)).toEqual([
		'id',
		'system',
		'label',
		'insideLengthMm',
		'ballWidthMm',
	])
	expect(readShelfCsv('  ').problems[0]!.message).toMatch(/empty/)
	const formula = writeShelfCsv(shelf(model({ name: '=1+1' })))
	expect(formula).toContain("'=1+1")
	expect(readShelfCsv(formula).shelf.models[0]!.name).toBe('=1+1')
})
it('the sole figure is at true proportion, mirrored by side, and says in words what it shows', () => {
	const boot = model({ studs: [stud(0.7, -0.6)], name: 'A & B' })
	const { sizing } = assess(visit())
	const left = soleFigure(boot, size(8, 270, 102), sizing, 'left', protocol),
		right = soleFigure(boot, size(8, 270, 102), sizing, 'right', protocol)
	const centre = (svg: string) => {
		const [, cx, cy] = /<ellipse cx="([\d.]+)" cy="([\d.]+)"/.exec(svg)!
		return [Number(cx), Number(cy)]
	}
	// width 102 + 28; a medial stud (30.6 from the middle) lies to the right of a left sole, 14 + 270
	// - 189 from the top
	expect([centre(left.svg), centre(right.svg)]).toEqual([
		[95.6, 95],
		[34.4, 95],
	])
	expect(left.svg).toContain('A &amp; B')
	expect(left.alternative).toMatch(/first metatarsal head: nearest stud 2\.6 mm/)
})
it('every lacing pattern has a drawing of its own', () =>
	expect(new Set(lacingIds.map((id) => lacingFigure(id, 'left').svg)).size).toBe(lacingIds.length))
it('modifications and lacing carry their cautions', () => {
	const found = assess(
		visit({
			ankles: { left: { lungeDeg: 30 } },
			conditions: [
				{ condition: 'posterior-ankle-impingement', side: 'left', status: 'current' },
				{ condition: 'haglund-deformity', side: 'left', status: 'current' },
			],
		}),
	)
	expect(
		found.footwear.modifications!.find((one) => one.id === 'heel-raise')!.cautions.join(),
	).toMatch(/back of the ankle/)
	expect(found.footwear.lacing!.find((one) => one.id === 'heel-lock')!.cautions.join()).toMatch(
		/counter/,
	)
})
it('every row of the room names a source or owns the choice', () => {
	for (const [key, row] of Object.entries(footwearRows))
		expect([key, row.source.length > 8]).toEqual([key, true])
})
