/**
 * The warning-sign questions. Not answered is not asked, never no; a complaint unfolds the
 * questions that belong to it.
 */
import { Box, Button, Paper, ToggleButton, Typography } from '@mui/material'
import { useState } from 'react'
import { questionsOf } from '../../../shared/engine/conditions/registry.ts'
import { askedAlways, complaints } from '../../../shared/engine/screening/complaints.table.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { readPath, withValue, writePath } from '../../parts/draft-path.ts'
import { FieldRow, MeasureField } from '../../parts/MeasureField.tsx'
import { type QuestionGroup, questionGroup } from './questions.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

/** A recorded condition opens its own questions. */
const questionsOfRecorded = ({ conditions = [] }: Visit): string[] =>
	conditions
		.filter(({ status }) => status !== 'past')
		.flatMap(({ condition }) => questionsOf(condition))
const opened = [...new Set(complaints.flatMap((complaint) => complaint.opens))]

function Question({ paths, draft, change }: { paths: readonly string[] } & DraftProps) {
	const meta = fieldMeta(visitSchema, paths[0] ?? '')
	if (meta.kind !== 'yesNo') return <FieldRow paths={paths} draft={draft} change={change} />
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 2, alignItems: 'center', py: 0.5 }}>
			<Typography sx={{ flex: '1 1 280px' }}>{meta.title}</Typography>
			{paths.map((path) => (
				<Box key={path} sx={{ display: 'flex', alignItems: 'center', gap: 1 }}>
					{paths.length === 2 ? (
						<Typography variant="body2">{path.includes('.left.') ? 'Left' : 'Right'}</Typography>
					) : null}
					<MeasureField path={path} draft={draft} change={change} />
				</Box>
			))}
		</Box>
	)
}
function Group({ group, draft, change }: { group: QuestionGroup } & DraftProps) {
	const standing = readPath(draft.visit, group.path) !== undefined
	const sided = group.sides.length > 0
	return (
		<Box sx={{ borderLeft: 3, borderColor: 'divider', pl: 2, my: 1 }}>
			<Typography variant="h3">{group.heading}</Typography>
			{sided && !standing ? (
				<Box
					role="group"
					aria-label={`${group.heading}: side`}
					sx={{ display: 'flex', gap: 1, my: 1 }}
				>
					{group.sides.map((side) => (
						<Button
							key={side}
							variant="outlined"
							onClick={() =>
								change((now) => ({ ...now, visit: writePath(now.visit, group.path, { side }) }))
							}
						>
							{side === 'both' ? 'Both sides' : `${side === 'left' ? 'Left' : 'Right'} side`}
						</Button>
					))}
				</Box>
			) : (
				<>
					{sided ? <FieldRow paths={[`${group.path}.side`]} draft={draft} change={change} /> : null}
					{group.rows.map((paths) => (
						<Question key={paths[0]} paths={paths} draft={draft} change={change} />
					))}
				</>
			)}
			{standing ? (
				<Button
					onClick={() =>
						change((now) => ({
							...now,
							raw: Object.fromEntries(
								Object.entries(now.raw).filter(([path]) => !path.startsWith(`${group.path}.`)),
							),
							visit: writePath(now.visit, group.path, undefined),
						}))
					}
				>
					Take these answers away
				</Button>
			) : null}
		</Box>
	)
}
export function Flags({ draft, change }: StepProps) {
	const [chosen, setChosen] = useState<readonly string[]>([])
	const wanted = new Set([
		...complaints
			.filter((complaint) => chosen.includes(complaint.id))
			.flatMap((complaint) => complaint.opens),
		...questionsOfRecorded(draft.visit),
	])
	// what already holds an answer stays open, whatever is chosen
	const shown = opened.filter(
		(path) =>
			!askedAlways.includes(path) &&
			(wanted.has(path) || readPath(draft.visit, path) !== undefined),
	)
	const unasked = askedAlways.filter((path) => readPath(draft.visit, path) === undefined)
	return (
		<Box sx={{ display: 'grid', gap: 2 }}>
			<Paper variant="outlined" sx={{ p: 2 }}>
				<Box
					sx={{
						display: 'flex',
						flexWrap: 'wrap',
						justifyContent: 'space-between',
						alignItems: 'center',
						gap: 2,
					}}
				>
					<Typography variant="h2">Asked of everyone</Typography>
					<Button
						variant="outlined"
						disabled={unasked.length === 0}
						onClick={() =>
							change((now) => unasked.reduce((next, path) => withValue(next, path, false), now))
						}
					>
						I asked them all: the rest are no
					</Button>
				</Box>
				<Typography variant="body2" color="text.secondary">
					A question left alone counts as not asked. Keys y and n answer the one in focus.
				</Typography>
				{askedAlways.map((path) => (
					<Question key={path} paths={[path]} draft={draft} change={change} />
				))}
			</Paper>
			<Paper variant="outlined" sx={{ p: 2 }}>
				<Typography variant="h2">What the player complains of</Typography>
				<Typography variant="body2" color="text.secondary">
					Choose what fits; only its questions open.
				</Typography>
				<Box
					role="group"
					aria-label="Complaints"
					sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, my: 1.5 }}
				>
					{complaints.map((complaint) => (
						<ToggleButton
							key={complaint.id}
							value={complaint.id}
							selected={chosen.includes(complaint.id)}
							onChange={() =>
								setChosen((now) =>
									now.includes(complaint.id)
										? now.filter((id) => id !== complaint.id)
										: [...now, complaint.id],
								)
							}
							sx={{ px: 2, textTransform: 'none' }}
						>
							{complaint.says}
						</ToggleButton>
					))}
				</Box>
				{shown.map((path) => {
					const group = questionGroup(path)
					return group ? (
						<Group key={path} group={group} draft={draft} change={change} />
					) : (
						<Question key={path} paths={[path]} draft={draft} change={change} />
					)
				})}
				{shown.length === 0 ? (
					<Typography color="text.secondary">No complaint chosen.</Typography>
				) : null}
			</Paper>
		</Box>
	)
}
