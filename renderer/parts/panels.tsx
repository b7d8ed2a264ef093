/** What the records screens share: loading by one call, a titled sheet, a plain table. */
import {
	Box,
	Link,
	Paper,
	Table,
	TableBody,
	TableCell,
	TableHead,
	TableRow,
	Typography,
} from '@mui/material'
import { type ReactNode, useCallback, useEffect, useState } from 'react'
import type { CallName, InputOf, OutputOf } from '../../shared/contract.ts'
import { call, wordsOf } from '../host.ts'

/** The answer of one call, asked again by `again`. */
export function useAnswer<N extends CallName>(
	name: N,
	input: InputOf<N>,
): { value: OutputOf<N> | undefined; says: string; again: () => void } {
	const [value, setValue] = useState<OutputOf<N>>()
	const [says, setSays] = useState('')
	const asked = JSON.stringify(input)
	const again = useCallback(() => {
		call(name, JSON.parse(asked) as InputOf<N>).then(
			(answer) => {
				setValue(answer)
				setSays('')
			},
			(error) => setSays(wordsOf(error)),
		)
	}, [name, asked])
	useEffect(again, [again])
	return { value, says, again }
}
/** Runs an action and keeps its words: a refusal, or what was done. */
export function useAction(): {
	busy: boolean
	says: string
	done: string
	run: (work: () => Promise<string>) => void
} {
	const [busy, setBusy] = useState(false)
	const [says, setSays] = useState('')
	const [done, setDone] = useState('')
	const run = (work: () => Promise<string>) => {
		setBusy(true)
		setSays('')
		setDone('')
		work()
			.then(setDone, (error) => setSays(wordsOf(error)))
			.finally(() => setBusy(false))
	}
	return { busy, says, done, run }
}
export function Panel({
	title,
	hint,
	children,
}: {
	title: string
	hint?: string | undefined
	children: ReactNode
}) {
	return (
		<Paper
			component="section"
			variant="outlined"
			sx={{ p: { xs: 2, sm: 3 }, display: 'grid', gap: 2 }}
		>
			{(title || hint) && (
				<Box>
					{title && <Typography variant="h2">{title}</Typography>}
					{hint && (
						<Typography color="textSecondary" sx={{ mt: 0.5 }}>
							{hint}
						</Typography>
					)}
				</Box>
			)}
			{children}
		</Paper>
	)
}
/** Head of the column of buttons; it is left out on paper. */
export const acts = 'Actions'
const notPrinted = (head: string | undefined) => (head === acts ? { displayPrint: 'none' } : {})
export function Rows({
	label,
	heads,
	rows,
	empty,
}: {
	label: string
	heads: readonly string[]
	rows: readonly { key: string; cells: readonly ReactNode[] }[]
	empty: string
}) {
	if (rows.length === 0) return <Typography color="textSecondary">{empty}</Typography>
	return (
		<Box sx={{ overflowX: 'auto' }} tabIndex={0} role="region" aria-label={label}>
			<Table size="small" aria-label={label}>
				<TableHead>
					<TableRow>
						{heads.map((head) => (
							<TableCell key={head} sx={{ fontWeight: 600, ...notPrinted(head) }}>
								{head}
							</TableCell>
						))}
					</TableRow>
				</TableHead>
				<TableBody>
					{rows.map(({ key, cells }) => (
						<TableRow key={key}>
							{cells.map((cell, index) => (
								<TableCell key={heads[index]} sx={notPrinted(heads[index])}>
									{cell}
								</TableCell>
							))}
						</TableRow>
					))}
				</TableBody>
			</Table>
		</Box>
	)
}
export { timeInWords as timeWords } from './dates.ts'
export function Way({ to, children }: { to: string; children: ReactNode }) {
	return (
		<Link
			href={to}
			underline="hover"
			sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, px: 1.5, fontWeight: 600 }}
		>
			{children}
		</Link>
	)
}
