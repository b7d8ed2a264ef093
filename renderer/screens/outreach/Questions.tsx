/** What two places recorded differently: a person says which counts. */
import { Box, Button, FormControlLabel, Radio, RadioGroup, Typography } from '@mui/material'
import { useState } from 'react'
import { Form, Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'
import type { Listed } from './Merged.tsx'
import { fromWords, questionField, questionValue } from './words.ts'

type Asked = Listed['questions'][number]
type FieldAsked = Asked['fields'][number]

/** The values of one field, each with where and when it was recorded. */
function Values({
	question,
	field: { field, values },
	chosen,
	leads,
	choose,
}: {
	question: Asked
	field: FieldAsked
	chosen: string
	leads: boolean
	choose: (record: string) => void
}) {
	const name = questionField(question, field)
	return (
		<Box>
			<Typography aria-hidden>{name}</Typography>
			<RadioGroup
				aria-label={`${name} of ${question.name || 'the clinic'}`}
				value={chosen}
				onChange={(_, record) => choose(record)}
			>
				{homeFirst(values).map((value) => (
					<FormControlLabel
						key={value.record}
						value={value.record}
						disabled={!leads}
						control={<Radio />}
						label={valueWords(question, value)}
					/>
				))}
			</RadioGroup>
		</Box>
	)
}
/** What stands at home first, then what came from away. */
const homeFirst = (values: FieldAsked['values']) =>
	values.toSorted((left, right) => Number(right.from?.home) - Number(left.from?.home))
/** Where, when and by whom; and what it says, where that is no whole version. */
const valueWords = (question: Asked, { from, at, shown }: FieldAsked['values'][number]): string =>
	question.what === 'version'
		? fromWords(from, at)
		: `${fromWords(from, at)}: ${questionValue(question, shown)}`
function Question({ question, leads }: { question: Asked; leads: boolean }) {
	const [choices, setChoices] = useState<Record<string, string>>({})
	const { busy, says, run } = useHostAction()
	const open = Object.keys(choices).length < question.fields.length
	const answer = async () => {
		const { what, id, playerId } = question
		await change('outreach.answer', { what, id, playerId, choices })
		return ''
	}
	return (
		<Form sx={{ display: 'grid', gap: 2 }} submit={() => run(answer)}>
			<Typography sx={{ fontWeight: 600 }}>{question.says}</Typography>
			{question.fields.map((field) => (
				<Values
					key={field.field}
					question={question}
					field={field}
					chosen={choices[field.field] ?? ''}
					leads={leads}
					choose={(record) => setChoices((now) => ({ ...now, [field.field]: record }))}
				/>
			))}
			<Trouble says={says} />
			{leads && (
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
					<Button type="submit" variant="outlined" disabled={busy || open}>
						This one counts
					</Button>
					{open && (
						<Typography variant="body2" color="textSecondary">
							Choose one {question.fields.length === 1 ? 'of the two' : 'for each field'} first.
						</Typography>
					)}
				</Box>
			)}
		</Form>
	)
}
/** @param leads who works here may answer */
export function Questions({
	questions,
	leads,
}: {
	questions: Listed['questions']
	leads: boolean
}) {
	return (
		<Panel
			title="To answer"
			hint={
				'Recorded differently in two places. Both stand in the records; ' +
				`${leads ? 'your answer is a record too' : 'a clinician or the owner answers'}.`
			}
		>
			{questions.map((question) => (
				<Question key={`${question.what} ${question.id}`} question={question} leads={leads} />
			))}
		</Panel>
	)
}
