/** What the records at home keep of packs: each that went out, each that came home. */
import type { MergedValue, OutValue } from '../../../shared/desk/outreach/pack-records.ts'
import type { Deps } from '../records/deps.ts'

export type {
	Clash,
	Duplicate,
	MergedValue,
	OutValue,
} from '../../../shared/desk/outreach/pack-records.ts'
export interface PackLog {
	out: OutValue[]
	merged: MergedValue[]
}
/** All packs that can be read, in order of writing. Whoever works is told of the others. */
export function packLog({ openAll }: Pick<Deps, 'openAll'>): PackLog {
	const values = openAll('pack').records.map((record) => record.value)
	return {
		out: values.filter((value) => value.what === 'out'),
		merged: values.filter((value) => value.what === 'merged'),
	}
}
