/** A draft that was changed in two places: joined field by field, or one of them goes on. */
import { Alert, Box, Button, FormControlLabel, Radio, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Trouble } from '../../parts/form.tsx'
import { Rows, timeWords } from '../../parts/panels.tsx'
import { change, useHost, useHostAction } from '../../query.ts'
import { draftField } from './words.ts'

type Compared = OutputOf<'outreach.compareDrafts'>
type Difference = Compared['differences'][number]
/** By path the draft whose value stands. */
type Choices = Readonly<Record<string, string>>

/** One value where both drafts say something else. */
function Choice({
	path,
	says,
	of,
	pair,
	chosen,
	choose,
}: {
	path: string
	says: string
	/** which of the two drafts */
	of: string
	/** what tells these two from two others on the page */
	pair: string
	chosen: boolean
	choose: () => void
}) {
	return (
		<FormControlLabel
			control={
				<Radio
					name={`${pair} ${path}`}
					checked={chosen}
					onChange={choose}
					slotProps={{ input: { 'aria-label': `${draftField(path)}, ${of}: ${says}` } }}
				/>
			}
			label={says}
		/>
	)
}
/** What one of two drafts is called: in a head, and on the button that goes on with it. */
interface DraftName {
	head: string
	goOn: string
}
/** The two drafts by the place where they were written; of two in one place by what was saved last. */
function draftNames({ places, savedAt, by }: Compared): [DraftName, DraftName] {
	const isOnePlace = places[0] === places[1]
	const isLater = (index: number) => (savedAt[index] ?? '') > (savedAt[1 - index] ?? '')
	const nameOf = (index: 0 | 1): DraftName => {
		const [at, where] =
			places[index] === 'here' ? ['At home', 'at home'] : ['Away, on the laptop', 'from the laptop']
		const order = isLater(index) ? 'later' : 'earlier'
		const writer = by[index] ? `, by ${by[index]}` : ''
		return {
			head: `${at}, saved ${timeWords(savedAt[index] ?? '')}${writer}`,
			goOn: `the ${isOnePlace ? `${order} ` : ''}draft ${where}`,
		}
	}
	return [nameOf(0), nameOf(1)]
}
/** What must be chosen: both changed it without knowing of each other. */
const askedOf = ({ asked }: Compared) => new Map(asked.map((question) => [question.path, question]))
type Typed = NonNullable<Compared['asked'][number]['first']>
const typedWords = (typed: Typed | undefined): string =>
	typed ? ` (typed ${timeWords(typed.at)} ${typed.here ? 'at home' : 'away'})` : ''

interface DraftsProps {
	name: string
	drafts: readonly string[]
	/** who works here may join them */
	leads: boolean
}
function Differing({
	name,
	drafts,
	leads,
	compared,
	choices,
	setChoices,
}: DraftsProps & {
	compared: Compared
	choices: Choices
	setChoices: (choices: Choices) => void
}) {
	const { differences } = compared
	const names = draftNames(compared)
	const asked = askedOf(compared)
	const cell = ({ path }: Difference, value: string, side: 'first' | 'second', draft = '') => {
		const question = asked.get(path)
		const says = (value || 'not recorded') + typedWords(question?.[side])
		if (!question || !leads) return says
		return (
			<Choice
				key={draft}
				path={path}
				says={says}
				pair={drafts.join(' ')}
				of={draft === drafts[0] ? names[0].head : names[1].head}
				chosen={choices[path] === draft}
				choose={() => setChoices({ ...choices, [path]: draft })}
			/>
		)
	}
	return (
		<Rows
			label={`Drafts of ${name}`}
			heads={['Field', names[0].head, names[1].head]}
			empty="They say the same."
			rows={differences.map((difference) => ({
				key: difference.path,
				cells: [
					draftField(difference.path),
					cell(difference, difference.first, 'first', drafts[0]),
					cell(difference, difference.second, 'second', drafts[1]),
				],
			}))}
		/>
	)
}
/** @param open what must be chosen before they can be joined */
function JoinOrGoOn({
	drafts,
	names,
	choices,
	open,
}: {
	drafts: readonly string[]
	/** undefined until they are compared */
	names: [DraftName, DraftName] | undefined
	choices: Choices
	open: readonly { path: string }[]
}) {
	const { busy, says, run } = useHostAction()
	const join = async () => {
		await change('outreach.joinDrafts', { drafts: [...drafts], choices: { ...choices } })
		return ''
	}
	const putAway = (draftId = '') =>
		run(async () => {
			await change('outreach.putDraftAway', { draftId })
			return ''
		})
	const [first, second] = drafts
	return (
		<>
			<Trouble says={says} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1, mt: 1 }}>
				<Button
					variant="outlined"
					disabled={busy || !names || open.length > 0}
					onClick={() => run(join)}
				>
					Join the two
				</Button>
				{names?.map(({ goOn }, index) => (
					<Button
						key={goOn}
						variant="outlined"
						disabled={busy}
						onClick={() => putAway(index === 0 ? second : first)}
					>
						Go on with {goOn}
					</Button>
				))}
				{open.length > 0 && (
					<Typography variant="body2">
						To join, choose first: {open.map(({ path }) => draftField(path)).join(', ')}.
					</Typography>
				)}
			</Box>
		</>
	)
}
export function TwoDrafts(props: DraftsProps) {
	const { name, drafts, leads } = props
	const answer = useHost('outreach.compareDrafts', { drafts: [...drafts] })
	const [choices, setChoices] = useState<Choices>({})
	const open = (answer.value?.asked ?? []).filter(({ path }) => !choices[path])
	return (
		<Alert severity="warning" sx={{ '& .MuiAlert-message': { width: '100%' } }}>
			<Typography sx={{ fontWeight: 600 }}>
				The draft of {name} was changed in two places. Both are kept. Join them: what only one has
				stands; choose where both say something else. Or go on with one of them.
			</Typography>
			<Answered of={answer} what="the two drafts">
				{(compared) => (
					<Differing {...props} compared={compared} choices={choices} setChoices={setChoices} />
				)}
			</Answered>
			{leads && (
				<JoinOrGoOn
					drafts={drafts}
					names={answer.value && draftNames(answer.value)}
					choices={choices}
					open={open}
				/>
			)}
		</Alert>
	)
}
