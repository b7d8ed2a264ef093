/** What who works here should know of the ways in, above every page until it is dealt with. */
import { Alert, Box, Button, Link } from '@mui/material'
import { type ReactNode, useState } from 'react'
import { timeInWords } from '../parts/dates.ts'
import type { Status } from './useSession.ts'

type Told = NonNullable<Status['told']>
type Failure = NonNullable<Told['failures']>[number]

const myAccess = '#/records/access'
const dueWords = {
	given: 'The owner gave you your passphrase. Choose one that only you know.',
	weak: 'Your passphrase is made of names that are guessed first. Choose another one.',
} as const
const tried = {
	unlock: (times: number) => `${times} wrong ${times === 1 ? 'passphrase' : 'passphrases'}`,
	pin: (times: number) => `${times} wrong ${times === 1 ? 'PIN' : 'PINs'}`,
	'own-passphrase': (times: number) =>
		`${times} wrong present ${times === 1 ? 'passphrase' : 'passphrases'}`,
} as const
const where = {
	unlock: () => 'at the locked workstation',
	pin: (whom: string) => `for ${whom}`,
	'own-passphrase': (whom: string) => `while ${whom} worked here`,
} as const

function failureWords({ what, whom, times, first, last }: Failure): string {
	const [from, to] = [timeInWords(first), timeInWords(last)]
	const span = from === to ? `on ${to}` : `from ${from} to ${to}`
	return `${tried[what](times)} ${where[what](whom ?? 'somebody')}, ${span}`
}
function Note({
	severity = 'warning',
	action,
	children,
}: {
	severity?: 'warning' | 'info'
	action?: ReactNode
	children: ReactNode
}) {
	return (
		<Alert severity={severity} role="note" action={action}>
			{children}
		</Alert>
	)
}
const Way = ({ to = myAccess, children }: { to?: string; children: ReactNode }) => (
	<Link href={to} sx={{ fontWeight: 600 }}>
		{children}
	</Link>
)
/** Seen is seen on this page; the trail keeps the rows. */
function Failures({ failures }: { failures: readonly Failure[] }) {
	const [seen, setSeen] = useState<readonly Failure[]>([])
	const known = new Set(seen.map((failure) => JSON.stringify(failure)))
	const unseen = failures.filter((failure) => !known.has(JSON.stringify(failure)))
	if (unseen.length === 0) return null
	return (
		<Note
			action={
				<Button color="inherit" onClick={() => setSeen(failures)}>
					Seen
				</Button>
			}
		>
			Since you last unlocked, somebody tried to get in:
			<Box component="ul" sx={{ m: 0, pl: 3 }}>
				{unseen.map((failure) => (
					<li key={JSON.stringify(failure)}>{failureWords(failure)}.</li>
				))}
			</Box>
		</Note>
	)
}
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
			{told.failures && <Failures failures={told.failures} />}
		</Box>
	)
}
