/** Marks whose model or size is no longer what the match says. */
import { Alert, AlertTitle, Button } from '@mui/material'
import type { DraftContent } from '../../../../shared/contract.ts'
import type { RankedModel } from '../../../../shared/engine/findings/assessment.ts'
import { isOvertakenMark, type Marked, modelMark } from '../../../../shared/engine/report/marked.ts'
import type { DraftProps } from '../stepProps.ts'
import { marksOf, setMark } from './marks.ts'

interface StaleMark {
	/** Of the model. */
	id: string
	/** The words that were marked. */
	says: string
	/** As the match has it now; undefined where the model is not proposed any more. */
	now: Marked | undefined
}
function staleMarks(draft: DraftContent, ranked: readonly RankedModel[]): StaleMark[] {
	const proposed = new Map(
		ranked
			.filter((model) => model.verdict !== 'unsuitable')
			.map((model) => [model.id, modelMark(model)]),
	)
	return marksOf(draft, 'model').flatMap((line) => {
		const id = line.findingId.slice('model.'.length)
		const now = proposed.get(id)
		return now && !isOvertakenMark(line, now) ? [] : [{ id, says: line.says ?? id, now }]
	})
}

interface StaleMarksProps extends DraftProps {
	ranked: readonly RankedModel[]
}
export function StaleMarks({ draft, change, ranked }: StaleMarksProps) {
	return staleMarks(draft, ranked).map(({ id, says, now }) => {
		const put = (marked: Marked | undefined) =>
			change((draft) => setMark(draft, 'model', id, marked))
		return (
			<Alert
				key={id}
				severity="warning"
				action={
					<>
						{now && (
							<Button color="inherit" onClick={() => put(now)}>
								Use the new size
							</Button>
						)}
						<Button color="inherit" onClick={() => put(undefined)}>
							Take off
						</Button>
					</>
				}
			>
				<AlertTitle>Marked to try: {says}</AlertTitle>
				{now
					? `With the measures as they stand it is ${now.says}.`
					: 'With the measures and the shelf as they stand it is not proposed any more.'}
			</Alert>
		)
	})
}
