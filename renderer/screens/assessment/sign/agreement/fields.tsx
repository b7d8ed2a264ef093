/** The controls of the agreement: titles, limits and values of each come from its schema by path. */
import { Box, Button, Checkbox, FormControlLabel, Radio, RadioGroup } from '@mui/material'
import { agreementSchema } from '../../../../../shared/engine/visit/agreement.ts'
import { fieldMeta } from '../../../../../shared/engine/visit/field-meta.ts'
import { capital } from '../../../../../shared/engine/words/words.ts'
import type { DraftProps } from '../../stepProps.ts'
import { WrittenText } from '../WrittenText.tsx'
import { answerAt, answered, ticked } from './agreeing.ts'

interface FieldProps extends DraftProps {
	/** Within the agreement. */
	path: string
}
export function Tick({ path, label, draft, change }: FieldProps & { label: string }) {
	return (
		<FormControlLabel
			label={capital(label)}
			control={
				<Checkbox
					checked={answerAt(draft, path) === true}
					onChange={({ target }) => change((now) => ticked(now, path, target.checked))}
				/>
			}
		/>
	)
}
/** Several that may be ticked, each a field of one group. */
export function Ticks<Key extends string>({
	path,
	options,
	draft,
	change,
}: FieldProps & { options: readonly (readonly [key: Key, words: string])[] }) {
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 1 }}>
			{options.map(([key, words]) => (
				<Tick key={key} path={`${path}.${key}`} label={words} draft={draft} change={change} />
			))}
		</Box>
	)
}
interface OneOfProps<Key extends string> extends FieldProps {
	options: Readonly<Record<Key, string>>
	/** In place of putting the answer alone. */
	choose?: (now: DraftProps['draft'], key: string) => DraftProps['draft']
}
/** One of a few; its name is the title of its field. */
export function OneOf<Key extends string>(props: OneOfProps<Key>) {
	const { path, options, draft, change, choose } = props
	return (
		<RadioGroup
			row
			aria-label={fieldMeta(agreementSchema, path).title}
			name={`agreement.${path}`}
			value={answerAt(draft, path) ?? ''}
			onChange={({ target }) =>
				change((now) => (choose ? choose(now, target.value) : answered(now, path, target.value)))
			}
			sx={{ columnGap: 1 }}
		>
			{(Object.entries(options) as [Key, string][]).map(([key, words]) => (
				<FormControlLabel key={key} value={key} label={capital(words)} control={<Radio />} />
			))}
		</RadioGroup>
	)
}
interface TextProps extends FieldProps {
	lines?: boolean
	/** Names of the record that can be taken as they are. */
	offers?: readonly string[]
	label?: string
	hint?: string
}
export function TextOf({ path, draft, change, lines, offers = [], label, hint }: TextProps) {
	const put = (text: string) => change((now) => answered(now, path, text))
	return (
		<Box>
			<WrittenText
				of="agreement"
				path={path}
				draft={draft}
				change={change}
				lines={lines}
				label={label}
				hint={hint}
			/>
			{answerAt(draft, path) === undefined &&
				offers.map((name) => (
					<Button key={name} size="small" onClick={() => put(name)}>
						{name}
					</Button>
				))}
		</Box>
	)
}
