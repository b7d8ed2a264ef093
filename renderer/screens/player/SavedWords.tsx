/** After saving: that it was saved, and who on record is like this player. */

import { Alert, Box, Link } from '@mui/material'
import { fullName } from '../../../shared/engine/words/names.ts'
import { dayInWords } from '../../parts/dates.ts'
import type { SavedNotice } from './notice.ts'

/** @param edited something was typed since: it is not saved */
export function SavedWords({
	notice: { similar },
	edited,
}: {
	notice: SavedNotice
	edited: boolean
}) {
	return (
		<>
			{!edited && (
				<Alert severity="success" role="status">
					Saved.
				</Alert>
			)}
			{similar.length > 0 && (
				<Alert severity="info" role="status">
					Similar players are on record. Nothing was merged; check that this is not the same person.
					<Box component="ul" sx={{ m: 0, mt: 0.5, pl: 2.5 }}>
						{similar.map((card) => (
							<li key={card.playerId}>
								<Link href={`#/players/${card.playerId}`} color="inherit" sx={{ fontWeight: 600 }}>
									{fullName(card)}
								</Link>
								, born {dayInWords(card.birthDate)}
								{card.club ? `, ${card.club}` : ''}
							</li>
						))}
					</Box>
				</Alert>
			)}
		</>
	)
}
