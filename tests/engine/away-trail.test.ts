/** What a laptop did comes home row by row, and any change to it is named. */
import { expect, test } from 'vitest'
import type { AuditRow } from '../../shared/desk/records/audit.ts'
import {
	type AwayTrail,
	awayProblems,
	awayRows,
	chainAway,
} from '../../shared/desk/records/away-trail.ts'

const row = (seq: number, over: object = {}): AuditRow & { hash: string } => ({
	seq,
	utcTime: '2027-01-20T09:00:00.000Z',
	localOffsetMinutes: 0,
	personId: 'owner',
	role: 'owner',
	workstationId: 'lap',
	playerId: null,
	function: 'read',
	objectRef: `visit:${seq}`,
	purpose: 'x',
	outcome: 'done',
	prevHash: seq === 1 ? '0' : `h${seq - 1}`,
	hash: `h${seq}`,
	...over,
})
const trail = (count: number, over: object = {}): AwayTrail => ({
	packId: 'p',
	workstationId: 'lap',
	madeAt: '2027-01-20T10:00:00.000Z',
	problems: [],
	rows: chainAway(
		'p',
		'lap',
		Array.from({ length: count }, (_, at) => row(at + 1)),
	),
	...over,
})

test('whole it has no fault, and a longer file of the same laptop adds its rows once', () => {
	expect(awayProblems([trail(3), trail(5)])).toEqual([])
	expect(awayRows([trail(3), trail(5)], 'lap').map(({ seq }) => seq)).toEqual([5, 4, 3, 2, 1])
})
test('altered, taken out, put in, told otherwise: each is named', () => {
	const whole = trail(4)
	const altered = {
		...whole,
		rows: whole.rows.map((own) => (own.seq === 2 ? { ...own, objectRef: 'visit:other' } : own)),
	}
	expect(awayProblems([altered]).join()).toMatch(/row 2 was altered/)
	expect(
		awayProblems([{ ...whole, rows: whole.rows.filter(({ seq }) => seq !== 2) }]).join(),
	).toMatch(/before row 3 is missing/)
	expect(
		awayProblems([
			{ ...whole, rows: chainAway('p', 'lap', [row(1), row(2, { prevHash: 'other' })]) },
		]).join(),
	).toMatch(/row 2 does not follow/)
	expect(
		awayProblems([
			whole,
			{ ...whole, rows: chainAway('p', 'lap', [row(1), row(2), row(3, { hash: 'h3x' })]) },
		]).join(),
	).toMatch(/row 3 differently/)
	expect(
		awayProblems([{ ...whole, problems: ['Row 2 is missing from the audit trail.'] }]),
	).toEqual(['Laptop lap, when it came home: Row 2 is missing from the audit trail.'])
})
