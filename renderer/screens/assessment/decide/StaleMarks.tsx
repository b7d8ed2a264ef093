/** Marks whose model or size is no longer what the match says. */
import { Alert, AlertTitle, Button } from '@mui/material'
import type { DraftContent } from '../../../../shared/contract.ts'
import type { RankedModel } from '../../../../shared/engine/findings/assessment.ts'
import { modelWords } from '../../../../shared/engine/report/marked.ts'
import type { DraftProps } from '../stepProps.ts'
import { marksOf, setMark } from './marks.ts'

interface StaleMark {
	/** Of the model. */
	id: string
	/** The words that were marked. */
	says: string
	/** The words as the match has them now; undefined where the model is not proposed any more. */
	now: string | undefined
}
function staleMarks(draft: DraftContent, ranked: readonly RankedModel[]): StaleMark[] {
	const proposed = new Map(
		ranked
			.filter((model) => model.verdict !== 'unsuitable')
			.map((model) => [model.id, modelWords(model)]),
	)
	return marksOf(draft, 'model').flatMap((line) => {
		const id = line.findingId.slice('model.'.length)
		const now = proposed.get(id)
		return now !== undefined && now === line.says ? [] : [{ id, says: line.says ?? id, now }]
	})
}

interface StaleMarksProps extends DraftProps {
	ranked: readonly RankedModel[]
}
export function StaleMarks({ draft, change, ranked }: StaleMarksProps) {
	return staleMarks(draft, ranked).map(({ id, says, now }) => {
		const put = (words: string | undefined) => change((draft) => setMark(draft, 'model', id, words))
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
					? `With the measures as they stand it is ${now}.`
					: 'With the measures and the shelf as they stand it is not proposed any more.'}
			</Alert>
		)
	})
}
