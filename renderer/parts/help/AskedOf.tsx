/** What a condition asks of shoe, insert, season and questions, one press away. */
import { Box } from '@mui/material'
import type { ReactNode } from 'react'
import { askedSaid } from '../../../shared/engine/asked/said.ts'
import type { Condition } from '../../../shared/engine/visit/terms.ts'
import { askedPartNames } from '../../../shared/engine/words/en/asked.ts'
import { conditionInWords } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../clinicProtocol.ts'
import { Disclosure, Told } from '../Disclosure.tsx'

interface AskedOfProps {
	condition: Condition
	/** what stands before and after the button on its line */
	head?: ReactNode
	end?: ReactNode
}
/** No button is drawn for a condition that asks nothing by itself. */
export function AskedOf({ condition, head, end }: AskedOfProps) {
	const asked = askedSaid(condition, clinicProtocol)
	if (asked.length === 0 && !head && !end) return null
	if (asked.length === 0)
		return (
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				{head}
				{end}
			</Box>
		)
	const name = conditionInWords({ condition }, 'clinician')
	return (
		<Disclosure label="What this asks" name={`What this asks: ${name}`} head={head} end={end}>
			<Told
				rows={asked.map(({ part, said }) => [
					askedPartNames[part],
					said.map(({ says }) => <Box key={says}>{says}</Box>),
				])}
			/>
		</Disclosure>
	)
}
