import type { Since } from '../../../../shared/engine/visit/visit.ts'
import type { DraftProps } from '../stepProps.ts'

/** What a part of the re-check is given. */
export interface SinceProps extends DraftProps {
	since: Since
}
