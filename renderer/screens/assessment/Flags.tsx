/**
 * The warning-sign questions. Not answered is not asked, never no; a complaint unfolds the
 * questions that belong to it.
 */
import { Box, Button, Paper, ToggleButton, Typography } from '@mui/material'
import { useState } from 'react'
import { questionsOf } from '../../../shared/engine/conditions/registry.ts'
import {
	askedAlways,
	askedElsewhere,
	askedInPrivate,
	complaints,
} from '../../../shared/engine/screening/complaints.table.ts'
import { privateTopicAt } from '../../../shared/engine/visit/private.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { readPath, writePath } from '../../parts/draft-path.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { AskedInPrivate, AskedOfEveryone } from './FlagsAsked.tsx'
import { CoreQuestions, coreOf, lineOf } from './FlagsCore.tsx'
import { OpenHolds } from './FlagsHolds.tsx'
import { Question } from './FlagsQuestion.tsx'
import { type QuestionGroup, questionGroup } from './questions.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

/** A recorded condition opens its own questions. */
const questionsOfRecorded = ({ conditions = [] }: Visit): string[] =>
	conditions
		.filter(({ status }) => status !== 'past')
		.flatMap(({ condition }) => questionsOf(condition))
const opened = [...new Set(complaints.flatMap((complaint) => complaint.opens))]

/**
 * What another question asks already, and what does not concern this player, stands here only where
 * it was answered here.
 */
function isAskedHere([first = '']: readonly string[], { visit }: DraftProps['draft']): boolean {
	if (readPath(visit, first) !== undefined) return true
	const ofWomenOnly = privateTopicAt(first) === 'periods' && visit.player.sex !== 'female'
	return !ofWomenOnly && !askedElsewhere.includes(first)
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
					{group.rows
						.filter((paths) => isAskedHere(paths, draft))
						.map((paths) => (
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
export function Flags({ draft, change, assessment }: StepProps) {
	const [chosen, setChosen] = useState<readonly string[]>([])
	const wanted = new Set([
		...complaints
			.filter((complaint) => chosen.includes(complaint.id))
			.flatMap((complaint) => complaint.opens),
		...questionsOfRecorded(draft.visit),
	])
	const core = coreOf({ draft, change, assessment }).flatMap(
		(question) => lineOf(question, draft.visit) ?? [],
	)
	// what already holds an answer stays open, whatever is chosen
	const shown = opened.filter(
		(path) =>
			!askedAlways.includes(path) &&
			!core.includes(path) &&
			!askedInPrivate.includes(path) &&
			(wanted.has(path) || readPath(draft.visit, path) !== undefined),
	)
	return (
		<Box sx={{ display: 'grid', gap: 2 }}>
			<CoreQuestions
				draft={draft}
				change={change}
				assessment={assessment}
				open={(complaint) => setChosen((now) => [...new Set([...now, complaint])])}
			/>
			<OpenHolds draft={draft} change={change} assessment={assessment} />
			<AskedOfEveryone
				above={core.filter((path) => askedAlways.includes(path))}
				draft={draft}
				change={change}
			/>
			<AskedInPrivate draft={draft} change={change} />
			<Paper variant="outlined" sx={{ p: 2 }}>
				<Typography variant="h2">What the player complains of</Typography>
				<FieldRow paths={['complaint']} draft={draft} change={change} />
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
