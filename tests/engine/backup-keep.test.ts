/** The names of backups, and which of them the rule keeps. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
	type BackupName,
	backupReasons,
	nameBackup,
	readBackupName,
	readPartName,
} from '../../shared/desk/records/backup-name.ts'
import { notKept } from '../../shared/desk/records/keep.ts'

const dayMs = 86_400_000
const origin = '0a1b2c3d4e5f'
const moment = fc
	.date({ min: new Date('2026-01-01'), max: new Date('2030-01-01'), noInvalidDate: true })
	.map((at) => at.toISOString())
const made = fc.record(
	{
		at: moment,
		reason: fc.constantFrom(...backupReasons),
		origin: fc.stringMatching(/^[0-9a-f]{12}$/),
		damaged: fc.constant(true),
	},
	{ requiredKeys: ['at', 'reason'] },
)
const daily = (at: number | string, more: Partial<BackupName> = {}): BackupName =>
	nameBackup({ at: new Date(at).toISOString(), reason: 'daily', origin, ...more })

describe('the name of a backup', () => {
	test('says when, by whom, why, and whether it is whole', () => {
		fc.assert(
			fc.property(made, (what) => {
				const name = nameBackup(what)
				expect(readBackupName(name.file)).toEqual(name)
				expect(readPartName(`${name.file}.part`)).toEqual(name)
				expect(readPartName(`${name.file}.part-journal`)).toEqual(name)
				expect(readPartName(name.file)).toBeUndefined()
			}),
		)
	})
	test('of version 0.1.0 is read, and says nothing of whose it is', () => {
		expect(readBackupName('lastwright-backup-2026-11-25T14-05-00-000Z-before-upgrade.db')).toEqual({
			file: 'lastwright-backup-2026-11-25T14-05-00-000Z-before-upgrade.db',
			at: '2026-11-25T14:05:00.000Z',
			reason: 'before-upgrade',
		})
	})
	test.each([
		'lastwright.db',
		'lastwright-backup-2026-11-25T14-05-00-000Z-0a1b2c3d4e5f-other.db',
		'lastwright-backup-2026-11-25T14-05-00-000Z-0a1b2c3d4e5-daily.db',
		'lastwright-backup-2026-11-25-daily.db',
		'lastwright-backup-2026-11-25T14-05-00-000Z-daily.db.part',
	])('%s is none', (file) => {
		expect(readBackupName(file)).toBeUndefined()
	})
})
describe('the rule', () => {
	test('never lets go what was just made, whatever the clock said before', () => {
		fc.assert(
			fc.property(fc.array(made, { maxLength: 60 }), moment, (others, now) => {
				const one = daily(now)
				const gone = notKept([...others.map(nameBackup), one], { now, made: one.file })
				expect(gone).not.toContain(one.file)
			}),
		)
	})
	test('lets nothing go that is dated after now, nor does it count against the others', () => {
		fc.assert(
			fc.property(fc.array(made, { maxLength: 40 }), moment, (some, now) => {
				const names = some.map(nameBackup)
				const one = daily(now)
				const past = names.filter(({ at }) => at <= now)
				expect(new Set(notKept([...names, one], { now, made: one.file }))).toEqual(
					new Set(notKept([...past, one], { now, made: one.file })),
				)
			}),
		)
	})
	test('lets nothing go while the newest one holds damage', () => {
		const many = Array.from({ length: 60 }, (_, back) => daily(Date.UTC(2027, 5, 1) - back * dayMs))
		const damaged = daily(Date.UTC(2027, 5, 2), { damaged: true })
		const now = '2027-06-02T10:00:00.000Z'
		expect(notKept(many, { now }).length).toBeGreaterThan(0)
		expect(notKept([damaged, ...many], { now, made: damaged.file })).toEqual([])
	})
	test('counts no damaged one in the place of a good one', () => {
		const good = Array.from({ length: 12 }, (_, back) =>
			daily(Date.UTC(2027, 5, 20) - back * dayMs),
		)
		const damaged = good.map(({ at }) => daily(Date.parse(at) + 3_600_000, { damaged: true }))
		const now = '2027-06-21T10:00:00.000Z'
		const newest = daily(now)
		const gone = notKept([newest, ...damaged, ...good], { now, made: newest.file })
		expect(gone.filter((file) => !file.endsWith('-damaged.db'))).toEqual(
			notKept([newest, ...good], { now, made: newest.file }),
		)
	})
})
