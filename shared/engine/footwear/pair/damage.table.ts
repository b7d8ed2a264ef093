/** What each sign of damage comes to: common practice, no source. */
import type { OwnedVerdict } from '../../findings/prescription-result.ts'
import type { Pair } from '../../visit/visit.ts'
import type { OwnedWork } from './ground.ts'

export type Damage = NonNullable<Pair['damage']>[number]
export interface DamageRow {
	verdict: OwnedVerdict
	work?: OwnedWork
	mendFirst?: true
	/** It wounds skin that does not feel: not worn by a foot at risk. */
	skin?: true
}
export const damageRows: Readonly<Record<Damage, DamageRow>> = {
	'studs-worn': { verdict: 'replace' },
	'stud-sharp': { verdict: 'modify', work: 'smooth-stud', mendFirst: true },
	'stud-missing': { verdict: 'modify', work: 'fit-stud' },
	'sole-separated': { verdict: 'stop-wearing', work: 'mend-sole', mendFirst: true },
	'counter-collapsed': { verdict: 'replace' },
	'insole-board-split': { verdict: 'replace', skin: true },
	'upper-cracked': { verdict: 'replace', skin: true },
	'lining-worn': { verdict: 'modify', work: 'patch-lining', skin: true },
	'heel-slips': { verdict: 'modify', work: 'heel-lock' },
}
