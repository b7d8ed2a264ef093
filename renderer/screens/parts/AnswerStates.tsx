/** What the host answers, in each of its states; and what came of an act. */
import { Typography } from '@mui/material'
import { Answered, Refused } from '../../parts/Answered.tsx'
import { Outcome, Trouble } from '../../parts/form.tsx'
import type { HostAnswer } from '../../query.ts'
import { Specimen } from './Specimen.tsx'
import { longName } from './sample.ts'

const nothing: HostAnswer<string> = {
	value: undefined,
	says: '',
	asking: false,
	ofLastInput: false,
	again: () => {},
}
const refusal = 'The workstation did not answer. Check that it is still running, then try again.'
const answers: readonly (HostAnswer<string> & { name: string })[] = [
	{ ...nothing, name: 'loading', asking: true },
	{ ...nothing, name: 'refused', says: refusal },
	{ ...nothing, name: 'refused, being asked again', says: refusal, asking: true },
	{ ...nothing, name: 'old: refused, with what was read before', value: longName, says: refusal },
	{ ...nothing, name: 'there', value: longName },
]
export function AnswerStates() {
	return (
		<>
			<Specimen
				part="Answered"
				states={answers.map((answer) => ({
					name: answer.name,
					part: (
						<Answered of={answer} what="the sample">
							{(value) => <Typography>{value}</Typography>}
						</Answered>
					),
				}))}
			/>
			<Specimen
				part="Refused, Trouble and Outcome"
				states={[
					{ name: 'refused alone', part: <Refused of={{ ...nothing, says: refusal }} /> },
					{ name: 'trouble', part: <Trouble says={refusal} /> },
					{ name: 'an act that failed', part: <Outcome of={{ says: refusal, done: '' }} /> },
					{ name: 'an act that was done', part: <Outcome of={{ says: '', done: 'Saved.' }} /> },
				]}
			/>
		</>
	)
}
