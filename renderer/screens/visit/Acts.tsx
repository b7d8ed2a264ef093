/**
 * What can be done with a signed visit: amend, late entry, hand-over noted, entered in error,
 * countersign. Nothing signed is changed by any of it.
 */
import { Box, Button, Stack } from '@mui/material'
import { useState } from 'react'
import { today } from '../../parts/dates.ts'
import { Form, Outcome } from '../../parts/form.tsx'
import { useHostAction } from '../../query.ts'
import { ActFields } from './ActFields.tsx'
import { type Act, acts, lateKinds, type Typed } from './visitActs.ts'

interface ActsProps {
	visitId: string
	playerId: string
	may: Record<Act, boolean>
}
const nothingTyped = (): Typed => ({
	reason: '',
	text: '',
	what: lateKinds.occurred,
	occurredOn: today(),
	recipient: '',
	channel: '',
})
export function Acts({ visitId, playerId, may }: ActsProps) {
	const [open, setOpen] = useState<Act>()
	const [typed, setTyped] = useState(nothingTyped)
	const action = useHostAction()
	const run = (act: Act) =>
		action.run(async () => {
			const words = await acts[act].run(typed, { visitId, playerId })
			setOpen(undefined)
			setTyped((now) => ({ ...now, reason: '', text: '', recipient: '' }))
			return words
		})
	const offered = (Object.keys(acts) as Act[]).filter((act) => may[act])
	return (
		<Stack spacing={2}>
			<Box
				role="group"
				aria-label="What to do with this visit"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}
			>
				{offered.map((act) => (
					<Button
						key={act}
						variant={act === 'countersign' ? 'contained' : 'outlined'}
						aria-expanded={open === act}
						onClick={() => setOpen((now) => (now === act ? undefined : act))}
					>
						{acts[act].name}
					</Button>
				))}
			</Box>
			{open && may[open] && (
				<Form
					label={acts[open].name}
					sx={{ display: 'grid', gap: 2, maxWidth: 620 }}
					submit={() => run(open)}
				>
					<ActFields
						act={open}
						typed={typed}
						put={(name, value) => setTyped((now) => ({ ...now, [name]: value }))}
					/>
					<Box sx={{ display: 'flex', gap: 1 }}>
						<Button
							type="submit"
							variant="contained"
							color={open === 'error' ? 'error' : 'primary'}
							disabled={action.busy}
						>
							{acts[open].submit}
						</Button>
						<Button onClick={() => setOpen(undefined)}>Cancel</Button>
					</Box>
				</Form>
			)}
			<Outcome of={action} />
		</Stack>
	)
}
