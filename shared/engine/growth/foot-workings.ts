/** How the growth of the feet, the room in each pair and the next measuring were worked out. */
import type { GrowthResult, ToeRoomForecast } from '../findings/assessment.ts'
import { seatedShorterMm } from '../findings/change.ts'
import { idPart, type Working } from '../findings/finding.ts'
import { equation } from '../findings/formula.ts'
import { figure, linesOf } from '../findings/working.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { decimalAgeYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { againKey, footRateKey, footRates, growsOn, lengthAt } from './forecast.ts'
import { leastKey, type PairForecast, toeRoomOf, yearsLeft } from './toe-room.ts'
import { type FootGrowth, longerFootMm, perYear } from './velocity.ts'

type Result = Omit<GrowthResult, 'workings'>

function forecastWorkings(visit: Visit, result: Result, protocol: Protocol): Working[] {
	const last = result.footForecast?.at(-1)
	const footMm = longerFootMm(visit)
	if (!last || footMm === undefined) return []
	const { mean, slow, fast } = footRates(visit, protocol, growsOn(result))
	const { birthDate } = visit.player
	const then = lengthAt(
		footMm,
		mean,
		decimalAgeYears(birthDate, visit.visitDate),
		decimalAgeYears(birthDate, last.date),
	)
	return [
		{
			id: 'growth.foot-forecast',
			title: 'Foot-length forecast',
			lines: [
				`Longer foot now ${figure(footMm, 1)} mm; mean ${figure(mean.mmPerYear)} mm a year until ` +
					`${figure(mean.stopsAt, 1)} years; band from ${equation(slow.formula, 'mm a year')} to ` +
					equation(fast.formula, 'mm a year'),
				`On ${last.date}: ${equation(then, 'mm', 1)} (${figure(last.lowMm, 1)} to ` +
					`${figure(last.highMm, 1)})`,
			],
			basis: protocol.basis('foot forecast', footRateKey(visit)),
		},
	]
}
/** How long the room of a pair lasts, written down. */
function lastingLine(
	{ state, toeRoomMm, leastMm, runsOutOn, earliest, latest }: ToeRoomForecast,
	mmPerYear: number,
): string {
	if (state === 'already-short') return 'Already below the limit'
	if (state === 'lasts') return 'Lasts until the foot stops growing'
	return (
		`Room above the least / growth a year: ` +
		`${equation(yearsLeft(toeRoomMm - leastMm, mmPerYear), 'years')}: ` +
		`${runsOutOn ?? 'not before the foot stops growing'}; earliest ${earliest ?? 'none'}, latest ` +
		`${latest ?? 'none'}`
	)
}
function toeRoomWorkings(
	visit: Visit,
	result: Result,
	pairs: readonly PairForecast[],
	protocol: Protocol,
): Working[] {
	const { mean } = footRates(visit, protocol, growsOn(result))
	return pairs.map(({ pair, index, insideLengthMm, fitMm, forecast }) => ({
		id: `growth.toe-room-${idPart(pair.id, index)}`,
		title: `Toe room of ${pair.name ?? pair.id}`,
		lines: linesOf(
			`Inside less length to fit less sock: ` +
				`${equation(toeRoomOf(insideLengthMm, fitMm, visit.feet?.sockMm ?? 0), 'mm', 1)}; least ` +
				`${forecast.leastMm} mm`,
			visit.feet?.stance === 'seated'
				? `The feet were measured seated: the true room is up to about ${seatedShorterMm} mm less`
				: undefined,
			lastingLine(forecast, mean.mmPerYear),
		),
		basis: protocol.basis('toe room of a growing foot', leastKey(pair)),
	}))
}
function footGrowthWorkings(feet: FootGrowth | undefined, protocol: Protocol): Working[] {
	if (!feet) return []
	return [
		{
			id: 'growth.foot-growth',
			title: 'Growth of the longer foot',
			lines: [
				`Since ${feet.since}, ${feet.days} days: ` +
					equation(perYear(feet.changeMm, feet.days), 'mm a year', 1),
				feet.real ? 'Beyond measuring error' : 'Within measuring error',
			],
			basis: protocol.basis('smallest real change', 'sizing.realLengthSameMm'),
		},
	]
}
function measureAgainWorkings(
	visit: Visit,
	result: Result,
	feet: FootGrowth | undefined,
	protocol: Protocol,
): Working[] {
	const { measureAgainBy } = result
	if (!measureAgainBy) return []
	const late = growsOn(result)
	const key = againKey(visit, feet?.mmPerYear, protocol, late)
	const fastMm = protocol.value('growth.footFastMmPerYear')
	const rule =
		key === 'growth.againFastWeeks'
			? `The foot grew more than ${fastMm} mm a year: ${protocol.value(key)} weeks`
			: `${protocol.value(key)} months ${late ? 'before or around the growth spurt' : 'at this age'}`
	return [
		{
			id: 'growth.measure-again',
			title: 'Measure again by',
			lines: [`${rule} from ${visit.visitDate}: ${measureAgainBy}`],
			basis: protocol.basis('measure again', key),
		},
	]
}
/** The workings about the feet. */
export const footWorkings = (
	visit: Visit,
	result: Result,
	feet: FootGrowth | undefined,
	pairs: readonly PairForecast[],
	protocol: Protocol,
): Working[] => [
	...forecastWorkings(visit, result, protocol),
	...toeRoomWorkings(visit, result, pairs, protocol),
	...footGrowthWorkings(feet, protocol),
	...measureAgainWorkings(visit, result, feet, protocol),
]
