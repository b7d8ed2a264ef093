/** Which pair was got for each role that asked for one. */
import { Box, TextField, Typography } from '@mui/material'
import { pairFor } from '../../../../shared/engine/words/en/question-names.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { DenseField, DenseGrid, Labelled } from '../../../parts/DenseField.tsx'
import { withValue } from '../../../parts/draft-path.ts'
import type { SinceProps } from './sinceProps.ts'
import { Troubles } from './Troubles.tsx'

export const Bought = ({ draft, change, since: { bought = [] } }: SinceProps) =>
	bought.map(({ role, answer, why, pair, trouble }, place) => {
		const path = `since.bought.${place}`
		const name = capital(pairFor(role))
		return (
			<Box key={path} component="section" aria-label={name}>
				<Typography variant="h2" sx={{ mb: 0.5 }}>
					{name}
				</Typography>
				<DenseGrid columnRem={11}>
					<DenseField path={`${path}.answer`} draft={draft} change={change} />
					{(answer === 'not-bought' || why) && (
						<DenseField path={`${path}.why`} draft={draft} change={change} />
					)}
					{(answer === 'bought' || pair) && (
						<WhichPair path={`${path}.pair`} chosen={pair} draft={draft} change={change} />
					)}
					{(answer === 'bought' || trouble) && (
						<Labelled title="Trouble" whole>
							<Troubles path={`${path}.trouble`} chosen={trouble} change={change} />
						</Labelled>
					)}
				</DenseGrid>
			</Box>
		)
	})
interface WhichPairProps extends Omit<SinceProps, 'since'> {
	path: string
	chosen: string | undefined
}
/** One of the pairs of this visit; a new one is added below first. */
function WhichPair({ path, chosen = '', draft, change }: WhichPairProps) {
	const pairs = draft.visit.footwear ?? []
	const isGone = chosen !== '' && !pairs.some(({ id }) => id === chosen)
	return (
		<Labelled title="Which pair" hint="A new one is added below (Alt+A)">
			<TextField
				select
				fullWidth
				size="small"
				value={chosen}
				onChange={({ target }) => change((now) => withValue(now, path, target.value || undefined))}
				slotProps={{
					select: { native: true },
					htmlInput: { 'aria-label': 'Which pair', 'data-path': path },
				}}
			>
				<option value="">not recorded</option>
				{pairs.map(({ id, name = id }) => (
					<option key={id} value={id}>
						{name}
					</option>
				))}
				{isGone && <option value={chosen}>a pair that was taken out</option>}
			</TextField>
		</Labelled>
	)
}
