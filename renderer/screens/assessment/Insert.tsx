/**
 * The insert: each element proposed for each foot, accepted, changed or dropped with its reason;
 * stops are released limb by limb.
 */
import { Alert, AlertTitle, Box, Button, Chip, Paper, TextField, Typography } from '@mui/material'
import { useMemo, useState } from 'react'
import { decidedInsert, stillBlocked } from '../../../shared/engine/insert/decided.ts'
import { elementText, elementWords } from '../../../shared/engine/insert/element-words.ts'
import { choiceWords, type InsertDecision } from '../../../shared/engine/visit/decisions.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import type { Side } from '../../../shared/engine/visit/visit.ts'
import { Basis } from '../../parts/Basis.tsx'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { parseNumber } from '../../parts/parseNumber.ts'
import { decide } from './decisions.ts'
import type { StepProps } from './stepProps.ts'

type Part = Pick<StepProps, 'draft' | 'change'>
const sideTitle = { left: 'Left foot', right: 'Right foot' }

/** Puts one decision about an element; undefined takes it back. */
function withElement(
	draft: StepProps['draft'],
	side: Side,
	element: string,
	decision: InsertDecision | undefined,
): StepProps['draft'] {
	const others = (draft.decisions.insert?.[side] ?? []).filter((one) => one.element !== element)
	const next = decision ? [...others, decision] : others
	const { [side]: _, ...otherSide } = draft.decisions.insert ?? {}
	const insert = next.length > 0 ? { ...otherSide, [side]: next } : otherSide
	return decide(draft, { insert: Object.keys(insert).length > 0 ? insert : undefined })
}
/** Changing or dropping needs a reason: nothing is stored until it is there. */
function Editor({
	side,
	element,
	unit,
	value,
	kind,
	done,
	change,
}: {
	side: Side
	element: string
	unit: string | undefined
	value: number | undefined
	kind: 'change' | 'drop' | 'add'
	done: () => void
} & Pick<StepProps, 'change'>) {
	const [text, setText] = useState(value === undefined ? '' : String(value))
	const [says, setSays] = useState('')
	const [why, setWhy] = useState('')
	const parsed = parseNumber(text, unit ?? '')
	const wrong =
		text.trim() === ''
			? ''
			: !parsed.ok
				? parsed.says
				: parsed.values.length !== 1 || (parsed.values[0] ?? 0) < 0 || (parsed.values[0] ?? 0) > 400
					? `${text} cannot stand here: one number, 0 to 400 ${unit ?? ''}.`
					: ''
	const keep = () => {
		change((now) =>
			withElement(now, side, element, {
				element,
				choice: kind,
				why: why.trim(),
				...(kind !== 'drop' && parsed.ok && parsed.values[0] !== undefined
					? { value: parsed.values[0] }
					: {}),
				...(says.trim() ? { says: says.trim() } : {}),
			}),
		)
		done()
	}
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1.5, my: 1, alignItems: 'flex-start' }}>
			{kind === 'drop' || unit === undefined ? null : (
				<TextField
					size="small"
					label={`Value (${unit})`}
					value={text}
					error={wrong !== ''}
					helperText={wrong}
					onChange={(event) => setText(event.target.value)}
					slotProps={{ inputLabel: { shrink: true }, htmlInput: { inputMode: 'decimal' } }}
				/>
			)}
			{kind === 'drop' ? null : (
				<TextField
					size="small"
					label="Words (may be left out)"
					value={says}
					onChange={(event) => setSays(event.target.value)}
					slotProps={{ inputLabel: { shrink: true }, htmlInput: { maxLength: 500 } }}
					sx={{ flex: 1, minWidth: 180 }}
				/>
			)}
			<TextField
				size="small"
				required
				label="Reason"
				value={why}
				onChange={(event) => setWhy(event.target.value)}
				slotProps={{ inputLabel: { shrink: true }, htmlInput: { maxLength: 500 } }}
				sx={{ flex: 1, minWidth: 180 }}
			/>
			<Button variant="contained" disabled={why.trim() === '' || wrong !== ''} onClick={keep}>
				{kind === 'drop' ? 'Drop it' : kind === 'add' ? 'Add it' : 'Keep this change'}
			</Button>
			<Button onClick={done}>Leave it</Button>
		</Box>
	)
}
function Stops({ draft, change, assessment }: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	const [texts, setTexts] = useState<Record<string, string>>({})
	if (!assessment) return null
	return stillBlocked(assessment, draft.decisions).map((side) => (
		<Alert key={side} severity="error">
			<AlertTitle>
				{sideTitle[side]}: no insert and no rotation until what was done is recorded
			</AlertTitle>
			<TextField
				fullWidth
				multiline
				label={`What was done about the ${side} side`}
				value={texts[side] ?? ''}
				onChange={(event) => setTexts((now) => ({ ...now, [side]: event.target.value }))}
				slotProps={{ inputLabel: { shrink: true }, htmlInput: { maxLength: 1000 } }}
				sx={{ my: 1 }}
			/>
			<Button
				variant="contained"
				color="error"
				disabled={!texts[side]?.trim()}
				onClick={() =>
					change((now) =>
						decide(now, {
							screeningDone: [
								...(now.decisions.screeningDone ?? []),
								{
									side,
									done: texts[side]?.trim() ?? '',
									items: [...assessment.screening.blockedBy[side]],
								},
							],
							referralDone: now.decisions.referralDone?.trim()
								? now.decisions.referralDone
								: texts[side]?.trim(),
						}),
					)
				}
			>
				Record for the {side} side
			</Button>
		</Alert>
	))
}
function Foot({
	side,
	result,
	draft,
	change,
}: { side: Side; result: ReturnType<typeof decidedInsert> } & Part) {
	const [editing, setEditing] = useState<{ element: string; kind: 'change' | 'drop' | 'add' }>()
	const made = result.result[side]
	const decisions = draft.decisions.insert?.[side] ?? []
	const dropped = decisions.filter((decision) => decision.choice === 'drop')
	const free = Object.keys(elementWords).filter(
		(id) => !result[side].some(({ element }) => element.element === id),
	)
	return (
		<Paper variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h3">{sideTitle[side]}</Typography>
			{made.state === 'stopped' ? (
				<Typography color="error">
					Stopped: {made.stoppedBy.map((one) => one.says).join(' ')}
				</Typography>
			) : null}
			{made.state === 'not-needed' && result[side].length === 0 ? (
				<Typography color="text.secondary">No symptom or finding calls for an insert.</Typography>
			) : null}
			{result[side].map(({ element, decision, proposed }) => (
				<Box key={element.element} sx={{ borderTop: 1, borderColor: 'divider', py: 0.5 }}>
					<Basis
						because={element.because}
						basis={element.basis}
						head={
							<Box sx={{ flex: '1 1 220px' }}>
								<Typography sx={{ fontWeight: 600 }}>
									{elementText(element)}{' '}
									{decision ? (
										<Chip
											size="small"
											label={choiceWords[decision.choice]}
											color="primary"
											variant="outlined"
										/>
									) : null}
								</Typography>
								<Typography variant="body2">
									{element.says}
									{element.range
										? ` Usual range ${element.range[0]} to ${element.range[1]} ` +
											`${element.unit ?? ''}.`
										: ''}
									{proposed ? ` Proposed: ${elementText(proposed)}. Reason: ${decision?.why}.` : ''}
								</Typography>
								{element.cautions.map((caution) => (
									<Typography key={caution} variant="body2" color="warning.main">
										Caution: {caution}
									</Typography>
								))}
							</Box>
						}
						end={
							<Box
								role="group"
								aria-label={
									`Insert, ${side}: ` +
									`${elementWords[element.element as keyof typeof elementWords] ?? element.element}`
								}
							>
								<Button
									aria-pressed={decision?.choice === 'accept'}
									onClick={() =>
										change((now) =>
											withElement(
												now,
												side,
												element.element,
												decision?.choice === 'accept'
													? undefined
													: {
															element: element.element,
															choice: 'accept',
															about: elementText(element),
														},
											),
										)
									}
								>
									Accept
								</Button>
								<Button onClick={() => setEditing({ element: element.element, kind: 'change' })}>
									Change
								</Button>
								<Button
									onClick={() =>
										decision?.choice === 'add'
											? change((now) => withElement(now, side, element.element, undefined))
											: setEditing({ element: element.element, kind: 'drop' })
									}
								>
									Drop
								</Button>
							</Box>
						}
					/>
					{editing?.element === element.element && editing.kind !== 'add' ? (
						<Editor
							key={editing.kind}
							side={side}
							element={element.element}
							unit={element.unit}
							value={element.value}
							kind={editing.kind}
							change={change}
							done={() => setEditing(undefined)}
						/>
					) : null}
				</Box>
			))}
			{dropped.map((one) => (
				<Typography key={one.element} variant="body2" color="text.secondary">
					Dropped: {elementWords[one.element as keyof typeof elementWords] ?? one.element}. Reason:{' '}
					{one.why}.{' '}
					<Button onClick={() => change((now) => withElement(now, side, one.element, undefined))}>
						Take back
					</Button>
				</Typography>
			))}
			{made.state === 'stopped' ? null : (
				<TextField
					select
					size="small"
					label="Add an element"
					value={editing?.kind === 'add' ? editing.element : ''}
					onChange={(event) =>
						setEditing(
							event.target.value ? { element: event.target.value, kind: 'add' } : undefined,
						)
					}
					slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
					sx={{ mt: 1.5, minWidth: 240 }}
				>
					<option value="">choose</option>
					{free.map((id) => (
						<option key={id} value={id}>
							{elementWords[id as keyof typeof elementWords]}
						</option>
					))}
				</TextField>
			)}
			{editing?.kind === 'add' ? (
				<Editor
					key={editing.element}
					side={side}
					element={editing.element}
					unit="mm"
					value={undefined}
					kind="add"
					change={change}
					done={() => setEditing(undefined)}
				/>
			) : null}
		</Paper>
	)
}
export function Insert({
	draft,
	change,
	assessment,
}: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	const result = useMemo(
		() =>
			assessment ? decidedInsert(draft.visit, assessment, draft.decisions, protocol) : undefined,
		[draft.visit, draft.decisions, assessment],
	)
	if (!assessment || !result) return null
	return (
		<Box component="section" aria-label="Insert">
			<Typography variant="h2" sx={{ mb: 1 }}>
				Insert
			</Typography>
			<Box sx={{ display: 'grid', gap: 2 }}>
				<Stops draft={draft} change={change} assessment={assessment} />
				{result.result.conflicts.map((conflict) => (
					<Alert key={conflict.id} severity="warning">
						{conflict.says}
					</Alert>
				))}
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: { xs: '1fr', lg: '1fr 1fr' },
						gap: 2,
						alignItems: 'start',
					}}
				>
					{bothSides.map((side) => (
						<Foot key={side} side={side} result={result} draft={draft} change={change} />
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
