/** Two fields for a new passphrase or a new PIN. */
import { leastPassphrase } from '../../shared/desk/workplace/passphrase.ts'
import { Field } from './form.tsx'
import { type Judgement, type Twice, type TwiceProblems, useJudgement } from './secrets.ts'

interface NewSecretProps {
	/** of the first field; the second has 'again' after it */
	title: string
	typed: Twice
	put: (typed: Twice) => void
	wrong?: TwiceProblems | undefined
	/** stands while nothing was typed */
	hint?: string
	optional?: boolean
}
function TwoFields({
	title,
	typed,
	put,
	wrong,
	optional,
	hint,
	weak,
}: NewSecretProps & { weak?: string | undefined }) {
	const usual = { type: 'password', autoComplete: 'new-password', optional: optional ?? false }
	return (
		<>
			<Field
				label={title}
				value={typed.once}
				set={(once) => put({ ...typed, once })}
				error={wrong?.once ?? weak ?? ''}
				hint={hint ?? ''}
				{...usual}
			/>
			<Field
				label={`${title} again`}
				value={typed.again}
				set={(again) => put({ ...typed, again })}
				error={wrong?.again ?? ''}
				{...usual}
			/>
		</>
	)
}
const hintOf = (judged: Judgement | undefined, also: string) =>
	judged === 'strong'
		? 'Hard to guess.'
		: `${leastPassphrase} characters or more${also ? `; ${also}` : ''}.`
const weakWords = (title: string, judged: Judgement | undefined) =>
	typeof judged === 'object'
		? `${title} is easy to guess: ${judged.why}. ${judged.helps}`
		: undefined

/**
 * @param names that count as guessable, as far as the page knows them
 * @param also what the hint says beside the length
 */
export function NewPassphrase({
	names = [],
	also = '',
	...fields
}: Omit<NewSecretProps, 'hint'> & { names?: readonly string[]; also?: string }) {
	const judged = useJudgement(fields.typed.once, names)
	return (
		<TwoFields {...fields} hint={hintOf(judged, also)} weak={weakWords(fields.title, judged)} />
	)
}
export const NewPin = (fields: NewSecretProps) => (
	<TwoFields hint="4 to 10 digits without a pattern, not a year." {...fields} />
)
