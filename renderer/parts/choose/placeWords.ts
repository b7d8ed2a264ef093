/** What the dialog says of a folder, its entries and its room. */
import type { OutputOf } from '../../../shared/contract.ts'
import type { PlaceEntry, PlaceKind } from '../../../shared/desk/places/calls.ts'
import { type Purpose, purposes } from '../../../shared/desk/places/purposes.table.ts'
import { timeInWords } from '../dates.ts'

type Look = OutputOf<'places.look'>
const units = ['bytes', 'kB', 'MB', 'GB', 'TB'] as const
const step = 1000
/** Such as "34 GB" or "1.2 MB". */
function sizeWords(bytes: number): string {
	let [size, at] = [bytes, 0]
	while (size >= step && at < units.length - 1) {
		size /= step
		at++
	}
	const digits = at > 0 && size < 10 ? 1 : 0
	return `${size.toFixed(digits)} ${units[at]}`
}
const kinds: Readonly<Record<PlaceKind, string>> = {
	home: 'your own folder',
	documents: 'in your home folder',
	stick: 'stick or other disk',
	drive: 'drive',
	backups: 'where backups go now',
	last: 'chosen before',
}
/** What stands behind the name of an entry. */
export function besideName({ is, kind, path, bytes, changedAt }: PlaceEntry): string {
	if (is === 'place') return `${kind ? `${kinds[kind]}, ` : ''}${path}`
	if (is === 'folder') return ''
	return [bytes === undefined ? '' : sizeWords(bytes), changedAt ? timeInWords(changedAt) : '']
		.filter(Boolean)
		.join(', ')
}
const counted = (count: number, one: string, many: string) =>
	`${count.toLocaleString('en')} ${count === 1 ? one : many}`

/** How many stand there, and whether it can be written to. */
export function stateWords(purpose: Purpose, { at, entries, more }: Look): string {
	const { picks, files } = purposes[purpose]
	if (!at) return `${counted(entries.length, 'place', 'places')} to begin at.`
	const folders = entries.filter(({ is }) => is === 'folder').length
	const there = [
		...(picks === 'file' ? [counted(entries.length - folders, files[0], files[1])] : []),
		counted(folders, 'folder', 'folders'),
	].join(', ')
	const cut = more > 0 ? `; ${counted(more, 'more is', 'more are')} not listed` : ''
	if (picks === 'file') return `${there}${cut}.`
	const room = at.freeBytes === undefined ? '' : ` ${sizeWords(at.freeBytes)} free.`
	return at.canWrite
		? `${there}${cut}. Can be written to.${room}`
		: `${there}${cut}. Cannot be written to: choose another folder.`
}
/** What the list says where it is empty. */
export const emptyWords = (purpose: Purpose): string => {
	const { picks, files, endings } = purposes[purpose]
	return picks === 'file'
		? `No folder and no ${files[0]} here (names that end in ${endings.join(' or ')}).`
		: 'No folder in this one.'
}
/** What leads into the dialog, and out of it with a choice. */
export const openWords = (purpose: Purpose, isChosen: boolean): string => {
	const { picks } = purposes[purpose]
	return `Choose ${isChosen ? 'another' : 'a'} ${picks}`
}
export const takeWords = (purpose: Purpose): string => `Use this ${purposes[purpose].picks}`
