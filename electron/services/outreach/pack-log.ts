/** What the records at home keep of packs: each that went out, each that came home. */
import type { MergedValue, OutValue } from '../../../shared/desk/outreach/pack-records.ts'
import type { Store } from '../../store/store.ts'
import { openerOf } from '../records/open.ts'

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
/** All packs, in order of writing. */
export function packLog(store: Store): PackLog {
	const values = openerOf(store)
		.openAll('pack')
		.records.map((record) => record.value)
	return {
		out: values.filter((value) => value.what === 'out'),
		merged: values.filter((value) => value.what === 'merged'),
	}
}
