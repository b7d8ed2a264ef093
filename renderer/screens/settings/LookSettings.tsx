/** The look of this PC: colours, size of text, shortcuts of one key. Shown at once. */
import {
	Alert,
	Checkbox,
	FormControlLabel,
	Stack,
	ToggleButton,
	ToggleButtonGroup,
	Typography,
} from '@mui/material'
import { useState, useSyncExternalStore } from 'react'
import type { Look } from '../../../shared/desk/workplace/look.ts'
import { type LookName, textSizes } from '../../../shared/desk/workplace/look-choices.ts'
import { wordsOf } from '../../host.ts'
import { lookNow, onLook, saveLook } from '../../parts/look.ts'
import { Panel } from '../../parts/panels.tsx'

const names: Record<LookName, string> = {
	system: 'As this PC',
	light: 'Light',
	dark: 'Dark',
	contrast: 'High contrast',
}
export function LookSettings() {
	const look = useSyncExternalStore(onLook, lookNow)
	const [says, setSays] = useState('')
	const set = (change: Partial<Look>) => {
		setSays('')
		saveLook(change).catch((error) => setSays(wordsOf(error)))
	}
	return (
		<Stack spacing={2}>
			{says && (
				<Alert severity="error" role="alert">
					{says}
				</Alert>
			)}
			<Panel title="Colours" hint="Kept for this PC, shown at once.">
				<ToggleButtonGroup
					exclusive
					aria-label="Colours"
					value={look.colours}
					onChange={(_, colours: LookName | null) => colours && set({ colours })}
					sx={{ flexWrap: 'wrap' }}
				>
					{Object.entries(names).map(([name, words]) => (
						<ToggleButton key={name} value={name} sx={{ px: 2 }}>
							{words}
						</ToggleButton>
					))}
				</ToggleButtonGroup>
			</Panel>
			<Panel title="Size of text">
				<ToggleButtonGroup
					exclusive
					aria-label="Size of text"
					value={look.textPercent}
					onChange={(_, textPercent: number | null) => textPercent && set({ textPercent })}
					sx={{ flexWrap: 'wrap' }}
				>
					{textSizes.map((percent) => (
						<ToggleButton key={percent} value={percent} sx={{ px: 2 }}>
							{percent} %
						</ToggleButton>
					))}
				</ToggleButtonGroup>
			</Panel>
			<Panel title="Keys">
				<FormControlLabel
					control={
						<Checkbox checked={look.singleKeys} onChange={(_, singleKeys) => set({ singleKeys })} />
					}
					label="Shortcuts of one key (1 to 8 for the steps, p, s, ?)"
				/>
				<Typography variant="body2" color="text.secondary">
					Off unless wanted: a stray key would move the screen. Shortcuts with Ctrl or Alt always
					work.
				</Typography>
			</Panel>
		</Stack>
	)
}
