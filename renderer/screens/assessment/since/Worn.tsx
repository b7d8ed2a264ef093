/** Insert and raise: how long they were worn, how it went on, and with what trouble. */
import { Box, Typography } from '@mui/material'
import { isInsertTrouble } from '../../../../shared/engine/insert/follow/kept.ts'
import { troublesIn } from '../../../../shared/engine/recheck/told.ts'
import { wornNames } from '../../../../shared/engine/words/en/recheck.ts'
import { sideWords } from '../../../../shared/engine/words/en/terms.table.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { DenseField, DenseGrid, Labelled } from '../../../parts/DenseField.tsx'
import { InsertPlaces } from './InsertPlaces.tsx'
import type { SinceProps } from './sinceProps.ts'
import { Troubles } from './Troubles.tsx'

export const Worn = ({ draft, change, since: { worn = [] } }: SinceProps) =>
	worn.map(({ what, side, now, why, trouble }, place) => {
		const path = `since.worn.${place}`
		const name = `${capital(wornNames[what])}, ${sideWords[side]}`
		const never = now === 'never-worn'
		const asksWhy = never || now === 'stopped-early' || why !== undefined
		const fields = ['now', ...(asksWhy ? ['why'] : []), ...(never ? [] : ['weeks', 'hoursPerDay'])]
		return (
			<Box key={path} component="section" aria-label={name}>
				<Typography variant="h2" sx={{ mb: 0.5 }}>
					{name}
				</Typography>
				<DenseGrid columnRem={11}>
					{fields.map((key) => (
						<DenseField key={key} path={`${path}.${key}`} draft={draft} change={change} />
					))}
					{(!never || trouble) && (
						<Labelled title="Trouble" whole>
							<Troubles path={`${path}.trouble`} chosen={trouble} change={change} />
						</Labelled>
					)}
					{what === 'insert' &&
						(troublesIn(trouble).length > 0 || isInsertTrouble(draft.visit)) && (
							<InsertPlaces draft={draft} change={change} sides={side} />
						)}
				</DenseGrid>
			</Box>
		)
	})
