/** The pairs of the season by letter, each with its sole. */
import { Box } from '@mui/material'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { PairBadge } from './PairBadge.tsx'
import type { Opened } from './useSeasonEdits.ts'

export function PairList({ pairs }: { pairs: Opened['pairs'] }) {
	const byLetter = pairs.toSorted((left, right) => (left.letter < right.letter ? -1 : 1))
	return (
		<Box
			component="ul"
			aria-label="Pairs"
			sx={{ m: 0, p: 0, listStyle: 'none', display: 'flex', flexWrap: 'wrap', gap: 2 }}
		>
			{byLetter.map(({ id, letter, name, sole }) => (
				<li key={id}>
					<PairBadge letter={letter} /> {name}
					{sole ? `, ${termWords(sole)}` : ', sole not recorded'}
				</li>
			))}
		</Box>
	)
}
