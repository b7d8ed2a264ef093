/** The audit of a clinic: marks of each player added up, and what of it shows. */
import type { Protocol } from '../../engine/protocol/protocol.ts'
import { type Held, heldOf, type OwnError, ownErrorOf, type Third, thirdsOf } from './account.ts'
import { adviceMarks } from './advice.ts'
import { conditionMarks, measureMarks } from './followed.ts'
import { type ForecastKind, forecastMarks, forecasts } from './forecasts.ts'
import { labelMarks, sizeMarks, stageMarks } from './measured.ts'
import { referralMarks } from './referrals.ts'
import type { Asking, Course, Mark, Period } from './seen.ts'
import { type AuditTables, hidden, type Tally } from './tally.ts'

/** In the order of the tables. */
const counting: readonly ((course: Course, asking: Asking) => Mark[])[] = [
	conditionMarks,
	measureMarks,
	adviceMarks,
	referralMarks,
	labelMarks,
	forecastMarks,
	stageMarks,
	sizeMarks,
]
/** What one player adds to the tables. */
export const marksOf = (course: Course, asking: Asking): Mark[] =>
	counting.flatMap((marks) => marks(course, asking))
/** How the forecasts did. */
interface Account {
	held: readonly Held[]
	own: OwnError
	thirds: readonly Third[]
}
/** What may be shown, printed and kept: no name, no id, no day of a visit. */
export interface Audit extends Period {
	least: number
	tables: AuditTables
	account: Account
}
const kinds = Object.keys(forecasts) as ForecastKind[]
function accountOf(tally: Tally, tables: AuditTables, protocol: Protocol): Account {
	const least = protocol.value('audit.leastCell')
	const shownOf = (row: string) => tables.forecast.find((each) => each.row === row)?.cells ?? {}
	const foot = tally.counted('forecast', 'foot-length')
	const isShown = foot !== undefined && shownOf('foot-length').came !== hidden
	return {
		held: kinds.flatMap((kind) => {
			const counted = tally.counted('forecast', kind)
			return counted ? [heldOf(kind, counted, shownOf(kind), protocol)] : []
		}),
		own: ownErrorOf(foot, shownOf('foot-length'), protocol),
		thirds: isShown ? thirdsOf(foot, least) : [],
	}
}
export function auditOf(tally: Tally, { from, to, protocol }: Asking): Audit {
	const least = protocol.value('audit.leastCell')
	const tables = tally.tables(least)
	return { from, to, least, tables, account: accountOf(tally, tables, protocol) }
}
