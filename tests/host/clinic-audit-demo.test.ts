/**
 * The audit of the full demo clinic, counted by hand from its records: by loops over the files of the demo,
 * which know nothing of the program, and by the figures that they were read to give.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { App } from '../../electron/app.ts'
import { asking } from '../../electron/command/demo/asking.ts'
import { clockFrom } from '../../electron/command/demo/clock.ts'
import { openDemo } from '../../electron/command/demo/records.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { demoDay, json } from '../demo.ts'

/** The visits before the screening day of the demo, whose visits stand in another file. */
const days = { from: '2026-01-01', to: '2027-01-26' }
interface Foot {
	heelToToeMm?: number[]
}
interface VisitTold {
	visitDate: string
	feet?: { left: Foot; right: Foot }
	conditions?: { condition: string; status: string; painWorst?: number; sessionsMissed?: number }[]
	footwear?: { sizeSystem?: string; size?: number; insideLengthMm?: number }[]
}
interface Told {
	player: { givenName: string; birthDate: string; sex: string }
	visits: VisitTold[]
	lastIsOpen?: boolean
}
const told: Told[] = [...json('demo.json').players, ...json('seen-again.json').players]
/** Signed visits of each player, oldest first. */
const courses = told.map(({ player, visits, lastIsOpen }) => ({
	player,
	visits: lastIsOpen ? visits.slice(0, -1) : visits,
}))
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const longer = ({ feet }: VisitTold) =>
	Math.max(mean(feet?.left.heelToToeMm ?? []), mean(feet?.right.heelToToeMm ?? []))
const daysBetween = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 86_400_000
const middle = (values: number[]) => {
	const sorted = values.toSorted((one, other) => one - other)
	return (
		(sorted[Math.floor((sorted.length - 1) / 2)]! + sorted[Math.ceil((sorted.length - 1) / 2)]!) / 2
	)
}

/** The band is half to one and a half of the mean growth. */
function endOf(grown: number, expected: number): 'inside' | 'below' | 'above' {
	if (grown < expected / 2) return 'below'
	return grown > expected * 1.5 ? 'above' : 'inside'
}

let app: App
let document: LwDocument
const folder = mkdtempSync(join(tmpdir(), 'lastwright-demo-'))
beforeAll(async () => {
	app = await openDemo({ folder, now: clockFrom(demoDay), isFull: true, note: () => {} })
	;({ document } = await asking(app)('clinicAudit.read', { days }))
}, 300_000)
afterAll(() => {
	app.close()
	rmSync(folder, { recursive: true, force: true })
})
/** A row by the heads of its columns; of tables of one caption the place-th. */
function rowOf(caption: string, row: string, place = 0): Record<string, string> {
	const tables = document.blocks.flatMap((block) =>
		block.kind === 'table' && block.caption.startsWith(caption) ? [block] : [],
	)
	const table = tables[place]!
	const cells = table.rows.find(([name]) => name === row)!
	return Object.fromEntries(table.head.map((name, at) => [name, cells[at]!]))
}

describe('the audit of the demo, counted by hand:', () => {
	it('a growing heel: eight had it, seven were seen again, six told their pain both times', () => {
		const had = courses.filter(({ visits }) =>
			visits.some(({ conditions = [] }) =>
				conditions.some(({ condition }) => condition === 'calcaneal-apophysitis'),
			),
		)
		const again = had.filter(({ visits }) => visits.length > 1)
		const before: number[] = []
		const after: number[] = []
		const missed: number[][] = [[], []]
		for (const { visits } of again) {
			const [one, other] = visits.map(({ conditions }) => conditions![0]!)
			if (other!.painWorst !== undefined) {
				before.push(one!.painWorst!)
				after.push(other!.painWorst)
			}
			if (other!.sessionsMissed !== undefined) {
				missed[0]!.push(one!.sessionsMissed!)
				missed[1]!.push(other!.sessionsMissed)
			}
		}
		expect([had.length, again.length, before.length, missed[0]!.length]).toEqual([8, 7, 6, 6])
		expect([middle(before), middle(after), middle(missed[0]!), middle(missed[1]!)]).toEqual([
			5.5, 3, 3, 1,
		])
		const name = 'Calcaneal apophysitis (growing heel)'
		// one of eight was not seen again: neither this one, nor all, nor those seen again show
		expect(rowOf('Seen again', name)).toMatchObject({
			Missing: '-',
			'Not due yet': '0',
			'Seen again': '-',
			Players: '-',
		})
		expect(rowOf('Worst pain', name)).toMatchObject({
			Missing: '-',
			'Told both times': '6',
			Before: '5.5 (4 to 8)',
			After: '3 (2 to 5)',
		})
		expect(rowOf('Sessions missed', name)).toMatchObject({
			'Told both times': '6',
			Before: '3 (1 to 6)',
			After: '1 (0 to 3)',
		})
	})
	it('the foot: ten were measured again after six weeks, one of them grew more than the band', () => {
		const mmPerYear = { male: 8.5, female: 9 } as Record<string, number>
		const errors: number[] = []
		const ends = { inside: 0, below: 0, above: 0 }
		for (const { player, visits } of courses) {
			const [then, ...later] = visits.filter(({ feet }) => feet !== undefined)
			if (!then || daysBetween(player.birthDate, then.visitDate) > 18 * 365.25) continue
			const next = later.find(({ visitDate }) => daysBetween(then.visitDate, visitDate) >= 42)
			if (!next) continue
			const rate = mmPerYear[player.sex]! / 365.25
			const expected = rate * daysBetween(then.visitDate, next.visitDate)
			const grown = longer(next) - longer(then)
			errors.push(grown - expected)
			ends[endOf(grown, expected)]++
		}
		expect(errors).toHaveLength(10)
		expect(ends).toEqual({ inside: 9, below: 0, above: 1 })
		expect(middle(errors)).toBeCloseTo(0.31, 1)
		expect(rowOf('What was forecast', 'Foot length')).toMatchObject({
			Came: '10',
			'Inside the band': '-',
			'Below or earlier': '0',
			'Above or later': '-',
			Error: '0.31 (−0.72 to 2.44)',
		})
	})
	it('feet: eighteen were measured, fourteen of them again: four are not to be found from that', () => {
		const measured = courses.filter(({ visits }) => visits.some(({ feet }) => feet))
		const again = measured.filter(({ visits }) => visits.filter(({ feet }) => feet).length > 1)
		const changes = again.map(({ visits }) => {
			const [one, other] = visits.filter(({ feet }) => feet)
			return longer(other!) - longer(one!)
		})
		expect([measured.length, again.length, middle(changes)]).toEqual([18, 14, 3])
		expect(rowOf('Feet measured again', 'Longer foot')).toMatchObject({
			Missing: '-',
			'Taken as it was': '0',
			'Measured again': '-',
			Change: '-',
			Players: '18',
		})
	})
	it('UK labels: eight pairs were measured', () => {
		// a child or adult UK size is three times the inches of the foot, less 10, or less 23
		const differences = courses.flatMap(({ visits }) => {
			const pair = visits
				.flatMap(({ footwear = [] }) => footwear)
				.find(
					({ sizeSystem, size, insideLengthMm }) => sizeSystem === 'uk' && size && insideLengthMm,
				)
			if (!pair) return []
			const lengths = [10, 23].map((less) => ((pair.size! + less) / 3) * 25.4)
			return [Math.min(...lengths.map((length) => Math.abs(pair.insideLengthMm! - length)))]
		})
		expect(differences).toHaveLength(8)
		expect(middle(differences)).toBeCloseTo(17.05, 1)
		expect(rowOf('Measured inside length', 'Other models, size system UK')).toMatchObject({
			Missing: '0',
			Measured: '8',
			Difference: '17.05 (14.9 to 17.9)',
			Players: '8',
		})
	})
	it('shows no count from one to four, no name, and says regression to the mean', () => {
		const whole = JSON.stringify(document)
		for (const { player } of told) expect(whole).not.toContain(player.givenName)
		expect(whole).toContain('Regression to the mean')
		const counts = document.blocks.flatMap((block) =>
			block.kind === 'table' ? block.rows.flat() : [],
		)
		expect(counts.filter((cell) => /^[1-4]$/.test(cell))).toEqual([])
	})
})
