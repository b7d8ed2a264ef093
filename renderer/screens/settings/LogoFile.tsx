/** The logo of the letterhead: chosen from a file, or taken away. */
import { Box, Button, Typography } from '@mui/material'
import type { ChangeEvent } from 'react'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { logoKinds, readLogo } from '../setup/logo.ts'

export function LogoFile({
	logo,
	set,
	refused,
}: {
	logo: Clinic['logo']
	set: (logo: Clinic['logo']) => void
	refused: (says: string) => void
}) {
	const chosen = ({ target }: ChangeEvent<HTMLInputElement>) => {
		const [file] = target.files ?? []
		if (file) readLogo(file).then(set, (error: Error) => refused(error.message))
	}
	return (
		<Box sx={{ gridColumn: '1 / -1' }}>
			<Typography
				component="label"
				htmlFor="letterhead-logo"
				sx={{ display: 'block', fontWeight: 600 }}
			>
				Logo file
			</Typography>
			<Box
				component="input"
				id="letterhead-logo"
				type="file"
				accept={logoKinds}
				sx={{ font: 'inherit', minHeight: 44 }}
				onChange={chosen}
			/>
			{logo ? <Button onClick={() => set(undefined)}>Remove the logo</Button> : null}
		</Box>
	)
}
