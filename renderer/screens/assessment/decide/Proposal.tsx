/** What is proposed for a question, in full. */
import type { ReactNode } from 'react'
import { GateProposal } from './GateProposal.tsx'
import { Insert } from './Insert.tsx'
import { LoadProposal } from './LoadProposal.tsx'
import { OwnedProposal } from './OwnedProposal.tsx'
import { PairProposal } from './PairProposal.tsx'
import { kindOf, type QuestionKind } from './questionTitles.ts'
import { RaiseProposal } from './RaiseProposal.tsx'
import { ReviewProposal } from './ReviewProposal.tsx'
import { SizeProposal } from './SizeProposal.tsx'
import type { AskedProps } from './stepTypes.ts'
import { Work } from './Work.tsx'

/** The line of the question says all that is proposed. */
const inOneLine = () => null
const proposals: Readonly<Record<QuestionKind, (props: AskedProps) => ReactNode>> = {
	gate: GateProposal,
	complaint: LoadProposal,
	size: SizeProposal,
	raise: RaiseProposal,
	pair: PairProposal,
	owned: OwnedProposal,
	insert: Insert,
	changes: Work,
	lacing: Work,
	review: ReviewProposal,
	other: inOneLine,
}
export function Proposal(props: AskedProps) {
	const Shown = proposals[kindOf(props.question.id)]
	return <Shown {...props} />
}
