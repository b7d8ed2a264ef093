/** The smallest real change of each measure by what is published, through its definition. */
import { expect, it } from 'vitest'
import { realChangeRow } from '../../shared/engine/findings/measure-change.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { numberMeasures } from '../../shared/engine/visit/measures/catalogue.ts'

const protocol = openProtocol()
const examiners = ['same', 'different', 'unknown'] as const

/** By examiner: the same, another, not recorded at both visits. */
const published: Record<string, readonly (number | undefined)[]> = {
	// Powden 2015 Man Ther 20:524, pooled: intra 1.9 cm and 4.7 degrees, inter 1.6 cm and 4.6 degrees
	lungeCm: [1.9, 1.6, 1.9],
	lungeDeg: [4.7, 4.6, 4.7],
	// Hébert-Losier 2017 Physiotherapy 103:446: day-to-day 95 % limits -6.2 to +6.5 rises
	heelRises: [6.5, 6.5, 6.5],
	// own choice above the limit of one reading, 3.68 mm (2.4565 x 1.50 mm, Lee 2014 J Foot Ankle Res)
	heelToToeMm: [4, 5, 5],
	ballWidthMm: [4, undefined, undefined],
	// one JIS letter; own choice, no source
	ballGirthMm: [6, undefined, undefined],
}
it.each(numberMeasures.map((placed) => [placed.key, placed.measure] as const))(
	'%s',
	(key, measure) =>
		expect(
			examiners.map((who) => {
				const row = realChangeRow(measure, who)
				return row && protocol.value(row)
			}),
		).toEqual(published[key] ?? [undefined, undefined, undefined]),
)
