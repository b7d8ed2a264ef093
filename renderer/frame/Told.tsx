/** What who works here should know of the ways in, above every page until it is dealt with. */
import { Alert, Box, Link } from '@mui/material'
import type { ReactNode } from 'react'
import type { Status } from './useSession.ts'

type Told = NonNullable<Status['told']>

const myAccess = '#/records/access'
const dueWords = {
	given: 'The owner gave you your passphrase. Choose one that only you know.',
	weak: 'Your passphrase is made of names that are guessed first. Choose another one.',
} as const
function Note({
	severity = 'warning',
	children,
}: {
	severity?: 'warning' | 'info'
	children: ReactNode
}) {
	return (
		<Alert severity={severity} role="note">
			{children}
		</Alert>
	)
}
const Way = ({ to = myAccess, children }: { to?: string; children: ReactNode }) => (
	<Link href={to} sx={{ fontWeight: 600 }}>
		{children}
	</Link>
)
export function ToldNotes({ told }: { told: Told }) {
	return (
		<Box
			component="section"
			aria-label="Ways in"
			sx={{ display: 'grid', gap: 1, mb: 2, '&:empty': { display: 'none' }, displayPrint: 'none' }}
		>
			{told.alarms && (
				<Note>
					Something is wrong with the records.{' '}
					<Way to="#/records/audit">Look into it under Audit trail</Way>
				</Note>
			)}
			{told.recoveryKeyUnconfirmed && (
				<Note>
					Nobody has confirmed the recovery key yet. Without it a forgotten passphrase cannot be
					replaced. <Way>Issue it, print it, and type part of it</Way>
				</Note>
			)}
			{told.keyChangeDue && (
				<Note>
					Somebody was taken off, and the key of the records is still the old one. Issue a new
					recovery key under <Way>My access</Way>, then change the key under People.
				</Note>
			)}
			{told.passphraseDue && (
				<Note severity="info">
					{dueWords[told.passphraseDue]} <Way>Change it under My access</Way>
				</Note>
			)}
		</Box>
	)
}
