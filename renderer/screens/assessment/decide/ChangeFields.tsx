/** The fields by which a question is changed: they begin with what is proposed. */
import { Stack } from '@mui/material'
import type { ReactNode } from 'react'
import type { AnswerFields } from '../../../../shared/engine/visit/answers.ts'
import { changedIn, changeFields, lastAnswer, sayWhy } from './answering.ts'
import { LoadFields } from './LoadFields.tsx'
import { OwnedFields } from './OwnedFields.tsx'
import { PairFields } from './PairFields.tsx'
import { proposedFields } from './proposedFields.ts'
import { kindOf, type QuestionKind } from './questionTitles.ts'
import { RaiseFields } from './RaiseFields.tsx'
import { ReviewFields } from './ReviewFields.tsx'
import { SizeFields } from './SizeFields.tsx'
import type { AskedProps } from './stepTypes.ts'
import { Words } from './Words.tsx'

export interface FieldsProps extends AskedProps {
	/** The fields as they stand: what was changed, else what is proposed. */
	fields: AnswerFields
	put: (patch: AnswerFields) => void
}
const forms: Readonly<Partial<Record<QuestionKind, (props: FieldsProps) => ReactNode>>> = {
	complaint: LoadFields,
	size: SizeFields,
	raise: RaiseFields,
	pair: PairFields,
	owned: OwnedFields,
	review: ReviewFields,
}
/** Others are changed where they are shown. */
export const hasFields = (kind: QuestionKind): boolean => kind in forms

export function ChangeFields(props: AskedProps) {
	const { question, assessment, draft, change } = props
	const Form = forms[kindOf(question.id)]
	if (!Form) return null
	const fields = {
		...proposedFields(assessment, question),
		...changedIn(draft.decisions, question),
	}
	const answer = lastAnswer(draft.decisions, question)
	return (
		<Stack spacing={2}>
			<Form
				{...props}
				fields={fields}
				put={(patch) => change((now) => changeFields(now, question, patch))}
			/>
			{answer?.choice === 'changed' && (
				<Words
					label="Why (optional)"
					max={500}
					value={answer.why ?? ''}
					set={(text) => change((now) => sayWhy(now, question, text))}
				/>
			)}
		</Stack>
	)
}
