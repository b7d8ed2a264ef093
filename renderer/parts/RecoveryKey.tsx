/**
 * The recovery key on a page of its own: shown, printed with what it is and how to keep it, and
 * confirmed by typing part of it from the paper.
 */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Paper,
	Stack,
	Typography,
} from '@mui/material'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { HostRefusal, wordsOf } from '../host.ts'
import { Field, Trouble } from './form.tsx'

/** Typed groups of the key, by their number from 1. */
type TypedGroups = { group: number; typed: string }[]
interface RecoveryKeyProps {
	recoveryKey: string
	clinicName: string
	/** @throws where a group differs from the key */
	confirm: (groups: TypedGroups) => Promise<unknown>
	done: () => void
	/** a line above the key, such as what happens to the old paper */
	before?: ReactNode
}
/** The groups that are asked: enough to show that somebody has the paper in hand. */
const asked = [2, 4] as const

function Key({ recoveryKey, hidden }: { recoveryKey: string; hidden: boolean }) {
	return (
		<Paper
			variant="outlined"
			sx={{ px: 2, py: 4, textAlign: 'center', borderColor: 'primary.main', borderWidth: 2 }}
		>
			<Typography
				component="p"
				aria-label="The key"
				sx={{
					fontSize: { xs: '1.25rem', sm: '1.5rem' },
					fontWeight: 600,
					letterSpacing: '0.06em',
					lineHeight: 1.7,
					overflowWrap: 'anywhere',
					userSelect: 'all',
				}}
			>
				{hidden ? 'Hidden while you type from the paper' : recoveryKey}
			</Typography>
		</Paper>
	)
}
/** What the paper says beside the key; on the screen it is short. */
function HowToKeep() {
	return (
		<Box component="section">
			<Typography variant="h2">How to keep it</Typography>
			<Box component="ul" sx={{ mt: 1, mb: 0, pl: 3, '& li': { mb: 0.5 } }}>
				<li>On paper, locked away, and not beside this PC: whoever holds it opens the records.</li>
				<li>Where the owner, or whoever follows the owner, finds it.</li>
				<li>Never as a photograph or a file on a PC or telephone.</li>
				<li>
					To use it: at the locked workstation choose <i>Use the recovery key</i>, type all four
					groups, and choose a new passphrase.
				</li>
				<li>
					If it is lost or was seen, print a new one under Records, My access. This one then opens
					nothing.
				</li>
			</Box>
		</Box>
	)
}
const wordsWithoutPaths = (error: unknown): string =>
	error instanceof HostRefusal
		? [error.message, ...error.problems.map(({ message }) => message)].join(' ')
		: wordsOf(error)
function useConfirming({ confirm, done }: Pick<RecoveryKeyProps, 'confirm' | 'done'>) {
	const [typed, setTyped] = useState<Readonly<Record<number, string>>>({})
	const [says, setSays] = useState('')
	const [busy, setBusy] = useState(false)
	const groups = asked.map((group) => ({ group, typed: typed[group]?.trim() ?? '' }))
	const goOn = async () => {
		if (groups.every((group) => !group.typed)) return done()
		const empty = groups.find((group) => !group.typed)
		if (empty)
			return setSays(`Group ${empty.group} is empty. Type it from the paper, or leave both empty.`)
		setBusy(true)
		try {
			await confirm(groups)
			done()
		} catch (error) {
			setSays(wordsWithoutPaths(error))
		} finally {
			setBusy(false)
		}
	}
	const put = (group: number, text: string) => {
		setSays('')
		setTyped((now) => ({ ...now, [group]: text }))
	}
	return { typed, says, busy, put, goOn }
}
function TypedFromPaper({ of: { typed, says, put } }: { of: ReturnType<typeof useConfirming> }) {
	return (
		<>
			<Typography>
				Type two of the four groups from the paper, so that it is sure to be readable. Left empty,
				Lastwright reminds you at each unlock.
			</Typography>
			<Box sx={{ display: 'grid', gridTemplateColumns: { xs: '1fr', sm: '1fr 1fr' }, gap: 2 }}>
				{asked.map((group) => (
					<Field
						key={group}
						label={`Group ${group} on the paper`}
						value={typed[group] ?? ''}
						set={(text) => put(group, text)}
						optional
					/>
				))}
			</Box>
			<Trouble says={says} />
		</>
	)
}
export function RecoveryKey({ recoveryKey, clinicName, before, ...ends }: RecoveryKeyProps) {
	const [kept, setKept] = useState(false)
	const confirming = useConfirming(ends)
	const heading = useRef<HTMLHeadingElement>(null)
	useEffect(() => heading.current?.focus(), [])
	return (
		<Stack
			component="form"
			noValidate
			spacing={2.5}
			sx={{ maxWidth: 900, mx: 'auto' }}
			onSubmit={(event) => {
				event.preventDefault()
				if (kept && !confirming.busy) void confirming.goOn()
			}}
		>
			<Typography variant="h1" ref={heading} tabIndex={-1}>
				Recovery key
			</Typography>
			<Typography>
				This key opens the records of {clinicName} if the passphrase is forgotten. It is shown this
				once: print it, or copy it by hand.
			</Typography>
			{before}
			<Key recoveryKey={recoveryKey} hidden={kept} />
			<HowToKeep />
			<Stack spacing={2} sx={{ displayPrint: 'none' }}>
				<Alert severity="warning">
					Without this key a forgotten passphrase cannot be replaced, and the records stay closed
					for good.
				</Alert>
				<Box>
					<Button variant="outlined" disabled={kept} onClick={() => window.print()}>
						Print
					</Button>
				</Box>
				<FormControlLabel
					control={<Checkbox checked={kept} onChange={(event) => setKept(event.target.checked)} />}
					label="I have it on paper"
				/>
				{kept && <TypedFromPaper of={confirming} />}
				<Box>
					<Button
						type="submit"
						variant="contained"
						size="large"
						disabled={!kept || confirming.busy}
					>
						Go on
					</Button>
				</Box>
			</Stack>
		</Stack>
	)
}
