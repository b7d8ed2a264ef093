/** What became of visits, over real records: who may ask, what shows, the own error and the way back. */
import { expect, test } from 'vitest'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { folder, type Opened, open, passphrase, signed, withPlayer } from './bench-app.ts'

const days = { from: '2027-01-01', to: '2027-12-31' }
const play = { code: 'association', organisedHoursPerWeek: 4 } as const
const feet = (mm: number) => ({
	stance: 'standing' as const,
	left: { heelToToeMm: [mm - 1] },
	right: { heelToToeMm: [mm] },
})
const screening = {
	nightPain: false,
	fever: false,
	reducedSensation: false,
	hotSwollenJoint: false,
	calfSuspicion: false,
	limpUnexplained: false,
}
const at = (app: Opened, date: string) => {
	app.clock.ms = Date.parse(`${date}T09:00:00Z`)
	return app.ask('session.unlock', { passphrase })
}
/** A clinic of boys, each measured twice: so many mm between 20 January and 20 June. */
async function clinicOf(grownMm: readonly number[]) {
	const { app, here, playerId: first } = await withPlayer(folder(), '2027-01-20T09:00:00.000Z')
	const ids: string[] = []
	for (const [place] of grownMm.entries()) {
		const { playerId } = await app.ask('players.save', {
			player: {
				givenName: `Boy${'abcdefghijklmnop'[place]}`,
				familyName: 'Invented',
				birthDate: '2015-03-04',
				sex: 'male',
			},
		})
		ids.push(playerId)
		await signed(app, playerId, { play, feet: feet(230), screening })
	}
	await at(app, '2027-06-20')
	for (const [place, mm] of grownMm.entries())
		await signed(app, ids[place]!, { play, feet: feet(230 + mm), screening }, '2027-06-20')
	return { app, here, ids, first }
}
type Table = { head: string[]; rows: string[][] }
function tableOf({ blocks }: LwDocument, caption: string): Table {
	const found = blocks.find((block) => block.kind === 'table' && block.caption.startsWith(caption))
	if (found?.kind !== 'table') throw new Error(`no table ${caption}`)
	return found
}
const rowOf = (document: LwDocument, caption: string, row: string): Record<string, string> => {
	const { head, rows } = tableOf(document, caption)
	const cells = rows.find(([name]) => name === row) ?? []
	return Object.fromEntries(head.map((name, place) => [name, cells[place] ?? '']))
}
const leastTen = async (app: Opened) =>
	app.ask('protocol.save', { values: { 'audit.leastForecasts': 10 }, why: 'a small clinic' })

test('a band that is wrong too often says so; the own error is taken over and set back', async () => {
	// 8.5 mm a year for boys: 3.5 mm are forecast for these 151 days, 1.8 to 5.3 by the band
	const { app, here } = await clinicOf([4, 4, 4, 4, 4, 4, 8, 8, 8, 8, 8, 8])
	await leastTen(app)
	const { document, own, unread } = await app.ask('clinicAudit.read', { days })
	expect(unread).toBe(0)
	expect(rowOf(document, 'What was forecast', 'Foot length')).toMatchObject({
		Missing: '0',
		Came: '12',
		'Inside the band': '6',
		'Below or earlier': '0',
		'Above or later': '6',
		Players: '12',
	})
	const told = JSON.stringify(document)
	expect(told).toContain('this band was wrong too often')
	expect(told).toContain('50 % of 12 inside the band (exact interval 21.1 to 78.9 %), held to 80 %')
	expect(told).not.toContain('Invented,')
	expect(told).not.toMatch(/Boy[a-p]/)
	const { says } = await app.ask('clinicAudit.forecast')
	expect(says).toHaveLength(1)
	// 4 mm of 3.514 are 1.14 of the forecast, 8 are 2.28; the band always holds the mean itself
	expect(own).toMatchObject({
		forecasts: 12,
		least: 10,
		band: { low: 1, high: 2.28 },
		isTaken: false,
	})
	const wrong = await app.refused('clinicAudit.adopt', { ...days, band: { low: 0.9, high: 2 } })
	expect(wrong.code).toBe('audit.other-figures')
	await app.ask('clinicAudit.adopt', { ...days, band: own.band })
	const { file } = await app.ask('protocol.get')
	expect(file.values).toEqual({
		'audit.leastForecasts': 10,
		'growth.footLowFactor': 1,
		'growth.footHighFactor': 2.28,
	})
	const after = await app.ask('clinicAudit.read', { days })
	expect(JSON.stringify(after.document)).toContain('this clinic, 12 forecasts, 1 January 2027')
	expect(after.own).toMatchObject({ isTaken: true, inForce: { low: 1, high: 2.28 } })
	// the forecast that is made next uses it
	const { playerId } = await app.ask('players.save', {
		player: { givenName: 'New', familyName: 'Boy', birthDate: '2015-03-04', sex: 'male' },
	})
	const visitId = await signed(app, playerId, { play, feet: feet(230), screening }, '2027-06-20')
	const { assessment } = await app.ask('visits.open', { visitId })
	const { lengthMm, highMm } = assessment.growth.footForecast[11]
	expect((highMm - 230) / (lengthMm - 230)).toBeCloseTo(2.28, 2)
	// another value of the protocol leaves it as counted
	const { savedAs } = await app.ask('protocol.get')
	await app.ask('protocol.save', {
		values: { ...file.values, 'audit.leastForecasts': 11 },
		why: 'one more',
		follows: savedAs,
	})
	expect((await app.ask('clinicAudit.read', { days })).own.isTaken).toBe(true)
	app.close()
	const again = open(here, '2027-06-20T10:00:00.000Z')
	await again.ask('session.unlock', { passphrase })
	await again.ask('clinicAudit.setBack')
	expect((await again.ask('protocol.get')).file.values).toEqual({ 'audit.leastForecasts': 11 })
	expect((await again.refused('clinicAudit.setBack')).code).toBe('audit.not-taken')
	again.close()
})
test('too few are not shown and not taken; paper and CSV are what was shown; it stands in the trail', async () => {
	const { app, ids } = await clinicOf([3, 3, 4, 4])
	const { document, own } = await app.ask('clinicAudit.read', { days })
	expect(rowOf(document, 'What was forecast', 'Foot length')).toMatchObject({
		Came: '-',
		'Inside the band': '-',
		Players: '-',
	})
	expect(own).toEqual({ least: 22, inForce: { low: 0.5, high: 1.5 }, isTaken: false })
	const few = await app.refused('clinicAudit.adopt', { ...days, band: { low: 0.5, high: 1.5 } })
	expect(few.code).toBe('audit.too-few')
	const turned = await app.refused('clinicAudit.read', {
		days: { from: days.to, to: days.from },
	})
	expect(turned.code).toBe('audit.days')
	const { csv, fileName } = await app.ask('clinicAudit.export', days)
	expect(fileName).toBe('audit-2027-01-01-2027-12-31.csv')
	expect(csv.startsWith('\uFEFFsection,table,row,column,value\r\n')).toBe(true)
	expect(csv).not.toMatch(/Boy|Invented,|-01-20/)
	expect((await app.ask('clinicAudit.print', days)).pdf.fileName).toMatch(/\.pdf$/)
	const { rows } = await app.ask('audit.page', { limit: 20 })
	const refs = rows.map(
		(row: { function: string; objectRef: string }) => `${row.function} ${row.objectRef}`,
	)
	for (const does of ['read', 'export', 'print'])
		expect(refs).toContain(`${does} clinic-audit:2027-01-01 2027-12-31`)
	// a visit that was entered in error counts nowhere
	const { visits } = await app.ask('players.open', { playerId: ids[0] })
	for (const { visitId } of visits)
		await app.ask('visits.markInError', { visitId, reason: 'of another boy' })
	const size = (await app.ask('clinicAudit.read', { days })).document
	expect(rowOf(size, 'Feet measured again', 'Longer foot').Players).toBe('-')
	app.close()
})
test('others are let through while it counts', async () => {
	const { app } = await clinicOf([3, 4, 5, 6])
	const ended: string[] = []
	const reading = app.call('clinicAudit.read', { days }).then((answer) => {
		ended.push('counts')
		return answer
	})
	const status = app.call('session.status', {}).then(() => ended.push('status'))
	await Promise.all([reading, status])
	expect(ended).toEqual(['status', 'counts'])
	app.close()
})
