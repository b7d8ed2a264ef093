/**
 * A test under load of a limb that waits: why, in place of the empty field. The clinician decides
 * and may open it by a deliberate press; what was typed stays in its field.
 */
import { Box, Button, Typography } from '@mui/material'
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from 'react'
import { type FieldProps, nameOf, storedText } from './fieldState.ts'
import { notToday } from './testsWait.ts'

/** What the engine says of each limb; nothing waits where no assessment is shown. */
export const TestsWait = createContext<Parameters<typeof notToday>[2]>(undefined)

const Reason = ({ why }: { why: string }) => (
	<Typography variant="body2" sx={{ pt: 0.5, color: 'error.main', overflowWrap: 'anywhere' }}>
		Not today: {why}
	</Typography>
)
/** @param children the field itself */
export function UnlessNotToday({ children, ...field }: FieldProps & { children: ReactNode }) {
	const { path, draft } = field
	const why = notToday(path, draft.visit, useContext(TestsWait))
	const [opened, setOpened] = useState(false)
	const box = useRef<HTMLDivElement>(null)
	const closed = why !== '' && !opened && storedText(field) === ''
	useEffect(() => {
		if (opened) box.current?.querySelector<HTMLElement>('input, select, button')?.focus()
	}, [opened])
	return (
		<Box ref={box} sx={{ minWidth: 0 }}>
			{closed ? null : children}
			{why === '' ? null : <Reason why={why} />}
			{closed && (
				// Enter in another field walks past it: it is pressed on purpose or not at all
				<Button
					size="small"
					data-aside=""
					aria-label={`Measure all the same: ${nameOf(path)}`}
					onClick={() => setOpened(true)}
					sx={{ px: 0.5, textAlign: 'left' }}
				>
					Measure all the same
				</Button>
			)}
		</Box>
	)
}
