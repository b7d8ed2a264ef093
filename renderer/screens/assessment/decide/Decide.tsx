/**
 * Decide: each finding accepted, changed or dropped by the clinician; the next pair, heel raise,
 * actions and review.
 */
import { Alert, Box, Button, Stack, Tab, Tabs } from '@mui/material'
import { useState } from 'react'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import { ReportPreview } from '../../../parts/ReportPreview.tsx'
import type { StepProps } from '../stepProps.ts'
import { Actions, Review, WarningSigns } from './ActionsAndReview.tsx'
import { undecidedFindings, undecidedWishes } from './decisions.ts'
import { FindingsToDecide } from './FindingsToDecide.tsx'
import { HeelRaise } from './HeelRaise.tsx'
import { Insert } from './Insert.tsx'
import { Lacing } from './Lacing.tsx'
import { NextPair } from './NextPair.tsx'
import { Referral } from './Referral.tsx'
import { ShelfMatch } from './ShelfMatch.tsx'

const parts = ['Findings', 'Next pair', 'Raise, lacing, insert', 'Actions and review'] as const
type Part = (typeof parts)[number]
/** The part that follows a part; none after the last. */
const nextOf = (part: Part): Part | undefined => parts[parts.indexOf(part) + 1]

interface DecideProps extends StepProps {
	/** Undefined where the clinic has none, or where it did not open. */
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
}
export function Decide(props: DecideProps) {
	const { draft, assessment, earlier } = props
	const [part, setPart] = useState<Part>('Findings')
	const next = nextOf(part)
	// where there is no room beside the decisions the preview stands above them, closed until wanted
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1fr) fit-content(460px)',
				gap: 3,
				alignItems: 'start',
				'@container (max-width: 66rem)': {
					gridTemplateColumns: 'minmax(0, 1fr)',
					'& > :last-child': { order: -1 },
				},
			}}
		>
			<Stack spacing={3}>
				{!assessment && (
					<Alert severity="warning">
						The findings cannot be worked out from the entries as they stand. Look through the
						earlier steps; what you decide here is kept.
					</Alert>
				)}
				<Referral {...props} />
				<PartTabs {...props} part={part} setPart={setPart} />
				<Stack spacing={4} role="tabpanel" id="decide-panel" aria-labelledby={`decide-tab-${part}`}>
					<PartShown {...props} part={part} />
					{next && (
						<Box>
							<Button variant="outlined" onClick={() => setPart(next)}>
								Next: {next}
							</Button>
						</Box>
					)}
				</Stack>
			</Stack>
			<ReportPreview draft={draft} assessment={assessment} earlier={earlier} />
		</Box>
	)
}

interface PartTabsProps extends Pick<StepProps, 'draft' | 'assessment'> {
	part: Part
	setPart: (part: Part) => void
}
/** The parts as tabs, each with the number of decisions that are open in it. */
function PartTabs({ draft, assessment, part, setPart }: PartTabsProps) {
	const left: Partial<Record<Part, number>> = assessment
		? {
				Findings: undecidedFindings(draft, assessment).length,
				'Next pair': undecidedWishes(draft, assessment).length,
			}
		: {}
	return (
		<Tabs
			value={part}
			onChange={(_event, next: Part) => setPart(next)}
			aria-label="Parts of the decision"
			variant="scrollable"
			sx={{ borderBottom: 1, borderColor: 'divider' }}
		>
			{parts.map((title) => (
				<Tab
					key={title}
					value={title}
					label={left[title] ? `${title} (${left[title]} open)` : title}
					id={`decide-tab-${title}`}
					aria-controls="decide-panel"
					sx={{ minHeight: 48, textTransform: 'none', fontWeight: 600 }}
				/>
			))}
		</Tabs>
	)
}

function PartShown(props: DecideProps & { part: Part }) {
	const { part, draft, change, assessment, shelfTrouble } = props
	const given = { draft, change, assessment }
	if (part === 'Findings') return <FindingsToDecide {...given} />
	if (part === 'Next pair')
		return (
			<>
				<NextPair {...given} />
				{shelfTrouble ? (
					<Alert severity="warning">
						The shelf did not open, so no model is matched. {shelfTrouble}
					</Alert>
				) : (
					<ShelfMatch {...given} shelf={props.shelf} />
				)}
			</>
		)
	if (part === 'Raise, lacing, insert')
		return (
			<>
				<HeelRaise {...given} />
				<Lacing {...given} />
				<Insert {...given} />
			</>
		)
	return (
		<>
			<Actions draft={draft} change={change} />
			<WarningSigns draft={draft} change={change} />
			<Review {...given} />
		</>
	)
}
