/** The steps of the open draft: its head, the step on screen, and what stands beside it. */

import { Box } from '@mui/material'
import { useCallback, useMemo, useRef, useState } from 'react'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { Lacking } from '../../parts/Lacking.tsx'
import { PasteBlock, PasteDialog } from '../../parts/PasteDialog.tsx'
import { keepsItself } from '../../parts/typedHere.ts'
import { AlsoOpen } from './AlsoOpen.tsx'
import { lacksOf } from './missingWords.ts'
import { broad, narrow } from './narrow.ts'
import { focusField } from './nextThing.ts'
import { ResultArea } from './results/ResultArea.tsx'
import { StepBody } from './StepBody.tsx'
import type { StepProps } from './stepProps.ts'
import { asksAbout, asksOf, type Step, stepAfter, stepNamed, stepsFor } from './steps.ts'
import { useAssessment } from './useAssessment.ts'
import type { OpenDraft } from './useDraft.ts'
import { useNextThing } from './useNextThing.ts'
import { usePaste } from './usePaste.ts'
import { useStepCommands } from './useStepCommands.ts'
import { useSteps } from './useSteps.ts'
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
const frame = {
	'--walk-head': '5.75rem',
	'--walk-foot': '3.25rem',
	[broad]: { '--walk-head': '3.25rem' },
}
const one = { pt: 1.5 }
const two = {
	display: 'grid',
	gridTemplateColumns: 'minmax(0, clamp(33rem, 45%, 44rem)) minmax(0, 1fr)',
	columnGap: 3,
	rowGap: 2,
	alignItems: 'start',
	pt: 1,
	pb: 2,
	[narrow]: { gridTemplateColumns: 'minmax(0, 1fr)' },
}
/** Steps that answer what is proposed. */
const answers: ReadonlySet<Step['name']> = new Set(['Decide', 'Sign'])
/** Once the record is signed no step can be gone to. */
const none: readonly Step[] = []
export function Walk({ playerId, open, protocol, shelf, shelfTrouble }: WalkProps) {
	const { content: draft, earlier, draftId, change, saveNow, saveToSign, closed } = open
	const [signed, setSigned] = useState(false)
	const [focused, setFocused] = useState('')
	const [helpOpen, setHelpOpen] = useState(false)
	const [said, setSaid] = useState('')
	const heading = useRef<HTMLHeadingElement>(null)
	const stepBox = useRef<HTMLDivElement>(null)
	const { player, visitDate, since } = draft.visit
	const minor = !isAdultOn(player.birthDate, visitDate, openProtocol(protocol))
	const steps = useMemo(() => stepsFor(minor, since), [minor, since])
	const step = stepNamed(draft.step, steps)
	const given = { typed: draft.visit, earlier, protocol, shelf, answered: answers.has(step.name) }
	const { visit, assessment, trouble } = useAssessment(given)
	const clear = useCallback(() => {
		setFocused('')
		setSaid('')
	}, [])
	const lacking = useMemo(() => (assessment?.missing ?? []).map(({ path }) => path), [assessment])
	const place = { stepBox, heading, clear, missing: lacking }
	const { goTo, goOn, wanted, asked } = useSteps({ open, steps, step, ...place })
	const mine = asksOf(step)
	const missing = assessment?.missing.filter(({ path }) => asksAbout(step, path)) ?? []
	const lacks = lacksOf(mine, draft.raw, missing)
	const next = useNextThing(stepBox, lacks, setSaid)
	const paste = usePaste(step, change)
	useStepCommands(signed ? none : steps, step, goTo)
	const onSigned = () => {
		closed()
		setSigned(true)
	}
	const help = { focused, helpOpen, setHelpOpen }
	useWalkKeys({ signed, steps, open, goOn, next, setSaid, ...help })
	const saves = { saveNow, saveToSign }
	const props: StepProps = { draft, change, assessment, earlier, draftId, playerId, ...saves, goTo }
	const result = { step, draft, assessment, trouble, visit, earlier, goTo, ...help }
	return (
		<Box sx={frame} {...keepsItself}>
			<WalkHead {...{ open, assessment, steps, step, signed, goTo }} />
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
						asked={asked}
						goOn={() => goOn()}
						shelf={shelf}
						shelfTrouble={shelfTrouble}
						onSigned={onSigned}
					/>
				</PasteBlock>
				{!step.wide && <ResultArea {...result} />}
			</Box>
			{!signed && (
				<WalkFoot
					key={step.name}
					lacks={mine.length > 0 ? lacks : undefined}
					next={stepAfter(step, steps, since)}
					goOn={() => goOn()}
					step={step}
					finds={mine.length === 0 || lacks.length > 0}
					toField={(path) => focusField(stepBox.current, path)}
				/>
			)}
			{paste.pasting && <PasteDialog {...paste.pasting} draft={draft} />}
		</Box>
	)
}
