/** A folder or a file of this PC in a form: what is chosen, and the button that chooses. */
import { Box, Button, FormHelperText, Typography } from '@mui/material'
import { useId, useState } from 'react'
import type { Purpose } from '../../../shared/desk/places/purposes.table.ts'
import { chooseNatively, choosesNatively } from '../../host.ts'
import { useHostAction } from '../../query.ts'
import { Trouble } from '../form.tsx'
import { PlaceDialog } from './PlaceDialog.tsx'
import { openWords } from './placeWords.ts'

interface PlaceFieldProps {
	label: string
	purpose: Purpose
	/** the whole path; empty where nothing is chosen */
	value: string
	set: (path: string) => void
	hint?: string
	disabled?: boolean
}
export function PlaceField({ label, purpose, value, set, hint, disabled }: PlaceFieldProps) {
	const [open, setOpen] = useState(false)
	const [labelId, valueId, hintId] = [useId(), useId(), useId()]
	const { busy, says, run } = useHostAction()
	const choose = () => {
		if (!choosesNatively()) return setOpen(true)
		run(async () => {
			const path = await chooseNatively(purpose)
			if (path !== undefined) set(path)
			return ''
		})
	}
	return (
		<Box role="group" aria-labelledby={labelId}>
			<Typography id={labelId} sx={{ fontSize: '0.875rem', fontWeight: 600, mb: 0.5 }}>
				{label}
			</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1.5 }}>
				<Button
					variant="outlined"
					disabled={busy || disabled}
					aria-describedby={`${labelId} ${valueId} ${hintId}`}
					onClick={choose}
				>
					{openWords(purpose, value !== '')}
				</Button>
				<Typography id={valueId} sx={{ overflowWrap: 'anywhere', minWidth: 0 }}>
					{value === '' ? 'Nothing chosen yet.' : <bdi>{value}</bdi>}
				</Typography>
			</Box>
			{hint && <FormHelperText id={hintId}>{hint}</FormHelperText>}
			<Trouble says={says} />
			{open && (
				<PlaceDialog
					purpose={purpose}
					close={() => setOpen(false)}
					chosen={(path) => {
						setOpen(false)
						set(path)
					}}
				/>
			)}
		</Box>
	)
}
