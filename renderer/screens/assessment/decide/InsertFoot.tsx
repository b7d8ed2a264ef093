/** The insert of one foot: what is proposed, decided, dropped and added. */
import { Alert, Box, Button, Chip, Paper, TextField, Typography } from '@mui/material'
import { useState } from 'react'
import type { InsertElement } from '../../../../shared/engine/findings/assessment.ts'
import {
	type decidedInsert,
	elementAsDecided,
	overtakenDecision,
} from '../../../../shared/engine/insert/decided.ts'
import {
	aboutOf,
	choiceWords,
	type InsertDecision,
} from '../../../../shared/engine/visit/decisions.ts'
import type { Side } from '../../../../shared/engine/visit/visit.ts'
import {
	elementName,
	elementNames,
	elementText,
} from '../../../../shared/engine/words/en/insert-names.ts'
import { Basis } from '../../../parts/Basis.tsx'
import type { DraftProps } from '../stepProps.ts'
import { type Editing, InsertEditor } from './InsertEditor.tsx'
import { footTitle, withElement } from './insertDecisions.ts'

type Decided = ReturnType<typeof decidedInsert>
type DecidedElement = Decided['left'][number]

interface FootProps extends DraftProps {
	side: Side
	result: Decided
	/** Names of the pairs in which it is worn. */
	wornIn: readonly string[]
}
export function InsertFoot({ side, result, draft, change, wornIn }: FootProps) {
	const [editing, setEditing] = useState<Editing>()
	const made = result.result[side]
	const isHeld = made.state === 'held' || made.state === 'stopped'
	const elements = result[side]
	const decide = (element: string, decision: InsertDecision | undefined) =>
		change((now) => withElement(now, side, element, decision))
	const editor = (
		unit: string | undefined,
		value: number | undefined,
		proposed: InsertElement | undefined,
	) =>
		editing && (
			<InsertEditor
				key={`${editing.kind} ${editing.element}`}
				{...editing}
				{...{ side, unit, value, proposed, change }}
				done={() => setEditing(undefined)}
			/>
		)
	return (
		<Paper variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h3">{footTitle[side]}</Typography>
			{isHeld && (
				<Typography color="text.secondary">
					Held: {made.stoppedBy.map((stop) => stop.says).join(' ')}
				</Typography>
			)}
			{wornIn.length > 0 && <Typography>Worn in: {wornIn.join(', ')}</Typography>}
			{made.state === 'not-needed' && elements.length === 0 && (
				<Typography color="text.secondary">No symptom or finding calls for an insert.</Typography>
			)}
			{elements.map((decided) => {
				const { element, unit, value } = decided.element
				const open = editing?.element === element && editing.kind !== 'add'
				return (
					<Box key={element} sx={{ borderTop: 1, borderColor: 'divider', py: 0.5 }}>
						<Element side={side} decided={decided} decide={decide} edit={setEditing} />
						{open && editor(unit, value, decided.proposed ?? decided.element)}
					</Box>
				)
			})}
			<Dropped
				decisions={draft.decisions.insert?.[side] ?? []}
				proposed={made.elements}
				decide={decide}
			/>
			{!isHeld && <AddElement elements={elements} editing={editing} edit={setEditing} />}
			{editing?.kind === 'add' && editor('mm', undefined, undefined)}
		</Paper>
	)
}

type Decide = (element: string, decision: InsertDecision | undefined) => void
interface ElementProps {
	side: Side
	decided: DecidedElement
	decide: Decide
	edit: (editing: Editing) => void
}
function Element({ side, decided, decide, edit }: ElementProps) {
	const { decision } = decided
	const { element, because, basis } = decided.element
	return (
		<Basis
			because={because}
			basis={basis}
			head={<ElementWords decided={decided} />}
			end={
				<Box role="group" aria-label={`Insert, ${side}: ${elementName(element)}`}>
					<Button onClick={() => edit({ element, kind: 'change' })}>Change</Button>
					{decision?.choice === 'change' && (
						<Button onClick={() => decide(element, undefined)}>Take back</Button>
					)}
					<Button
						onClick={() =>
							decision?.choice === 'add'
								? decide(element, undefined)
								: edit({ element, kind: 'drop' })
						}
					>
						Drop
					</Button>
				</Box>
			}
		/>
	)
}

function ElementWords({ decided }: { decided: DecidedElement }) {
	const { element, decision, proposed, overtaken } = decided
	const { says, range, unit, cautions } = element
	return (
		<Box sx={{ flex: '1 1 220px' }}>
			<Typography sx={{ fontWeight: 600 }}>
				{elementText(element)}{' '}
				{decision && (
					<Chip
						size="small"
						label={choiceWords[decision.choice]}
						color="primary"
						variant="outlined"
					/>
				)}
			</Typography>
			<Typography variant="body2">
				{says}
				{range ? ` Usual range ${range[0]} to ${range[1]} ${unit ?? ''}.` : ''}
				{proposed ? ` Proposed: ${elementText(proposed)}. Reason: ${decision?.why}.` : ''}
			</Typography>
			{overtaken && decision && <Overtaken decision={decision} proposed={proposed} />}
			{cautions.map((caution) => (
				<Typography key={caution} variant="body2" color="warning.main">
					Caution: {caution}
				</Typography>
			))}
		</Box>
	)
}

interface OvertakenProps {
	decision: InsertDecision
	proposed: InsertElement | undefined
}
/** Said where something else is proposed than when an element was changed or dropped. */
function Overtaken({ decision, proposed }: OvertakenProps) {
	return (
		<Alert severity="warning" role="note" sx={{ my: 1 }}>
			Something else is proposed than when you {choiceWords[decision.choice]} it. Decide again.
			{decision.about ? ` Before: “${decision.about}”.` : ''}
			{proposed ? ` Now: “${elementText(proposed)}”.` : ''}
		</Alert>
	)
}

interface DroppedProps {
	decisions: readonly InsertDecision[]
	proposed: readonly InsertElement[]
	decide: Decide
}
function Dropped({ decisions, proposed, decide }: DroppedProps) {
	return decisions
		.filter(({ choice }) => choice === 'drop')
		.map((decision) => {
			const { element, why } = decision
			const now = proposed.find((one) => one.element === element)
			const overtaken = now && overtakenDecision(now, [decision])
			const again = { ...decision, ...(now ? aboutOf(elementAsDecided(now)) : {}) }
			return (
				<Box key={element}>
					<Typography variant="body2" color="text.secondary">
						Dropped: {elementName(element)}. Reason: {why}.{' '}
						<Button onClick={() => decide(element, undefined)}>Take back</Button>
						{overtaken && <Button onClick={() => decide(element, again)}>Drop it still</Button>}
					</Typography>
					{overtaken && <Overtaken decision={decision} proposed={now} />}
				</Box>
			)
		})
}

interface AddElementProps {
	elements: readonly DecidedElement[]
	editing: Editing | undefined
	edit: (editing: Editing | undefined) => void
}
/** The elements that this foot does not have yet. */
function AddElement({ elements, editing, edit }: AddElementProps) {
	const there = new Set(elements.map(({ element }) => element.element))
	return (
		<TextField
			select
			size="small"
			label="Add an element"
			value={editing?.kind === 'add' ? editing.element : ''}
			onChange={(event) =>
				edit(event.target.value ? { element: event.target.value, kind: 'add' } : undefined)
			}
			slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
			sx={{ mt: 1.5, minWidth: 240 }}
		>
			<option value="">choose</option>
			{Object.entries(elementNames)
				.filter(([id]) => !there.has(id))
				.map(([id, words]) => (
					<option key={id} value={id}>
						{words}
					</option>
				))}
		</TextField>
	)
}
