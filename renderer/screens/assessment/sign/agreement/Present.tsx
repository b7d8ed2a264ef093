/** Who else was there: interpreter, chaperone, and who came with a minor. */
import { Alert, TextField, Typography } from '@mui/material'
import { mayNeverInterpret } from '../../../../../shared/engine/visit/agreement.ts'
import { otherLanguages } from '../../../../../shared/engine/visit/languages.ts'
import {
	chaperoneWords,
	companionWords,
	interpreterNeedWords,
	interpreterRelationWords,
	interpreterWayWords,
} from '../../../../../shared/engine/words/en/agreement.ts'
import { listed } from '../../../../../shared/engine/words/en/format.ts'
import { languageName } from '../../../../../shared/engine/words/en/languages.ts'
import { state } from '../../../../../shared/engine/words/statement.ts'
import { capital } from '../../../../../shared/engine/words/words.ts'
import type { AgreementProps } from './AgreementForm.tsx'
import { agreementOf, answered, withGuardian } from './agreeing.ts'
import { OneOf, TextOf } from './fields.tsx'
import { Fields, Group } from './Group.tsx'

export function Interpreter({ draft, change }: AgreementProps) {
	const { need, relation, how } = agreementOf(draft).interpreter ?? {}
	const { player, guardian } = otherLanguages(draft.visit.player)
	const preferred = [...new Set([player, guardian].flatMap((tag) => tag ?? []))].map(languageName)
	const isHowAsked = need === 'not-needed' && preferred.length > 0 && !how
	return (
		<Group title="Interpreter" asked={need === undefined || isHowAsked}>
			{preferred.length > 0 && (
				<Typography>Preferred: {listed(preferred)}. The papers are in English.</Typography>
			)}
			<OneOf path="interpreter.need" options={interpreterNeedWords} draft={draft} change={change} />
			{need === 'present' && (
				<>
					<Fields>
						<Relation draft={draft} change={change} />
						<TextOf path="interpreter.who" label="Name or number" draft={draft} change={change} />
						<TextOf
							path="interpreter.language"
							label="Language"
							offers={preferred}
							draft={draft}
							change={change}
						/>
					</Fields>
					{mayNeverInterpret(relation) && (
						<Alert severity="error" role="alert">
							{state('signing.interpreter-child').says}
						</Alert>
					)}
					<OneOf
						path="interpreter.way"
						options={interpreterWayWords}
						draft={draft}
						change={change}
					/>
				</>
			)}
			{need === 'not-needed' && preferred.length > 0 && (
				<Fields>
					<TextOf
						path="interpreter.how"
						label="How it was explained"
						hint="Stands on the papers of player, guardian and doctor"
						draft={draft}
						change={change}
					/>
				</Fields>
			)}
			{need === 'needed-but-none' && (
				<Fields>
					<TextOf
						path="interpreter.language"
						label="Language"
						offers={preferred}
						draft={draft}
						change={change}
					/>
					<TextOf path="interpreter.why" label="Why there was none" draft={draft} change={change} />
				</Fields>
			)}
		</Group>
	)
}
const relations = Object.entries(interpreterRelationWords)
function Relation({ draft, change }: Pick<AgreementProps, 'draft' | 'change'>) {
	const { relation } = agreementOf(draft).interpreter ?? {}
	return (
		<TextField
			select
			fullWidth
			size="small"
			label="Who the interpreter is"
			value={relation ?? ''}
			error={mayNeverInterpret(relation)}
			onChange={({ target }) =>
				change((now) => answered(now, 'interpreter.relation', target.value || undefined))
			}
			slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
		>
			<option value="">Choose</option>
			{relations.map(([key, words]) => (
				<option key={key} value={key}>
					{capital(words)}
				</option>
			))}
		</TextField>
	)
}
export function Chaperone({ draft, change }: AgreementProps) {
	const { chaperone: { offer } = {}, guardianName } = agreementOf(draft)
	const guardian = guardianName ?? draft.visit.player.guardian?.name
	return (
		<Group title="Chaperone" asked={offer === undefined}>
			<OneOf path="chaperone.offer" options={chaperoneWords} draft={draft} change={change} />
			{offer === 'accepted' && (
				<Fields>
					<TextOf
						path="chaperone.name"
						offers={guardian === undefined ? [] : [guardian]}
						draft={draft}
						change={change}
					/>
				</Fields>
			)}
			{offer === 'not-offered' && (
				<Fields>
					<TextOf path="chaperone.why" label="Why it was not" draft={draft} change={change} />
				</Fields>
			)}
		</Group>
	)
}
export function Company({ draft, change, minor }: AgreementProps) {
	if (!minor) return null
	const { cameWith } = agreementOf(draft)
	const guardian = draft.visit.player.guardian
	return (
		<Group title="Came with" asked={cameWith === undefined}>
			<OneOf
				path="cameWith"
				options={
					guardian ? { ...companionWords, guardian: `${guardian.name}, guardian` } : companionWords
				}
				choose={(now, companion) => {
					const next = answered(now, 'cameWith', companion)
					return companion === 'guardian' ? withGuardian(next) : next
				}}
				draft={draft}
				change={change}
			/>
			{cameWith === 'other' && (
				<Fields>
					<TextOf path="cameWithName" label="Name" draft={draft} change={change} />
				</Fields>
			)}
		</Group>
	)
}
