/** Who was told what, the answer, whose it is, and whether a minor is competent to give it. */
import { Alert, Button } from '@mui/material'
import type { Party } from '../../../../../shared/engine/visit/agreement.ts'
import {
	agreementAnswerWords,
	competenceWords,
	explainableWords,
} from '../../../../../shared/engine/words/en/agreement.ts'
import type { AgreementProps } from './AgreementForm.tsx'
import { agreementOf, asksCompetence, partiesFor } from './agreeing.ts'
import { OneOf, TextOf, Tick, Ticks } from './fields.tsx'
import { Fields, Group } from './Group.tsx'

/** The people by the names of the record. */
function partyWords({ draft, minor }: AgreementProps, other: string) {
	const { givenName, guardian } = draft.visit.player
	const name = agreementOf(draft).guardianName ?? guardian?.name
	const words: Readonly<Record<Party, string>> = {
		player: `${givenName}, player`,
		guardian: name === undefined ? 'Guardian' : `${name}, guardian`,
		other,
	}
	return partiesFor(draft, minor).map((party) => [party, words[party]] as const)
}
/** The name is asked where the record has none. */
function GuardianName({ draft, change }: AgreementProps) {
	if (draft.visit.player.guardian) return null
	return <TextOf path="guardianName" draft={draft} change={change} />
}
export function Told(props: AgreementProps) {
	const { draft, change } = props
	const { explainedTo = {} } = agreementOf(draft)
	const asksName = explainedTo.guardian && !draft.visit.player.guardian
	return (
		<Group title="Explained to" asked={Object.keys(explainedTo).length === 0}>
			<Ticks
				path="explainedTo"
				options={partyWords(props, 'someone else')}
				draft={draft}
				change={change}
			/>
			{(asksName || explainedTo.other) && (
				<Fields>
					{explainedTo.guardian && <GuardianName {...props} />}
					{explainedTo.other && (
						<TextOf path="explainedTo.otherName" draft={draft} change={change} />
					)}
				</Fields>
			)}
		</Group>
	)
}
const explainables = Object.entries(explainableWords)
export function Explained({ draft, change }: AgreementProps) {
	const { explained = {} } = agreementOf(draft)
	return (
		<Group title="Explained" asked={Object.keys(explained).length === 0}>
			<Ticks path="explained" options={explainables} draft={draft} change={change} />
		</Group>
	)
}
interface AnswerProps extends AgreementProps {
	goTo: (step: string) => void
}
export function Answer({ draft, change, goTo }: AnswerProps) {
	const { answer } = agreementOf(draft)
	const declined = answer === 'declined'
	return (
		<Group
			title="Answer"
			asked={answer === undefined}
			hint="Each of these holds consent to the assessment and to the record."
		>
			<OneOf path="answer" options={agreementAnswerWords} draft={draft} change={change} />
			{(declined || answer === 'agreed-in-part') && (
				<>
					<Fields>
						<TextOf path="notAgreed" lines draft={draft} change={change} />
					</Fields>
					<Alert
						severity="info"
						role="note"
						action={
							<Button color="inherit" sx={{ whiteSpace: 'nowrap' }} onClick={() => goTo('Decide')}>
								Go to Decide
							</Button>
						}
					>
						{declined
							? 'The pages of the player stay advice. No insert is ordered, and the doctor reads that it was declined. What must not be printed is set aside in Decide.'
							: 'Pages print what stands in Decide: set aside there what was declined.'}
					</Alert>
				</>
			)}
		</Group>
	)
}
export function By(props: AgreementProps) {
	const { draft, change, minor } = props
	const { by = {}, explainedTo = {} } = agreementOf(draft)
	const asksName = by.guardian && !explainedTo.guardian && !draft.visit.player.guardian
	return (
		<Group title="Answered by" asked={Object.keys(by).length === 0}>
			<Ticks
				path="by"
				options={partyWords(props, 'someone else with the right to consent')}
				draft={draft}
				change={change}
			/>
			{(asksName || by.other) && (
				<Fields>
					{asksName && <GuardianName {...props} />}
					{by.other && (
						<>
							<TextOf path="by.otherName" draft={draft} change={change} />
							<TextOf
								path="by.otherRight"
								label="Right to consent"
								hint="Such as foster carer, by a court, by your local law"
								draft={draft}
								change={change}
							/>
						</>
					)}
				</Fields>
			)}
			{minor && (by.guardian || by.other) && (
				<Tick path="playerDisagrees" label="The player disagrees" draft={draft} change={change} />
			)}
		</Group>
	)
}
export function Competence({ draft, change, minor }: AgreementProps) {
	const agreement = agreementOf(draft)
	if (!asksCompetence(agreement, minor)) return null
	return (
		<Group
			title="Competence"
			asked={agreement.competence?.judged === undefined}
			hint="Of this player for this decision, by your local law: from what age, and by what test, this program does not know."
		>
			<OneOf path="competence.judged" options={competenceWords} draft={draft} change={change} />
			<Fields>
				<TextOf
					path="competence.grounds"
					label="Grounds"
					hint="Such as: says back plan, options and risks in own words"
					lines
					draft={draft}
					change={change}
				/>
			</Fields>
		</Group>
	)
}
