/** The laptop's audit trail beside the clinic's own. */
import { expect, test } from 'vitest'
import { signed } from './bench-app.ts'
import { apart, back, balanced, bring, measured } from './bench-pack.ts'

test("the laptop's audit rows come home as a section of their own, can be read and are checked", async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	const visitId = await signed(laptop!, playerId, measured)
	await laptop!.ask('visits.open', { visitId })
	const file = await back(laptop!)
	const own = (await laptop!.ask('audit.page', { limit: 500 })).rows as {
		seq: number
		function: string
		hash: string
	}[]
	const before = (await app.ask('audit.verify')).rows
	const merged = await bring(app, file)
	balanced(merged)
	const {
		places: [place],
		rows: here,
	} = await app.ask('audit.page', { limit: 500 })
	expect(place).toMatchObject({ rows: merged.trailRows, from: expect.any(String) })
	// rows written after the trail was taken down stay behind: the export itself, and a backup that
	// ended later
	const later = own.slice(0, own.length - merged.trailRows)
	expect(
		later.map((row) => row.function).filter((name) => !['export', 'backup'].includes(name)),
	).toEqual([])
	const { rows } = await app.ask('audit.page', { limit: 500, workstation: place.workstation })
	expect(rows.map((row: { hash: string }) => row.hash)).toEqual(
		own.slice(later.length).map((row) => row.hash),
	)
	expect(
		rows.find((row: { objectRef: string }) => row.objectRef === `visit:${visitId}`),
	).toMatchObject({ function: 'read', person: 'A. Example' })
	expect(
		here.some((row: { workstationId: string }) => row.workstationId === place.workstation),
		'the two trails are not mixed',
	).toBe(false)
	const checked = await app.ask('audit.verify')
	expect(checked).toMatchObject({ problems: [], awayRows: merged.trailRows })
	expect(checked.rows).toBeGreaterThan(before)
	const { csv, rows: lines } = await app.ask('audit.export')
	expect(csv.trimEnd().split('\r\n')).toHaveLength(lines + 1)
	expect((await app.ask('outreach.list')).merged[0]).toMatchObject({
		trailRows: merged.trailRows,
		counts: merged.counts,
	})
	// a later file of the same laptop holds all its rows again: each is shown once
	await laptop!.ask('visits.open', { visitId })
	const second = await bring(app, await back(laptop!))
	expect((await app.ask('audit.page', { limit: 1 })).places).toMatchObject([
		{ rows: second.trailRows },
	])
	expect((await app.ask('audit.verify')).problems).toEqual([])
	app.close()
})
