/** The recovery key, shown once: to be printed or copied by hand before going on. */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Paper,
	Stack,
	Typography,
} from '@mui/material'
import { useEffect, useRef, useState } from 'react'

export function RecoveryKey({
	recoveryKey,
	clinicName,
	done,
}: {
	recoveryKey: string
	clinicName: string
	done: () => void
}) {
	const [kept, setKept] = useState(false)
	const heading = useRef<HTMLHeadingElement>(null)
	useEffect(() => heading.current?.focus(), [])
	return (
		<Stack spacing={3} sx={{ maxWidth: 900, mx: 'auto' }}>
			<Typography variant="h1" ref={heading} tabIndex={-1}>
				Recovery key
			</Typography>
			<Typography>
				This key opens the records of {clinicName} if the passphrase is forgotten. It is shown this
				once. Keep it on paper, locked away, and not beside this PC.
			</Typography>
			<Paper
				variant="outlined"
				sx={{ px: 2, py: 4, textAlign: 'center', borderColor: 'primary.main', borderWidth: 2 }}
			>
				<Typography
					component="p"
					aria-label="The key"
					sx={{
						fontSize: { xs: '1.25rem', sm: '1.5rem' },
						fontWeight: 600,
						letterSpacing: '0.06em',
						lineHeight: 1.7,
						overflowWrap: 'anywhere',
						userSelect: 'all',
					}}
				>
					{recoveryKey}
				</Typography>
			</Paper>
			<Stack spacing={2} sx={{ displayPrint: 'none' }}>
				<Alert severity="warning">
					Without this key a forgotten passphrase cannot be replaced, and the records stay closed
					for good.
				</Alert>
				<Box>
					<Button variant="outlined" onClick={() => window.print()}>
						Print
					</Button>
				</Box>
				<FormControlLabel
					control={<Checkbox checked={kept} onChange={(event) => setKept(event.target.checked)} />}
					label="I have it on paper"
				/>
				<Box>
					<Button variant="contained" size="large" disabled={!kept} onClick={done}>
						Go on
					</Button>
				</Box>
			</Stack>
		</Stack>
	)
}
