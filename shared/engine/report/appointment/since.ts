/** Of a re-check: a line each of what was done, bought, worn and how it is today. */
import { dateWords } from '../../words/words.ts'
import type { Section } from '../base.ts'
import { sinceRows } from '../since/rows.ts'

export const since: Section = (input, _notes, t) => {
	const rows = sinceRows(input, t, 'clinician').map(({ label, text }) => ({ label, text }))
	const date = input.visit.since?.visitDate
	return date === undefined || rows.length === 0
		? []
		: [{ kind: 'facts', title: t('since.titleSheet', { date: dateWords(date) }), rows }]
}
