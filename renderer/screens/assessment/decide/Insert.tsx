/** The insert: each element proposed for each foot, changed, dropped or added with its reason. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useMemo } from 'react'
import type { DraftContent } from '../../../../shared/contract.ts'
import { decidedInsert } from '../../../../shared/engine/insert/decided.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import { clinicProtocol as protocol } from '../../../parts/clinicProtocol.ts'
import { changedIn, changeFields, stateOf, takeBack } from './answering.ts'
import { InsertFoot } from './InsertFoot.tsx'
import { InsertKept } from './InsertKept.tsx'
import { keptElements } from './insertDecisions.ts'
import { nameOfPair } from './proposedFields.ts'
import type { AskedProps } from './stepTypes.ts'

/** One that goes on being worn is adjusted; its elements are settled where a new one is ordered. */
export function Insert(props: AskedProps) {
	const { draft, assessment, question } = props
	const isKept = assessment.prescription.insertKept !== undefined
	const isAnew = changedIn(draft.decisions, question).anew === true
	return (
		<>
			{isKept && <InsertKept {...props} />}
			{(!isKept || isAnew) && <InsertElements {...props} />}
		</>
	)
}
function InsertElements({ draft, change, assessment, question }: AskedProps) {
	const result = useMemo(
		() => decidedInsert(draft.visit, assessment, draft.decisions, protocol),
		[draft.visit, draft.decisions, assessment],
	)
	const isAnew = changedIn(draft.decisions, question).anew === true
	// a change of an element is a change of this question; without any it is open again
	const changeElement = (update: (now: DraftContent) => DraftContent) =>
		change((now) => {
			const next = update(now)
			const keep = keptElements(assessment, next.decisions)
			if (next.decisions.insert) return changeFields(next, question, { keep })
			// a new insert in place of the one that is worn stays a change by itself
			return isAnew
				? changeFields(takeBack(next, question), question, { anew: true })
				: takeBack(next, question)
		})
	return (
		<Box component="section" aria-label="Insert">
			<Box sx={{ display: 'grid', gap: 2 }}>
				{draft.decisions.insert && stateOf(draft, question) !== 'settled' && (
					<Alert
						severity="info"
						action={
							<Button color="inherit" onClick={() => changeElement((now) => now)}>
								Let my changes stand
							</Button>
						}
					>
						Elements were changed before. As proposed takes these changes out.
					</Alert>
				)}
				{result.result.conflicts.map((conflict) => (
					<Alert key={conflict.id} severity="warning">
						{conflict.says}
					</Alert>
				))}
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(100%, 17rem), 1fr))',
						gap: 2,
						alignItems: 'start',
					}}
				>
					{bothSides.map((side) => (
						<InsertFoot
							key={side}
							side={side}
							result={result}
							draft={draft}
							change={changeElement}
							wornIn={assessment.prescription.insert[side].pairs.map((id) =>
								nameOfPair(draft.visit, id),
							)}
						/>
					))}
				</Box>
				{result.result.wearIn.length > 0 ? (
					<Box>
						<Typography variant="h3">Wearing in</Typography>
						{result.result.wearIn.map((step) => (
							<Typography key={step.when}>
								{step.when}: {step.says}
							</Typography>
						))}
					</Box>
				) : null}
			</Box>
		</Box>
	)
}
