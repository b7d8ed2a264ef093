/** One or several terms of a list, side by side: chosen by the space bar, passed by Enter. */
import { ToggleButton, ToggleButtonGroup } from '@mui/material'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { capital } from '../../../shared/engine/words/words.ts'

/** They wrap, so each has its own frame. */
const apart = {
	display: 'flex',
	flexWrap: 'wrap',
	gap: 0.5,
	'& .MuiToggleButtonGroup-grouped.MuiToggleButton-root': {
		m: 0,
		px: 1.25,
		py: 0.25,
		border: 1,
		borderColor: 'text.secondary',
		borderRadius: 1,
		lineHeight: 1.3,
	},
}
interface Group<Term extends string> {
	/** What the group is called. */
	name: string
	/** Of the field in the visit. */
	path: string
	terms: readonly Term[]
}
interface OneOf<Term extends string> extends Group<Term> {
	chosen: Term | undefined
	/** Told undefined where the chosen one was taken back. */
	choose: (term: Term | undefined) => void
}
const buttonsOf = (terms: readonly string[], path: string) =>
	terms.map((term) => (
		<ToggleButton key={term} value={term} data-path={path}>
			{capital(termWords(term))}
		</ToggleButton>
	))
export function OneOf<Term extends string>({ name, path, terms, chosen, choose }: OneOf<Term>) {
	return (
		<ToggleButtonGroup
			exclusive
			data-walk=""
			aria-label={name}
			value={chosen ?? null}
			onChange={(_, next: Term | null) => choose(next ?? undefined)}
			sx={apart}
		>
			{buttonsOf(terms, path)}
		</ToggleButtonGroup>
	)
}
interface SeveralOf<Term extends string> extends Group<Term> {
	chosen: readonly Term[]
	/** Told them in the order of the list; undefined for none. */
	choose: (terms: Term[] | undefined) => void
}
export function SeveralOf<Term extends string>(props: SeveralOf<Term>) {
	const { name, path, terms, chosen, choose } = props
	return (
		<ToggleButtonGroup
			data-walk=""
			aria-label={name}
			value={[...chosen]}
			onChange={(_, next: readonly Term[]) => {
				const inOrder = terms.filter((term) => next.includes(term))
				choose(inOrder.length > 0 ? inOrder : undefined)
			}}
			sx={apart}
		>
			{buttonsOf(terms, path)}
		</ToggleButtonGroup>
	)
}
