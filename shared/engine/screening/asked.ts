import type { Player } from '../visit/visit.ts'
import { askedInPrivate } from './complaints.table.ts'
import { flagRows } from './flags.table.ts'

/** The private questions of a player of this sex, by visit path, in order. */
export const privateQuestionsOf = (sex: Player['sex']): string[] =>
	askedInPrivate.filter((path) => {
		const row = flagRows.find(({ key }) => path === `screening.${key}`)
		return row?.sex === undefined || row.sex === sex
	})
