/** The audit trail: everything stands in it, and whatever is taken out or changed is named. */
import { copyFileSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { folder, open, passphrase, signed, withPlayer } from './bench-app.ts'

test(
	'reads, changes, hand-overs, unlocks and failures stand in the trail, without clinical ' +
		'values, and it verifies',
	async () => {
		const { app, playerId } = await withPlayer()
		const visitId = await signed(app, playerId, { notes: 'limps' })
		await app.ask('players.search', { query: 'marl', limit: 5 })
		await app.ask('players.open', { playerId })
		await app.ask('reports.open', { visitId })
		for (const channel of ['print', 'export', 'send'])
			await app.ask('reports.handedOver', { visitId, recipient: 'Rae Example', channel })
		await app.ask('session.lock')
		await app.refused('session.unlock', { passphrase: 'wrong horse' })
		await app.ask('session.unlock', { passphrase })
		const { rows } = await app.ask('audit.page', { limit: 500 })
		const functions = new Set(rows.map((row: { function: string }) => row.function))
		for (const name of [
			'read',
			'search',
			'create',
			'sign',
			'print',
			'export',
			'send',
			'unlock',
			'unlock-failed',
			'lock',
		])
			expect(functions, name).toContain(name)
		expect(JSON.stringify(rows)).not.toMatch(/limps|Marlowe|2011-04-17/)
		const page = await app.ask('audit.page', { limit: 3, playerId })
		expect(page.rows.every((row: { playerId: string }) => row.playerId === playerId)).toBe(true)
		expect((await app.ask('audit.page', { limit: 3, before: rows[2].seq })).rows[0].seq).toBe(
			rows[2].seq - 1,
		)
		const { csv, rows: exported } = await app.ask('audit.export')
		expect(csv.trimEnd().split('\r\n')).toHaveLength(exported + 1)
		expect(await app.ask('audit.verify')).toMatchObject({ problems: [] })
		app.close()
	},
)
test('a removed, an altered, a truncated, a re-chained row and a vanished record are each named', async () => {
	const { app, here, playerId } = await withPlayer()
	const visitId = await signed(app, playerId)
	await app.ask('visits.open', { visitId })
	const rows = (await app.ask('audit.page', { limit: 500 })).rows as {
		seq: number
		function: string
		objectRef: string
	}[]
	app.close()
	const last = Number(rows[0]?.seq) + 1
	const signRow = rows.find((row) => row.function === 'sign')
	/** what the page says of rows that it had to leave out */
	let leftOut: string | undefined
	const tamper = async (sql: string, more: { noHead?: boolean } = {}): Promise<string> => {
		const copy = folder()
		mkdirSync(copy, { recursive: true })
		for (const file of ['lastwright.db', 'lastwright.head'])
			copyFileSync(join(here, file), join(copy, file))
		if (more.noHead) rmSync(join(copy, 'lastwright.head'))
		const db = new DatabaseSync(join(copy, 'lastwright.db'))
		expect(() => db.exec('DELETE FROM audit')).toThrow(/never deleted/)
		db.exec(
			'DROP TRIGGER audit_kept; DROP TRIGGER audit_stays; DROP TRIGGER record_kept; DROP ' +
				'TRIGGER record_stays',
		)
		db.exec(sql)
		db.close()
		const again = open(copy)
		await again.ask('session.unlock', { passphrase })
		const status = await again.ask('session.status')
		const warnings = status.warnings.filter((one: string) => !/copied or moved/.test(one))
		expect(status.warnings).toHaveLength(warnings.length + 1)
		const { problems } = await again.ask('audit.verify')
		const page = await again.ask('audit.page', { limit: 500 })
		expect((await again.ask('audit.export')).leftOut).toBe(page.leftOut)
		leftOut = page.leftOut
		again.close()
		return [...warnings, ...problems].join('\n')
	}
	expect(await tamper('')).toBe('')
	expect(leftOut).toBeUndefined()
	expect(await tamper('DELETE FROM audit WHERE seq = 4')).toBe(
		'Row 4 is missing from the audit trail.',
	)
	expect(leftOut).toMatch(/left out here: 4\./)
	expect(await tamper('UPDATE audit SET sealed = zeroblob(60) WHERE seq = 5')).toMatch(
		/Row 5 was altered/,
	)
	expect(leftOut).toMatch(/left out here: 5\./)
	expect(await tamper(`DELETE FROM audit WHERE seq > ${last - 2}`)).toMatch(
		new RegExp(`Rows ${last - 1} to ${last} are missing`),
	)
	expect(
		await tamper('DELETE FROM audit WHERE seq = 4; UPDATE audit SET seq = seq - 1 WHERE seq > 4'),
	).toMatch(/Row 4 was altered/)
	expect(await tamper('', { noHead: true })).toMatch(/head is missing or damaged/)
	expect(
		await tamper(`DELETE FROM record WHERE id = '${signRow?.objectRef.split(':')[1]}'`),
	).toMatch(/is gone from the records/)
	// time, predecessor and order are bound into what is sealed
	for (const change of [
		"at = '2020-01-01T00:00:00.000Z'",
		'follows = NULL',
		'tick = tick + 100',
		"origin = 'x'",
	]) {
		const copy = folder()
		copyFileSync(join(here, 'lastwright.db'), join(copy, 'lastwright.db'))
		const db = new DatabaseSync(join(copy, 'lastwright.db'))
		db.exec(`DROP TRIGGER record_stays; UPDATE record SET ${change} WHERE kind = 'report'`)
		db.close()
		const again = open(copy)
		await again.ask('session.unlock', { passphrase })
		expect((await again.refused('reports.open', { visitId })).code, change).toBe(
			'visits.unreadable-pages',
		)
		again.close()
	}
})
