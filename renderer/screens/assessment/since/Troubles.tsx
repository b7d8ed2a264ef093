/** What went wrong with something worn; none is said, and so is not taken for granted. */
import { troubles } from '../../../../shared/engine/visit/terms.ts'
import { withValue } from '../../../parts/draft-path.ts'
import { SeveralOf } from '../../../parts/measure/Toggles.tsx'
import type { DraftProps } from '../stepProps.ts'
import { noneApart } from './noneApart.ts'

const terms = ['none', ...troubles] as const
type Term = (typeof terms)[number]
interface TroublesProps extends Pick<DraftProps, 'change'> {
	path: string
	chosen: readonly Term[] | undefined
}
export const Troubles = ({ path, chosen = [], change }: TroublesProps) => (
	<SeveralOf
		name="Trouble"
		path={path}
		terms={terms}
		chosen={chosen}
		choose={(after) => change((now) => withValue(now, path, noneApart(chosen, after)))}
	/>
)
