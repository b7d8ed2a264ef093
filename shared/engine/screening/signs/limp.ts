/** A limp without a known reason. */
import type { Screening } from '../../visit/visit.ts'
import type { LimpSign } from '../../words/en/screening/bone.ts'
import { state } from '../../words/statement.ts'
import { above, allOf, anyOf, not, type Tri } from '../answers.ts'
import { type SignRow, signOfSide } from './sign-row.ts'
import { limpGuidelines } from './sources.ts'

type Limp = NonNullable<Screening['limp']>
const limpSignsOf = (limp: Limp): [LimpSign, Tri][] => [
	['fever', limp.feverInPastWeek],
	['no-weight-bearing', limp.cannotBearWeight],
	['severe-pain-on-movement', limp.severePainOnMovement],
	['night-waking', limp.nightWaking],
	['bony-lump', limp.bonyLump],
]
export const limpSigns: readonly SignRow[] = [
	signOfSide('limp', 'limp-signs', {
		holds: (limp) =>
			anyOf(...limpSignsOf(limp).map(([, answer]) => answer), limp.weightLossOrSweats),
		action: 'same-day',
		says: (limp) =>
			state('screening.limp-signs', {
				signs: limpSignsOf(limp)
					.filter(([, answer]) => answer === true)
					.map(([sign]) => sign),
			}),
		notMet: () => state('screening.limp-signs-not-met'),
		ground: limpGuidelines,
	}),
	// Said apart, so that a reader who may not be told of it still reads that the limp is urgent.
	signOfSide('limp', 'limp-weight-loss', {
		holds: ({ weightLossOrSweats }) => weightLossOrSweats,
		action: 'same-day',
		says: () => state('screening.limp-weight-loss'),
		ground: limpGuidelines,
	}),
	signOfSide('limp', 'limp-long', {
		holds: ({ days, examinedBefore }, { protocol }) =>
			anyOf(
				above(days, protocol.value('screening.limpUndiagnosedDays')),
				allOf(above(days, protocol.value('screening.limpUnassessedDays')), not(examinedBefore)),
			),
		action: 'letter',
		minorAction: 'same-day',
		says: (_, { minor, protocol }) =>
			state('screening.limp-long', {
				minor,
				unassessedDays: protocol.value('screening.limpUnassessedDays'),
				undiagnosedDays: protocol.value('screening.limpUndiagnosedDays'),
			}),
		ground: { key: 'screening.limpUnassessedDays' },
	}),
]
