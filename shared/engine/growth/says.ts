/** How the growth room says a finding, and what every estimate has to carry with it. */
import type { Finding, Level } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'

/** A finding of the growth room; it is of the whole player, so it has no side. */
export function finding(
	id: string,
	level: Level,
	says: string,
	because: Because[],
	basis: Basis,
): Finding {
	return { id, topic: 'growth', side: 'none', level, says, because, basis }
}

const bias: Basis = {
	rule: 'known bias of maturity estimates',
	source: 'Koziel and Malina, Sports Med 2018;48:221-236; Salter et al. 2021',
	strength: 'cohort',
}
const cautions: readonly Finding[] = [
	finding(
		'growth.one-method',
		'note',
		'Keep to one method for a player over time: the methods do not agree with each other ' +
			'closely enough to be mixed.',
		[],
		bias,
	),
	finding(
		'growth.bias',
		'caution',
		'The estimated age at peak growth moves later as the player gets older; it comes out late ' +
			'in early maturers and early in late maturers.',
		[],
		bias,
	),
	finding(
		'growth.not-for',
		'note',
		'Do not use the estimates with a growth disorder, steroid or hormone treatment, or a ' +
			'major deformity of limb or spine.',
		[],
		{
			rule: 'limits of use',
			source: 'limits stated with the equations; common practice',
			strength: 'expert',
		},
	),
	finding(
		'growth.population',
		'note',
		'The equations come from white North American and European children; they may fit other ' +
			'players less well.',
		[],
		{
			rule: 'whom the equations come from',
			source:
				'Khamis and Roche, Pediatrics 1994;94(4):504-507 (white American children, stated by ' +
				'the authors); samples of the offset equations from memory',
			strength: 'cohort',
		},
	),
	finding(
		'growth.privacy',
		'note',
		'Stature and mass of a young player are private: obtain the consent of a parent or ' +
			'guardian before passing them on.',
		[],
		{ rule: 'privacy of minors', source: 'common practice, no source', strength: 'practice' },
	),
]
const girlsCaution = finding(
	'growth.girls',
	'caution',
	'In girls the maturity offset is least reliable: prefer the percentage of adult ' +
		'stature and her own growth record.',
	[],
	bias,
)
/** What every growth estimate has to carry with it. */
export function standingCautions(girl: boolean, protocol: Protocol): Finding[] {
	const estimate = finding(
		'growth.estimate',
		'caution',
		'These are estimates, not measurements of maturity. They must not be used to select or ' +
			'deselect a player.',
		[],
		protocol.basis('use of maturity estimates', 'growth.offsetErrorYears'),
	)
	return [estimate, ...cautions, ...(girl ? [girlsCaution] : [])]
}
