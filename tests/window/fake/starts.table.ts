/** The starts of the shell that are tried, each with what lies in its folder and its checks. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { leavingChecks } from './checks-leaving.ts'
import { openingChecks } from './checks-opening.ts'
import { recordsChecks } from './checks-records.ts'
import { stayingChecks } from './checks-staying.ts'

interface Start {
	/** Begins on the records of the start before. */
	continues?: true
	/** What is done to the folder of the records before. */
	before?: (data: string) => void
	checks: readonly string[]
}
const place = (data: string, text: string): void => {
	mkdirSync(join(data, 'window'), { recursive: true })
	writeFileSync(join(data, 'window/place.json'), text)
}
const ends = [
	'asks before it closes over what is not saved',
	'opens no window',
	'opens where it was left',
	'opens whatever the note of its place says',
	'says why records do not open, and ends',
	'says that a fault of its own ended it',
	'gives up after three stops within a minute',
	'keeps its place and ends with its window',
]
export const starts: Readonly<Record<string, Start>> = {
	'a first start': {
		checks: [...Object.keys(openingChecks), ...Object.keys(stayingChecks), ...Object.keys(recordsChecks), ...Object.keys(leavingChecks).filter((name) => !ends.includes(name)), 'keeps its place and ends with its window'],
	},
	'the next one': {
		continues: true,
		checks: ['opens where it was left', 'asks before it closes over what is not saved'],
	},
	'one with a spoilt note of its place': {
		continues: true,
		before: (data) => place(data, '{"width":'),
		checks: ['opens whatever the note of its place says', 'says that the screens stopped, and opens them again', 'gives up after three stops within a minute'],
	},
	'one that fails': { checks: ['says that a fault of its own ended it'] },
	'one on records that cannot be opened': {
		before: (data) => writeFileSync(join(data, 'lastwright.db'), 'no records'.repeat(1000)),
		checks: ['says why records do not open, and ends'],
	},
}
