/** Every condition of the list: what it is called, and what it asks. */
import { Box, Typography } from '@mui/material'
import { findConditions } from '../../../shared/engine/conditions/find.ts'
import { otherNames } from '../../../shared/engine/words/en/asked.ts'
import { conditionWords } from '../../../shared/engine/words/en/conditions.table.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { AskedOf } from '../../parts/help/AskedOf.tsx'
import { useReading } from '../../query.ts'

export function ConditionsTold({ find }: { find: string }) {
	// the ages shown are those of the clinic's protocol
	useReading('protocol in force', {}, ['protocol.get'], loadProtocol)
	return (
		<Box>
			{findConditions(find).map(({ condition }) => {
				const { name, synonyms } = conditionWords[condition]
				return (
					<Box
						key={condition}
						component="section"
						aria-label={capital(name)}
						sx={{ py: 1, '& + &': { borderTop: 1, borderColor: 'divider' } }}
					>
						<Typography variant="h3" component="h2">
							{capital(name)}
						</Typography>
						{synonyms.length > 0 ? (
							<Typography variant="body2" color="text.secondary">
								{otherNames(synonyms)}
							</Typography>
						) : null}
						<AskedOf condition={condition} />
					</Box>
				)
			})}
		</Box>
	)
}
