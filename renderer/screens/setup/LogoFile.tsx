/** The logo of the letterhead: a file, what is wrong with it, and how it looks. */
import { Box, FormHelperText, Typography } from '@mui/material'
import { type ChangeEvent, useRef } from 'react'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { logoKinds, readLogo } from './logo.ts'

interface LogoProps {
	logo: Clinic['logo']
	/** what is wrong with the file that was chosen */
	wrong: string | undefined
	set: (logo: Clinic['logo'], wrong?: string) => void
}
const fileButton = {
	font: 'inherit',
	minHeight: 44,
	'&::file-selector-button': {
		font: 'inherit',
		fontWeight: 600,
		minHeight: 44,
		px: 2,
		mr: 2,
		border: '1px solid',
		borderColor: 'primary.main',
		borderRadius: 1,
		bgcolor: 'transparent',
		color: 'primary.main',
		cursor: 'pointer',
	},
} as const
const shown = {
	maxHeight: 72,
	maxWidth: 220,
	bgcolor: '#fff',
	p: 1,
	border: 1,
	borderColor: 'divider',
	borderRadius: 1,
} as const

export function LogoFile({ logo, wrong, set }: LogoProps) {
	const file = useRef<HTMLInputElement>(null)
	const choose = async (chosen: File | undefined) => {
		set(undefined)
		if (!chosen) return
		try {
			set(await readLogo(chosen))
		} catch (error) {
			set(undefined, error instanceof Error ? error.message : String(error))
			if (file.current) file.current.value = ''
		}
	}
	return (
		<Box
			sx={{
				gridColumn: '1 / -1',
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				gap: 2,
			}}
		>
			<Box>
				<Typography
					component="label"
					htmlFor="logo-file"
					sx={{ display: 'block', fontWeight: 600, mb: 0.5 }}
				>
					Logo file
				</Typography>
				<Box
					component="input"
					ref={file}
					id="logo-file"
					type="file"
					accept={logoKinds}
					aria-describedby="logo-hint"
					aria-invalid={Boolean(wrong)}
					onChange={(event: ChangeEvent<HTMLInputElement>) => void choose(event.target.files?.[0])}
					sx={fileButton}
				/>
				<FormHelperText id="logo-hint" role={wrong ? 'alert' : undefined} error={Boolean(wrong)}>
					{wrong ?? 'PNG, JPEG or SVG, under 500 kB. May be left out.'}
				</FormHelperText>
			</Box>
			{logo && (
				<Box
					component="img"
					alt="The chosen logo"
					src={`data:${logo.mediaType};base64,${logo.base64}`}
					sx={shown}
				/>
			)}
		</Box>
	)
}
