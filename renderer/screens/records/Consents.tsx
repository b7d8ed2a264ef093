/** The consents of one player: per purpose and recipient; without one the answer is no. */

import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { type Consent, purposes } from '../../../shared/desk/records/consent.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Answered, Refused } from '../../parts/Answered.tsx'
import { dayInWords, today } from '../../parts/dates.ts'
import { Field, Outcome } from '../../parts/form.tsx'
import { Page } from '../../parts/Page.tsx'
import { acts, Panel, Rows } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'
import { RecordConsent } from './RecordConsent.tsx'

function state(consent: Consent): string {
	if (consent.withdrawn)
		return `Withdrawn ${dayInWords(consent.withdrawn)} by ${consent.withdrawnBy}`
	if (consent.decision === 'deny') return 'Refused'
	return consent.expires && consent.expires <= today()
		? `Ran out ${dayInWords(consent.expires)}`
		: 'Given'
}
function Withdraw({
	consent,
	busy,
	withdraw,
}: {
	consent: Consent
	busy: boolean
	withdraw: () => void
}) {
	if (consent.withdrawn) return ''
	const forWhom = consent.recipient ? ` for ${consent.recipient}` : ''
	return (
		<Button
			size="small"
			variant="outlined"
			disabled={busy}
			aria-label={`Withdraw ${purposes[consent.purpose].says}${forWhom}`}
			onClick={withdraw}
		>
			Withdraw
		</Button>
	)
}
function OnRecord({
	playerId,
	consents,
	action,
}: {
	playerId: string
	consents: readonly Consent[]
	action: HostAction
}) {
	const [by, setBy] = useState('')
	const withdraw = ({ consentId }: Consent) =>
		action.run(async () => {
			if (!by.trim())
				throw new Error('Who withdraws is empty. Write the name in the field above the list.')
			await change('consents.withdraw', {
				playerId,
				consentId,
				withdrawn: today(),
				withdrawnBy: by.trim(),
			})
			return 'Withdrawn as of today.'
		})
	return (
		<Panel
			title="On record"
			hint={
				'Coach and club, e-mail, photos, squad summary and teaching are denied until someone ' +
				'permits them.'
			}
		>
			{consents.some((consent) => !consent.withdrawn) && (
				<Box sx={{ maxWidth: 360, displayPrint: 'none' }}>
					<Field
						label="Who withdraws"
						value={by}
						set={setBy}
						optional
						hint="Needed only to withdraw one below."
					/>
				</Box>
			)}
			<Rows
				label="Consents"
				heads={['Purpose', 'Recipient', 'Given by', 'On', 'Until', 'State', acts]}
				empty="None yet: every purpose is denied. Record what the player or guardian said below."
				rows={consents.map((consent) => ({
					key: consent.consentId,
					cells: [
						purposes[consent.purpose].says,
						consent.recipient || 'none named',
						`${consent.grantor.name} (${consent.grantor.relation})`,
						dayInWords(consent.given),
						consent.expires ? dayInWords(consent.expires) : 'no end',
						state(consent),
						<Withdraw
							key="withdraw"
							consent={consent}
							busy={action.busy}
							withdraw={() => withdraw(consent)}
						/>,
					],
				}))}
			/>
		</Panel>
	)
}
export function Consents({ playerId }: { playerId: string }) {
	const player = useHost('players.open', { playerId })
	const list = useHost('consents.list', { playerId })
	const action = useHostAction()
	const name = player.value ? fullName(player.value.player) : ''
	return (
		<Page
			title={`Consents${name ? ` of ${name}` : ''}`}
			back={{ to: `#/players/${playerId}`, words: 'Back to the player' }}
		>
			<Refused of={player} />
			<Outcome of={action} />
			<Answered of={list} what="the consents">
				{({ consents }) => (
					<>
						<OnRecord playerId={playerId} consents={consents} action={action} />
						<RecordConsent playerId={playerId} action={action} />
					</>
				)}
			</Answered>
		</Page>
	)
}
