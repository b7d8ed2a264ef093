/** What a condition asks of shoe, insert, season and questions, one press away. */
import { Box } from '@mui/material'
import { askedSaid } from '../../../shared/engine/asked/said.ts'
import type { Condition } from '../../../shared/engine/visit/terms.ts'
import { askedPartNames } from '../../../shared/engine/words/en/asked.ts'
import { conditionInWords } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../clinicProtocol.ts'
import { Disclosure, Told } from '../Disclosure.tsx'

/** Nothing is drawn for a condition that asks nothing by itself. */
export function AskedOf({ condition }: { condition: Condition }) {
	const asked = askedSaid(condition, clinicProtocol)
	if (asked.length === 0) return null
	const name = conditionInWords({ condition }, 'clinician')
	return (
		<Disclosure label="What this asks" name={`What this asks: ${name}`}>
			<Told
				rows={asked.map(({ part, said }) => [
					askedPartNames[part],
					said.map(({ says }) => <Box key={says}>{says}</Box>),
				])}
			/>
		</Disclosure>
	)
}
