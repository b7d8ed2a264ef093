/** Opening the workstation: passphrase, or the paper recovery key with a new passphrase. */
import { Box, Button, Paper, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { Field, Trouble } from '../../parts/form.tsx'
import { NewPassphrase } from '../../parts/NewSecret.tsx'
import { notTyped, passphraseProblems, refuseProblems, type Twice } from '../../parts/secrets.ts'
import { change, useHostAction } from '../../query.ts'

interface Typed {
	passphrase: string
	recoveryKey: string
	/** the passphrase that is to open from now on, beside the recovery key */
	next: Twice
}
/** @throws Error where it is empty */
async function byPassphrase({ passphrase }: Typed): Promise<string> {
	if (!passphrase) throw new Error('Passphrase is empty. Type it, or use the recovery key.')
	await change('session.unlock', { passphrase })
	return ''
}
/** @throws Error where something is empty, too short or differs */
async function byRecoveryKey({ recoveryKey, next }: Typed): Promise<string> {
	if (!recoveryKey.trim())
		throw new Error('Recovery key is empty. Type it as it stands on the paper.')
	refuseProblems(passphraseProblems('New passphrase', next))
	await change('session.unlockWithRecoveryKey', {
		recoveryKey: recoveryKey.trim(),
		newPassphrase: next.once,
	})
	return ''
}
/** The two ways in, and how to change to the other one. */
const ways = {
	passphrase: { open: byPassphrase, other: 'Use the recovery key' },
	recoveryKey: { open: byRecoveryKey, other: 'Use the passphrase' },
} as const

type WayIn = keyof typeof ways

function useUnlocking() {
	const [typed, setTyped] = useState<Typed>({
		passphrase: '',
		recoveryKey: '',
		next: notTyped,
	})
	const [by, setBy] = useState<WayIn>('passphrase')
	const { busy, says, run, forget } = useHostAction()
	return {
		typed,
		by,
		busy,
		says,
		put: (part: Partial<Typed>) => setTyped((now) => ({ ...now, ...part })),
		unlock: () => run(() => ways[by].open(typed)),
		takeOtherWay: () => {
			setBy(by === 'passphrase' ? 'recoveryKey' : 'passphrase')
			setTyped((now) => ({ ...now, passphrase: '', next: notTyped }))
			forget()
		},
	}
}
function Fields({ typed, by, put }: Pick<ReturnType<typeof useUnlocking>, 'typed' | 'by' | 'put'>) {
	if (by === 'passphrase')
		return (
			<Field
				label="Passphrase"
				type="password"
				autoComplete="current-password"
				value={typed.passphrase}
				set={(passphrase) => put({ passphrase })}
				focus
			/>
		)
	return (
		<>
			<Field
				label="Recovery key"
				value={typed.recoveryKey}
				set={(recoveryKey) => put({ recoveryKey })}
				focus
				hint="As it stands on the paper."
			/>
			<NewPassphrase
				title="New passphrase"
				typed={typed.next}
				put={(next) => put({ next })}
				also="it takes the place of the owner's old one"
			/>
		</>
	)
}
/** Said where it is needed: nobody can read a help page while the records are locked. */
function Forgotten() {
	return (
		<Typography variant="body2" color="textSecondary">
			Forgotten your passphrase? The owner gives you a new one under Records, People, and you choose
			your own when you unlock with it. An owner who forgot it uses the printed recovery key.
		</Typography>
	)
}
export function Unlock({ clinicName }: { clinicName?: string | undefined }) {
	const { unlock, takeOtherWay, busy, says, by, ...fields } = useUnlocking()
	return (
		<Paper
			variant="outlined"
			sx={{ maxWidth: 480, mx: 'auto', mt: { xs: 2, sm: 8 }, p: { xs: 3, sm: 4 } }}
		>
			<Stack
				component="form"
				noValidate
				spacing={2.5}
				onSubmit={(event) => {
					event.preventDefault()
					unlock()
				}}
			>
				<Box>
					<Typography variant="h1">Unlock</Typography>
					<Typography color="textSecondary" sx={{ mt: 0.5 }}>
						{clinicName ? `The records of ${clinicName} are locked.` : 'The records are locked.'}
					</Typography>
				</Box>
				<Fields by={by} {...fields} />
				<Trouble says={says} />
				<Button type="submit" variant="contained" size="large" disabled={busy}>
					Unlock
				</Button>
				<Button onClick={takeOtherWay}>{ways[by].other}</Button>
				{by === 'passphrase' && <Forgotten />}
			</Stack>
		</Paper>
	)
}
