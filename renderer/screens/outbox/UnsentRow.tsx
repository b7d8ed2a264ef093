/** One page that could go to somebody: ticked or not, and changed in document, recipient and way. */
import { Box, Checkbox, FormControlLabel, Typography } from '@mui/material'
import {
	channels,
	channelWords,
	kindWords,
	pageKinds,
	roleWords,
} from '../../../shared/desk/outbox/item.ts'
import type { UnsentVisit } from '../../../shared/desk/outbox/many.ts'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { Field } from '../../parts/form.tsx'
import { cannotGo, offerOf, type Row, rowWords, withRecipient, withWay } from './unsentRows.ts'

interface UnsentRowProps {
	visit: UnsentVisit
	row: Row
	put: (row: Row) => void
}
export function UnsentRow({ visit, row, put }: UnsentRowProps) {
	const cannot = cannotGo(visit, row)
	const words = rowWords(visit, row)
	return (
		<Box>
			<Disclosure
				label="Change"
				name={`Change ${words}, for ${visit.playerName}`}
				head={
					<FormControlLabel
						control={
							<Checkbox
								checked={row.isOn && cannot === undefined}
								disabled={cannot !== undefined}
								onChange={(event) => put({ ...row, isOn: event.target.checked })}
							/>
						}
						label={words}
						sx={{ mr: 0 }}
					/>
				}
			>
				<Fields {...{ visit, row, put }} />
			</Disclosure>
			{cannot !== undefined && (
				<Typography variant="body2" color="error" sx={{ pl: 4 }}>
					{cannot}
				</Typography>
			)}
		</Box>
	)
}

function Fields({ visit, row, put }: UnsentRowProps) {
	const recipients = [
		...new Map(visit.offers.map(({ recipient }) => [recipient.recipientId, recipient])).values(),
	]
	const nameOf = ({ name, role, email }: (typeof recipients)[number]): string =>
		`${name} (${roleWords[role]}), ${email ?? 'no e-mail address'}`
	const own = offerOf(visit, row)?.recipient
	const kinds = visit.offers
		.filter(({ recipient }) => recipient.recipientId === row.recipientId)
		.map(({ kind }) => kind)
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, pl: 4, pb: 1 }}>
			<Box sx={{ width: 400, maxWidth: '100%' }}>
				<Field
					label="Recipient"
					value={own ? nameOf(own) : ''}
					set={(words) => {
						const chosen = recipients.find((recipient) => nameOf(recipient) === words)
						if (chosen) put(withRecipient(visit, row, chosen.recipientId))
					}}
					options={recipients.map(nameOf)}
				/>
			</Box>
			<Box sx={{ width: 220, maxWidth: '100%' }}>
				<Field
					label="Document"
					value={kindWords[row.kind]}
					set={(words) => {
						const kind = pageKinds.find((one) => kindWords[one] === words)
						if (kind) put(withWay(visit, { ...row, kind }, row.channel))
					}}
					options={kinds.map((kind) => kindWords[kind])}
				/>
			</Box>
			<Box sx={{ width: 220, maxWidth: '100%' }}>
				<Field
					label="Way"
					value={channelWords[row.channel]}
					set={(words) => {
						const channel = channels.find((one) => channelWords[one] === words)
						if (channel) put(withWay(visit, row, channel))
					}}
					options={channels.map((channel) => channelWords[channel])}
				/>
			</Box>
		</Box>
	)
}
