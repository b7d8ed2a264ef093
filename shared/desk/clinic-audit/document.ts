/** The audit as pages: on screen, on paper and for a reader that speaks they are the same. */
import type { Protocol } from '../../engine/protocol/protocol.ts'
import {
	clinicianOf,
	heading,
	letterheadOf,
	say,
	small,
	speakOf,
} from '../../engine/report/base.ts'
import type { Clinic } from '../../engine/report/clinic.ts'
import type { Block, LwDocument } from '../../engine/report/document.ts'
import type { Speak } from '../../engine/words/speak.ts'
import { dateWords } from '../../engine/words/words.ts'
import type { Audit } from './audit.ts'
import { forecastWords, thirdsTable, wrongWords } from './forecasts-in-words.ts'
import { inWords, type SectionInWords, type TableInWords } from './in-words.ts'

interface Frame {
	clinic: Clinic
	protocol: Protocol
	/** ISO date on which it is made */
	on: string
}
function tableBlocks({ caption, head, rows, says }: TableInWords, t: Speak): Block[] {
	if (rows.length === 0) return [small(`${caption}: ${t('audit.noRows')}`)]
	return [
		{
			kind: 'table',
			caption,
			head,
			rows,
			widths: head.map((_, at) => (at === 0 ? '*' : 62)),
			align: head.map((_, at) => (at === 0 ? 'left' : 'right')),
		},
		...says.map(small),
	]
}
function sectionBlocks(
	section: SectionInWords,
	audit: Audit,
	protocol: Protocol,
	t: Speak,
): Block[] {
	const tables = section.tables.filter(({ rows }) => rows.length > 0)
	if (tables.length === 0) return [heading(section.title), small(t('audit.noRows'))]
	const isForecast = section.head === 'forecast'
	const wrong = isForecast ? wrongWords(audit, protocol, t) : []
	const thirds = isForecast ? thirdsTable(audit, t) : undefined
	return [
		heading(section.title),
		...wrong.map((text): Block => ({ kind: 'alert', title: section.title, text })),
		...tables.flatMap((table) => tableBlocks(table, t)),
		...(thirds ? tableBlocks(thirds, t) : []),
		...(isForecast ? forecastWords(audit, protocol, t).map(small) : []),
	]
}
export function auditDocument(audit: Audit, { clinic, protocol, on }: Frame): LwDocument {
	const t = speakOf(clinic)
	const [from, to] = [dateWords(audit.from), dateWords(audit.to)]
	const all = inWords(audit, t)
	const isEmpty = all.every(({ tables }) => tables.every(({ rows }) => rows.length === 0))
	return {
		title: t('audit.title'),
		kind: 'clinic-audit',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		running: t('audit.running', { from, to }),
		landscape: true,
		print: 'compact',
		slim: true,
		paper: clinic.paper ?? 'A4',
		subject: [
			[t('audit.period'), t('audit.days', { from, to })],
			[t('audit.made'), dateWords(on)],
			[t('audit.counted'), t('audit.once')],
		],
		blocks: [
			say(t('audit.intro')),
			small(t('audit.small', { most: audit.least - 1 })),
			...(isEmpty
				? [say(t('audit.none'))]
				: all.flatMap((section) => sectionBlocks(section, audit, protocol, t))),
		],
		notes: [],
		footer: t('audit.footer', { clinic: clinic.name, ...clinicianOf(clinic) }),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
/** The same as lines of a table: section, table, row, column, value; a head first. */
export function auditLines(audit: Audit, { clinic, protocol }: Omit<Frame, 'on'>): string[][] {
	const t = speakOf(clinic)
	const sections = inWords(audit, t)
	const thirds = thirdsTable(audit, t)
	const cells = sections.flatMap((section) =>
		[...section.tables, ...(section.head === 'forecast' && thirds ? [thirds] : [])].flatMap(
			({ caption, head, rows }) =>
				rows.flatMap(([row = '', ...values]) =>
					values.map((value, at) => [section.title, caption, row, head[at + 1] ?? '', value]),
				),
		),
	)
	const said = [...wrongWords(audit, protocol, t), ...forecastWords(audit, protocol, t)]
	return [
		['section', 'table', 'row', 'column', 'value'],
		[t('audit.title'), t('audit.period'), '', '', `${audit.from} - ${audit.to}`],
		...cells,
		...said.map((text) => [t('audit.head.forecast'), '', '', '', text]),
	]
}
