/** Beside the measures: how the field in focus is measured, and the findings. */
import { Box } from '@mui/material'
import type { Topic } from '../../../shared/engine/findings/finding.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { Measuring } from '../../parts/Measuring.tsx'
import { Findings } from './Findings.tsx'
import { narrow } from './narrow.ts'
import type { StepProps } from './stepProps.ts'

interface BesideProps extends Pick<StepProps, 'draft' | 'assessment' | 'earlier'> {
	/** Path of the field in focus; empty where none is. */
	focused: string
	helpOpen: boolean
	setHelpOpen: (open: boolean) => void
	/** Why there is no assessment; empty where there is one. */
	trouble: string
	topics: readonly Topic[]
	/** The visit that was assessed. */
	visit: Visit
}
export function Beside(props: BesideProps) {
	const { focused, draft, helpOpen, setHelpOpen, assessment, trouble, topics } = props
	return (
		<Box
			sx={{
				position: 'sticky',
				top: 12,
				maxHeight: 'calc(100vh - 24px)',
				overflow: 'auto',
				[narrow]: { position: 'static', maxHeight: 'none' },
				'& > aside': { position: 'static', maxHeight: 'none' },
			}}
		>
			{focused && <Measuring path={focused} draft={draft} open={helpOpen} setOpen={setHelpOpen} />}
			<Findings
				assessment={assessment}
				trouble={trouble}
				topics={topics}
				visit={props.visit}
				earlier={props.earlier}
			/>
		</Box>
	)
}
