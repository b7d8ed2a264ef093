/** The path written out, for a share or a folder that the list does not lead to. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { type Purpose, purposes } from '../../../shared/desk/places/purposes.table.ts'
import { Field, Form } from '../form.tsx'
import { takeWords } from './placeWords.ts'
import type { Places } from './usePlaces.ts'

export function WrittenPath({ purpose, places }: { purpose: Purpose; places: Places }) {
	const [path, setPath] = useState('')
	const { picks } = purposes[purpose]
	return (
		<Form
			label="Written path"
			submit={() => places.choose(path.trim(), true)}
			sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, alignItems: 'start', pt: 1 }}
		>
			<Box sx={{ flexGrow: 1, minWidth: 180 }}>
				<Field
					focus
					label={`Whole path of the ${picks}`}
					value={path}
					set={setPath}
					optional
					hint="For a share of the network, or another place that the list does not lead to."
				/>
			</Box>
			<Button
				type="submit"
				variant="outlined"
				disabled={places.busy || !path.trim()}
				sx={{ minHeight: 44 }}
			>
				{takeWords(purpose)} by its path
			</Button>
		</Form>
	)
}
