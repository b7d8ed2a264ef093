/** How the growth of the feet, the room in each pair and the next measuring were worked out. */
import type { GrowthResult, ToeRoomForecast } from '../findings/assessment.ts'
import { idPart, type Working } from '../findings/finding.ts'
import { figure, linesOf } from '../findings/working.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import { againKey, footRateKey, footRates } from './forecast.ts'
import { leastKey, type PairForecast } from './toe-room.ts'
import { type FootGrowth, longerFootMm } from './velocity.ts'

type Result = Omit<GrowthResult, 'workings'>

function forecastWorkings(visit: Visit, { footForecast }: Result, protocol: Protocol): Working[] {
	const last = footForecast?.at(-1)
	const footMm = longerFootMm(visit)
	if (!last || footMm === undefined) return []
	const { mean, slow, fast } = footRates(visit, protocol)
	return [
		{
			id: 'growth.foot-forecast',
			title: 'Foot-length forecast',
			lines: [
				`Longer foot now ${figure(footMm, 1)} mm; mean ${figure(mean.mmPerYear)} mm a year ` +
					`until ${mean.stopsAt} years, band ${figure(slow.mmPerYear)} to ` +
					`${figure(fast.mmPerYear)} mm a year`,
				`On ${last.date}: ${figure(last.lengthMm, 1)} mm (${figure(last.lowMm, 1)} to ` +
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
		`(${figure(toeRoomMm, 1)} - ${leastMm}) / ${figure(mmPerYear)} mm a year = ` +
		`${figure((12 * (toeRoomMm - leastMm)) / mmPerYear, 1)} months: ` +
		`${runsOutOn ?? 'not before the foot stops growing'}; earliest ` +
		`${earliest ?? 'none'}, latest ${latest ?? 'none'}`
	)
}
function toeRoomWorkings(
	visit: Visit,
	pairs: readonly PairForecast[],
	protocol: Protocol,
): Working[] {
	const footMm = longerFootMm(visit)
	if (footMm === undefined) return []
	const { mean } = footRates(visit, protocol)
	return pairs.map(({ pair, index, insideLengthMm, forecast }) => ({
		id: `growth.toe-room-${idPart(pair.id, index)}`,
		title: `Toe room of ${pair.name ?? pair.id}`,
		lines: linesOf(
			`Inside ${figure(insideLengthMm, 1)} - foot ${figure(footMm, 1)} - sock ` +
				`${figure(visit.feet?.sockMm ?? 0, 1)} = ${figure(forecast.toeRoomMm, 1)} mm; least ` +
				`${forecast.leastMm} mm`,
			visit.feet?.stance === 'seated'
				? 'The feet were measured seated: the true room is up to about 3 mm less'
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
				`${figure(feet.changeMm, 1)} mm since ${feet.since} / (${feet.days} days / 365.25) = ` +
					`${figure(feet.mmPerYear, 1)} mm a year`,
				feet.real ? 'Beyond measuring error' : 'Within measuring error',
			],
			basis: protocol.basis('smallest real change', 'sizing.realLengthSameMm'),
		},
	]
}
function measureAgainWorkings(
	visit: Visit,
	{ measureAgainBy }: Result,
	feet: FootGrowth | undefined,
	protocol: Protocol,
): Working[] {
	if (!measureAgainBy) return []
	const key = againKey(visit, feet?.mmPerYear, protocol)
	const fastMm = protocol.value('growth.footFastMmPerYear')
	const rule =
		key === 'growth.againFastWeeks'
			? `The foot grew more than ${fastMm} mm a year: ${protocol.value(key)} weeks`
			: `${protocol.value(key)} months at this age`
	return [
		{
			id: 'growth.measure-again',
			title: 'Measure again by',
			lines: [`${rule} from ${visit.visitDate} = ${measureAgainBy}`],
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
	...toeRoomWorkings(visit, pairs, protocol),
	...footGrowthWorkings(feet, protocol),
	...measureAgainWorkings(visit, result, feet, protocol),
]
