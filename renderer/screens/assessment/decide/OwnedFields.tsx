/** The verdict about each pair that the player owns, and the day by which it is replaced. */
import { Box, Stack, Typography } from '@mui/material'
import type { AnswerFields } from '../../../../shared/engine/visit/answers.ts'
import { ownedVerdicts } from '../../../../shared/engine/visit/terms.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { DateField } from '../../../parts/DateField.tsx'
import { parseDate } from '../../../parts/parseDate.ts'
import { typedText, typeFields } from './answering.ts'
import type { FieldsProps } from './ChangeFields.tsx'
import { Choice } from './Choice.tsx'
import { verdictWords } from './proposalWords.ts'
import { nameOfPair } from './proposedFields.ts'

type Verdict = NonNullable<AnswerFields['verdicts']>[number]
const byField = ({ id }: Verdict): string => `${id}.by`

export function OwnedFields(props: FieldsProps) {
	const { fields, change, question, draft } = props
	const verdicts = fields.verdicts ?? []
	return (
		<Stack spacing={2}>
			{verdicts.map((row) => {
				const name = nameOfPair(draft.visit, row.id)
				const withRow = (next: Verdict) =>
					verdicts.map((other) => (other.id === row.id ? next : other))
				return (
					<Stack
						key={row.id}
						direction="row"
						useFlexGap
						sx={{ gap: 2, flexWrap: 'wrap', alignItems: 'flex-start' }}
					>
						<Typography sx={{ flex: '0 1 10rem', pt: 1, fontWeight: 600 }}>
							{capital(name)}
						</Typography>
						<Choice
							label={`Verdict: ${name}`}
							value={row.verdict}
							options={ownedVerdicts.map((verdict) => [verdict, verdictWords[verdict]] as const)}
							set={(verdict) => {
								const { by: _, ...undated } = row
								const next = { ...(verdict === 'replace' ? row : undated), verdict }
								const verdicts = withRow(next)
								// a day that was being typed goes with the field it is typed into
								change((now) => typeFields(now, question, { [byField(row)]: '' }, { verdicts }))
							}}
						/>
						{row.verdict === 'replace' && <By {...props} row={row} name={name} withRow={withRow} />}
					</Stack>
				)
			})}
		</Stack>
	)
}
interface ByProps extends FieldsProps {
	row: Verdict
	name: string
	withRow: (next: Verdict) => Verdict[]
}
function By({ draft, change, question, row, name, withRow }: ByProps) {
	const field = byField(row)
	const put = (text: string) => {
		const read = parseDate(text)
		const { by: _, ...undated } = row
		const next = text.trim() === '' ? undated : read.ok ? { ...row, by: read.iso } : undefined
		change((now) =>
			typeFields(now, question, { [field]: text }, next && { verdicts: withRow(next) }),
		)
	}
	return (
		<Box sx={{ width: 260 }}>
			<DateField
				size="small"
				label={`Replace by: ${name}`}
				value={typedText(draft, question, field, row.by)}
				set={put}
			/>
		</Box>
	)
}
