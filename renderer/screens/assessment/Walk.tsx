/** The steps of the open draft: its head, the step on screen, and what stands beside it. */

import { Box } from '@mui/material'
import { type RefObject, useCallback, useMemo, useRef, useState } from 'react'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { Lacking } from '../../parts/Lacking.tsx'
import { PasteBlock, PasteDialog } from '../../parts/PasteDialog.tsx'
import { AlsoOpen } from './AlsoOpen.tsx'
import { narrow } from './narrow.ts'
import { ResultArea } from './results/ResultArea.tsx'
import { StepBody } from './StepBody.tsx'
import type { StepProps } from './stepProps.ts'
import { asksOf, type Step, stepNamed, stepsFor } from './steps.ts'
import { useAssessment } from './useAssessment.ts'
import type { OpenDraft } from './useDraft.ts'
import { useNextThing } from './useNextThing.ts'
import { usePaste } from './usePaste.ts'
import { useStepCommands } from './useStepCommands.ts'
import { useWalkKeys } from './useWalkKeys.ts'
import { WalkFoot } from './WalkFoot.tsx'
import { WalkHead } from './WalkHead.tsx'

interface WalkProps {
	playerId: string
	open: OpenDraft
	protocol: ProtocolFile
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
}
/** Head and foot stay in sight while the page scrolls; what sticks to them knows their height. */
const frame = { '--walk-head': '3.75rem', '--walk-foot': '3.25rem' }
const one = { pt: 1.5 }
const two = {
	display: 'grid',
	gridTemplateColumns: 'minmax(0, clamp(33rem, 42%, 46rem)) minmax(0, 1fr)',
	gap: 3,
	alignItems: 'start',
	pt: 1.5,
	[narrow]: { gridTemplateColumns: 'minmax(0, 1fr)' },
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
	const { content: draft, earlier, draftId, change, saveNow, saveToSign, closed } = open
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
	const onSigned = () => {
		closed()
		setSigned(true)
	}
	const asked = { focused, helpOpen, setHelpOpen }
	useWalkKeys({ signed, steps, open, goTo, next, setSaid, ...asked })
	const saves = { saveNow, saveToSign }
	const props: StepProps = { draft, change, assessment, earlier, draftId, playerId, ...saves, goTo }
	const result = { step, draft, assessment, trouble, visit, earlier, goTo, ...asked }
	return (
		<Box sx={frame}>
			<WalkHead open={open} steps={steps} step={step} signed={signed} goTo={goTo} />
			<Lacking says={open.lacking} />
			<AlsoOpen open={open} />
			<Box sx={step.wide ? one : two}>
				<PasteBlock value={paste.takeBlock}>
					<StepBody
						{...props}
						box={stepBox}
						heading={heading}
						said={said}
						step={step}
						focus={setFocused}
						wanted={wanted}
						shelf={shelf}
						shelfTrouble={shelfTrouble}
						onSigned={onSigned}
					/>
				</PasteBlock>
				{!step.wide && <ResultArea {...result} />}
			</Box>
			{!signed && (
				<WalkFoot
					missing={asksOf(step).length > 0 ? missing : undefined}
					next={steps[steps.indexOf(step) + 1]}
					goTo={goTo}
					toMissing={() => next.go()}
				/>
			)}
			{paste.cells && <PasteDialog cells={paste.cells} close={paste.close} take={paste.take} />}
		</Box>
	)
}
