/** Questions that stand open: single ones, and groups that unfold once their side is known. */
import { Box, Button, Typography } from '@mui/material'
import { askedElsewhere } from '../../../shared/engine/screening/complaints.table.ts'
import { privateTopicAt } from '../../../shared/engine/visit/private.ts'
import { readPath, writePath } from '../../parts/draft-path.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { Question } from './FlagsQuestion.tsx'
import type { Opened } from './flagsOpened.ts'
import { type QuestionGroup, questionGroup } from './questions.ts'
import type { DraftProps } from './stepProps.ts'

/**
 * What another question asks already, and what does not concern this player, stands here only where
 * it was answered here.
 */
function isAskedHere([first = '']: readonly string[], { visit }: DraftProps['draft']): boolean {
	if (readPath(visit, first) !== undefined) return true
	const ofWomenOnly = privateTopicAt(first) === 'periods' && visit.player.sex !== 'female'
	return !ofWomenOnly && !askedElsewhere.includes(first)
}
const sideNames: Readonly<Record<string, string>> = {
	left: 'Left side',
	right: 'Right side',
	both: 'Both sides',
}
interface GroupProps extends DraftProps {
	group: QuestionGroup
	/** The side of the condition that opened it; absent where none did. */
	side?: string | undefined
}
function Sides({ group, change }: Omit<GroupProps, 'draft'>) {
	return (
		<Box
			role="group"
			aria-label={`${group.heading}: side`}
			sx={{ display: 'flex', gap: 1, my: 0.5 }}
		>
			{group.sides.map((side) => (
				<Button
					key={side}
					variant="outlined"
					onClick={() =>
						change((now) => ({ ...now, visit: writePath(now.visit, group.path, { side }) }))
					}
				>
					{sideNames[side]}
				</Button>
			))}
		</Box>
	)
}
/** The first answer of a group brings the side of the condition with it. */
const placedOn =
	({ group, side, change }: Omit<GroupProps, 'draft'>): DraftProps['change'] =>
	(update) =>
		change((now) => {
			const next = update(now)
			const at = `${group.path}.side`
			const needsSide =
				readPath(next.visit, group.path) !== undefined && readPath(next.visit, at) === undefined
			return needsSide ? { ...next, visit: writePath(next.visit, at, side) } : next
		})
function Rows({ group, draft, change }: GroupProps) {
	return group.rows
		.filter((paths) => isAskedHere(paths, draft))
		.map((paths) => <Question key={paths[0]} paths={paths} draft={draft} change={change} />)
}
/**
 * What is a sign as soon as it is recorded, whatever its questions come to: a condition must not
 * record it, so that it stands only once somebody said on which side it is.
 */
const signsByThemselves: Readonly<Record<string, string>> = {
	'screening.limp': 'Only where the player limps now: choose the side. Else leave it.',
}
/** The side can be the condition's only where the group has that one. */
const sideFor = ({ group, side }: Omit<GroupProps, 'draft' | 'change'>): string | undefined =>
	group.path in signsByThemselves ? undefined : group.sides.find((each) => each === side)
function Group(props: GroupProps) {
	const { group, draft, change } = props
	const standing = readPath(draft.visit, group.path) !== undefined
	const side = sideFor(props)
	const sided = group.sides.length > 0
	const takeAway = () =>
		change((now) => ({
			...now,
			raw: Object.fromEntries(
				Object.entries(now.raw).filter(([path]) => !path.startsWith(`${group.path}.`)),
			),
			visit: writePath(now.visit, group.path, undefined),
		}))
	return (
		<Box data-group={group.path} sx={{ borderLeft: 3, borderColor: 'divider', pl: 1.5, my: 1 }}>
			<Typography variant="h3">{group.heading}</Typography>
			{sided && standing && (
				<FieldRow paths={[`${group.path}.side`]} draft={draft} change={change} />
			)}
			{sided && !standing && side !== undefined && (
				<Typography variant="body2" color="text.secondary">
					Asked of {side === 'both' ? 'both sides' : `the ${side} side`}, as recorded.
				</Typography>
			)}
			{sided && !standing && group.path in signsByThemselves && (
				<Typography variant="body2" color="text.secondary">
					{signsByThemselves[group.path]}
				</Typography>
			)}
			{sided && !standing && side === undefined ? (
				<Sides group={group} change={change} />
			) : (
				<Rows {...props} change={side === undefined ? change : placedOn({ ...props, side })} />
			)}
			{standing ? <Button onClick={takeAway}>Take these answers away</Button> : null}
		</Box>
	)
}
/** In the order in which they are asked. */
export function OpenedQuestions({
	opened,
	draft,
	change,
}: { opened: readonly Opened[] } & DraftProps) {
	return opened.map(({ path, side }) => {
		const group = questionGroup(path)
		return group ? (
			<Group key={path} group={group} side={side} draft={draft} change={change} />
		) : (
			<Question key={path} paths={[path]} draft={draft} change={change} />
		)
	})
}
