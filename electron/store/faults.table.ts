import type { RefusalCode } from '../../shared/desk/workplace/refusal.ts'

/**
 * What the disk, the folder or the records file fails with, by the system's codes and the primary
 * codes of SQLite (sqlite.org/rescode.html). Words while people work, and at the start; {place} is
 * the folder or file. A row's place in the list is of no account: no code stands twice.
 */
export interface FaultRow {
	name: string
	/** what a refused call is known by, where it is more than a fault */
	refused?: RefusalCode
	sqlite: readonly number[]
	system: readonly string[]
	atWork: string
	atStart: string
}
const entries = 'Your entries are still on this screen:'
const ofProgram = 'Lastwright has as many files open as this PC allows one program. Nothing was changed. Close Lastwright and start it again; if it comes back, let whoever looks after this PC raise the number of open files for one program (on Linux and macOS: ulimit -n 4096).'
const ofPc = 'This PC has as many files open as it allows all programs together. Nothing was changed. Close other programs, or start the PC anew, and try again.'

export const faultRows: readonly FaultRow[] = [
	{
		name: 'full',
		refused: 'records.disk-full',
		sqlite: [13],
		system: ['ENOSPC', 'EDQUOT', 'EFBIG'],
		atWork: `The disk is full. ${entries} free some space and try again.`,
		atStart: 'The disk that holds {place} is full. Free some space and start Lastwright again. Nothing was changed.',
	},
	{
		name: 'read-only',
		sqlite: [3, 8, 23],
		system: ['EROFS', 'EACCES', 'EPERM'],
		atWork: `The data folder cannot be written to. ${entries} make the folder writable and try again.`,
		atStart: 'The data folder {place} cannot be written to. Make it writable, or start Lastwright with another folder. Nothing was changed.',
	},
	{
		name: 'gone',
		sqlite: [14],
		system: ['ENOENT', 'ENOTDIR', 'ENXIO', 'ENODEV', 'ESTALE'],
		atWork: `A file or folder is not there any more, or cannot be opened. ${entries} check that the disk, stick or share is connected, and try again.`,
		atStart: 'The data folder {place} cannot be written to. Make it writable, or start Lastwright with another folder. Nothing was changed.',
	},
	{
		name: 'damaged',
		sqlite: [11, 26, 24],
		system: [],
		atWork: 'Part of the records file is damaged. Nothing was changed. Restore the newest backup: open Backups, or start Lastwright anew and follow what it says.',
		atStart: 'The records file in {place} is damaged. Nothing was changed. Restore the newest backup into another folder, and keep this one aside.',
	},
	{
		// our statements are tried: where one is wrong, a table or column is gone or named otherwise
		name: 'damaged tables',
		sqlite: [1],
		system: [],
		atWork: 'Part of the records file is damaged. Nothing was changed. Restore the newest backup: open Backups, or start Lastwright anew and follow what it says.',
		atStart: 'The records file in {place} is damaged. Nothing was changed. Restore the newest backup into another folder, and keep this one aside.',
	},
	{
		name: 'failing disk',
		sqlite: [10],
		system: ['EIO', 'EREMOTEIO', 'ETIMEDOUT', 'EHOSTDOWN', 'ENOTCONN'],
		atWork: `The disk did not do what it was asked. ${entries} check that it is connected and try again. If it stays, make a backup on another disk at once: this one may be failing.`,
		atStart: 'The disk that holds {place} cannot be read or written. Nothing was changed. Check that it is connected. If it stays, the disk may be failing: restore the newest backup on another one.',
	},
	{
		name: 'in use',
		sqlite: [5, 6, 15],
		system: ['EBUSY', 'ETXTBSY', 'EAGAIN', 'EDEADLK'],
		atWork: `Another program holds the records file. ${entries} close what copies, scans or synchronises the data folder, and try again.`,
		atStart: 'Another program holds the records in {place}. Close what copies, scans or synchronises the folder, then start Lastwright again. Nothing was changed.',
	},
	{
		name: 'handles',
		sqlite: [],
		system: ['EMFILE'],
		atWork: ofProgram,
		atStart: ofProgram,
	},
	{
		name: 'handles of the PC',
		sqlite: [],
		system: ['ENFILE'],
		atWork: ofPc,
		atStart: ofPc,
	},
	{
		name: 'memory',
		sqlite: [7],
		system: ['ENOMEM'],
		atWork: `This PC has no memory left. ${entries} close other programs and try again.`,
		atStart: 'This PC has no memory left. Close other programs, then start Lastwright again. Nothing was changed.',
	},
	{
		name: 'too large',
		sqlite: [18],
		system: [],
		atWork: `This is more than one record may hold. ${entries} take a large text or picture out and try again.`,
		atStart: 'A record in {place} is larger than one may be. Nothing was changed. Restore the newest backup.',
	},
	{
		name: 'path',
		sqlite: [],
		system: ['ENAMETOOLONG', 'EISDIR', 'ELOOP', 'EINVAL', 'ENOTEMPTY', 'EEXIST', 'EXDEV'],
		atWork: `A file or folder cannot be used under this name. ${entries} choose another name or folder and try again.`,
		atStart: 'The data folder {place} cannot be used under this name. Start Lastwright with another folder. Nothing was changed.',
	},
]
