/** What a condition asks of shoe, insert, season and questions, one press away. */
import { Box, Button, Collapse } from '@mui/material'
import { useId, useState } from 'react'
import { askedSaid } from '../../../shared/engine/asked/said.ts'
import type { Condition } from '../../../shared/engine/visit/terms.ts'
import { askedPartNames } from '../../../shared/engine/words/en/asked.ts'
import { conditionInWords } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../clinicProtocol.ts'

function Parts({ condition }: { condition: Condition }) {
	return (
		<Box
			component="dl"
			sx={{
				m: 0,
				p: 1.5,
				borderLeft: 3,
				borderColor: 'primary.main',
				bgcolor: 'background.default',
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: 'minmax(0, max-content) minmax(60%, 1fr)' },
				columnGap: 2,
				rowGap: 0.5,
				fontSize: '0.875rem',
			}}
		>
			{askedSaid(condition, clinicProtocol).map(({ part, said }) => [
				<Box component="dt" key={part} sx={{ color: 'text.secondary' }}>
					{askedPartNames[part]}
				</Box>,
				<Box component="dd" key={`${part} words`} sx={{ m: 0, overflowWrap: 'anywhere' }}>
					{said.map(({ says }) => (
						<Box key={says}>{says}</Box>
					))}
				</Box>,
			])}
		</Box>
	)
}
/** Nothing is drawn for a condition that asks nothing by itself. */
export function AskedOf({ condition }: { condition: Condition }) {
	const [open, setOpen] = useState(false)
	const id = useId()
	if (askedSaid(condition, clinicProtocol).length === 0) return null
	const name = conditionInWords({ condition }, 'clinician')
	return (
		<Box>
			<Button
				variant="text"
				size="small"
				aria-expanded={open}
				aria-controls={id}
				aria-label={`What this asks: ${name}`}
				onClick={() => setOpen(!open)}
				sx={{ minHeight: 44, px: 1, ml: -1 }}
			>
				What this asks
			</Button>
			<Collapse in={open} id={id} unmountOnExit>
				<Parts condition={condition} />
			</Collapse>
		</Box>
	)
}
