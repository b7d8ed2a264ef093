/** A limb that is acutely injured or ill: its tests are recorded, but neither compared nor treated. */
import { unclearedSurgery } from '../conditions/query.ts'
import type { Because } from '../protocol/basis.ts'
import { holdRows } from '../protocol/holds.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { isOver } from '../screening/outcomes.ts'
import { actsFrom, sidesOfSign } from '../screening/placed.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { Screened } from './foot-at-risk.ts'
import { severePain } from './severe-pain.ts'

const acuteRows = holdRows.filter(({ acute }) => acute === true)

/** An injury within the window of the Ottawa rules, with a sign or with a rule not finished. */
function openInjury(
	{ screening }: Visit,
	{ items }: Screened,
	side: Side,
	protocol: Protocol,
): Because[] {
	const injury = screening?.injury
	if (injury?.side !== side) return []
	const { daysAgo } = injury
	if (daysAgo !== undefined && daysAgo > protocol.value('screening.ottawaMaxDays')) return []
	// an open question never counts as no
	const unfinished = items
		.filter((item) => item.code === 'screening.ottawa-incomplete' && item.side === side)
		.slice(0, 1)
		.map(() => ({ measure: 'warningSign', side, value: 'ottawa-incomplete' }))
	const signs = [
		'malleolarZonePain',
		'midfootZonePain',
		'tenderLateralMalleolus',
		'tenderMedialMalleolus',
		'tenderNavicular',
		'tenderFifthMetatarsalBase',
		'unableToBearWeightNow',
		'swellingOrOpenSkin',
	] as const
	return [
		...signs
			.filter((sign) => injury[sign] === true)
			.map((sign) => ({ measure: sign, side, value: 'yes' })),
		...unfinished,
	]
}
/** A limb on which no weight can be borne, by whichever group of questions. */
const bearsNoWeight = ({ screening }: Visit, side: Side): Because[] =>
	[screening?.limp, screening?.lisfranc].some(
		(group) => group?.cannotBearWeight === true && (group.side === side || group.side === 'both'),
	)
		? [{ measure: 'cannotBearWeight', side, value: 'yes' }]
		: []
/** Why this limb has an injury that is not settled: by its signs and questions alone. */
export const freshInjury = (
	visit: Visit,
	screened: Screened,
	side: Side,
	protocol: Protocol,
): Because[] => [...openInjury(visit, screened, side, protocol), ...bearsNoWeight(visit, side)]
/**
 * Why this limb is acutely injured or must not be tested; empty where nothing says so. A sign that
 * an outcome of this visit excluded no longer counts; a fresh injury stays one. What an earlier visit
 * left open is the gate's matter: ask it too (`isHeld(gate, 'test', side)`).
 */
export function acute(visit: Visit, screened: Screened, side: Side, protocol: Protocol): Because[] {
	const signs = screened.items.filter(
		(item) =>
			item.state === 'yes' &&
			acuteRows.some((row) => row.rule === item.code && actsFrom(row, item.action)) &&
			sidesOfSign(item, visit.screening).includes(side) &&
			!isOver(item.code, side, visit),
	)
	return [
		...signs.map(({ id }) => ({ measure: 'warningSign', side, value: id.split('.')[1] ?? id })),
		...freshInjury(visit, screened, side, protocol),
		...severePain(visit, side, protocol),
		...unclearedSurgery(visit, { side }).map(({ condition, status }) => ({
			measure: condition,
			side,
			value: status,
		})),
	]
}
