/**
 * An open amendment: what it changes so far, on with it, and the signature that makes it the next
 * version.
 */
import { Alert, Box, Button } from '@mui/material'
import { useMemo } from 'react'
import type { OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { differences } from '../../../shared/desk/records/amendment.ts'
import { assess } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../../shared/engine/report/signing.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { call } from '../../host.ts'
import { Refused } from '../../parts/Answered.tsx'
import { Trouble } from '../../parts/form.tsx'
import { goTo } from '../../parts/goTo.ts'
import { Panel } from '../../parts/panels.tsx'
import { change, useHost, useHostAction } from '../../query.ts'
import { Differences } from './Differences.tsx'

export type Amending = OutputOf<'drafts.open'>
/**
 * The draft that amends this visit: the host leaves the visit that is being amended out of the
 * earlier ones.
 */
export async function amendmentOf(signed: SignedVisit): Promise<Amending | undefined> {
	const { drafts } = await call('players.open', { playerId: signed.playerId })
	const [open] = drafts
	if (!open) return undefined
	const amending = await call('drafts.open', {
		playerId: signed.playerId,
		visitDate: open.visitDate,
	})
	const own = JSON.stringify(signed.visit)
	return amending.earlier.some((visit) => JSON.stringify(visit) === own) ? undefined : amending
}
function assessed(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: ProtocolFile,
	shelf: Parameters<typeof assess>[3],
): Assessment | undefined {
	try {
		return assess(visit, earlier, protocol, shelf)
	} catch {
		return undefined
	}
}
/** What was agreed to is asked anew for each version, and is no change by itself. */
const comparable = ({
	visit,
	decisions: { consentNoted: _, agreement: __, ...decisions },
}: Pick<SignedVisit, 'visit' | 'decisions'>) => ({ visit, decisions })

/** How the amendment differs, and what keeps it from being signed: undefined until known. */
function useAmendment(signed: SignedVisit, { draft, earlier }: Amending) {
	const shelf = useHost('shelf.get', {})
	const protocol = useHost('protocol.get', {})
	const assessment = useMemo(
		() =>
			shelf.value && protocol.value
				? assessed(draft.content.visit, earlier, protocol.value.file, shelf.value.shelf)
				: undefined,
		[draft, earlier, shelf.value, protocol.value],
	)
	const changed = differences(comparable(signed), comparable(draft.content))
	const results = assessment ? differences({ assessment: signed.assessment }, { assessment }) : []
	const blocks =
		shelf.value && protocol.value
			? signingBlocks(draft.content, assessment, openProtocol(protocol.value.file))
			: undefined
	return { changed, results, blocks, refused: shelf.says ? shelf : protocol }
}
const changedMeanwhile =
	'Something was typed into this amendment in another window meanwhile. Nothing was signed: open ' +
	'this page again, look it over and sign.'
function Blocks({ blocks }: { blocks: readonly { says: string }[] }) {
	if (blocks.length === 0) return null
	return (
		<Alert severity="warning">
			<strong>What keeps this from being signed</strong>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{blocks.map(({ says }) => (
					<li key={says}>{says}</li>
				))}
			</Box>
		</Alert>
	)
}
/** @param ready nothing is open any more */
function SignAmendment({
	draft,
	version,
	ready,
}: {
	draft: Amending['draft']
	version: number
	ready: boolean
}) {
	const { busy, says, run } = useHostAction()
	const sign = async () => {
		const { draftId, content } = draft
		const saved = await call('drafts.save', { draftId, content, base: content })
		if (saved.content) throw new Error(changedMeanwhile)
		await change('visits.sign', { draftId, revision: saved.revision })
		return ''
	}
	return (
		<>
			<Box>
				<Button variant="contained" disabled={busy || !ready} onClick={() => run(sign)}>
					Sign version {version}
				</Button>
			</Box>
			<Trouble says={says} />
		</>
	)
}
export function Amendment({ signed, amending }: { signed: SignedVisit; amending: Amending }) {
	const next = (signed.version ?? 1) + 1
	const { changed, results, blocks, refused } = useAmendment(signed, amending)
	return (
		<Panel
			title={`Amendment to version ${next}`}
			hint={
				'Not signed yet. The signed version stands until it is, and stays in the history ' +
				'afterwards. What was explained and agreed to is asked anew, on the step Sign.'
			}
		>
			<Differences
				label={`Differences of version ${next}`}
				differences={[...changed, ...results]}
				none="Nothing was changed yet. Go on amending first."
			/>
			<Box>
				<Button variant="outlined" onClick={() => goTo(`/assessment/${signed.playerId}`)}>
					Go on amending
				</Button>
			</Box>
			<Blocks blocks={blocks ?? []} />
			<SignAmendment
				draft={amending.draft}
				version={next}
				ready={blocks?.length === 0 && changed.length > 0}
			/>
			<Refused of={refused} />
		</Panel>
	)
}
