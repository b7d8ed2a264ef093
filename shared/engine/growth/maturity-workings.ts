/** How each maturity offset was worked out. */
import type { GrowthResult } from '../findings/assessment.ts'
import type { Working } from '../findings/finding.ts'
import { equation } from '../findings/formula.ts'
import { figure } from '../findings/working.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Visit } from '../visit/visit.ts'
import { offsetMethodWords } from '../words/en/growth-maturity.ts'
import { agesOf, type Method } from './estimate.ts'
import { equationLines, peakAge } from './maturity.ts'

/** In the order in which they are written down. */
const methods = ['mirwald', 'moore', 'mooreSitting', 'fransen'] as const

/** The row of the standard error of each method; no error of Fransen's is published. */
const errorKeys = {
	mirwald: { male: 'growth.mirwaldErrorBoys', female: 'growth.mirwaldErrorGirls' },
	moore: { male: 'growth.mooreErrorBoys', female: 'growth.mooreErrorGirls' },
	mooreSitting: { male: 'growth.mooreSittingErrorBoys', female: 'growth.mooreSittingErrorBoys' },
	fransen: undefined,
} as const satisfies Record<Method, Record<'male' | 'female', ThresholdKey> | undefined>
/** The row of the standard error of a method that has one, years. */
export const offsetErrorKey = (
	method: Exclude<Method, 'fransen'>,
	sex: 'male' | 'female',
): ThresholdKey => errorKeys[method][sex]
const fransenBasis: Basis = {
	rule: 'maturity ratio, boys',
	source: 'Fransen et al., Pediatr Exerc Sci 2018;30(2):296-307',
	strength: 'cohort',
}
/** A working for each offset that was computed. */
export function offsetWorkings(
	visit: Visit,
	result: Omit<GrowthResult, 'workings'>,
	protocol: Protocol,
): Working[] {
	const { sex } = visit.player
	const { decimalAgeYears: ageYears, maturityOffsetYears } = result
	return methods.flatMap((method) => {
		const offset = maturityOffsetYears[method]
		if (offset === undefined) return []
		const key = errorKeys[method]?.[sex]
		const error = key
			? `Error ${protocol.value(key)} years (one standard error)`
			: 'No standard error is published'
		const { low, high } = agesOf(method, sex, protocol)
		const boysOnly = method === 'fransen' ? ', boys only' : ''
		return [
			{
				id: `growth.offset-${method.toLowerCase()}`,
				title: `Maturity offset, ${offsetMethodWords[method]}`,
				lines: [
					...equationLines[method](sex, { ageYears, ...bodySize(visit) }),
					`Offset ${figure(offset, 1)} years; age at peak height velocity: ` +
						`${equation(peakAge(ageYears, offset), 'years', 1)}, to the one decimal that the error ` +
						'bears out',
					`${error}; ages ${low} to ${high}${boysOnly}`,
					'Known bias: late in early maturers, early in late maturers, and later with age',
				],
				basis: key
					? protocol.basis(`maturity offset, ${offsetMethodWords[method]}`, key)
					: fransenBasis,
			},
		]
	})
}
