/** What was explained and agreed to, in the order in which it is said; nothing is prefilled. */
import { Box, Button, Typography } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import { usualAgreement } from '../../../../../shared/engine/visit/agreement.ts'
import { clinicProtocol } from '../../../../parts/clinicProtocol.ts'
import { focusAsked } from '../../nextThing.ts'
import type { DraftProps } from '../../stepProps.ts'
import { Answer, By, Competence, Explained, Told } from './Asked.tsx'
import { agreementOf, isBegun, isMinorIn, withUsual } from './agreeing.ts'
import { TextOf } from './fields.tsx'
import { Chaperone, Company, Interpreter } from './Present.tsx'

export interface AgreementProps extends DraftProps {
	minor: boolean
}
interface FormProps extends DraftProps {
	/** Sport is held: only who was told is needed. */
	urgent: boolean
	goTo: (step: string) => void
}
export function AgreementForm({ draft, change, urgent, goTo }: FormProps) {
	const minor = isMinorIn(draft, clinicProtocol)
	const box = useRef<HTMLDivElement>(null)
	const [usualTaken, setUsualTaken] = useState(0)
	// what is asked next stands behind what was just answered
	useEffect(() => {
		if (usualTaken > 0 && box.current) focusAsked(box.current)
	}, [usualTaken])
	const props: AgreementProps = { draft, change, minor }
	return (
		<Box ref={box} component="section" aria-labelledby="agreement">
			<Typography variant="h2" id="agreement">
				Explained and agreed
			</Typography>
			{urgent && (
				<Typography sx={{ py: 1 }}>
					Sport is held: to sign now, only who was told is needed.
				</Typography>
			)}
			<Usual
				{...props}
				take={() => {
					change((now) => withUsual(now, minor))
					setUsualTaken((times) => times + 1)
				}}
			/>
			<Told {...props} />
			<Explained {...props} />
			<Answer {...props} goTo={goTo} />
			<By {...props} />
			<Competence {...props} />
			<Interpreter {...props} />
			<Chaperone {...props} />
			<Company {...props} />
			<Box sx={{ pt: 1.5 }}>
				<TextOf
					path="note"
					lines
					draft={draft}
					change={change}
					hint="For the record alone: no page carries it"
				/>
			</Box>
		</Box>
	)
}

/** The usual answers in one key, named as what they put down. */
function Usual({ draft, minor, take }: AgreementProps & { take: () => void }) {
	const { givenName, guardian } = draft.visit.player
	const begun = isBegun(agreementOf(draft))
	if (usualAgreement(draft.visit.player, minor) === undefined)
		return (
			<Typography color="text.secondary" sx={{ py: 1 }}>
				No guardian stands in the record: tick who was there, and write the name.
			</Typography>
		)
	return (
		<Box data-asked={begun ? undefined : ''} sx={{ py: 1 }}>
			<Button variant="outlined" disabled={begun} onClick={take} aria-describedby="usual-answers">
				{minor && guardian
					? `Explained to ${givenName} and ${guardian.name} with all options, both agreed`
					: `Explained to ${givenName} with all options, agreed`}
			</Button>
			<Typography id="usual-answers" variant="body2" color="text.secondary" sx={{ pt: 0.5 }}>
				If it was so, this answers the four lines below at once, doing nothing among the options.
			</Typography>
		</Box>
	)
}
