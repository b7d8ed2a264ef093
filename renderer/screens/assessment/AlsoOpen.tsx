/** Who else has this draft open, what two typed into one field, and how it ended elsewhere. */
import { Alert, AlertTitle, Box, Button, TextField, Typography } from '@mui/material'
import { useState } from 'react'
import { changedEntries } from '../../../shared/desk/visits/join-typed.ts'
import { clockHere } from '../../../shared/desk/workplace/local-day.ts'
import { entryAt } from '../../../shared/engine/visit/entry-at.ts'
import { entryName, entryWords } from '../../../shared/engine/words/en/typed-twice.ts'
import { Way } from '../../parts/panels.tsx'
import { AllTypedTwice } from '../../parts/TypedTwice.tsx'
import type { OpenDraft } from './useDraft.ts'

const clock = (moment: string): string => clockHere(new Date(moment))

export function AlsoOpen({ open }: { open: OpenDraft }) {
	const { others, ended, content, change } = open
	const twice = content.typedTwice?.length ?? 0
	return (
		<Box sx={{ display: 'grid', gap: 1, '&:not(:empty)': { pt: 1 } }}>
			{others.length > 0 && (
				<Typography role="status" variant="body2">
					{others.map(({ by, since, typedAt }) => (
						<Box component="span" key={`${by} ${since}`} sx={{ display: 'block' }}>
							Also open in another window on this PC: <strong>{by}</strong>, since {clock(since)},{' '}
							{typedAt ? `last entry ${clock(typedAt)}` : 'nothing typed there yet'}
						</Box>
					))}
				</Typography>
			)}
			{twice > 0 && (
				<Alert severity="warning" role="region" aria-label="Typed twice">
					<AlertTitle>
						{twice === 1 ? 'One entry was typed twice' : `${twice} entries were typed twice`}: keep
						one of the two before signing
					</AlertTitle>
					<AllTypedTwice draft={content} change={change} />
				</Alert>
			)}
			{ended && <EndedElsewhere open={open} ended={ended} />}
		</Box>
	)
}
/** What was typed here and reached nobody, a line each. */
function leftOver({ content, known }: OpenDraft): string {
	if (!known) return ''
	return changedEntries(known, content)
		.map((keys) => {
			const [, list, id] = keys
			const pair = content.visit.footwear?.find((owned) => list === 'footwear' && owned.id === id)
			return `${entryName(keys, pair?.name)}: ${entryWords(entryAt(content, keys) ?? null, keys)}`
		})
		.join('\n')
}
function EndedElsewhere({
	open,
	ended,
}: {
	open: OpenDraft
	ended: NonNullable<OpenDraft['ended']>
}) {
	const [copied, setCopied] = useState('')
	const left = leftOver(open)
	const { how, by, at } = ended
	const copy = () => {
		navigator.clipboard.writeText(left).then(
			() => setCopied('Copied.'),
			() => setCopied('Not copied: select the text and copy it with Ctrl+C.'),
		)
	}
	return (
		<Alert severity="error">
			<AlertTitle>
				{how === 'signed'
					? `This visit was signed in another window${by ? ` by ${by}` : ''}${at ? ` at ${clock(at)}` : ''}`
					: 'This draft is open no more: it was signed, joined with another, or put away elsewhere'}
			</AlertTitle>
			{left === ''
				? 'Everything that was typed here is in it. Nothing more is saved on this page.'
				: 'This was typed here and is not in it. Nothing more is saved on this page: copy it before ' +
					'you leave, and amend the visit where it counts.'}
			{left !== '' && (
				<TextField
					label="Typed here, not saved"
					multiline
					fullWidth
					value={left}
					slotProps={{ input: { readOnly: true } }}
					sx={{ my: 1 }}
				/>
			)}
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}>
				{left !== '' && (
					<Button variant="outlined" onClick={copy}>
						Copy
					</Button>
				)}
				<Typography role="status" variant="body2">
					{copied}
				</Typography>
				<Way to={`#/players/${open.playerId}`}>Go to the player</Way>
			</Box>
		</Alert>
	)
}
