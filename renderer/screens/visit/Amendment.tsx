/**
 * An open amendment: what it changes so far, on with it, and the signature that makes it the next
 * version.
 */
import { Alert, Box, Button, Checkbox, FormControlLabel } from '@mui/material'
import { useMemo, useState } from 'react'
import type { OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { differences } from '../../../shared/desk/records/amendment.ts'
import { assess } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../../shared/engine/report/signing.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { call } from '../../host.ts'
import { Trouble } from '../../parts/form.tsx'
import { Panel, useAction, useAnswer } from '../../parts/panels.tsx'
import { Differences } from './Differences.tsx'

export type Amending = OutputOf<'drafts.open'>
/**
 * The draft that amends this visit: the host leaves the visit that is being amended out of the
 * earlier ones.
 */
export async function amendmentOf(signed: SignedVisit): Promise<Amending | undefined> {
	const { drafts } = await call('players.open', { playerId: signed.playerId })
	if (drafts.length === 0) return undefined
	const amending = await call('drafts.open', {
		playerId: signed.playerId,
		visitDate: drafts[0]!.visitDate,
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
const comparable = ({
	visit,
	decisions: { consentNoted: _, ...decisions },
}: Pick<SignedVisit, 'visit' | 'decisions'>) => ({ visit, decisions })

export function Amendment({
	signed,
	amending: { draft, earlier },
	done,
}: {
	signed: SignedVisit
	amending: Amending
	done: () => void
}) {
	const [consent, setConsent] = useState(false)
	const { busy, says, run } = useAction()
	const next = (signed.version ?? 1) + 1
	const shelf = useAnswer('shelf.get', {})
	const protocol = useAnswer('protocol.get', {})
	const assessment = useMemo(
		() =>
			shelf.value && protocol.value
				? assessed(draft.content.visit, earlier, protocol.value.file, shelf.value.shelf)
				: undefined,
		[draft, earlier, shelf.value, protocol.value],
	)
	const changed = differences(comparable(signed), comparable(draft.content))
	const results = assessment ? differences({ assessment: signed.assessment }, { assessment }) : []
	// the tick for consent stands below
	const blocks =
		shelf.value && protocol.value
			? signingBlocks(
					{ ...draft.content, decisions: { ...draft.content.decisions, consentNoted: true } },
					assessment,
					openProtocol(protocol.value.file),
				)
			: []
	const sign = async () => {
		await call('drafts.save', {
			draftId: draft.draftId,
			content: { ...draft.content, decisions: { ...draft.content.decisions, consentNoted: true } },
		})
		await call('visits.sign', { draftId: draft.draftId })
		done()
		return ''
	}
	return (
		<Panel
			title={`Amendment to version ${next}`}
			hint="Not signed yet. The signed version stands until it is, and stays in the history afterwards."
		>
			<Differences
				label={`Differences of version ${next}`}
				differences={[...changed, ...results]}
				none="Nothing was changed yet. Go on amending first."
			/>
			<Box>
				<Button
					variant="outlined"
					disabled={busy}
					onClick={() => {
						location.hash = `#/assessment/${signed.playerId}`
					}}
				>
					Go on amending
				</Button>
			</Box>
			{blocks.length > 0 && (
				<Alert severity="warning">
					<strong>What keeps this from being signed</strong>
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{blocks.map(({ says: why }) => (
							<li key={why}>{why}</li>
						))}
					</Box>
				</Alert>
			)}
			<FormControlLabel
				sx={{ minHeight: 44 }}
				label="Consent to assessment and record was given and noted"
				control={
					<Checkbox
						checked={consent}
						disabled={busy}
						onChange={(event) => setConsent(event.target.checked)}
					/>
				}
			/>
			<Box>
				<Button
					variant="contained"
					disabled={
						busy ||
						!consent ||
						!shelf.value ||
						!protocol.value ||
						blocks.length > 0 ||
						changed.length === 0
					}
					onClick={() => run(sign)}
				>
					Sign version {next}
				</Button>
			</Box>
			<Trouble says={says || shelf.says || protocol.says} />
		</Panel>
	)
}
