/** Where the insert gives trouble, each foot on its own; none is said, and not taken for granted. */

import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import { insertPlaces } from '../../../../shared/engine/visit/terms.ts'
import { Labelled } from '../../../parts/DenseField.tsx'
import { withValue } from '../../../parts/draft-path.ts'
import { SeveralOf } from '../../../parts/measure/Toggles.tsx'
import { chosenNow } from '../alone.ts'
import type { DraftProps } from '../stepProps.ts'

const terms = ['none', ...insertPlaces] as const
interface InsertPlacesProps extends DraftProps {
	/** The sides on which it is worn. */
	sides: 'left' | 'right' | 'both'
}
export function InsertPlaces({ draft, change, sides }: InsertPlacesProps) {
	const worn = draft.visit.insertWorn
	if (!worn) return null
	return bothSides
		.filter((side) => sides === 'both' || sides === side)
		.map((side) => {
			const path = `insertWorn.${side}.places`
			const chosen = worn[side]?.places ?? []
			return (
				<Labelled key={side} title={`Trouble with the ${side} insert`} whole>
					<SeveralOf
						name={`Trouble with the ${side} insert`}
						path={path}
						terms={terms}
						chosen={chosen}
						choose={(after) =>
							change((now) => withValue(now, path, chosenNow('none', chosen, after)))
						}
					/>
				</Labelled>
			)
		})
}
