/** What every finding and working must keep, over random whole visits through assess(). */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { idPart } from '../../shared/engine/findings/finding.ts'
import type { Basis } from '../../shared/engine/protocol/basis.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import type { Shelf } from '../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { modelOf } from './random-shelf.ts'
import {
	ankles,
	body,
	conditions,
	feet,
	footwear,
	numbers,
	player,
	postures,
	validVisit,
	wholeVisit,
} from './random-visit.ts'

const visits = wholeVisit
/** The same player half a year before, or nothing. */
const earlier = fc.option(
	validVisit({ player, feet, ankles, posture: postures, body, conditions, footwear }),
	{ nil: undefined },
)
const shelves = fc.option(
	fc
		.uniqueArray(modelOf, { selector: ({ id }) => id, maxLength: 4 })
		.map((models): Shelf => ({ format: 'lastwright-shelf', version: 1, models })),
	{ nil: undefined },
)
const before = (visit: Visit, other: Visit | undefined): Visit[] =>
	other ? [{ ...other, player: visit.player, visitDate: '2026-03-02' }] : []
const roomsOf = ({ sizing, ankle, posture, growth }: Assessment) => [
	sizing,
	ankle,
	posture,
	...(growth ? [growth] : []),
]
const resolves = ({ source, threshold, limit, rule }: Basis) => {
	expect(source, rule).not.toBe('')
	expect(rule).not.toBe('')
	if (threshold === undefined) return
	const row = Object.entries(rows).find(([key]) => key === threshold)?.[1]
	expect(row, threshold).toBeDefined()
	expect(limit, threshold).toEqual({ value: row!.value, unit: row!.unit })
}

it('no number is NaN or infinite and no text says so, for any valid visit', () => {
	fc.assert(
		fc.property(visits, earlier, (visit, other) => {
			const assessment = assess(visit, before(visit, other))
			expect(numbers(assessment).every(Number.isFinite)).toBe(true)
			expect(JSON.stringify(assessment)).not.toMatch(/NaN|Infinity/)
			expect(JSON.stringify(roomsOf(assessment))).not.toContain('undefined')
		}),
	)
})
it('every basis has a source, and a threshold it names is a row of the protocol', () => {
	fc.assert(
		fc.property(visits, earlier, (visit, other) => {
			const assessment = assess(visit, before(visit, other))
			for (const finding of assessment.findings) resolves(finding.basis)
			for (const working of roomsOf(assessment).flatMap((room) => room.workings))
				resolves(working.basis)
		}),
	)
})
it('every working has lines of plain characters, and ids are kebab-case and used once', () => {
	fc.assert(
		fc.property(visits, earlier, (visit, other) => {
			const rooms = roomsOf(assess(visit, before(visit, other)))
			for (const ids of [
				rooms.flatMap((room) => room.findings),
				rooms.flatMap((room) => room.workings),
			].map((list) => list.map((working) => working.id))) {
				expect(new Set(ids).size, ids.join(' ')).toBe(ids.length)
				for (const id of ids) expect(id).toMatch(/^[a-z]+(\.[a-z0-9-]+)+$/)
			}
			for (const { id, lines, title } of rooms.flatMap((room) => room.workings)) {
				expect(lines.length, id).toBeGreaterThan(0)
				for (const line of [title, ...lines]) expect(line).toMatch(/^[ -~]+$/)
			}
		}),
	)
})
it('whatever a decision can name is there once, for any visit and any visit before it', () => {
	fc.assert(
		fc.property(visits, fc.option(visits, { nil: undefined }), shelves, (visit, other, shelf) => {
			const assessment = assess(visit, before(visit, other), shippedProtocol, shelf)
			const { findings, screening, footwear, loading, insert } = assessment
			const { lacing = [], modifications = [], ranked } = footwear
			const named: Record<string, string[]> = {
				findings: findings.map(({ id }) => id),
				signs: screening.items.map(({ id }) => id),
				work: [...lacing, ...modifications].map(({ id, side }) => `${id}.${side}`),
				models: ranked.map(({ id }) => id),
				conflicts: insert.conflicts.map(({ id }) => id),
				workings: [...roomsOf(assessment), loading].flatMap(({ workings }) =>
					workings.map(({ id }) => id),
				),
			}
			for (const side of ['left', 'right'] as const) {
				named[`stops ${side}`] = insert[side].stoppedBy.map(({ id }) => id)
				named[`elements ${side}`] = insert[side].elements.map(({ element }) => element)
			}
			for (const [what, ids] of Object.entries(named))
				expect(
					ids.filter((id, at) => ids.indexOf(id) !== at),
					what,
				).toEqual([])
		}),
	)
})
it('what stands in a result has a working', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { sizing, ankle, posture, growth } = assess(visit)
			const has = (
				room: { workings: { id: string }[] } | undefined,
				id: string,
				shown: unknown,
			) => {
				if (shown !== undefined) expect(room!.workings.map((working) => working.id)).toContain(id)
			}
			for (const id of [
				'fit-length',
				'mondopoint',
				'size-jpcm',
				'size-eu',
				'size-uk',
				'size-usmen',
				'size-uswomen',
				'size-uschild',
				'size-au',
				'inside-boots',
				'inside-trainers',
				'confidence',
			])
				has(sizing, `sizing.${id}`, sizing.fitLengthMm)
			for (const side of ['left', 'right'] as const) {
				has(sizing, `sizing.arch-length.${side}`, sizing[side].archLengthMm)
				has(sizing, `sizing.length-z.${side}`, sizing[side].lengthZ)
				has(sizing, `sizing.width-z.${side}`, sizing[side].widthForLengthZ)
				has(sizing, `sizing.girth-z.${side}`, sizing[side].girthForLengthZ)
				has(sizing, `sizing.jis.${side}`, sizing[side].fitting.jis)
				has(sizing, `sizing.us-width.${side}`, sizing[side].fitting.us)
				has(ankle, `ankle.band.${side}`, ankle[side].band === 'unknown' ? undefined : 1)
				has(posture, `posture.fpi.${side}`, posture[side].fpi)
				has(posture, `posture.first-mtp.${side}`, posture[side].firstMtp)
				has(posture, `posture.heel-rises.${side}`, posture[side].heelRises)
			}
			has(ankle, 'ankle.heel-raise', ankle.heelRaiseMm)
			has(ankle, 'ankle.asymmetry', ankle.asymmetryCm ?? ankle.asymmetryDeg)
			has(posture, 'posture.beighton', posture.beighton)
			has(posture, 'posture.leg-length', posture.legLength)
			for (const [method, offset] of Object.entries(growth?.maturityOffsetYears ?? {}))
				has(growth, `growth.offset-${method.toLowerCase()}`, offset)
			for (const [what, centile] of Object.entries(growth?.centiles ?? {}))
				has(growth, `growth.centile-${what}`, centile)
			has(growth, 'growth.adult-stature', growth?.predictedAdultStatureCm)
			has(growth, 'growth.foot-forecast', growth?.footForecast)
			has(growth, 'growth.measure-again', growth?.measureAgainBy)
		}),
	)
})
/**
 * The rooms that draw on each group of measures: their findings may change with it, those of all
 * others may not go.
 */
const drawnBy = {
	feet: ['sizing', 'footwear', 'growth', 'insert', 'raise'],
	ankles: ['ankle', 'footwear', 'insert', 'raise'],
	posture: ['posture', 'footwear', 'insert', 'raise'],
	body: ['growth', 'loading', 'posture', 'ankle', 'footwear', 'insert', 'raise'],
	play: ['loading', 'footwear', 'raise', 'insert'],
	screening: ['screening', 'insert', 'ankle', 'posture', 'raise', 'footwear'],
	footwear: ['footwear', 'ankle', 'growth', 'raise', 'insert'],
} as const
/**
 * The lunge pair is checked against the geometry of the leg, which rests on foot length. Exercise is
 * held back while a warning sign asks for somebody else. A pair that was got is held against what all
 * of the measures ask for together.
 */
const isAboutBoth = (id: string, group: keyof typeof drawnBy): boolean =>
	id.startsWith('ankle.pair.') ||
	id.startsWith('onfoot.') ||
	(group === 'screening' && id === 'conditions.exercises.none')
it('adding a group of measures never removes a finding about another', () => {
	fc.assert(
		fc.property(
			visits,
			fc.constantFrom(...(Object.keys(drawnBy) as (keyof typeof drawnBy)[])),
			(visit, group) => {
				const { [group]: _, ...without } = visit
				const after = new Set(assess(visit).findings.map((finding) => finding.id))
				for (const finding of assess(without as Visit).findings) {
					if (
						(drawnBy[group] as readonly string[]).includes(finding.topic) ||
						isAboutBoth(finding.id, group)
					)
						continue
					expect([...after], finding.id).toContain(finding.id)
				}
			},
		),
	)
})
it('a typed text becomes a part of an id', () => {
	fc.assert(
		fc.property(fc.string(), fc.nat(19), (typed, index) => {
			expect(idPart(typed, index)).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
		}),
	)
	expect(idPart('a', 0)).not.toBe(idPart('A', 1))
})
