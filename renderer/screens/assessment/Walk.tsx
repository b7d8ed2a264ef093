/** The steps of the open draft: its head, the step on screen, and what stands beside it. */

import { Box } from '@mui/material'
import { type RefObject, useCallback, useMemo, useRef, useState } from 'react'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { Lacking } from '../../parts/Lacking.tsx'
import { PasteBlock, PasteDialog } from '../../parts/PasteDialog.tsx'
import { Beside } from './Beside.tsx'
import { narrow } from './narrow.ts'
import { StepBody } from './StepBody.tsx'
import type { StepProps } from './stepProps.ts'
import { asksOf, type Step, stepNamed, stepsFor } from './steps.ts'
import { useAssessment } from './useAssessment.ts'
import type { OpenDraft } from './useDraft.ts'
import { useNextThing } from './useNextThing.ts'
import { usePaste } from './usePaste.ts'
import { useStepCommands } from './useStepCommands.ts'
import { useWalkKeys } from './useWalkKeys.ts'
import { WalkHead } from './WalkHead.tsx'

interface WalkProps {
	playerId: string
	open: OpenDraft
	protocol: ProtocolFile
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
}
/** Once the record is signed no step can be gone to. */
const none: readonly Step[] = []
/** Whoever is quicker than the next drawing keeps the focus where it went. */
function focusOnceDrawn(target: RefObject<HTMLElement | null>): void {
	const before = document.activeElement
	requestAnimationFrame(() => {
		const now = document.activeElement
		if (now === before || now === document.body) target.current?.focus()
	})
}

export function Walk({ playerId, open, protocol, shelf, shelfTrouble }: WalkProps) {
	const { content: draft, earlier, draftId, change, saveNow, closed } = open
	const [signed, setSigned] = useState(false)
	const [focused, setFocused] = useState('')
	const [helpOpen, setHelpOpen] = useState(false)
	const [said, setSaid] = useState('')
	const [wanted, setWanted] = useState('')
	const heading = useRef<HTMLHeadingElement>(null)
	const stepBox = useRef<HTMLDivElement>(null)
	const { visit, assessment, trouble } = useAssessment(draft.visit, earlier, protocol, shelf)
	const { player, visitDate } = draft.visit
	const minor = !isAdultOn(player.birthDate, visitDate, openProtocol(protocol))
	const steps = useMemo(() => stepsFor(minor), [minor])
	const step = stepNamed(draft.step, steps)
	const goTo = useCallback(
		(name: string, question = '') => {
			setFocused('')
			setWanted(question)
			setSaid('')
			change((now) => ({ ...now, step: name }))
			void saveNow().catch(() => {})
			// a question that is asked for takes the focus itself
			if (!question) focusOnceDrawn(heading)
		},
		[change, saveNow],
	)
	const missing = assessment?.missing.filter(({ path }) => asksOf(step).includes(path)) ?? []
	const next = useNextThing(stepBox, missing, setSaid)
	const paste = usePaste(step, change)
	useStepCommands(signed ? none : steps, step, goTo)
	useWalkKeys({ signed, steps, open, goTo, next, setSaid, focused, helpOpen, setHelpOpen })
	const props: StepProps = { draft, change, assessment, earlier, draftId, playerId, saveNow, goTo }
	return (
		<Box>
			<WalkHead open={open} steps={steps} step={step} signed={signed} goTo={goTo} />
			<Lacking says={open.lacking} />
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: step.wide ? 'minmax(0, 1fr)' : 'minmax(0, 1.8fr) minmax(300px, 1fr)',
					gap: 3,
					alignItems: 'start',
					[narrow]: { gridTemplateColumns: 'minmax(0, 1fr)' },
				}}
			>
				<PasteBlock value={paste.takeBlock}>
					<StepBody
						{...props}
						box={stepBox}
						heading={heading}
						said={said}
						step={step}
						next={steps[steps.indexOf(step) + 1]}
						missing={missing}
						focus={setFocused}
						wanted={wanted}
						shelf={shelf}
						shelfTrouble={shelfTrouble}
						onSigned={() => {
							closed()
							setSigned(true)
						}}
					/>
				</PasteBlock>
				{!step.wide && (
					<Beside
						{...{ focused, draft, helpOpen, setHelpOpen, assessment, trouble, visit, earlier }}
						topics={step.topics}
					/>
				)}
			</Box>
			{paste.cells && <PasteDialog cells={paste.cells} close={paste.close} take={paste.take} />}
		</Box>
	)
}
